package quantity

import (
	"strings"
	"testing"
)

// Each text is refused, with the span that is wrong and words that say what to do.
func TestAmountRefused(t *testing.T) {
	for _, c := range []struct{ text, span, says string }{
		{"0x1F g", "0x1F", "the digits 0 to 9 alone"},
		{"1e3 g", "1e3", "write the figure out"},
		{"1.5E-3 g", "1.5E-3", "write the figure out"},
		{"1_200 g", "1_200", "write 1200 or 1,200"},
		{"1:30", "1:30", "for a time write 1 h 30 min, for a ratio 1 : 30"},
		{"2026-03-05", "2026-03-05", "looks like a date"},
		{"5/3/2026", "5/3/2026", "looks like a date"},
		{"1.2.2026", "1.2.2026", "neither a decimal point nor between thousands"},
		{"1,2 g", "1,2", "write 1.5 or 1,500"},
		{"1,20,000 g", "1,20,000", "looks like a date"},
		{"1 200 g", "200 g", "write 1200 or 1,200 for thousands"},
		{"inf", "inf", "a figure that can be measured"},
		{"inf g", "inf g", "a figure that can be measured"},
		{"NaN g", "NaN g", "a figure and a unit, such as 20 g"},
		{strings.Repeat("1", MaxDigits+1) + " g", strings.Repeat("1", MaxDigits+1), "at most 30 digits"},
		{"9999999999999 kg", "9999999999999 kg", "fits into a kit"},
		{"-300 °C", "-300 °C", "−273.15 °C or more"},
		{"-460 °F", "-460 °F", "nothing can be colder"},

		{"2 T", "T", "write tbsp, tsp or kg"},
		{"2 t", "t", "write tsp or kg"},
		{"2 c", "c", "write cup, about or °C"},
		{"2 c.", "c", "write cup, about or °C"},
		{"2 C", "C", "write cup or °C"},
		{"2 gr", "gr", "write g, or grain in full"},
		{"2 drams", "drams", "write g, mL, dram avoirdupois, drachm apothecaries or fluid dram"},
		{"2 tons", "tons", "write kg"},
		{"20 deg", "deg", "write °C or °F"},
		{"2 spoons", "spoons", "say which spoon"},
		{"a pinch", "pinch", "such as pinch: 0.05 mL"},
		{"3 drops", "drops", "such as drop: 0.05 mL"},
		{"some", "", "nobody can measure that"},
		{"a few jars", "few", "nobody can measure that"},
		{"5 MM", "MM", "A large M stands for a million"},
		{"5 mgs", "mgs", "did you mean mg?"},
		{"5 gramms", "gramms", "did you mean grams?"},
		{"5 teaspons", "teaspons", "did you mean teaspoons?"},
		{"12 V", "V", "the name of what is counted"},

		{"", "", "write a figure and a unit"},
		{"above", "", "write a figure and a unit"},
		{"g", "g", "how many? Write 1 g"},
		{"± 5 g", "± 5 g", "expected a figure"},
		{"half", "", "of what?"},
		{"a", "", "of what?"},
		{"1/0 cup", "/0 cup", "nothing can be divided by 0"},

		{"2 kg 3 mL", "3 mL", "a mass and a volume do not add up"},
		{"2 lb 30 g", "30 g", "the smaller follows the larger of one family"},
		{"3 oz 2 lb", "2 lb", "the smaller follows the larger of one family"},
		{"5 g ± 2 mL", "2 mL", "a tolerance that is a mass or a percentage"},
		{"2 g ± 3 g", "± 3 g", "more than the amount"},
		{"2 % ± 3 %", "± 3 %", "percentage points"},
		{"60 °C ± 5 %", "5 %", "write ± 5 °C"},
		{"5 g to 10 mL", "5 g to 10 mL", "the same kind of unit"},
		{"$5 to €6", "$5 to €6", "the same kind of unit"},
		{"40–30 g", "40–30 g", "turn the range round"},
		{"between 30 g", "", "between 30 and 40 g"},
		{"at most 5 g ± 1 g", "5 g ± 1 g", "keep the limit or the range"},
		{"up to 5–6 g", "5–6 g", "keep the limit or the range"},
		{"-5 g", "-5 g", "only a temperature can be below nothing"},
		{"−5 mL", "−5 mL", "only a temperature can be below nothing"},
		{"-3 jars", "-3 jars", "only a temperature can be below nothing"},
		{"by by 5 °C", "by 5 °C", "expected a figure"},
		{"0 × 20 cm", "0 × 20 cm", "sides of more than nothing"},
		{"by 5 g", "by 5 g", "leave “by” out"},

		{"30 × 20", "× 20", "need a unit, as in 30 × 20 cm"},
		{"3 × 4 × 5 cm", "× 4 × 5 cm", "a body has three sides"},
		{"70 % by volume", "by volume", "shares count by mass"},
		{"20 g of wax", "of wax", "not what it is of"},
		{"2 % of wax-", "-", "nothing after “2 % of wax”"},
		{"20 g (about 1 oz)", "(about 1 oz)", "one telling of the amount is enough"},
		{"5 m/s", "/s", "known are g/mL, mL/g and g per 100 g"},
		{"20 g+", "+", "write at least 20 g"},
		{"500 g each", "each", "only the amount"},
		{strings.Repeat("5 g ", 60), strings.Repeat("5 g ", 60), "write only the amount here"},
	} {
		a, err := Reader{}.Amount(c.text)
		if err == nil {
			t.Errorf("%q was read as %v", c.text, a)
			continue
		}
		told := asError(t, c.text, err)
		if got := c.text[told.Start:told.End]; got != c.span {
			t.Errorf("%q: the mistake is said to be %q, want %q", c.text, got, c.span)
		}
		if !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q: %q does not say %q", c.text, err, c.says)
		}
	}
}

// A convention without a pint says so rather than counting pints.
func TestMissingUnitOfConvention(t *testing.T) {
	_, err := Reader{Convention: Metric}.Amount("2 pints")
	if err == nil || !strings.Contains(err.Error(), "a pint is not a metric measure") {
		t.Errorf("a metric pint: %v", err)
	}
	if a := mustRead(t, Reader{Convention: Metric}, "2 US pints"); a.Nominal.String() != "946.352946" {
		t.Errorf("2 US pints are %v mL", a.Nominal)
	}
}

// Messages are for people who make things: no word of the program's own.
func TestMessagesArePlain(t *testing.T) {
	for _, text := range []string{"", "0x1", "1e3", "1:30", "-5 g", "2 T", "5 m/s", "2 kg 3 mL", "5 g ± 2 mL", "40–30 g", "a pinch", "1/0 cup"} {
		_, err := Reader{}.Amount(text)
		told := asError(t, text, err)
		if told.Found == "" || told.Expected == "" {
			t.Errorf("%q: half a message: %+v", text, told)
		}
		for _, word := range []string{"nil", "token", "parse", "invalid", "syntax", "quantity.", "%!", "dimension"} {
			if strings.Contains(strings.ToLower(err.Error()), word) {
				t.Errorf("%q: %q says %q", text, err, word)
			}
		}
	}
}
