package ledger

import (
	"strings"

	"tallyfold/kit/quantity"
)

// Show is the figure as a person reads it, or "cannot tell: why".
func (f *Figure) Show() string {
	if !f.Known() {
		return "cannot tell: " + f.Why()
	}
	return quantity.Show(f.value, f.Dimension)
}

// Sum writes how the figure was reckoned from the figures next to it, with their
// names: "120 g (Soy wax, step 2) × 3 (jars) = 360 g". A figure that a maker
// wrote stands alone.
func (f *Figure) Sum() string {
	if !f.Known() {
		return f.Show()
	}
	if f.how == written || len(f.from) == 0 {
		return f.labelled()
	}
	terms := f.terms(nil)
	result := quantity.Show(f.value, f.Dimension)
	switch f.how {
	case smaller:
		return "the smaller of " + strings.Join(terms, " and ") + " = " + result
	case larger:
		return "the larger of " + strings.Join(terms, " and ") + " = " + result
	}
	if len(terms) == 1 {
		return terms[0]
	}
	return strings.Join(terms, signs[f.how]) + " = " + result
}

// terms lists the operands of a sum or difference in a row, those of its first
// operand in place of it where that is one too: 280 − 40 − 1.5, not 240 − 1.5.
func (f *Figure) terms(list []string) []string {
	for i, from := range f.from {
		if i == 0 && from.how == f.how && (f.how == sum || f.how == difference) && len(from.from) > 1 {
			list = from.terms(list)
			continue
		}
		list = append(list, from.labelled())
	}
	return list
}

var signs = map[operation]string{sum: " + ", difference: " − ", product: " × ", quotient: " ÷ "}

func (f *Figure) labelled() string {
	shown := quantity.Show(f.value, f.Dimension)
	if f.Name == "" {
		return shown
	}
	return shown + " (" + f.Name + ")"
}
