// Package picture makes a maker's photographs and drawings ready for print: upright,
// as many dots as print can show and no more, and nothing in them but the picture. A
// telephone writes into a photograph where and when it was taken; none of that goes
// into a box. It knows nothing of kits.
package picture

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	_ "image/gif" // the first picture of several
	_ "image/jpeg"
	_ "image/png"

	_ "golang.org/x/image/webp"
)

// A Place is the room that a picture is given on the page, in millimetres.
type Place struct{ Width, Height float64 }

// The places of an A5 page; half of US Letter differs by less than one sees.
var (
	// InText is the column of the text, as wide as it is and no higher than a third of
	// the page.
	InText = Place{Width: 104, Height: 51}
	// InList is beside a name in the list of what is packed.
	InList = Place{Width: 26, Height: 15}
	// OnCover is what title and facts leave of the first page.
	OnCover = Place{Width: 120, Height: 120}
)

// Dots an inch (common practice in printing, no source): what a picture is printed
// with, and what is the least that does not look blurred.
const (
	PrintedDots = 300
	LeastDots   = 150
)

const millimetresPerInch = 25.4

// mostDots is the largest picture that is unpacked: half as much again as the largest
// usual photograph. A small file can say that it holds far more.
const mostDots = 75_000_000

// A Picture is ready for the page.
type Picture struct {
	// Kind is its media type.
	Kind string
	Data []byte
	// Wide and Tall are its size in dots, upright; zero for a drawing made of lines.
	Wide, Tall int
}

// ErrNone is given for what is no picture of a kind that can be shown.
var ErrNone = errors.New("it is no picture that can be read")

// Measure gives the size of a picture in dots as it stands upright, without
// unpacking it. A drawing made of lines has none and gives ErrNone, as does what
// cannot be read.
func Measure(data []byte) (wide, tall int, err error) {
	config, _, err := image.DecodeConfig(bytes.NewReader(data))
	switch {
	case err != nil || config.Width <= 0 || config.Height <= 0:
		return 0, 0, ErrNone
	case config.Width > mostDots/config.Height:
		return 0, 0, fmt.Errorf("it says that it has %d × %d dots, more than can be unpacked", config.Width, config.Height)
	case turnOf(data).onItsSide():
		return config.Height, config.Width, nil
	}
	return config.Width, config.Height, nil
}

// DotsAnInch tells how finely a picture of that many dots is printed in a place that
// it fills in one direction.
func (p Place) DotsAnInch(wide, tall int) float64 {
	return millimetresPerInch * max(float64(wide)/p.Width, float64(tall)/p.Height)
}

// Printed is the size in millimetres of a picture of that many dots in the place.
func (p Place) Printed(wide, tall int) (width, height float64) {
	millimetresPerDot := millimetresPerInch / p.DotsAnInch(wide, tall)
	return float64(wide) * millimetresPerDot, float64(tall) * millimetresPerDot
}

// fit gives the dots that a picture is printed with: never more than it has.
func (p Place) fit(wide, tall int) (int, int) {
	part := PrintedDots / p.DotsAnInch(wide, tall)
	if part >= 1 {
		return wide, tall
	}
	return max(1, int(float64(wide)*part+0.5)), max(1, int(float64(tall)*part+0.5))
}

// Prepare makes a picture ready for a place: turned as its EXIF orientation says,
// sampled down to the dots it is printed with, in grey if asked, and written anew, so
// that nothing but the picture is left. The same bytes give the same bytes. Colours
// are taken as sRGB; a colour profile in the file goes with all else.
func Prepare(data []byte, place Place, grey bool) (Picture, error) {
	if IsDrawing(data) {
		return prepareDrawing(data, grey)
	}
	if _, _, err := Measure(data); err != nil {
		return Picture{}, err
	}
	unpacked, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return Picture{}, ErrNone
	}
	turned := turnOf(data)
	wide, tall := unpacked.Bounds().Dx(), unpacked.Bounds().Dy()
	if turned.onItsSide() {
		tall, wide = place.fit(tall, wide)
	} else {
		wide, tall = place.fit(wide, tall)
	}
	flat := isFlat(unpacked)
	ready := turned.upright(sampled(unpacked, wide, tall))
	if grey {
		ready = inGrey(ready)
	}
	return written(ready, flat)
}
