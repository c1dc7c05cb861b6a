package label

import (
	"fmt"
	"slices"
	"strings"
)

// A Form is the law that a list of ingredients follows.
type Form string

// The forms. They differ at exactly 1 %: 21 CFR 701.3(f) lets what is "not more than 1
// percent" stand in any order, Regulation (EC) 1223/2009, article 19(1)(g), what is "less
// than 1 %".
const (
	USForm Form = "21 CFR 701.3"
	EUForm Form = "Regulation (EC) 1223/2009, article 19"
)

// A Fault is one thing that is wrong with a list as its maker states it.
type Fault struct {
	// Found says what, Sum the shares.
	Found, Sum string
}

// Faults holds a list as its maker states it, names between commas, against what the steps
// fill: what is missing, what is not in it, what stands in the wrong place. Where two shares
// overlap either order passes. A colour may stand at the end or in its place by share.
func (l List) Faults(stated string, form Form) []Fault {
	known := map[string]Ingredient{}
	for _, one := range l.Ingredients {
		known[nameKey(one)] = one
	}
	var faults []Fault
	var order []Ingredient
	var names []string
	for name := range strings.SplitSeq(stated, ",") {
		name = strings.TrimSuffix(strings.TrimSpace(name), ".")
		if name == "" {
			continue
		}
		key := keyOf(name)
		names = append(names, key)
		one, is := known[key]
		switch {
		case is:
			order = append(order, one)
		case !l.isAllergen(key):
			faults = append(faults, Fault{Found: name + " is stated, and no step puts it in"})
		}
	}
	for _, one := range l.Ingredients {
		if !slices.Contains(names, nameKey(one)) {
			faults = append(faults, Fault{one.Name + " is in it, and is not stated", one.Name + ": " + one.told()})
		}
	}
	if form == EUForm {
		for _, one := range l.Allergens {
			if !slices.Contains(names, keyOf(one.Name)) {
				faults = append(faults, Fault{"the allergen " + one.Name + " is above the share from which it is named, and is not stated", one.Name + ": " + one.told()})
			}
		}
	}
	return append(faults, misplaced(order, form)...)
}

func (l List) isAllergen(key string) bool {
	return slices.ContainsFunc(l.Allergens, func(one Ingredient) bool { return keyOf(one.Name) == key })
}

// misplaced finds what stands behind something that there is surely less of, though its own
// share binds it to its place.
func misplaced(order []Ingredient, form Form) []Fault {
	var faults []Fault
	for i, later := range order {
		for _, earlier := range order[:i] {
			if later.Colour || !earlier.High.Less(later.Low) || !earlier.Colour && !form.binds(later) {
				continue
			}
			faults = append(faults, Fault{
				fmt.Sprintf("%s stands behind %s, and there is more of it", later.Name, earlier.Name),
				later.Name + ": " + later.told() + "; " + earlier.Name + ": " + earlier.told(),
			})
			break
		}
	}
	return faults
}

// binds says whether an ingredient is surely above what may stand in any order.
func (f Form) binds(one Ingredient) bool {
	if f == EUForm {
		return !one.Low.Less(onePercent)
	}
	return onePercent.Less(one.Low)
}

// told is the share of an ingredient with its sum.
func (one Ingredient) told() string {
	share := one.Share()
	if one.Sum == "" || one.Sum == share {
		return share
	}
	return share + " (" + one.Sum + ")"
}

// nameKey is what a stated name is compared by: fragrance is one thing under all its names.
func nameKey(one Ingredient) string {
	if one.Fragrance {
		return "fragrance"
	}
	return keyOf(one.Name)
}

func keyOf(name string) string {
	key := strings.ToLower(strings.Join(strings.Fields(name), " "))
	if isFragrance(key) || key == "parfum (fragrance)" || key == "fragrance (parfum)" {
		return "fragrance"
	}
	return key
}
