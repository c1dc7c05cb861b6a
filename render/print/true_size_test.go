package print

import (
	"bytes"
	"context"
	"image"
	"image/png"
	"math"
	"testing"

	"tallyfold/render/figure"
	"tallyfold/templates"
)

// The bar of a gauge at true size measures 50 mm in the picture that the browser makes of
// it: counted in dots of 1/384 inch, along the bar from end to end.
func TestTheCheckBarIsFiftyMillimetres(t *testing.T) {
	const scale = 4
	style, err := templates.Shipped().File("book.css")
	if err != nil {
		t.Fatal(err)
	}
	gauge, ok := figure.Gauge{Title: "Jar", BaseWidth: 40, RimWidth: 40, Height: 30}.DrawTrue("", 96, 120)
	if !ok {
		t.Fatal("the gauge is not drawn")
	}
	page := "<!DOCTYPE html><html lang=\"en\"><title>Bar</title><style>" + string(style) + "</style><main><figure>" + gauge.SVG("g") + "</figure></main></html>"
	shot, err := browser(t).Screenshot(context.Background(), []byte(page), 600, 0, scale)
	if err != nil {
		t.Fatal(err)
	}
	shown, err := png.Decode(bytes.NewReader(shot))
	if err != nil {
		t.Fatal(err)
	}
	dots := lowestLongRun(shown)
	if got := float64(dots) / (96 * scale) * 25.4; math.Abs(got-50) > 0.2 {
		t.Errorf("the bar is %.2f mm long", got)
	}
}

// lowestLongRun is the longest run of dark dots in the lower half, where only the bar is.
func lowestLongRun(shown image.Image) int {
	bounds := shown.Bounds()
	longest := 0
	for y := bounds.Max.Y - 1; y > bounds.Min.Y; y-- {
		run := 0
		for x := bounds.Min.X; x < bounds.Max.X; x++ {
			if r, g, b, _ := shown.At(x, y).RGBA(); r+g+b > 3*0x7000 {
				run = 0
				continue
			}
			run++
			longest = max(longest, run)
		}
		if longest > 400 {
			break // the bar; the jar stands above it
		}
	}
	return longest
}
