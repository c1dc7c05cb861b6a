package label

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// allergensOf gathers the allergens that a part brings by its supplier's breakdown. A
// fragrance without one is noted: what is in it cannot be told.
func (l *List) allergensOf(k *kit.Kit, thing string, share quantity.Number) {
	c := k.Component(thing)
	if c == nil {
		return
	}
	if len(c.Allergens) == 0 && c.CountsAs.Value == "fragrance" {
		l.AllergensUntold = append(l.AllergensUntold, c.String())
	}
	for _, said := range c.Allergens {
		one := Ingredient{
			Name: said.Value.Name, Low: share.Times(said.Value.Share.Low), High: share.Times(said.Value.Share.High),
			Sum: percent(share) + " of " + c.String() + " × " + said.Value.Share.Written,
		}
		at := slices.IndexFunc(l.Allergens, func(other Ingredient) bool { return strings.EqualFold(other.Name, one.Name) })
		if at < 0 {
			l.Allergens = append(l.Allergens, one)
			continue
		}
		known := &l.Allergens[at]
		known.Low, known.High, known.Sum = known.Low.Plus(one.Low), known.High.Plus(one.High), known.Sum+" + "+one.Sum
	}
}

// nameAllergens keeps those above the threshold of what the pieces are sold as. Without a
// word of that the lower threshold counts.
func (l *List) nameAllergens(k *kit.Kit) {
	threshold := leaveOn
	if k.SoldAs.Value == kit.RinseOff {
		threshold = rinseOff
	}
	l.Allergens = slices.DeleteFunc(l.Allergens, func(one Ingredient) bool { return !threshold.Less(one.High) })
	slices.SortFunc(l.Allergens, before)
}
