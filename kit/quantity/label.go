package quantity

// The three functions here follow the rounding of US nutrition labels, 21 CFR
// 101.9(b). They give figures; whether a label needs them is for its maker to find out.

// LabelMetric rounds the metric equivalent of a household measure, g or mL: to a whole
// number from 5 on, to halves from 2 on, else to tenths (21 CFR 101.9(b)(7)(ii)).
func LabelMetric(n Number) Number {
	switch {
	case !n.Less(Whole(5)):
		return n.round(0, halfUp)
	case !n.Less(Whole(2)):
		return n.roundTo(Ratio(1, 2), halfUp)
	}
	return n.round(1, halfUp)
}

// LabelServings rounds a number of servings: to halves between 2 and 5, else to whole
// ones. Rounded, it is told with "about" (21 CFR 101.9(b)(8)(i)).
func LabelServings(n Number) (rounded Number, about bool) {
	rounded = n.round(0, halfUp)
	if Whole(2).Less(n) && n.Less(Whole(5)) {
		rounded = n.roundTo(Ratio(1, 2), halfUp)
	}
	return rounded, !rounded.Equal(n)
}

// LabelSpoons tells a volume in mL in the nearest of the steps allowed on labels: ⅛, ¼,
// ½, ¾, 1 or 2 teaspoons below a tablespoon; 1, 1⅓, 1½, 1⅔, 2 or 3 tablespoons below a
// quarter cup; cups in quarters or thirds from there on. Half-way goes up (21 CFR
// 101.9(b)(5)(i), (ix)). It is false for less than half of ⅛ teaspoon.
func LabelSpoons(volume Number) (string, bool) {
	if volume.Less(teaspoons[USLabel].Over(Whole(16))) {
		return "", false
	}
	var nearest Number
	var symbol string
	switch {
	case volume.Less(tablespoons[USLabel]):
		nearest, symbol = nearestOf(volume.Over(teaspoons[USLabel]), teaspoonSteps), "tsp"
		if nearest.Equal(Whole(3)) {
			nearest, symbol = one, "tbsp"
		}
	case volume.Less(cups[USLabel].Over(Whole(4))):
		nearest, symbol = nearestOf(volume.Over(tablespoons[USLabel]), tablespoonSteps), "tbsp"
		if nearest.Equal(Whole(4)) {
			nearest, symbol = Ratio(1, 4), "cup"
		}
	default:
		n := volume.Over(cups[USLabel])
		whole := n.round(0, down)
		nearest, symbol = whole.Plus(nearestOf(n.Minus(whole), cupSteps)), "cup"
	}
	unit, _ := unitAt(rowOf(symbol), USLabel)
	t := teller{english, false}
	return t.withUnit(Amount{Unit: unit}, t.figure(nearest, unit), nearest), true
}

// The last step of the first two is the first one of the next larger measure.
var (
	teaspoonSteps   = []Number{Ratio(1, 8), Ratio(1, 4), Ratio(1, 2), Ratio(3, 4), one, Whole(2), Whole(3)}
	tablespoonSteps = []Number{one, Ratio(4, 3), Ratio(3, 2), Ratio(5, 3), Whole(2), Whole(3), Whole(4)}
	cupSteps        = []Number{{}, Ratio(1, 4), Ratio(1, 3), Ratio(1, 2), Ratio(2, 3), Ratio(3, 4), one}
)

// nearestOf gives the nearest of rising steps, of two as near the greater.
func nearestOf(n Number, steps []Number) Number {
	nearest := steps[0]
	for _, step := range steps[1:] {
		if !nearest.Minus(n).Abs().Less(step.Minus(n).Abs()) {
			nearest = step
		}
	}
	return nearest
}
