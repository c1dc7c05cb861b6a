package labels

import (
	"fmt"
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/label"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// containerLabels are those of finished pieces in their containers: what it is, what the
// container's own cautions are, who made it, and net contents in the bottom 30 % of the
// panel in type of the height that the panel asks for (21 CFR 701.13).
func containerLabels(m *maker, grid label.Grid) []design {
	var all []design
	for _, net := range label.Nets(m.kit, m.ledger) {
		m.noteNet(net)
		panel := m.panel(net.Container, grid)
		for _, f := range net.Fillings {
			d := design{about: "the container label of " + f.Numbered(), count: f.Count}
			d.head = m.heading(net.Piece, f, 26, 13)
			least := max(smallestType, m.faces.sizeFor(regular, panel.CautionTypeHeight().Other))
			for _, caution := range net.Container.Cautions {
				d.below = append(d.below, item{text: caution.Value, face: regular, largest: max(8.5, least), smallest: least, gap: 0.3, warns: true})
			}
			d.below = append(d.below, m.statements(handbook.OnContainer, nil, f, panel)...)
			d.below = append(d.below, m.required(net.Piece, f)...)
			d.foot = append(d.foot, m.small(slices.Concat(m.firm(), m.keeping(), []string{m.nameAndEdition()})...)...)
			d.foot = append(d.foot, m.lot()...)
			d.foot = append(d.foot, m.net(net, panel, grid))
			all = append(all, d)
		}
	}
	return all
}

// heading tells a piece: what sets its run apart large, what it is under it.
func (m *maker) heading(piece *kit.Piece, f *ledger.Filling, large, second float64) []item {
	run := ""
	if len(m.kit.Runs) > 1 {
		run = f.Run.Name.Value
	}
	if run == "" {
		return []item{{text: piece.String(), face: title, largest: large, smallest: 8}}
	}
	return []item{
		{text: run, face: title, largest: large, smallest: 8},
		{text: piece.String(), face: regular, largest: second, smallest: 7, gap: 0.8},
	}
}

// small are lines in small type.
func (m *maker) small(texts ...string) []item {
	var items []item
	for _, text := range texts {
		items = append(items, item{text: text, face: regular, largest: 7.5, smallest: smallestType, soft: true})
	}
	return items
}

// net is the statement of net contents, or room to write it where it cannot be told.
func (m *maker) net(net label.Net, panel label.Panel, grid label.Grid) item {
	height := panel.NetTypeHeight()
	size := m.faces.sizeFor(bold, height)
	one := item{face: bold, largest: size, smallest: size, gap: height}
	if panel.BottomOnly() {
		one.lowest = 0.3 * grid.Tall
	}
	word := "label-net-volume"
	if net.Dimension == quantity.Mass {
		word = "label-net-weight"
	}
	if !net.Told() {
		one.text, one.toWrite, one.lowest = m.say(word, "amount", ""), true, 0
		return one
	}
	one.text = m.say(word, "amount", m.stated(net))
	return one
}

// stated is net contents in both systems; a line is never broken within a figure.
func (m *maker) stated(net label.Net) string {
	s := label.State(net.Declared, net.Dimension, m.words.Language)
	s.Metric, s.Customary, s.InLarger = unbroken(s.Metric), unbroken(s.Customary), unbroken(s.InLarger)
	return s.String()
}

func unbroken(text string) string { return strings.ReplaceAll(text, " ", "\u00a0") }

// noteNet says what a maker should know of declared net contents.
func (m *maker) noteNet(net label.Net) {
	switch {
	case !net.Told():
		m.note("net contents of %s cannot be told, and are left to be written by hand: %s", net.Piece, net.Why)
	case net.Short:
		m.note("net contents of %s are printed as %s, the lowest likely fill, and not as the %s claimed",
			net.Piece, label.State(net.Declared, net.Dimension, m.words.Language), net.Piece.Net.Value.Written)
	}
}

// panel is that of a container, or the label's own area where the container does not tell.
func (m *maker) panel(c *kit.Component, grid label.Grid) label.Panel {
	if panel, ok := label.PanelOf(c); ok {
		return panel
	}
	panel := label.Rectangle(grid.Wide, grid.Tall)
	m.note("the panel of %s is not told, so the type of net contents goes by the label itself: %s, letters at least %.1f mm high; write “panel: 60 × 40 mm” under its container to have it go by that",
		c, panel.How, panel.NetTypeHeight())
	return panel
}

// note keeps what is worth knowing, once.
func (m *maker) note(format string, values ...any) {
	text := fmt.Sprintf(format, values...)
	for _, known := range m.notes {
		if known == text {
			return
		}
	}
	m.notes = append(m.notes, text)
}
