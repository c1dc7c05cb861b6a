package kit

import (
	"strings"

	"tallyfold/kit/quantity"
)

// In is the kit as a translation tells it: its method, troubles and further texts, the
// names and texts of kit.yaml and the amounts there with the words of the language. What
// has no translation stays as it is. The kit itself is left alone; what it holds has to
// be followed anew, since the steps are others.
func (k *Kit) In(t *Translation) *Kit {
	told, l := *k, telling{t}
	told.Language.Value = t.Language
	told.Method, told.Troubles, told.Words = t.Method, t.Troubles, t.Words
	l.texts(&told.Name, &told.About, &told.Emergency)
	told.OwnHazards = each(k.OwnHazards, func(h *OwnHazard) { l.texts(&h.Happens, &h.Avoid) })
	l.amount(&told.Makes)
	l.amount(&told.Time.HandsOn)
	l.amount(&told.Time.Total)
	told.Components = each(k.Components, l.component)
	told.Household = each(k.Household, l.household)
	told.Tools = each(k.Tools, l.tool)
	told.Mixtures = each(k.Mixtures, func(m *Mixture) { l.name(&m.Name) })
	told.Pieces = each(k.Pieces, func(p *Piece) { l.name(&p.Name) })
	told.Runs = each(k.Runs, func(r *Run) { l.texts(&r.Name) })
	return &told
}

// each copies all of a list and changes the copies.
func each[T any](all []*T, change func(*T)) []*T {
	var copies []*T
	for _, one := range all {
		copied := *one
		change(&copied)
		copies = append(copies, &copied)
	}
	return copies
}

// telling puts what kit.yaml says into the words of a translation.
type telling struct{ *Translation }

func (l telling) text(own string) string {
	if other, ok := l.Texts[own]; ok {
		return other
	}
	return own
}

func (l telling) texts(all ...*Said[string]) {
	for _, said := range all {
		said.Value = l.text(said.Value)
	}
}

func (l telling) name(n *Name) {
	n.Called.Value = n.In(l.Language)
	n.AlsoCalled = nil // names of the kit's own language
}

// amount tells an amount in the language: as the translation has it word for word, else
// by the words for its unit. The noun behind a mere number has to be translated.
func (l telling) amount(said *Said[quantity.Amount]) {
	if other, ok := l.Texts[said.Value.Written]; ok {
		said.Value.Written = other
		if _, noun, found := strings.Cut(other, " "); found && said.Value.Noun != "" {
			said.Value.Noun = noun
		}
		return
	}
	if said.Value.Unit.Dimension != 0 {
		said.Value.Written = said.Value.In(l.Language)
	}
}

func (l telling) component(c *Component) {
	l.name(&c.Name)
	l.texts(&c.Note, &c.FirstAid)
	c.Lots.Noun = l.text(c.Lots.Noun)
	own := c.Cautions
	c.Cautions = nil
	for _, caution := range own {
		caution.Value = l.text(caution.Value)
		c.Cautions = append(c.Cautions, caution)
	}
}

func (l telling) household(h *Household) {
	l.name(&h.Name)
	l.texts(&h.Note)
	l.amount(&h.Amount)
}

func (l telling) tool(t *Tool) {
	l.name(&t.Name)
	l.texts(&t.Note)
	l.amount(&t.Holds)
	l.amount(&t.ReadsTo)
}
