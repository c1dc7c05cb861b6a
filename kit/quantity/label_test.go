package quantity

import "testing"

// 21 CFR 101.9(b)(7)(ii): whole numbers from 5 on, halves from 2 to 5, tenths below 2.
func TestLabelMetric(t *testing.T) {
	for n, want := range map[string]string{
		"236.5882365": "237", "14.79": "15", "5": "5", "5.5": "6", "4.93": "5", "4.74": "4.5", "2.25": "2.5", "2": "2", "1.96": "2",
		"1.84": "1.8", "0.55": "0.6", "0.04": "0",
	} {
		if got := LabelMetric(parsed(t, n)); got.String() != want {
			t.Errorf("%s: %v, want %s", n, got, want)
		}
	}
}

// 21 CFR 101.9(b)(8)(i): whole servings, halves between 2 and 5, "about" when rounded.
func TestLabelServings(t *testing.T) {
	for _, c := range []struct {
		n, want string
		about   bool
	}{
		{"3.5", "3.5", false}, {"3.4", "3.5", true}, {"2.2", "2", true}, {"5.4", "5", true}, {"8", "8", false}, {"1.6", "2", true},
		{"4.75", "5", true}, {"2", "2", false},
	} {
		if got, about := LabelServings(parsed(t, c.n)); got.String() != c.want || about != c.about {
			t.Errorf("%s: %v (about %v), want %s", c.n, got, about, c.want)
		}
	}
}

// 21 CFR 101.9(b)(5)(i) and (ix), with its cup of 240 mL, tablespoon of 15 mL and
// teaspoon of 5 mL; half-way goes up.
func TestLabelSpoons(t *testing.T) {
	for volume, want := range map[string]string{
		"0.7": "⅛ tsp", "1": "¼ tsp", "2.5": "½ tsp", "3.1": "½ tsp", "3.125": "¾ tsp", "5": "1 tsp", "7.5": "2 tsp", "10": "2 tsp",
		"12.4": "2 tsp", "12.5": "1 tbsp", "15": "1 tbsp", "20": "1⅓ tbsp", "22": "1½ tbsp", "24": "1⅔ tbsp", "30": "2 tbsp", "45": "3 tbsp",
		"52.5": "¼ cup", "60": "¼ cup", "80": "⅓ cup", "120": "½ cup", "160": "⅔ cup", "180": "¾ cup", "230": "1 cup", "240": "1 cup",
		"300": "1¼ cups", "480": "2 cups",
	} {
		if got, ok := LabelSpoons(parsed(t, volume)); !ok || got != want {
			t.Errorf("%s mL: %q (%v), want %q", volume, got, ok, want)
		}
	}
	if got, ok := LabelSpoons(parsed(t, "0.3")); ok {
		t.Errorf("0.3 mL was told as %q", got)
	}
}
