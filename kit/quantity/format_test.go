package quantity

import (
	"strings"
	"testing"
)

func parsed(t *testing.T, text string) Number {
	t.Helper()
	n, ok := ParseNumber(text)
	if !ok {
		t.Fatalf("%q is no number", text)
	}
	return n
}

func TestShow(t *testing.T) {
	for _, c := range []struct {
		n    string
		d    Dimension
		want string
	}{
		{"705", Mass, "705 g"},
		{"1120", Mass, "1.12 kg"},
		{"0", Mass, "0 g"},
		{"0.3", Mass, "0.3 g"},
		{"0.04", Mass, "40 mg"},
		{"-12.5", Mass, "−12.5 g"},
		{"283.49523125", Mass, "283 g"},
		{"12", Volume, "12 mL"},
		{"1500", Volume, "1.5 L"},
		{"6", Count, "6"},
		{"68", Length, "68 mm"},
		{"700", Length, "70 cm"},
		{"2050", Length, "2.05 m"},
		{"90000", Area, "900 cm²"},
		{"85", Temperature, "85 °C"},
		{"0.07272727", Share, "7.27 %"},
		{"1.03", Density, "1.03 g/mL"},
		{"4800", Duration, "1 h 20 min"},
		{"281700", Duration, "3 days 6 h 15 min"},
		{"0", Duration, "0 s"},
		{"-300", Duration, "−5 min"},
		{"12.5", Money, "12.50"},
	} {
		if got := Show(parsed(t, c.n), c.d); got != c.want {
			t.Errorf("%s: %q, want %q", c.n, got, c.want)
		}
	}
	if got := Show(parsed(t, "1120"), Mass, Comma()); got != "1,12 kg" {
		t.Errorf("with a comma: %q", got)
	}
}

// NIST SP 811 (2008) B.7.1: 6.974 951 5 to 3 digits is 6.97, to 2 digits 7.0, to 5
// digits 6.9750, to 7 digits 6.974 952; 6.974 950 5 to 7 digits is 6.974 950.
func TestRoundingHalfToEven(t *testing.T) {
	for _, c := range []struct {
		n        string
		decimals int
		want     string
	}{
		{"6.9749515", 2, "6.97"}, {"6.9749515", 1, "7.0"}, {"6.9749515", 4, "6.9750"},
		{"6.9749515", 6, "6.974952"}, {"6.9749505", 6, "6.974950"},
		{"0.5", 0, "0"}, {"1.5", 0, "2"}, {"2.5", 0, "2"}, {"-2.5", 0, "−2"}, {"-0.4", 0, "0"},
	} {
		if got := keepZeros(parsed(t, c.n), c.decimals); got != c.want {
			t.Errorf("%s to %d decimals: %q, want %q", c.n, c.decimals, got, c.want)
		}
	}
}

// Figures promise no more than their tolerance; JCGM 100, 7.2.6 allows it two digits.
func TestDigitsFollowTheTolerance(t *testing.T) {
	for tolerance, want := range map[string]string{"1": "283.5 g", "0.4": "283.5 g", "25": "283 g", "40": "280 g"} {
		if got := Show(parsed(t, "283.49523125"), Mass, Within(parsed(t, tolerance))); got != want {
			t.Errorf("± %s g: %q, want %q", tolerance, got, want)
		}
	}
}

// The structure of kitchen measures: 16 tbsp = 1 US cup, 3 tsp = 1 tbsp in the US
// and 4 in Australia (general-purpose units database; NIST SP 811 B.8).
func TestHousehold(t *testing.T) {
	for _, c := range []struct {
		volume     string
		convention Convention
		want       string
	}{
		{"236.5882365", USCustomary, "1 cup"},
		{"600", USCustomary, "2 1/2 cups + 1 3/4 tsp"},
		{"354.88235475", USCustomary, "1 1/2 cups"},
		{"14.78676478125", USCustomary, "1 tbsp"},
		{"7.5", Metric, "1 1/2 tsp"},
		{"20", Australian, "1 tbsp"},
		{"20", Metric, "1 tbsp + 1 tsp"},
		{"1.2", USCustomary, "1/4 tsp"},
		{"240", USLabel, "1 cup"},
	} {
		got, off, ok := Household(parsed(t, c.volume), c.convention)
		if !ok || got != c.want || off.Abs().Cmp(Ratio(5, 100)) > 0 {
			t.Errorf("%s mL: %q off by %v (ok %v), want %q", c.volume, got, off.Float(), ok, c.want)
		}
	}
	if text, _, ok := Household(parsed(t, "0.5"), USCustomary); ok {
		t.Errorf("half a millilitre was told as %q", text)
	}
}

// keepZeros tells a number with just so many decimals.
func keepZeros(n Number, decimals int) string {
	text := n.round(decimals, halfEven).asRat().FloatString(decimals)
	return strings.Replace(text, "-", "−", 1)
}
