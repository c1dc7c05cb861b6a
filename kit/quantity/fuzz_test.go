package quantity

import (
	"strings"
	"testing"
	"unicode/utf8"
)

var seeds = []string{
	"1.2 kg ± 10 g", "500 g ± 2 %", "30–40 g", "-5 to 5 °C", "at most 2 % of part-1", "below 60 °C", "up to 1 tsp",
	"about 20 min", "1 1/2 cups", "1½ cups", "2 lb 3 oz ± 1 oz", "2 lb 3 oz – 2 lb 5 oz", "1 h 20 min", "six heaped teaspoons",
	"half an hour", "a dozen jars", "30 × 20 cm ± 1 cm", "1,200 g", "1\u202f200 g", "£12–15", "0.50–0.70 g/mL", "2 oz",
	"20 mL per g of fibre", "5 g per 100 g", "70 : 100", "140 °F", "by 9 °F", "5 K", "0 × 1 in", "by by 5 °C", "by below 9 °F", "3 drops", "20–30 drops", "0x1F", "1e9", "1:30",
	"2 cuillères à soupe", "höchstens 20 min", "1,5 kg", "1/3 cup ± 1/7 cup", "4' 2\"", "\xff\xfe 5 g", "\u00bd\u2044 5",
}

// readers are the ways to read that differ most.
func readers() []Reader {
	drop := Amount{Dimension: Volume, Nominal: Ratio(5, 100), Low: Ratio(4, 100), High: Ratio(6, 100)}
	own := map[string]Amount{"drop": drop}
	return []Reader{
		{Measures: own},
		{Convention: Australian, Counted: func(noun string) bool { return strings.HasPrefix(noun, "j") }},
		{Convention: Metric, Language: "de", DecimalComma: true, Measures: own},
		{Convention: Metric, Language: "fr", DecimalComma: true},
		{Loose: true},
	}
}

// Whatever the text: no panic, spans inside it, ends in order, and what an amount
// says of itself is read again as the same amount.
func FuzzAmount(f *testing.F) {
	for _, seed := range seeds {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, r := range readers() {
			a, err := r.Amount(text)
			if err != nil {
				told := asError(t, text, err)
				if told.Start < 0 || told.End < told.Start || told.End > len(text) || told.Expected == "" {
					t.Fatalf("%q: %+v", text, told)
				}
				continue
			}
			checkSane(t, text, a)
			checkToldAgain(t, r, a)
		}
	})
}

func checkSane(t *testing.T, text string, a Amount) {
	t.Helper()
	switch {
	case a.High.Less(a.Low) || a.Nominal.Less(a.Low) || a.High.Less(a.Nominal):
		t.Fatalf("%q: %v is not between %v and %v", text, a.Nominal, a.Low, a.High)
	case a.Dimension < Mass || a.Dimension > Proportion || a.Bound < Exactly || a.Bound > About:
		t.Fatalf("%q: dimension %d, bound %d", text, a.Dimension, a.Bound)
	case a.Low.Sign() < 0 && a.Dimension != Temperature && a.Dimension != TemperatureDifference:
		t.Fatalf("%q: less than nothing, %v", text, a.Low)
	case !strings.Contains(text, a.Written) || !strings.Contains(text, a.Noun) || !strings.Contains(text, a.Of):
		t.Fatalf("%q: written %q, noun %q, of %q", text, a.Written, a.Noun, a.Of)
	}
}

// checkToldAgain: String gives English with a decimal point, for the same convention.
func checkToldAgain(t *testing.T, r Reader, a Amount) {
	t.Helper()
	if a.Noun != "" || a.Of != "" {
		return // words of another language, which English may read otherwise
	}
	english := r
	english.Language, english.DecimalComma = "", false
	told := a.String()
	again, err := english.Amount(told)
	if len(told) > MaxText {
		return // a fraction of 30 digits over another
	}
	if err != nil || !again.Equal(a) {
		t.Fatalf("%q says %q, which is read as %v (%v): %+v, %+v", a.Written, told, again, err, a, again)
	}
}

// Whatever the text: no panic, spans in order inside it and between whole characters,
// no more of them than the text has room for.
func FuzzFind(f *testing.F) {
	f.Add(strings.Join(seeds[:6], ", then "))
	f.Add("In step 3 melt 62 g of wax at 80–85 °C, size 24, 2-ply; " + strings.Repeat("1 and ", 40))
	for _, seed := range seeds {
		f.Add("Add " + seed + " of it.")
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, r := range readers() {
			end := 0
			for _, f := range r.Find(text) {
				if f.Start < end || f.End <= f.Start || f.End > len(text) {
					t.Fatalf("%q: a span from %d to %d behind %d", text, f.Start, f.End, end)
				}
				if utf8.ValidString(text) && !utf8.ValidString(text[f.Start:f.End]) {
					t.Fatalf("%q: %q cuts a character", text, text[f.Start:f.End])
				}
				if f.Amount.Written != text[f.Start:f.End] {
					t.Fatalf("%q: written %q, span %q", text, f.Amount.Written, text[f.Start:f.End])
				}
				checkSane(t, text, f.Amount)
				end = f.End
			}
		}
	})
}

// Addition is exact: a + b − b = a, for any fractions whatever.
func FuzzExactSums(f *testing.F) {
	f.Add(int64(1), int64(3), int64(1), int64(7))
	f.Add(int64(-1<<63), int64(-1), int64(1<<62), int64(1<<62-1))
	f.Add(int64(45359237), int64(100000), int64(-1), int64(9))
	f.Fuzz(func(t *testing.T, a, b, c, d int64) {
		if b == 0 || d == 0 {
			return
		}
		x, y := Ratio(a, b), Ratio(c, d)
		if got := x.Plus(y).Minus(y); !got.Equal(x) {
			t.Fatalf("%v + %v − %v = %v", x, y, y, got)
		}
		if !y.IsZero() && !x.Times(y).Over(y).Equal(x) {
			t.Fatalf("%v × %v ÷ %v = %v", x, y, y, x.Times(y).Over(y))
		}
		if x.Cmp(y) != x.Rat().Cmp(y.Rat()) || x.Minus(y).Sign() != x.Cmp(y) {
			t.Fatalf("%v and %v compare as %d", x, y, x.Cmp(y))
		}
	})
}

// Whatever the text: measures of no one size lie inside it, in order, none inside another,
// and each says why.
func FuzzFindOpen(f *testing.F) {
	for _, seed := range append(seeds, "½ a drachm or 2 drs", "a tea-cupful–3 handfuls", "twelve to twenty drops and a half", "3 drachms apothecaries") {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		last := 0
		for _, open := range (Reader{Loose: true}).FindOpen(text) {
			if open.Start < last || open.End <= open.Start || open.End > len(text) || open.Why == "" || !strings.Contains(text[open.Start:open.End], open.Measure) {
				t.Fatalf("%q: %+v", text, open)
			}
			last = open.End
		}
	})
}
