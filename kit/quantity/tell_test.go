package quantity

import "testing"

// Each is told again as given, and read again as the same amount.
func TestAmountString(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"1.2 kg ± 10 g", "1.2 kg ± 0.01 kg"},
		{"500 g ± 2 %", "500 g ± 10 g"},
		{"20.5 ± 0.5 g", "20.5 g ± 0.5 g"},
		{"20 ± 1 jars", "20 ± 1 jars"},
		{"60 °C ± 5 K", "60 °C ± 5 °C"},
		{"2 lb 3 oz ± 1 oz", "2 lb 3 oz ± 1 oz"},
		{"30 to 40 g", "30–40 g"},
		{"500 mg – 1 g", "500–1000 mg"},
		{"-5 to 5 °C", "−5 to 5 °C"},
		{"1 h 20 min – 2 h", "1 h 20 min – 2 h"},
		{"1 h – 1 h 20 min", "1 h 0 min – 1 h 20 min"},
		{"about 30–40 g", "about 30–40 g"},
		{"max 2 % of the mixture", "at most 2 % of mixture"},
		{"5 g or more", "at least 5 g"},
		{"under 5 g", "below 5 g"},
		{"up to a teaspoon", "up to 1 tsp"},
		{"1 1/2 cups", "1½ cups"},
		{"half a cup", "½ cup"},
		{"1/3 cup", "⅓ cup"},
		{"1/7 cup", "1/7 cup"},
		{"10/7 cup", "1 3/7 cups"},
		{"1.5 kg", "1.5 kg"},
		{"1/3 kg", "1/3 kg"},
		{"3/4 in", "¾ in"},
		{"2 pounds 3 ounces", "2 lb 3 oz"},
		{"1h20", "1 h 20 min"},
		{"1 h 20 min 30 s", "1 h 20 min 30 s"},
		{"an hour and a half", "1.5 h"},
		{"36 hours", "36 h"},
		{"two days", "2 days"},
		{"half a day", "0.5 day"},
		{"five heaped teaspoons", "5 heaped tsp"},
		{"level tablespoon", "1 level tbsp"},
		{"2 tbsp + 1 tsp", "2 tbsp 1 tsp"},
		{"30 cm x 20 cm ± 1 mm", "30 × 20 cm ± 0.1 cm"},
		{"8.5 by 11 in", "8½ × 11 in"},
		{"£12.5", "£12.50"},
		{"12.50 USD", "12.50 USD"},
		{"£12–15", "£12–15"},
		{"8 ounces", "8 oz"},
		{"8 ounces by weight", "8 oz weight"},
		{"0.5–0.7 grams per millilitre", "0.5–0.7 g/mL"},
		{"5 g per 100 g of water", "5 g per 100 g of water"},
		{"20 mL per g", "20 mL/g"},
		{"70:100", "70 : 100"},
		{"by 9 °F", "by 9 °F"},
		{"a dozen jars", "12 jars"},
		{"half a dozen", "6"},
		{"6 jar lids", "6 jar lids"},
		{"2.5 jars", "2½ jars"},
	} {
		a := mustRead(t, Reader{}, c.text)
		if got := a.String(); got != c.want {
			t.Errorf("%q is told as %q, want %q", c.text, got, c.want)
		}
		if again, err := (Reader{}).Amount(a.String()); err != nil || !again.Equal(a) {
			t.Errorf("%q told as %q reads as %v, %v", c.text, a, again, err)
		}
	}
}

// Each language tells an amount in its own words and reads it again as the same.
func TestAmountInLanguages(t *testing.T) {
	for _, c := range []struct{ text, tag, want string }{
		{"at most 1.5 % of mixture", "fr", "au plus 1,5 % de mixture"},
		{"at most 1.5 % of mixture", "de", "höchstens 1,5 % von mixture"},
		{"about 20 min", "es", "unos 20 min"},
		{"up to 3 days", "nl", "tot wel 3 dagen"},
		{"up to 3 days", "it", "fino a 3 giorni"},
		{"1.5 cups", "fr", "1½ tasse"},
		{"2 cups", "fr", "2 tasses"},
		{"5 heaped tsp", "fr", "5 c. à café bombée"},
		{"5 heaped tsp", "de", "5 gehäufter TL"},
		{"2 tbsp", "de", "2 EL"},
		{"2 tbsp", "es", "2 cucharadas"},
		{"1 tbsp", "it", "1 cucchiaio"},
		{"2 tsp", "nl", "2 theelepels"},
		{"2 lb 3 oz", "fr", "2 lb 3 oz"},
		{"20 g ± 0.5 g", "de", "20 g ± 0,5 g"},
		{"-5 to 5 °C", "it", "−5 a 5 °C"},
		{"1 day 6 h", "de", "1 Tag 6 h"},
		{"20 g", "pt", "20 g"}, // a language not known is told in English
		{"1.5 kg", "de-CH", "1.5 kg"},
	} {
		a := mustRead(t, Reader{Convention: Metric}, c.text)
		got := a.In(c.tag)
		if got != c.want {
			t.Errorf("%q in %s: %q, want %q", c.text, c.tag, got, c.want)
		}
		if again, err := ReaderFor(c.tag, Metric).Amount(got); err != nil || !again.Equal(a) {
			t.Errorf("%q in %s is %q and reads as %v, %v", c.text, c.tag, got, again, err)
		}
	}
}

// Whatever one language is told, each other can tell and read again.
func TestEveryLanguageReadsItself(t *testing.T) {
	for _, text := range []string{
		"1.2 kg ± 10 g", "30–40 g", "-5 to 5 °C", "1 h 20 min – 2 h", "about 30–40 g", "at most 2 % of wax", "at least 5 g", "below 60 °C",
		"above 60 °C", "up to 1 tsp", "1½ cups", "⅓ cup", "3 tbsp", "2 lb 3 oz ± 1 oz", "2 days", "1 day 6 h", "3 weeks", "6 months", "1 year",
		"5 heaped tsp", "5 level tbsp", "2 rounded tsp", "3 scant tsp", "4 packed cups", "3 loose cups", "30 × 20 cm ± 1 mm", "£12.50", "12.5 USD",
		"8 oz", "8 oz weight", "8 fl oz", "0.5–0.7 g/mL", "5 g per 100 g of wax", "20.5 mL/g", "70.5 : 100", "12", "2.5", "20 ± 1", "1234.5 g",
	} {
		a := mustRead(t, Reader{Convention: Australian}, text)
		for _, l := range languages {
			told := a.In(l.tag)
			if again, err := ReaderFor(l.tag, Australian).Amount(told); err != nil || !again.Equal(a) {
				t.Errorf("%q in %s is %q and reads as %v, %v", text, l.tag, told, again, err)
			}
		}
	}
}
