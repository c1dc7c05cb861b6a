package ledger

import (
	"testing"

	"tallyfold/kit/quantity"
)

// The worth of the last digit is what NIST SP 811, B.7 rounds to; here it says how
// far a figure told again may differ.
func TestLastDigit(t *testing.T) {
	ounce := quantity.Ratio(28349523125, 1000000000) // NIST Handbook 44, App. C
	for written, want := range map[string]quantity.Number{
		"20 g":            quantity.Whole(1),
		"2.5 g":           quantity.Ratio(1, 10),
		"1.2 kg ± 10 g":   quantity.Whole(100),
		"1,200 g":         quantity.Whole(1),
		"1 lb 5 oz":       ounce,
		"3 1/4 oz weight": ounce.Over(quantity.Whole(4)),
		"30–40 g":         quantity.Whole(1),
		"2 ½ oz weight":   ounce.Over(quantity.Whole(2)),
	} {
		amount, err := quantity.Reader{Language: "en"}.Amount(written)
		if err != nil {
			t.Errorf("%s: %v", written, err)
			continue
		}
		if got := lastDigit(amount); !got.Equal(want) {
			t.Errorf("%s: the last digit is worth %s, want %s", written, got, want)
		}
	}
}

// The same where a comma stands before decimals.
func TestLastDigitBehindAComma(t *testing.T) {
	for written, want := range map[string]quantity.Number{
		"2,5 g":    quantity.Ratio(1, 10),
		"0,125 kg": quantity.Whole(1),
		"1.200 g":  quantity.Whole(1),
		"1,250 kg": quantity.Whole(1),
	} {
		amount, err := quantity.ReaderFor("de", quantity.Metric).Amount(written)
		if err != nil {
			t.Errorf("%s: %v", written, err)
			continue
		}
		if got := lastDigit(amount); !got.Equal(want) {
			t.Errorf("%s: the last digit is worth %s, want %s", written, got, want)
		}
	}
}
