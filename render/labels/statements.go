package labels

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/label"
	"tallyfold/kit/ledger"
	"tallyfold/kit/market"
	"tallyfold/templates"
)

// statements are what markets ask to be read at a place: on a thing in the box, on a filling,
// or on what bears the whole kit's. panel is what their type goes by.
func (m *maker) statements(place handbook.Place, c *kit.Component, f *ledger.Filling, panel label.Panel) []item {
	heights := panel.CautionTypeHeight()
	var all []item
	for _, s := range market.Statements(m.kit, m.ledger, place) {
		if s.Component != c || s.Filling != f {
			continue
		}
		height := heights.Other
		face := regular
		if s.Warns() || s.Hazards {
			height, face = heights.SignalWord, bold
		}
		least := max(smallestType, m.faces.sizeFor(face, max(height, s.TypeHeight)))
		for _, text := range m.stating(s) {
			if slices.ContainsFunc(all, func(known item) bool { return known.text == text }) {
				continue // two markets ask for the same words
			}
			all = append(all, item{
				text: text, face: face, largest: max(8.5, least), smallest: least, gap: 0.6,
				warns: s.Warns() || s.Hazards, alerts: s.Warns() || s.Hazards, language: m.languageOf(s),
			})
		}
	}
	return all
}

// stating are the words of a statement, a text each.
func (m *maker) stating(s market.Statement) []string {
	switch {
	case s.Hazards:
		return m.hazardsOf(s.Component)
	case s.Word != "":
		return []string{m.say(s.Word)}
	}
	return []string{s.Text}
}

// languageOf is that of the law's own words, where the label is in another.
func (m *maker) languageOf(s market.Statement) string {
	if s.Text == "" || base(m.words.Language) == templates.SourceLanguage {
		return ""
	}
	return templates.SourceLanguage
}

// hazardsOf tells the H-statements of a pack, those with the gravest signal word first, each
// with what to do.
func (m *maker) hazardsOf(c *kit.Component) []string {
	var all []string
	for _, signal := range []kit.Signal{kit.Danger, kit.Warning, kit.CautionWord} {
		var told []string
		for _, said := range c.Hazards {
			h, known := handbook.Find(said.Value)
			if !known || h.Signal != signal || !h.IsStatement() {
				continue
			}
			if text := m.say("hazard-" + strings.ToLower(h.ID)); !slices.Contains(told, text) {
				told = append(told, text)
			}
		}
		if len(told) > 0 {
			all = append(all, strings.ToUpper(m.say(strings.ToLower(string(signal))))+": "+strings.Join(told, " "))
		}
	}
	return all
}
