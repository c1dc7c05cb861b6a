package label

import (
	"math"
	"testing"
)

// Panels and heights that 21 CFR 701.10 and 701.13 give; worked by hand.
func TestNetTypeHeight(t *testing.T) {
	for _, c := range []struct {
		what          string
		panel         Panel
		area, inches  float64
		bottomOnly    bool
		signal, other float64 // 16 CFR 1500.121, inches
	}{
		{"cylinder 2 in wide, 4 in high", CylinderPanel(2*Inch, 4*Inch), 10.05, 1.0 / 8, true, 7.0 / 64, 1.0 / 16},
		{"cylinder 3 in wide, 6 in high", CylinderPanel(3*Inch, 6*Inch), 22.62, 1.0 / 8, true, 1.0 / 8, 5.0 / 64},
		{"rectangle 4 × 6 in", Rectangle(4*Inch, 6*Inch), 24, 1.0 / 8, true, 1.0 / 8, 5.0 / 64},
		{"rectangle 5 × 6 in", Rectangle(5*Inch, 6*Inch), 30, 3.0 / 16, true, 1.0 / 8, 5.0 / 64},
		{"rectangle 2 × 2.5 in: the limit belongs to the smaller", Rectangle(2*Inch, 2.5*Inch), 5, 1.0 / 16, false, 1.0 / 16, 3.0 / 64},
		{"rectangle 10 × 10 in", Rectangle(10*Inch, 10*Inch), 100, 3.0 / 16, true, 5.0 / 32, 3.0 / 32},
		{"rectangle 20 × 20 in", Rectangle(20*Inch, 20*Inch), 400, 1.0 / 4, true, 5.0 / 32, 3.0 / 32},
		{"rectangle 20 × 21 in", Rectangle(20*Inch, 21*Inch), 420, 1.0 / 2, true, 5.0 / 32, 3.0 / 32},
	} {
		if math.Abs(c.panel.Area-c.area) > 0.005 {
			t.Errorf("%s: %.3f in², want %.2f", c.what, c.panel.Area, c.area)
		}
		if got := c.panel.NetTypeHeight(); math.Abs(got-c.inches*Inch) > 1e-9 {
			t.Errorf("%s: %.3f mm, want %.4f in", c.what, got, c.inches)
		}
		if c.panel.BottomOnly() != c.bottomOnly {
			t.Errorf("%s: in the bottom 30 %%: %v", c.what, c.panel.BottomOnly())
		}
		heights := c.panel.CautionTypeHeight()
		if math.Abs(heights.SignalWord-c.signal*Inch) > 1e-9 || math.Abs(heights.Other-c.other*Inch) > 1e-9 {
			t.Errorf("%s: cautions %.3f and %.3f mm", c.what, heights.SignalWord, heights.Other)
		}
	}
}
