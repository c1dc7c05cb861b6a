package market

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/quantity"
)

// artMaterial: cosmetics are none (16 CFR 1500.14(b)(8)), nor is what has no recipe, such as
// cloth, thread and wood ((iv)(A)); of any other pack the maker has to say.
func artMaterial(s subject) held {
	c := s.component
	switch said := c.ArtMaterial; {
	case said.Given() && said.Value:
		return yes(c.String() + ": “art material: yes”")
	case said.Given():
		return no(c.String() + ": “art material: no”")
	case s.kit.SoldAs.Value == kit.LeaveOn || s.kit.SoldAs.Value == kit.RinseOff:
		return no("what the kit makes is a cosmetic")
	case !c.IsMaterial():
		return no(c.String() + " is packed neither by weight nor by volume, so taken as none")
	}
	return untold("it is not told whether "+c.String()+" is an art material", "write “art material: yes” or “art material: no” under it")
}

func lookedAt(s subject) held {
	if s.component.Review == nil {
		return untold("no toxicologist's look at the recipe of "+s.component.String()+" is told", "write “review: {day: …, by: …}” under it once there is one")
	}
	return yes("looked at by " + s.component.Review.By.Value + " on " + s.component.Review.On.Value)
}

func toxicologistWarns(s subject) held {
	review := lookedAt(s)
	switch {
	case review.holds != Asked:
		return review
	case s.component.Review.Warns.Value == "":
		return no(review.why + ", with nothing to warn of")
	}
	return yes(review.why + ", with a warning")
}

// warnedMaterials are the names of art materials that bear a warning.
func warnedMaterials(k *kit.Kit) []string {
	var all []string
	for _, c := range k.Components {
		if c.ArtMaterial.Value && c.Review != nil && c.Review.Warns.Value != "" {
			all = append(all, c.String())
		}
	}
	return all
}

func anyWarned(s subject) held {
	if names := warnedMaterials(s.kit); len(names) > 0 {
		return yes("a warning is told of " + strings.Join(names, ", "))
	}
	for _, c := range s.kit.Components {
		if c.ArtMaterial.Value && c.Review == nil {
			return lookedAt(subject{kit: s.kit, component: c})
		}
	}
	return no("no art material with a warning is told")
}

// warnedOf: the pack bears an H-statement with a signal word, or what it holds can catch fire
// at up to 150 °F. That no hazard is told may be a gap in kit.yaml, so the reason says so.
func warnedOf(s subject) held {
	c := s.component
	for _, said := range c.Hazards {
		h, known := handbook.Find(said.Value)
		if known && h.IsStatement() && h.Signal != kit.Notice {
			return yes(c.String() + ": “hazards: " + h.ID + "”")
		}
	}
	if c.FlashPoint.Given() && !upTo(150)(c.FlashPoint.Value.Nominal) {
		return no(c.String() + " flashes above 150 °F, and no H-statement with a signal word is told of it")
	}
	if c.FlashPoint.Given() {
		return yes(c.String() + ": “flash point: " + c.FlashPoint.Value.Written + "”")
	}
	return no("no H-statement with a signal word is told of " + c.String())
}

// A limit says whether a temperature in base units is within it.
type limit func(quantity.Number) bool

// fahrenheit gives a reading in degrees Fahrenheit in °C, the base of temperatures.
func fahrenheit(degrees int64) quantity.Number { return quantity.Ratio(5*(degrees-32), 9) }

func noLimit(quantity.Number) bool { return true }
func upTo(f int64) limit           { return func(n quantity.Number) bool { return !fahrenheit(f).Less(n) } }
func below(f int64) limit          { return func(n quantity.Number) bool { return n.Less(fahrenheit(f)) } }
func above(f int64) limit          { return func(n quantity.Number) bool { return fahrenheit(f).Less(n) } }
func from(f int64) limit           { return func(n quantity.Number) bool { return !n.Less(fahrenheit(f)) } }

// flashes goes by the flash point as written, which has to be that of a closed cup.
func (s subject) flashes(least, most limit) held {
	c := s.component
	if !c.FlashPoint.Given() {
		return no("no flash point is told of " + c.String())
	}
	if at := c.FlashPoint.Value.Nominal; !least(at) || !most(at) {
		return no(c.String() + " flashes at " + c.FlashPoint.Value.Written)
	}
	return yes(c.String() + " flashes at " + c.FlashPoint.Value.Written)
}

// listed are the substances of 16 CFR 1500.14, and from which share on (read).
var listed = []struct {
	names   []string
	percent int64
}{
	{[]string{"methanol", "methyl alcohol"}, 4},
	{[]string{"ethylene glycol", "diethylene glycol"}, 10},
	{[]string{"toluene", "xylene", "petroleum distillate", "white spirit", "mineral spirits", "naphtha"}, 10},
	{[]string{"turpentine"}, 10},
}

// listedSubstance looks for them among the names of a component and of its ingredients.
func listedSubstance(s subject) held {
	c := s.component
	for _, row := range listed {
		if isAmong(row.names, c.String()) || isAmong(row.names, c.LabelName.Value) {
			return yes(c.String() + " is on the list")
		}
		for _, said := range c.Ingredients {
			if isAmong(row.names, said.Value.Name) && !said.Value.Share.High.Less(quantity.Ratio(row.percent, 100)) {
				return yes(fmt.Sprintf("%s holds %s %s; the list begins at %d %%", c, said.Value.Share.Written, said.Value.Name, row.percent))
			}
		}
	}
	return no("no name of the list is told in " + c.String())
}

// isAmong looks for whole words: polyethylene glycol is no ethylene glycol.
func isAmong(names []string, name string) bool {
	return slices.ContainsFunc(names, func(one string) bool {
		before, _, found := strings.Cut(strings.ToLower(name), one)
		last, _ := utf8.DecodeLastRuneInString(before)
		return found && (before == "" || !unicode.IsLetter(last))
	})
}
