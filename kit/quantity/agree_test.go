package quantity

import "testing"

// Pairs of one amount in two units. Where a row names a source, the pair or its exact
// value is printed there; the others are calculated from the exact definitions (NIST
// Handbook 44, App. C), and where the line is drawn is common practice, no source.
func TestTold(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want Accord
		why  string
	}{
		{"36 ft", "11.0 m", Agree, "NIST SP 811 B.7.2: 10.9728 m"},
		{"8 ft", "2.4 m", Agree, "NIST SP 1038, 4.4"},
		{"10.1 ft", "3.08 m", Agree, "NIST SP 1038, 4.4.1.1: 3.07848 m"},
		{"10 ft", "3.05 m", Agree, "NIST SP 1038, 4.4.1"},
		{"12 ft 5 in", "3.78 m", Agree, "NIST SP 1038, 4.4: 149 in"},
		{"150 °F", "65.5 °C", Agree, "NIST SP 1038, 4.4.1.3"},
		{"120 °F", "49 °C", Agree, "NIST SP 1038, 4.4.1.3: 48.89 °C"},
		{"3.4 oz", "96.3 g", Agree, "16 CFR 500.27(a), rounded down"},
		{"1 lb 4.4 oz", "578 g", Agree, "16 CFR 500.27(a)"},
		{"2 oz", "56.6 g", Agree, "16 CFR 500.27(c)"},
		{"4 oz", "113 g", Agree, "16 CFR 500.27(c)"},
		{"1.25 lb", "566 g", Agree, "16 CFR 500.27(c)"},
		{"17 × 20 in", "43.1 × 50.8 cm", Agree, "16 CFR 500.16(a)"},
		{"9.7 × 8.2 in", "24.6 × 20.8 cm", Agree, "16 CFR 500.27(a)"},
		{"1 cup", "240 mL", Agree, "21 CFR 101.9(b)(5)(viii)"},
		{"1 cup", "250 mL", Agree, "NIST SP 1038, footnote 19"},
		{"1 tbsp", "15 mL", Agree, "NIST SP 1038, footnote 19"},
		{"1 tbsp", "20 mL", Disagree, "the Australian spoon is 35 % more than the US one"},
		{"1/4 tsp", "1 mL", Agree, "what sets of spoons are marked with"},
		{"600 g", "1 lb 5 oz", Agree, "595.3 g"},
		{"600 g", "1 lb 4 oz", Disagree, "567 g"},
		{"570 g", "1 lb 8 oz", Disagree, "680 g"},
		{"550 g", "1 lb 3 1/2 oz", Agree, "552.8 g"},
		{"550 g", "1 lb 4 1/2 oz", Disagree, "581 g"},
		{"1 lb", "450 g", Agree, "453.6 g"},
		{"8 oz", "225 g", Agree, "226.8 g"},
		{"8 oz", "250 g", Disagree, "226.8 g"},
		{"500 g", "1 lb", Coarse, "453.6 g, 9 % less"},
		{"100 g", "4 oz", Coarse, "113.4 g, 12 % more"},
		{"2 g", "0.1 oz", Disagree, "2.8 g: no way to tell 2 g"},
		{"30 cm", "12 in", Agree, "30.48 cm"},
		{"30 cm", "10 in", Disagree, "25.4 cm"},
		{"20 × 30 cm", "8 × 12 in", Agree, "20.3 × 30.5 cm"},
		{"20 × 30 cm", "8 × 10 in", Disagree, "25.4 cm"},
		{"75 °C", "165 °F", Agree, "167 °F"},
		{"95 °C", "200 °F", Agree, "203 °F"},
		{"180 °C", "350 °F", Agree, "356 °F, as ovens are marked"},
		{"60 °C", "150 °F", Disagree, "140 °F"},
		{"65 °C", "155 °F", Disagree, "149 °F"},
		{"82 °C", "190 °F", Disagree, "180 °F"},
		{"80–85 °C", "176–185 °F", Agree, "exact"},
		{"80–85 °C", "176–195 °F", Disagree, "the upper end is 185 °F"},
		{"80–85 °C", "180 °F", Agree, "82.2 °C lies within"},
		{"by 10 °C", "by 18 °F", Agree, "a difference of 1 °C is 1.8 °F"},
		{"by 10 °C", "by 20 °F", Agree, "11.1 °C, both told in tens"},
		{"by 10 °C", "by 30 °F", Disagree, "16.7 °C"},
	} {
		a, errA := Reader{}.Amount(c.a)
		b, errB := Reader{}.Amount(c.b)
		if errA != nil || errB != nil {
			t.Fatalf("%s, %s: %v %v", c.a, c.b, errA, errB)
		}
		for _, pair := range [][2]Amount{{a, b}, {b, a}} {
			if got := Told(pair[0], pair[1]); got != c.want {
				t.Errorf("%s against %s (%s): %d, want %d", pair[0].Written, pair[1].Written, c.why, got, c.want)
			}
			if !TwoSystems(pair[0], pair[1]) {
				t.Errorf("%s and %s are told in two systems", c.a, c.b)
			}
		}
	}
}

func TestTwoSystems(t *testing.T) {
	for _, c := range []struct{ a, b string }{
		{"600 g", "0.6 kg"}, {"1 lb", "16 oz"}, {"3 tsp", "1 tbsp"}, {"20 g", "1 tsp"}, {"6 jars", "6 pots"}, {"10 min", "1 h"},
	} {
		a, b := mustRead(t, Reader{}, c.a), mustRead(t, Reader{}, c.b)
		if TwoSystems(a, b) {
			t.Errorf("%s and %s are not one amount in two systems", c.a, c.b)
		}
	}
}
