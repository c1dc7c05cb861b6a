package rules

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

var plainOunces = Rule{
	Name:     "plain-ounces",
	Severity: diag.MustFix,
	Title:    "“oz” of a liquid may be weight or volume",
	Explanation: `An ounce of weight is 28.35 g, a US fluid ounce 29.57 mL. For water the two differ by 4 %,
for an oil by up to 15 %, and half of all readers will take the other one. Of
something that is poured, “oz” alone is therefore refused, in kit.yaml and in the
method. Both readings are shown.

Write “oz weight” or “fl oz”. Of what is only ever weighed, such as beads or powder,
“oz” may stay.`,
	Check: func(s Subject) []diag.Finding {
		return append(ouncesInKit(s.Kit), ouncesInMethod(s)...)
	},
}

func ouncesInKit(k *kit.Kit) []diag.Finding {
	var findings []diag.Finding
	say := func(told kit.Said[quantity.Amount], id string) {
		if told.Value.PlainOunce {
			findings = append(findings, ounces(k, told.Value, told.Span, id))
		}
	}
	for _, c := range k.Components {
		if pours(k, c.ID) {
			say(c.Packed, c.ID)
			say(c.Spare, c.ID)
		}
		if c.Container != nil {
			say(c.Container.Brimful, c.ID)
			say(c.Container.Headspace, c.ID)
		}
	}
	for _, h := range k.Household {
		if pours(k, h.ID) {
			say(h.Amount, h.ID)
		}
	}
	for _, t := range k.Tools {
		say(t.Holds, t.ID)
		say(t.Residue, t.ID)
	}
	return findings
}

func ouncesInMethod(s Subject) []diag.Finding {
	var findings []diag.Finding
	operations(s.Kit, func(o *kit.Operation, _ *kit.Step) {
		for i, told := range o.Phrase.Amounts {
			if !told.PlainOunce {
				continue
			}
			if id, ok := pouredBy(s, o); ok {
				findings = append(findings, ounces(s.Kit, told, o.Phrase.AmountSpans[i], id))
			}
		}
	})
	return findings
}

// pouredBy says what a link pours, ok only where something in it is liquid.
func pouredBy(s Subject, o *kit.Operation) (id string, ok bool) {
	switch o.Kind {
	case kit.Take, kit.Use, kit.Same, kit.Left:
		for _, run := range s.Kit.Passes() {
			if id := resolved(run, o.Target); pours(s.Kit, id) {
				return id, true
			}
		}
	case kit.Move, kit.Fill:
		for _, m := range s.Ledger.Makings {
			for _, part := range m.Parts() {
				if m.Operation == o && pours(s.Kit, part.Thing) {
					return m.Vessel, true
				}
			}
		}
	}
	return "", false
}

func ounces(k *kit.Kit, told quantity.Amount, at source.Span, id string) diag.Finding {
	weight, fluid := told.OunceReadings(k.Kitchen.Value)
	fluidLine := "read as fl oz it is " + show(fluid.Nominal, quantity.Volume)
	if dense, state := density(k, id); dense.Given() && state != kit.Loose {
		mass := fluid.Nominal.Times(dense.Value.Nominal)
		fluidLine += " × " + dense.Value.Written + " = " + show(mass, quantity.Mass)
	}
	return diag.Finding{
		Where: at, About: id,
		Found:    "“" + told.Written + "” of " + poured(k, id) + ", which is poured",
		Expected: "ounces that say whether they are weighed or measured",
		Sum:      []string{"read as weight it is " + show(weight.Nominal, quantity.Mass), fluidLine},
		Remedies: diag.Fix(
			"write “"+withOunces(told.Written, "oz weight")+"”, if it is weighed",
			"write “"+withOunces(told.Written, "fl oz")+"”, if it is measured in a jug"),
	}
}

func poured(k *kit.Kit, id string) string {
	if k.Tool(id) != nil {
		return "what is in " + k.Called(id)
	}
	return k.Called(id)
}

// withOunces puts another word for the plain one into what the maker wrote.
func withOunces(written, word string) string {
	for _, plain := range []string{"ounces", "ounce", "oz.", "oz"} {
		if at := strings.Index(strings.ToLower(written), plain); at >= 0 {
			return written[:at] + word + written[at+len(plain):]
		}
	}
	return written + " " + word
}

// liquids are words in the names of things that are poured.
var liquids = []string{
	"water", "oil", "milk", "vinegar", "juice", "syrup", "glycerin", "glycerine", "alcohol", "dye", "ink",
	"glue", "varnish", "resin", "fragrance", "extract", "lotion", "soap base", "latex", "paint", "honey",
}

// pours says whether a thing is a liquid: packed by volume, with the density of a
// liquid, or called like one.
func pours(k *kit.Kit, id string) bool {
	if c := k.Component(id); c != nil && c.Packed.Value.Dimension == quantity.Volume {
		return true
	}
	told, state := density(k, id)
	if state == kit.Loose || state == kit.Set {
		return false
	}
	if told.Given() && (state == kit.Liquid || !isWide(told.Value)) {
		return true
	}
	name, ok := k.Named(id)
	words := " " + strings.ToLower(name.String()) + " "
	for _, liquid := range liquids {
		if ok && strings.Contains(words, " "+liquid+" ") {
			return true
		}
	}
	return false
}

// isWide says whether the ends of a density lie so far apart that it can only be
// that of a loose powder: the ledger reads it the same way.
func isWide(density quantity.Amount) bool {
	return density.Low.Sign() > 0 && density.High.Over(density.Low).Cmp(quantity.Ratio(115, 100)) > 0
}
