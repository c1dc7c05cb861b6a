package quantity

import "strings"

// Household tells a volume (mL) in what a kitchen drawer holds: whole and quarter
// cups, tablespoons, and teaspoons to the nearest quarter. errorShare is how far
// that is from the volume, as a share of it, with its sign. ok is false for less
// than an eighth of a teaspoon, which no spoon measures.
func Household(volume Number, c Convention) (text string, errorShare Number, ok bool) {
	return HouseholdIn("en", volume, c)
}

// HouseholdIn is Household in the words of a language ("fr").
func HouseholdIn(tag string, volume Number, c Convention) (text string, errorShare Number, ok bool) {
	l := languageFor(tag)
	teaspoon, found := UnitNamed("teaspoon", c)
	tablespoon, foundTablespoon := UnitNamed("tablespoon", c)
	cup, foundCup := UnitNamed("cup", c)
	if !found || !foundTablespoon || !foundCup || volume.Cmp(teaspoon.Factor.Over(Whole(8))) < 0 {
		return "", Number{}, false
	}
	quarters := quartersOf(cup.Factor, volume)
	if told := cup.Factor.Times(quarters).Over(Whole(4)); quarters.Sign() > 0 && near(told, volume) {
		return l.spoons(quarters, cup), share(told, volume), true
	}
	var parts []string
	left := volume
	if cups := Whole(volume.Times(Whole(4)).Over(cup.Factor).Int()); cups.Sign() > 0 {
		parts = append(parts, l.spoons(cups, cup))
		left = left.Minus(cup.Factor.Times(cups).Over(Whole(4)))
	}
	small, told := l.inSpoons(left, teaspoon, tablespoon)
	parts = append(parts, small...)
	told = told.Plus(volume.Minus(left))
	return strings.Join(parts, " + "), share(told, volume), true
}

// inSpoons tells what is left after the cups in tablespoons and teaspoons, and
// what that makes.
func (l *language) inSpoons(left Number, teaspoon, tablespoon Unit) (parts []string, told Number) {
	quarters := quartersOf(teaspoon.Factor, left)
	told = teaspoon.Factor.Times(quarters).Over(Whole(4))
	perTablespoon := tablespoon.Factor.Over(teaspoon.Factor).Times(Whole(4))
	tablespoons := Whole(quarters.Over(perTablespoon).Int())
	if tablespoons.Sign() > 0 {
		parts = append(parts, l.spoons(tablespoons.Times(Whole(4)), tablespoon))
		quarters = quarters.Minus(tablespoons.Times(perTablespoon))
	}
	if quarters.Sign() > 0 {
		parts = append(parts, l.spoons(quarters, teaspoon))
	}
	return parts, told
}

// nearShare is how far quarter cups may be off before spoons are added to them.
var nearShare = Ratio(1, 100)

func near(told, volume Number) bool {
	return share(told, volume).Abs().Cmp(nearShare) <= 0
}

func share(told, volume Number) Number { return told.Minus(volume).Over(volume) }

// quartersOf is the nearest number of quarters of a measure.
func quartersOf(measure, volume Number) Number {
	return volume.Times(Whole(4)).Over(measure).round(0, halfEven)
}

// spoons tells quarters of a measure: "1 1/2 cups", "3/4 tsp".
func (l *language) spoons(quarters Number, measure Unit) string {
	whole := quarters.Over(Whole(4)).Int()
	part := [...]string{"", "1/4", "1/2", "3/4"}[quarters.Int()%4]
	name := l.unitName(measure, l.several(quarters.Over(Whole(4))))
	switch {
	case whole == 0:
		return part + " " + name
	case part == "":
		return Whole(whole).String() + " " + name
	}
	return Whole(whole).String() + " " + part + " " + name
}
