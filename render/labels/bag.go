package labels

import (
	"fmt"
	"math"
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/label"
	"tallyfold/kit/quantity"
)

// bagLabels are those of what is packed: its letter, its name, how much there is, what to
// take care of, what to do if something goes wrong. The tolerance of an amount is for who
// packs, and stays away.
func bagLabels(m *maker, grid label.Grid) []design {
	var all []design
	for _, c := range m.kit.Components {
		d := design{about: fmt.Sprintf("the bag label %s, %s", c.Letter, c), count: 1, mark: c.Letter}
		d.head = []item{{text: c.String(), face: title, largest: 17, smallest: 8}}
		if c.Packed.Given() {
			d.head = append(d.head, item{text: m.packed(c), face: bold, largest: 11, smallest: 7, gap: 0.6})
		}
		heights := label.Rectangle(grid.Wide, grid.Tall).CautionTypeHeight()
		least := max(smallestType, m.faces.sizeFor(regular, heights.Other))
		warnings := c.Cautions
		if c.FirstAid.Given() {
			warnings = append(slices.Clone(warnings), c.FirstAid)
		}
		for _, caution := range warnings {
			d.below = append(d.below, item{text: caution.Value, face: regular, largest: max(8.5, least), smallest: least, gap: 0.3, warns: true})
		}
		d.below = append(d.below, m.statements(handbook.OnBag, c, nil, label.Rectangle(grid.Wide, grid.Tall))...)
		d.foot = []item{{text: m.nameAndEdition(), face: regular, largest: 7, smallest: smallestType, soft: true}}
		all = append(all, d)
	}
	return all
}

// packed is what is in the bag, packs inside the pack as such.
func (m *maker) packed(c *kit.Component) string {
	show := func(n quantity.Number, d quantity.Dimension) string {
		return unbroken(quantity.Show(n, d, quantity.Language(m.words.Language)))
	}
	if !c.Lots.Told() {
		amount := c.Packed.Value
		if amount.Dimension == quantity.Count && amount.Noun == "" {
			return "×\u00a0" + show(amount.Nominal, amount.Dimension)
		}
		return show(amount.Nominal, amount.Dimension)
	}
	each := show(c.Lots.Each.Nominal, c.Lots.Each.Dimension)
	if sides := c.Lots.Each; sides.Across.Sign() > 0 {
		each = show(sides.Across, quantity.Length) + " × " + show(sides.Along, quantity.Length)
	}
	return m.say("lots-of", "lots", fmt.Sprintf("%d %s", c.Lots.Count, c.Lots.Noun), "amount", each)
}

// sizeFor is the size of type, in points, at which lower-case letters are so high, in mm;
// rounded up to what is printed, so that they are never lower.
func (f *faces) sizeFor(face faceName, height float64) float64 {
	return math.Ceil(height/f[face].XHeight/point*100) / 100
}
