package labels

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/label"
	"tallyfold/kit/ledger"
)

// smallestList is the least height of letters in a list of ingredients and in a warning,
// in millimetres: 1/16 inch (21 CFR 701.3(b), 740.2).
const smallestList = 25.4 / 16

// required are the caution of a foaming bath product and the list of ingredients of a
// cosmetic. A list that cannot be told is left out, and that is said.
func (m *maker) required(piece *kit.Piece, f *ledger.Filling) []item {
	var all []item
	size := max(smallestType, m.faces.sizeFor(regular, smallestList))
	add := func(text string, warns bool) {
		all = append(all, item{text: text, face: regular, largest: max(8, size), smallest: size, gap: 0.6, warns: warns})
	}
	if m.foams(f) && !m.sellsIn("US") { // there it is told in the words of the law

		add(m.say("label-caution", "text", m.say("hazard-foaming-bath")), true)
	}
	if piece.Listed.Given() {
		add(m.say("label-ingredients", "list", piece.Listed.Value), false)
		return all
	}
	if sold := m.kit.SoldAs.Value; sold != kit.LeaveOn && sold != kit.RinseOff {
		return all
	}
	for _, list := range label.Lists(m.kit, m.ledger) {
		if list.Filling != f {
			continue
		}
		m.noteList(list)
		if list.Told() {
			add(m.say("label-ingredients", "list", m.listed(list)), false)
		}
	}
	return all
}

// listed is a list in the form of the markets that the kit is sold in; in one for all where
// none is told.
func (m *maker) listed(list label.List) string {
	us := m.sellsIn("US")
	switch {
	case us && len(m.kit.Markets) == 1:
		return list.US()
	case !us && len(m.kit.Markets) > 0:
		return list.EU()
	}
	return list.Both()
}

func (m *maker) sellsIn(name string) bool {
	return slices.ContainsFunc(m.kit.Markets, func(said kit.Said[string]) bool { return said.Value == name })
}

// foams says whether a filling holds a foaming bath product, in a kit that is not for
// adults alone (21 CFR 740.17).
func (m *maker) foams(f *ledger.Filling) bool {
	if age := m.kit.Audience.Age; age.Given() && age.Value >= 18 {
		return false
	}
	return slices.ContainsFunc(f.Parts(), func(part ledger.Part) bool {
		c := m.kit.Component(part.Thing)
		return c != nil && slices.ContainsFunc(c.Hazards, func(said kit.Said[string]) bool { return said.Value == handbook.FoamingBath })
	})
}

// noteList says what a maker should know of a list of ingredients.
func (m *maker) noteList(list label.List) {
	name := list.Filling.Numbered()
	if !list.Told() {
		m.note("the ingredients of %s cannot be told, and are left out: %s", name, list.Why)
		return
	}
	for _, pair := range list.Unsure {
		m.note("in the ingredients of %s it cannot be told which comes first, %s, as their shares overlap; ask the supplier for closer ones", name, pair)
	}
	if len(list.AllergensUntold) > 0 {
		m.note("which allergens %s brings into %s cannot be told; write “allergens:” under it, from its supplier's breakdown", strings.Join(list.AllergensUntold, ", "), name)
	}
}
