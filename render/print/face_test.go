package print

import (
	"math"
	"testing"

	"tallyfold/templates"
)

// TestFaceHeight measures the height of an x in the text face, which the smallest type of a booklet is chosen by: 0.507
// of the size, so that 7.2 points have 1.29 mm (Regulation (EU) 1169/2011, article 13, asks 1.2 mm on food).
func TestFaceHeight(t *testing.T) {
	faces, err := templates.Shipped().FaceRules("")
	if err != nil {
		t.Fatal(err)
	}
	html := plainPage + "<style>" + faces + `</style><p><span style="display:inline-block;font:10mm 'Booklet Text';width:100ex">x</span>`
	overflows := lay(t, html, page).Fit.Overflows
	if len(overflows) == 0 {
		t.Fatal("100 letters of 5 mm do not stand beyond 128 mm")
	}
	if x := (overflows[0].By + 128) / 1000; math.Abs(x-0.507) > 0.005 {
		t.Errorf("the x is %.4f of the size", x)
	}
}
