package render

import (
	"math"
	"os"
	"strings"
	"testing"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/render/figure"
)

// Sizes hold the volume they are reckoned from: V = π/4 d² h for jar and bottle, w h d for
// a bag, in mm and mL.
func TestSizesHoldTheirVolume(t *testing.T) {
	if wide, tall := bagSize(1000); math.Abs(wide*tall*wide/3-1e6) > 1 || math.Abs(wide/tall-0.75) > 1e-9 {
		t.Errorf("a litre is in a bag of %.1f × %.1f mm", wide, tall)
	}
	if wide, tall := bottleSize(100); math.Abs(math.Pi/4*wide*wide*(tall-wide/2)-1e5) > 1 {
		t.Errorf("100 mL are in a bottle of %.1f × %.1f mm", wide, tall)
	}
	for _, none := range []func(float64) (float64, float64){bagSize, bottleSize} {
		if wide, tall := none(0); wide != 0 || tall != 0 {
			t.Errorf("an unknown volume is drawn %v × %v mm", wide, tall)
		}
	}
}

// The first example, reckoned by hand: its jar of 280 mL is 70 mm wide and 280 000 / (π 35²) =
// 72.8 mm high; 34 g of pine fragrance of 0.96 g/mL are 35.4 mL, a bottle 28.3 mm wide. The
// wax is told as liquid and packed as flakes: its size is not known.
func TestWhatIsInTheBoxIsDrawn(t *testing.T) {
	k, _ := instructions.Open(os.DirFS("../examples/harbour-candles"), "harbour-candles")
	a := &assembly{kit: k}
	for key, want := range map[string]struct {
		shape      figure.Shape
		wide, tall float64
	}{
		"wax": {figure.BagShape, 0, 0}, "pine": {figure.BottleShape, 28.3, 70.6}, "jar": {figure.JarShape, 70, 72.8},
		"green": {figure.BagShape, 17.1, 22.8}, "wick": {figure.PieceShape, 0, 0}, "pine-label": {figure.SheetShape, 0, 0},
	} {
		shape, wide, tall := a.outward(k.Component(key))
		if shape != want.shape || math.Abs(wide-want.wide) > 0.1 || math.Abs(tall-want.tall) > 0.1 {
			t.Errorf("%s is drawn as %d, %.1f × %.1f mm, want %d, %.1f × %.1f", key, shape, wide, tall, want.shape, want.wide, want.tall)
		}
	}
}

func TestPlateTellsLetterAndCount(t *testing.T) {
	booklet := bookletIn(t, os.DirFS("../examples/harbour-candles"), "harbour-candles")
	text := booklet.Figures["plate"].Text
	for _, told := range []string{"A, Soy wax flakes, 1.12 kg", "F, Glass jar with lid, × 6", "L, Burning label, × 6", "not to scale"} {
		if !strings.Contains(text, told) {
			t.Errorf("%q is not told in %q", told, text)
		}
	}
	a := &assembly{kit: &kit.Kit{}, words: booklet.words, booklet: booklet}
	if got := a.plate(); got != "" {
		t.Errorf("an empty box is drawn as %q", got)
	}
}
