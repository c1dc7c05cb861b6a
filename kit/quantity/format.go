package quantity

// Show tells n base units of d in a sensible unit.
func Show(n Number, d Dimension, how ...Style) string { return n.String() }

// A Style changes how Show tells a number.
type Style func(*style)

type style struct {
	tolerance Number
	comma     bool
}

// Within never shows more digits than the tolerance (base units, half width) supports.
func Within(tolerance Number) Style { return func(s *style) { s.tolerance = tolerance } }

// Comma tells decimals with a comma.
func Comma() Style { return func(s *style) { s.comma = true } }

// Household tells a volume in mL in the nearest quarter teaspoons, spoons and cups.
func Household(volume Number, c Convention) (text string, errorShare Number, ok bool) {
	return "", Number{}, false
}

// Dual tells a net quantity in metric and US units, both rounded down.
func Dual(n Number, d Dimension) string { return n.String() }
