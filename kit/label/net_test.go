package label

import (
	"testing"

	"tallyfold/kit/quantity"
)

// The regulations print each declaration and what it is in the other system; the metric
// figures are all cut, never rounded up.
func TestState(t *testing.T) {
	reader := quantity.ReaderFor("en", quantity.USCustomary)
	for _, c := range []struct{ written, want, source string }{
		{"3.4 oz weight", "96.3 g · 3.4 oz", "16 CFR 500.27(a)"},
		{"1 lb 4.4 oz", "578 g · 20.4 oz (1 lb 4.4 oz)", "16 CFR 500.27(a)"},
		{"2 oz weight", "56.6 g · 2 oz", "16 CFR 500.27(c)"},
		{"4 oz weight", "113 g · 4 oz", "16 CFR 500.27(c)"},
		{"1.25 lb", "566 g · 20 oz (1 lb 4 oz)", "16 CFR 500.27(c)"},
		{"1.5 lb", "680 g · 24 oz (1 lb 8 oz)", "21 CFR 701.13(m): Net wt. 24 oz. (1 lb. 8 oz.)"},
		{"0.75 lb", "340 g · 12 oz", "21 CFR 701.13(m): Net wt. 12 oz."},
		{"32 fl oz", "946 mL · 32 fl oz (1 qt)", "21 CFR 701.13(m): 32 fl. oz. (1 qt.)"},
		{"56 fl oz", "1.65 L · 56 fl oz (1 qt 1 pt 8 oz)", "21 CFR 701.13(m): 56 fl. oz. (1 qt. 1 pt. 8 oz.)"},
		{"320 fl oz", "9.46 L · 2 gal 2 qt", "21 CFR 701.13(m): 2 gal. 2 qt."},
		{"20 g", "20 g · 0.7 oz", "21 CFR 701.13: at most two decimals; 20 g = 0.7054 oz"},
		{"1 kg", "1 kg · 35.2 oz (2 lb 3.2 oz)", "NIST SP 1038, 4.4.1.2: cut; 1 kg = 35.274 oz"},
	} {
		amount, err := reader.Amount(c.written)
		if err != nil {
			t.Fatal(err)
		}
		if got := State(amount.Nominal, amount.Dimension, "en").String(); got != c.want {
			t.Errorf("%s: %s, want %s (%s)", c.written, got, c.want, c.source)
		}
	}
}

func TestStateInOtherLanguages(t *testing.T) {
	if got := State(quantity.Whole(185), quantity.Mass, "fr").String(); got != "185 g · 6,52 oz" {
		t.Error(got)
	}
}
