package label

import (
	"fmt"
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// An Ingredient is a line of an ingredient list.
type Ingredient struct {
	// Name as it stands in the list.
	Name string
	// Low and High are its share by mass of what is filled, 1 for all of it: the same where
	// nothing is ranged.
	Low, High quantity.Number
	// Sum tells how the share came about.
	Sum string
	// Colour and Fragrance are told in ways of their own.
	Colour, Fragrance bool
}

// A List is the ingredients of one filling, the most first.
type List struct {
	Filling *ledger.Filling
	// Ingredients by falling share; colours last.
	Ingredients []Ingredient
	// Unsure are pairs whose order cannot be told, as their shares overlap.
	Unsure []Unsure
	// Allergens to be named, by the European thresholds; AllergensUntold are fragrances
	// whose breakdown is not given.
	Allergens       []Ingredient
	AllergensUntold []string
	// Why the list cannot be told, or "".
	Why string
}

// Told says whether there is a list.
func (l List) Told() bool { return l.Why == "" }

// The shares at which order or naming change.
var (
	onePercent = quantity.Ratio(1, 100)
	// A fragrance allergen is named above 0.001 % in what stays on the skin and above
	// 0.01 % in what is rinsed off (Regulation (EC) 1223/2009, annex III; read, 2nd hand).
	leaveOn  = quantity.Ratio(1, 100_000)
	rinseOff = quantity.Ratio(1, 10_000)
)

// Lists gives the ingredients of what each run fills, through blends: a component with
// “ingredients” of its own stands for those. Shares are by mass at the time of filling, as
// written; a blend's ranges are carried through. Inserts and containers don't count.
//
// The error-free answer is a List that is Told, or says why it cannot be: a part without a
// density has no mass, and so no place in the order.
func Lists(k *kit.Kit, l *ledger.Ledger) []List {
	var all []List
	for _, f := range l.Fillings {
		if f.Empty() || f.Operation == nil {
			continue
		}
		list := List{Filling: f}
		list.fill(k)
		all = append(all, list)
	}
	return all
}

func (l *List) fill(k *kit.Kit) {
	whole := l.Filling.Mass()
	if !whole.Known() || whole.Value().Sign() <= 0 {
		l.Why = "the weight of what is filled cannot be told: " + whole.Why()
		return
	}
	shares := map[string]*Ingredient{}
	for _, part := range l.Filling.Parts() {
		share := part.Mass.Value().Over(whole.Value())
		for _, one := range partsOf(k, part.Thing, share) {
			add(shares, one)
		}
		l.allergensOf(k, part.Thing, share)
	}
	for _, one := range shares {
		l.Ingredients = append(l.Ingredients, *one)
	}
	slices.SortFunc(l.Ingredients, before)
	l.Unsure = unsure(l.Ingredients)
	l.nameAllergens(k)
}

// add puts shares of the same ingredient together: water is water, whatever it comes in.
func add(shares map[string]*Ingredient, one Ingredient) {
	key := strings.ToLower(one.Name)
	known := shares[key]
	if known == nil {
		shares[key] = &one
		return
	}
	known.Low, known.High = known.Low.Plus(one.Low), known.High.Plus(one.High)
	known.Sum += " + " + one.Sum
	known.Colour, known.Fragrance = known.Colour && one.Colour, known.Fragrance && one.Fragrance
}

// partsOf are the ingredients that a thing brings, of a share of the whole.
func partsOf(k *kit.Kit, thing string, share quantity.Number) []Ingredient {
	name := k.Called(thing)
	c := k.Component(thing)
	if c == nil {
		return []Ingredient{{Name: name, Low: share, High: share, Sum: percent(share)}}
	}
	if len(c.Ingredients) == 0 || c.CountsAs.Value == "fragrance" {
		if c.LabelName.Given() {
			name = c.LabelName.Value
		}
		return []Ingredient{{
			Name: name, Low: share, High: share, Sum: percent(share),
			Colour: c.CountsAs.Value == "colour" || isColourIndex(name), Fragrance: c.CountsAs.Value == "fragrance",
		}}
	}
	var all []Ingredient
	for _, said := range c.Ingredients {
		part := said.Value
		all = append(all, Ingredient{
			Name: part.Name, Low: share.Times(part.Share.Low), High: share.Times(part.Share.High),
			Sum:    percent(share) + " of " + name + " × " + part.Share.Written,
			Colour: isColourIndex(part.Name), Fragrance: isFragrance(part.Name),
		})
	}
	return all
}

// isColourIndex knows the names of colours in the Colour Index: "CI 77491".
func isColourIndex(name string) bool {
	number, found := strings.CutPrefix(strings.ToUpper(name), "CI ")
	return found && strings.Trim(number, "0123456789") == "" && len(number) == 5
}

func isFragrance(name string) bool {
	switch strings.ToLower(name) {
	case "fragrance", "parfum", "perfume":
		return true
	}
	return false
}

// before orders by falling share, of a range its middle; colours come last, and what is
// equal by name, so that a list is the same each time.
func before(a, b Ingredient) int {
	switch {
	case a.Colour != b.Colour && a.Colour:
		return 1
	case a.Colour != b.Colour:
		return -1
	}
	x, y := a.Low.Plus(a.High), b.Low.Plus(b.High)
	switch {
	case y.Less(x):
		return -1
	case x.Less(y):
		return 1
	}
	return strings.Compare(a.Name, b.Name)
}

// percent writes a share with three figures.
func percent(share quantity.Number) string {
	value := 100 * share.Float()
	if value >= 100 {
		return fmt.Sprintf("%.0f %%", value)
	}
	return fmt.Sprintf("%.3g %%", value)
}

// US is the list in the form of 21 CFR 701.3: those above 1 % by falling share, then those
// at not more than 1 %, then colours; fragrance under that name.
func (l List) US() string { return l.names("Fragrance") }

// EU is the list in the form of Regulation (EC) 1223/2009, article 19: fragrance as
// "Parfum", allergens that must be named behind those above 1 %.
func (l List) EU() string { return l.names("Parfum", l.Allergens...) }

// Both is one list for the United States and Europe, as many packs have it: fragrance under
// both its names, allergens named (common practice, no source).
func (l List) Both() string { return l.names("Parfum (Fragrance)", l.Allergens...) }

func (l List) names(fragrance string, further ...Ingredient) string {
	var major, minor, colours []string
	for _, one := range l.Ingredients {
		name := one.Name
		if one.Fragrance {
			name = fragrance
		}
		switch {
		case one.Colour:
			colours = append(colours, name)
		case onePercent.Less(one.High):
			major = append(major, name)
		default:
			minor = append(minor, name)
		}
	}
	for _, one := range further {
		minor = append(minor, one.Name)
	}
	return strings.Join(once(slices.Concat(major, minor, colours)), ", ")
}

func once(names []string) []string {
	var all []string
	for _, name := range names {
		if !slices.ContainsFunc(all, func(other string) bool { return strings.EqualFold(other, name) }) {
			all = append(all, name)
		}
	}
	return all
}
