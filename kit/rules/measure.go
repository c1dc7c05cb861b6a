package rules

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// Remedies name amounts that a maker can weigh and a customer can measure, in the
// unit that the maker writes.

// up tells the least measurable amount not below n.
func up(n quantity.Number, like quantity.Amount) string { return measured(n, like, true) }

// down tells the greatest measurable amount not above n.
func down(n quantity.Number, like quantity.Amount) string { return measured(n, like, false) }

// packUp tells the least that can be packed and is not below n: whole packs where the
// component comes in packs inside a pack, else a measurable amount.
func packUp(n quantity.Number, c *kit.Component) string {
	lots := c.Lots
	if !lots.Told() || lots.Each.Nominal.Sign() <= 0 {
		return up(n, c.Packed.Value)
	}
	count := rounded(n.Over(lots.Each.Nominal), quantity.Whole(1), true)
	noun := strings.TrimSuffix(lots.Noun, "s")
	if !count.Equal(quantity.Whole(1)) {
		noun += "s"
	}
	return count.String() + " " + noun + " of " + lots.Each.Written
}

func measured(n quantity.Number, like quantity.Amount, upwards bool) string {
	unit := like.Unit
	if unit.Factor.Sign() <= 0 || unit.Offset.Sign() != 0 {
		return quantity.Show(measurable(n, like, upwards), like.Dimension)
	}
	told := measurable(n, like, upwards).Over(unit.Factor)
	text := number(told, unit.Household)
	if unit.Symbol != "" {
		text += " " + unit.Symbol
	} else if like.Noun != "" {
		text += " " + like.Noun
	}
	return text
}

// measurable is the amount that measured tells, in base units.
func measurable(n quantity.Number, like quantity.Amount, upwards bool) quantity.Number {
	unit := like.Unit
	if unit.Factor.Sign() <= 0 || unit.Offset.Sign() != 0 {
		return rounded(n, step(n, like.Dimension), upwards)
	}
	inUnit := n.Over(unit.Factor)
	return rounded(inUnit, unitStep(inUnit, unit), upwards).Times(unit.Factor)
}

// closest tells the measurable amount nearest to n.
func closest(n quantity.Number, like quantity.Amount) string {
	above, below := measurable(n, like, true), measurable(n, like, false)
	return measured(n, like, above.Minus(n).Less(n.Minus(below)))
}

// number is a figure as a person writes it: quarters for spoons, else decimals.
func number(n quantity.Number, household bool) string {
	if !household || n.IsWhole() {
		return n.String()
	}
	whole := quantity.Whole(n.Int())
	part := n.Minus(whole).String()
	fractions := map[string]string{"0.25": "1/4", "0.5": "1/2", "0.75": "3/4"}
	if fraction, ok := fractions[part]; ok {
		if whole.IsZero() {
			return fraction
		}
		return whole.String() + " " + fraction
	}
	return n.String()
}

// rounded goes up or down to a whole number of steps.
func rounded(n, step quantity.Number, upwards bool) quantity.Number {
	steps := quantity.Whole(n.Over(step).Int())
	if upwards && steps.Times(step).Less(n) {
		steps = steps.Plus(quantity.Whole(1))
	}
	return steps.Times(step)
}

// step is how finely an amount in base units can be measured at home: a kitchen
// scale reads 1 g, a small one 0.1 g; a ruler 1 mm (common practice, no source).
func step(n quantity.Number, dimension quantity.Dimension) quantity.Number {
	n = n.Abs()
	switch dimension {
	case quantity.Count:
		return quantity.Whole(1)
	case quantity.Length:
		return stepBelow(n, []ladder{{100, 1, 1}, {1000, 5, 1}, {0, 10, 1}})
	case quantity.Area:
		return quantity.Whole(100)
	case quantity.Duration:
		return stepBelow(n, []ladder{{600, 60, 1}, {3600, 300, 1}, {0, 900, 1}})
	}
	return stepBelow(n, []ladder{{1, 1, 20}, {20, 1, 10}, {200, 1, 1}, {2000, 5, 1}, {0, 10, 1}})
}

// A ladder says: below this, steps of over/under. Below 0 is everything.
type ladder struct{ below, over, under int64 }

func stepBelow(n quantity.Number, rungs []ladder) quantity.Number {
	for _, rung := range rungs {
		if rung.below == 0 || n.Less(quantity.Whole(rung.below)) {
			return quantity.Ratio(rung.over, rung.under)
		}
	}
	return quantity.Whole(1)
}

// unitStep is the same for a figure in the maker's own unit.
func unitStep(n quantity.Number, unit quantity.Unit) quantity.Number {
	switch {
	case unit.Household:
		return quantity.Ratio(1, 4)
	case unit.Dimension == quantity.Count, unit.Dimension == quantity.Duration:
		return quantity.Whole(1)
	case isMetric(unit):
		return step(n.Times(unit.Factor), unit.Dimension).Over(unit.Factor)
	}
	return stepBelow(n.Abs(), []ladder{{10, 1, 20}, {100, 1, 2}, {0, 1, 1}})
}

// isMetric: a power of ten of the base unit, which is metric in every dimension.
func isMetric(unit quantity.Unit) bool {
	ten := quantity.Whole(10)
	factor := unit.Factor
	for range 9 {
		if factor.Equal(quantity.Whole(1)) {
			return true
		}
		if factor.Less(quantity.Whole(1)) {
			factor = factor.Times(ten)
		} else {
			factor = factor.Over(ten)
		}
	}
	return false
}

// show tells a figure in base units as a person reads it.
func show(n quantity.Number, dimension quantity.Dimension) string {
	return quantity.Show(n, dimension)
}

// percent tells a share: 3/16 is "18.75 %".
func percent(share quantity.Number) string { return quantity.Show(share, quantity.Share) }

// worstCase is a line on how far a figure may be off, empty where it is exact.
func worstCase(what string, f *ledger.Figure) string {
	if !f.Known() || !f.Uncertain() {
		return ""
	}
	low, high := f.Worst()
	return "at the ends of what was told, " + what + " lies between " +
		quantity.Show(low, f.Dimension) + " and " + quantity.Show(high, f.Dimension)
}

// lines leaves out empty lines and doubles of a sum.
func lines(all ...string) []string {
	var kept []string
	for _, line := range withoutDoubles(all) {
		if line != "" {
			kept = append(kept, line)
		}
	}
	return kept
}

// whole is a count as an exact number.
func whole(n int) quantity.Number { return quantity.Whole(int64(n)) }
