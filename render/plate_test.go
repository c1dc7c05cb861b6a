package render

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/render/figure"
	"tallyfold/templates"
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

// A gauge that would not fit the page at true size is left out, never made smaller, and
// nothing refers to it. The rail of book.css is the one reckoned with.
func TestGaugeFitsItsPage(t *testing.T) {
	k, _ := instructions.Open(os.DirFS("../examples/harbour-candles"), "harbour-candles")
	for _, form := range Forms() {
		booklet, err := Assemble(k, ledger.Follow(k), templates.Shipped(), Options{Form: form})
		if err != nil {
			t.Fatal(err)
		}
		text := string(booklet.Markdown)
		gauge, there := booklet.Figures["true-size-1"]
		if there != strings.Contains(text, "{#fill-gauge ") || there != strings.Contains(text, "At true size under") {
			t.Errorf("%s: the gauge is there: %v, and the text tells otherwise", form.Name, there)
		}
		wide, tall := form.textRoom()
		if there && (gauge.Width*inch/72 > wide || gauge.Height*inch/72 > tall) {
			t.Errorf("%s: a gauge of %.0f × %.0f points does not fit %.0f × %.0f mm", form.Name, gauge.Width, gauge.Height, wide, tall)
		}
		if there == (form.Short || form.Card || form.Name == "a6") {
			t.Errorf("%s has a gauge: %v", form.Name, there)
		}
	}
	if style := shippedStyle(t); !strings.Contains(style, fmt.Sprintf("--rail: %vrem;", rail)) {
		t.Error("the style sheet has another rail")
	}
}
