package load

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// Mentions gives every place of kit.yaml that names a thing by its key: runs, pieces,
// claims, what a share is of. The key itself, under which the thing stands, is not
// among them.
func Mentions(k *kit.Kit, id string) []source.Span {
	m := mentions{kit: k, id: id}
	for _, c := range k.Components {
		m.named(c.OneForEach)
		m.amounts(c.Shares, c.Ratios)
		for _, point := range c.Dissolves {
			if point.Value.Solvent == id {
				m.base(point.Span)
			}
		}
	}
	for _, h := range k.Household {
		m.amounts(h.Shares, h.Ratios)
	}
	for _, t := range k.Tools {
		m.named(t.StandsInFor...)
		m.amounts([]kit.Said[quantity.Amount]{t.Evaporates})
	}
	for _, mixture := range k.Mixtures {
		m.named(mixture.MadeIn)
		m.amounts(mixture.Shares)
	}
	for _, p := range k.Pieces {
		m.named(p.In, p.Of)
	}
	for _, run := range k.Runs {
		for _, b := range run.With {
			m.named(b.Component)
		}
	}
	for _, c := range k.Claims {
		m.named(c.ShownBy)
	}
	for _, a := range k.Accepted {
		m.named(a.About)
	}
	return m.at
}

// mentions gathers where one thing is named.
type mentions struct {
	kit *kit.Kit
	id  string
	at  []source.Span
}

func (m *mentions) named(names ...kit.Said[string]) {
	for _, name := range names {
		if name.Given() && name.Value == m.id {
			m.base(name.Span)
		}
	}
}

func (m *mentions) amounts(lists ...[]kit.Said[quantity.Amount]) {
	for _, list := range lists {
		for _, a := range list {
			if a.Given() && a.Value.Of == m.id {
				m.base(a.Span)
			}
		}
	}
}

// base finds the key in the words of a value: the last word that is the key, unless
// it is part of a name by which the maker tells the thing.
func (m *mentions) base(where source.Span) {
	text := where.Text()
	at := lastWord(text, m.id)
	if at < 0 {
		return
	}
	name, _ := m.kit.Named(m.id)
	for _, called := range name.Names() {
		begin := strings.LastIndex(strings.ToLower(text), strings.ToLower(called))
		if begin >= 0 && len(called) > len(m.id) && begin <= at && at+len(m.id) <= begin+len(called) {
			return
		}
	}
	m.at = append(m.at, where.Part(at, at+len(m.id)))
}

// lastWord is the byte at which a word stands last in a text, by itself; -1 for none.
func lastWord(text, word string) int {
	for end := len(text); ; {
		at := strings.LastIndex(text[:end], word)
		if at < 0 {
			return -1
		}
		if !isInWord(text, at-1) && !isInWord(text, at+len(word)) {
			return at
		}
		end = at + len(word) - 1
	}
}

func isInWord(text string, at int) bool {
	return at >= 0 && at < len(text) && (text[at] == '-' || text[at] == '_' || text[at] >= 0x80 ||
		'0' <= text[at] && text[at] <= '9' || 'a' <= text[at]|0x20 && text[at]|0x20 <= 'z')
}
