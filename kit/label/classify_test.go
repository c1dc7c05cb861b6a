package label

import (
	"testing"

	"tallyfold/kit/quantity"
)

// Worked cases of the cut-offs and of additivity in 29 CFR 1910.1200, appendix A.2 and A.3
// (2024, read): in thousandths of the mixture.
func TestCutOffs(t *testing.T) {
	share := func(thousandths int64) quantity.Number { return quantity.Ratio(thousandths, 1000) }
	for _, c := range []struct {
		why        string
		one, two   int64
		skin, eyes string
	}{
		{"nothing of either", 0, 0, "", ""},
		{"8 % of the light and 0.3 % of the grave: 10 × 0.3 + 8 = 11", 3, 80, "H315", "H319"},
		{"6.9 % and 0.3 %: 9.9, below ten", 3, 69, "", ""},
		{"2 % of the grave alone", 20, 0, "H315", "H319"},
		{"3 % of the grave", 30, 0, "H315", "H318"},
		{"5 % of the grave", 50, 0, "H314", "H318"},
		{"4.9 %", 49, 0, "H315", "H318"},
		{"exactly 1 %", 10, 0, "H315", "H319"},
		{"0.9 % of the light", 0, 9, "", ""},
		{"exactly 10 % of the light", 0, 100, "H315", "H319"},
		{"20 % of a paste that is 30 % grave: 6 %", 60, 0, "H314", "H318"},
	} {
		if got := skinClass(share(c.one), share(c.two)); got != c.skin {
			t.Errorf("%s: skin %q, want %q", c.why, got, c.skin)
		}
		if got := eyeClass(share(c.one), share(c.two)); got != c.eyes {
			t.Errorf("%s: eyes %q, want %q", c.why, got, c.eyes)
		}
	}
}
