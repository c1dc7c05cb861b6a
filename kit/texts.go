package kit

import "tallyfold/kit/source"

// Texts are the texts of kit.yaml that a booklet prints, apart from names: what a
// translation has to put into other words, each once, in their order.
func (k *Kit) Texts() []Said[string] {
	var all textList
	all.add(k.Name, k.About, k.Emergency)
	for _, h := range k.OwnHazards {
		all.add(h.Happens, h.Avoid)
	}
	all.counted(k.Makes.Value.Written, k.Makes.Value.Noun, k.Makes.Span)
	for _, c := range k.Components {
		all.add(c.Note)
		all.counted(c.Lots.Noun, c.Lots.Noun, c.Packed.Span)
		all.add(c.Cautions...)
		all.add(c.FirstAid)
	}
	for _, h := range k.Household {
		all.add(h.Note)
		all.counted(h.Amount.Value.Written, h.Amount.Value.Noun, h.Amount.Span)
	}
	for _, t := range k.Tools {
		all.add(t.Note)
	}
	for _, r := range k.Runs {
		all.add(r.Name)
		for _, b := range r.With {
			all.add(b.Role)
		}
	}
	return all.texts
}

type textList struct{ texts []Said[string] }

func (l *textList) add(all ...Said[string]) {
	for _, said := range all {
		if said.Value == "" || l.has(said.Value) {
			continue
		}
		l.texts = append(l.texts, said)
	}
}

// counted adds an amount that is told with a noun: "8 sachets".
func (l *textList) counted(written, noun string, at source.Span) {
	if noun != "" {
		l.add(Said[string]{Value: written, Span: at})
	}
}

func (l *textList) has(text string) bool {
	for _, said := range l.texts {
		if said.Value == text {
			return true
		}
	}
	return false
}

// Names are the names of all things that a booklet may print, in the order of kit.yaml.
func (k *Kit) Names() []Name {
	var all []Name
	k.eachName(func(n *Name) { all = append(all, *n) })
	return all
}
