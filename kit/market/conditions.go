package market

import (
	"fmt"
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/label"
	"tallyfold/kit/quantity"
)

// held is what became of one condition.
type held struct {
	holds       Answer
	why, toTell string
}

func yes(why string) held            { return held{holds: Asked, why: why} }
func no(why string) held             { return held{holds: NotAsked, why: why} }
func untold(why, toTell string) held { return held{holds: CannotTell, why: why, toTell: toTell} }

// conditions are what a requirement can apply to, by the names that packs use. To add one,
// write its function and a line here.
var conditions = map[string]func(subject) held{
	"any kit":                  func(subject) held { return yes("it is asked of any kit") },
	"cosmetic":                 func(s subject) held { return s.soldAs("a cosmetic", kit.LeaveOn, kit.RinseOff) },
	"candle":                   func(s subject) held { return s.soldAs("a candle", kit.Candle) },
	"adults only":              adultsOnly,
	"children's product":       childrensProduct,
	"toy":                      toy,
	"age under 3":              func(s subject) held { return s.aged(0, 2) },
	"age 3 to 5":               func(s subject) held { return s.aged(3, 5) },
	"age 3 to 7":               func(s subject) held { return s.aged(3, 7) },
	"age 3 or more":            func(s subject) held { return s.aged(3, 200) },
	"small part":               smallPart,
	"small ball":               smallBall,
	"marble":                   func(s subject) held { return s.countsAs("marble") },
	"balloon":                  func(s subject) held { return s.countsAs("balloon") },
	"foaming bath":             foamingBath,
	"warned of":                warnedOf,
	"listed substance":         listedSubstance,
	"sold by weight":           func(s subject) held { return s.soldBy(quantity.Mass) },
	"sold by weight or volume": func(s subject) held { return s.soldBy(quantity.Mass, quantity.Volume) },

	"art material":                artMaterial,
	"looked at by a toxicologist": lookedAt,
	"warned of by a toxicologist": toxicologistWarns,
	"art material with a warning": anyWarned,

	"flash point up to 20 °F":                  func(s subject) held { return s.flashes(noLimit, upTo(20)) },
	"flash point above 20 °F and below 100 °F": func(s subject) held { return s.flashes(above(20), below(100)) },
	"flash point from 100 to 150 °F":           func(s subject) held { return s.flashes(from(100), upTo(150)) },
}

func (s subject) soldAs(what string, uses ...kit.Purpose) held {
	said := s.kit.SoldAs
	switch {
	case !said.Given():
		return untold("it is not told what the finished pieces are sold as", "write “sold as:” with leave-on cosmetic, rinse-off cosmetic, candle or other")
	case slices.Contains(uses, said.Value):
		return yes("sold as " + string(said.Value))
	}
	return no("sold as " + string(said.Value) + ", so not as " + what)
}

// adultsOnly goes by the age on the box: 740.17 speaks of a product labelled as intended
// for use exclusively by adults.
func adultsOnly(s subject) held {
	age := s.kit.Audience.Age
	switch {
	case !age.Given():
		return no("no age is told, so the kit is not for adults alone")
	case age.Value >= 18:
		return yes(ageSaid(s) + ", so for adults alone")
	}
	return no(ageSaid(s) + ", so not for adults alone")
}

func ageSaid(s subject) string { return fmt.Sprintf("the kit is for %d+", s.kit.Audience.Age.Value) }

// childrensProduct: made mainly for children of twelve and younger (15 U.S.C. 2052(a)(2)).
func childrensProduct(s subject) held {
	said, age := s.kit.Audience.ForChildren, s.kit.Audience.Age
	switch {
	case said.Given() && said.Value:
		return yes("“for children: yes”")
	case said.Given():
		return no("“for children: no”")
	case age.Given() && age.Value > 12:
		return no(ageSaid(s))
	}
	return untold("it is not told whether the kit is made mainly for children of twelve and younger", "write “for children: yes” or “for children: no” under audience")
}

// toy: for play by children under fourteen (Directive 2009/48/EC, article 2).
func toy(s subject) held {
	said, age := s.kit.Audience.Toy, s.kit.Audience.Age
	switch {
	case said.Given() && said.Value:
		return yes("“toy: yes”")
	case said.Given():
		return no("“toy: no”")
	case age.Given() && age.Value >= 14:
		return no(ageSaid(s))
	}
	return untold("it is not told whether the kit or what is made of it is meant for play", "write “toy: yes” or “toy: no” under audience")
}

func (s subject) aged(from, to int) held {
	age := s.kit.Audience.Age
	switch {
	case !age.Given():
		return untold("no age is told", "write “age:” under audience")
	case from <= age.Value && age.Value <= to:
		return yes(ageSaid(s))
	}
	return no(ageSaid(s))
}

// smallPart looks at every loose part by its size; finished pieces and what comes off in use
// are not looked at.
func smallPart(s subject) held {
	return s.anyPart("a small part", func(c *kit.Component) (bool, bool) { return label.FitsSmallParts(c.Size.Value) })
}

// smallBallWide is how wide a ball may be that passes the hole of 16 CFR 1500.19(a)(2), mm.
var smallBallWide = quantity.Ratio(175, 100).Times(quantity.Ratio(254, 10))

func smallBall(s subject) held {
	return s.anyPart("a small ball", func(c *kit.Component) (bool, bool) {
		size := c.Size.Value
		if !c.Size.Given() || size.Form != kit.Sphere {
			return false, c.Size.Given()
		}
		return !smallBallWide.Less(size.Widths[0]), true
	})
}

// anyPart asks each loose part; of one without a size nothing can be told.
func (s subject) anyPart(what string, is func(*kit.Component) (holds, ok bool)) held {
	var found, unsized []string
	for _, c := range s.kit.Components {
		holds, ok := is(c)
		switch {
		case ok && holds:
			found = append(found, c.String())
		case !ok && !c.IsMaterial() && !label.HoldsMoreThanSmallParts(c):
			unsized = append(unsized, c.String())
		}
	}
	switch {
	case len(found) > 0:
		return yes(strings.Join(found, ", ") + ": " + what)
	case len(unsized) > 0:
		return untold("no size is told of "+strings.Join(unsized, ", "), "write “size:” under each, such as “size: 20 × 12 × 8 mm”")
	}
	return no("none of the sizes told is that of " + what)
}

func (s subject) countsAs(what string) held {
	for _, c := range s.kit.Components {
		if c.CountsAs.Value == what {
			return yes(c.String() + " counts as " + what)
		}
	}
	return no("nothing in the box “counts as: " + what + "”")
}

// foamingBath: the filling holds something that its maker calls a foaming bath product.
func foamingBath(s subject) held {
	for _, c := range s.inIt() {
		if hasHazard(c, handbook.FoamingBath) {
			return yes(c.String() + " makes foam in a bath (“hazards: " + handbook.FoamingBath + "”)")
		}
	}
	return no("nothing in it has “hazards: " + handbook.FoamingBath + "”")
}

// inIt are the components in a filling, or in the box where nothing is filled.
func (s subject) inIt() []*kit.Component {
	if s.filling == nil {
		return s.kit.Components
	}
	var all []*kit.Component
	for _, part := range s.filling.Parts() {
		if c := s.kit.Component(part.Thing); c != nil {
			all = append(all, c)
		}
	}
	return all
}

func hasHazard(c *kit.Component, id string) bool {
	return slices.ContainsFunc(c.Hazards, func(said kit.Said[string]) bool { return said.Value == id })
}

func (s subject) soldBy(dimensions ...quantity.Dimension) held {
	packed := s.component.Packed
	switch {
	case !packed.Given():
		return untold("it is not told how much of "+s.component.String()+" is packed", "write “packed:” under it")
	case slices.Contains(dimensions, packed.Value.Dimension):
		return yes(s.component.String() + " is packed as " + packed.Value.Written)
	}
	return no("packed otherwise: " + s.component.String())
}
