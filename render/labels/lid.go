package labels

import (
	"tallyfold/kit"
	"tallyfold/kit/label"
)

// lidLabels are those for the lids of firm containers: what is inside, and room for the
// day it was filled.
func lidLabels(m *maker, _ label.Grid) []design {
	var all []design
	for _, net := range label.Nets(m.kit, m.ledger) {
		if !firm(net.Container.Container) {
			continue
		}
		for _, f := range net.Fillings {
			d := design{about: "the lid label of " + f.Numbered(), count: f.Count, centred: true, head: m.heading(net.Piece, f, 17, 9)}
			d.foot = append(d.foot, item{text: m.say("label-filled-on"), face: regular, largest: 8, smallest: smallestType, toWrite: true})
			d.foot = append(d.foot, m.lot()...)
			all = append(all, d)
		}
	}
	return all
}

// firm containers have a rim that a lid goes on: an inside or a mouth that was measured,
// or an opening as wide as a jar's.
func firm(c *kit.Container) bool {
	return c.Inside.Given() || c.Mouth.Given() || c.Opening.Value == kit.OpenJar
}
