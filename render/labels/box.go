package labels

import (
	"strings"

	"tallyfold/kit/handbook"
	"tallyfold/kit/label"
	"tallyfold/kit/quantity"
)

// boxLabels is the one for the end of the box: what the kit is and makes, for whom, what
// each kind of piece holds (one for each unlike unit, as 1 NYCRR 221.8 asks), who made it.
func boxLabels(m *maker, grid label.Grid) []design {
	d := design{about: "the box end label", count: 1}
	d.head = append(d.head, item{text: m.kit.Name.Value, face: title, largest: 34, smallest: 12})
	if about := m.kit.About.Value; about != "" {
		d.head = append(d.head, item{text: about, face: regular, largest: 10, smallest: 7, gap: 1.5})
	}
	d.head = append(d.head, item{text: m.say("label-makes", "pieces", m.kit.Makes.Value.Written), face: bold, largest: 12, smallest: 8, gap: 3})
	if age := m.kit.Audience.Age; age.Given() {
		d.head = append(d.head, item{text: m.say("age") + ": " + m.words.Count("age-and-over", age.Value), face: bold, largest: 12, smallest: 8, gap: 0.6})
	}
	d.below = m.statements(handbook.OnBox, nil, nil, label.Rectangle(grid.Wide, grid.Tall))
	d.foot = m.small(append(m.firm(), m.nameAndEdition())...)
	d.foot = append(d.foot, m.lot()...)
	d.foot = append(d.foot, m.eachPiece(grid)...)
	return []design{d}
}

// eachPiece states what is made, kind by kind, with net contents where they can be told.
func (m *maker) eachPiece(grid label.Grid) []item {
	height := label.Rectangle(grid.Wide, grid.Tall).NetTypeHeight()
	size := m.faces.sizeFor(bold, height)
	nets := map[string]label.Net{}
	for _, net := range label.Nets(m.kit, m.ledger) {
		m.noteNet(net)
		nets[net.Piece.ID] = net
	}
	var items []item
	for i, piece := range m.kit.Pieces {
		count := quantity.Show(piece.Count.Value.Nominal, quantity.Count, quantity.Language(m.words.Language))
		text := m.say("count-of", "amount", count, "thing", piece.String())
		if net, ok := nets[piece.ID]; ok && net.Told() {
			text = m.say("label-each", "pieces", text, "amount", m.stated(net))
		}
		one := item{text: strings.TrimSpace(text), face: bold, largest: size, smallest: size, gap: 0.6, lowest: 0.3 * grid.Tall}
		if i == 0 {
			one.gap = height
		}
		items = append(items, one)
	}
	return items
}
