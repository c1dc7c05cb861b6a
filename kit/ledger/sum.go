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
	terms := make([]string, len(f.from))
	for i, from := range f.from {
		terms[i] = from.labelled()
	}
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

var signs = map[operation]string{sum: " + ", difference: " − ", product: " × ", quotient: " ÷ "}

func (f *Figure) labelled() string {
	shown := quantity.Show(f.value, f.Dimension)
	if f.Name == "" {
		return shown
	}
	return shown + " (" + f.Name + ")"
}
