package ledger

import (
	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// A material is anything that steps take: a component or a household item, with
// the figures that the ledger needs of it.
type material struct {
	key, name string
	// dimension is that of the pack: what amounts of it are reckoned in.
	dimension quantity.Dimension
	// packed is nil for a household item.
	packed, spare *Figure
	density       *Figure // nil when not given
	trueDensity   *Figure // nil when not given
	each          *Figure // volume of one insert, mL; nil when not given
	carries       *Figure // share of its mass in liquid when lifted out; nil when it carries none
	loose         bool    // density is that of loose powder
	liquid        bool
	// strands a thread is laid of, the length of one skein (mm), what is lost at each
	// end of a length and on each side of a piece (nil: nothing), the pieces cut.
	strands        int
	lots           int64 // packs inside the pack, 0 where it is not told so
	skein          quantity.Number
	perEnd, margin *Figure
	pieces         []CutPiece
	// left is what the pack still holds; nil for a household item.
	left *Figure
	uses []Entry
	// leftSaid says what is done with what is left in the pack.
	leftSaid *kit.Operation
}

// widePowder is the ratio of the ends of a density above which it cannot be that
// of a liquid: liquids are told to a few percent, loose powders are not
// (common practice, no source).
var widePowder = quantity.Ratio(115, 100)

func componentMaterial(c *kit.Component) *material {
	m := &material{key: c.ID, name: c.String()}
	if c.Packed.Given() {
		m.dimension = c.Packed.Value.Dimension
		m.packed = Written(m.name+" packed", c.Packed.Value, c.Packed.Span)
	} else {
		m.dimension = likelyDimension(c)
		m.packed = Unknown(m.dimension, m.name+" packed", "kit.yaml does not say how much "+m.name+" is packed")
	}
	m.left = m.packed
	if c.Spare.Given() {
		m.spare = Written(m.name+" spare", c.Spare.Value, c.Spare.Span)
	}
	m.setDensity(c.Density, c.TrueDensity, c.DensityState)
	m.setCarries(c.Carries)
	m.setCutting(c)
	if c.Insert != nil && c.Insert.Volume.Given() {
		m.each = Written("volume of "+m.name, c.Insert.Volume.Value, c.Insert.Volume.Span)
	}
	m.liquid = m.liquid || m.dimension == quantity.Volume
	return m
}

// likelyDimension is what a component without a pack is probably measured in: a
// guess that only decides whether it is part of a mixture whose amount cannot be
// told, or an object beside it. Taking it for an object would leave it out of sums.
func likelyDimension(c *kit.Component) quantity.Dimension {
	if c.Container != nil || c.Insert != nil {
		return quantity.Count
	}
	return quantity.Mass
}

func householdMaterial(h *kit.Household) *material {
	m := &material{key: h.ID, name: h.String(), dimension: quantity.Volume}
	m.setDensity(h.Density, kit.Said[quantity.Amount]{}, h.DensityState)
	m.setCarries(h.Carries)
	if m.density != nil || m.solid() {
		m.dimension = quantity.Mass
	}
	return m
}

// settle takes the first amount told of a thing for the way it is measured, where
// no pack tells it: water told in litres is reckoned in millilitres. What has a
// density can be weighed or poured, and is never counted.
func (m *material) settle(told quantity.Dimension) {
	if m.packed.Known() || len(m.uses) > 0 || m.solid() {
		return
	}
	if m.density != nil && told != quantity.Mass && told != quantity.Volume {
		return
	}
	m.dimension = told
	if m.packed != nil {
		m.packed = Unknown(told, m.packed.Name, m.packed.Why())
		m.left = m.packed
	}
}

// reckonAs goes on by the words of the steps where they weigh or pour what is packed
// by the metre or piece: one of the two is a slip, and what is mixed must not be
// reckoned as if nothing of it went in. Whether the pack is enough stays unknown.
func (m *material) reckonAs(told quantity.Dimension) bool {
	if !m.countable() || len(m.uses) > 0 || told != quantity.Mass && told != quantity.Volume {
		return false
	}
	m.dimension = told
	m.packed = Unknown(told, m.packed.Name, m.name+" is packed in another kind of measure")
	m.left, m.spare = m.packed, nil
	return true
}

func (m *material) setDensity(density, trueDensity kit.Said[quantity.Amount], state kit.State) {
	if trueDensity.Given() {
		m.trueDensity = Written("true density of "+m.name, trueDensity.Value, trueDensity.Span)
	}
	if !density.Given() {
		return
	}
	d := density.Value
	m.density = Written("density of "+m.name, d, density.Span)
	wide := d.Low.Sign() > 0 && d.High.Over(d.Low).Cmp(widePowder) > 0
	m.loose = state == kit.Loose || state == kit.NoState && (wide || trueDensity.Given())
	m.liquid = state == kit.Liquid || state == kit.NoState && !m.loose
}

// countable: sheets, jars and lengths of thread are objects, not part of a mixture.
func (m *material) countable() bool {
	switch m.dimension {
	case quantity.Count, quantity.Length, quantity.Area:
		return true
	}
	return false
}

// mass of an amount of it, g.
func (m *material) mass(amount *Figure) *Figure {
	name := "mass of " + m.name
	switch {
	case m.countable():
		return Unknown(quantity.Mass, name, m.name+" is counted or measured, not weighed")
	case m.dimension == quantity.Mass:
		return amount
	case m.density == nil:
		return Unknown(quantity.Mass, name, "no density is given for "+m.name)
	}
	return Times(quantity.Mass, name, amount, m.density)
}

// volume that an amount of it adds to a mixture, mL. The loose density of a
// powder counts the air between the grains, which the mixture does not keep.
func (m *material) volume(amount *Figure) *Figure {
	name := "volume of " + m.name
	density := m.density
	switch {
	case m.countable():
		return Unknown(quantity.Volume, name, m.name+" is counted or measured, not poured")
	case m.dimension == quantity.Volume && !m.loose:
		return amount
	case m.trueDensity != nil:
		density = m.trueDensity
	case m.loose:
		return Unknown(quantity.Volume, name, "only the loose density of "+m.name+
			" is given; the room it takes in a mixture needs its true density")
	case density == nil:
		return Unknown(quantity.Volume, name, "no density is given for "+m.name)
	}
	return Over(quantity.Volume, name, m.mass(amount), density)
}

// inPackDimension turns an amount told in spoons or grams into the dimension of
// the pack. Without a density that joins them it is unknown, and snag says so.
func (m *material) inPackDimension(amount *Figure) (converted *Figure, snag Trouble) {
	if amount.Dimension == m.dimension {
		return amount, ""
	}
	massForVolume := m.dimension == quantity.Mass && amount.Dimension == quantity.Volume
	volumeForMass := m.dimension == quantity.Volume && amount.Dimension == quantity.Mass
	if !massForVolume && !volumeForMass {
		return Unknown(m.dimension, amount.Name, m.name+" is packed in another kind of measure"), OtherKind
	}
	if m.density == nil {
		return Unknown(m.dimension, amount.Name, "no density is given for "+m.name), NoDensity
	}
	if massForVolume {
		return Times(quantity.Mass, amount.Name, amount, m.density), ""
	}
	return Over(quantity.Volume, amount.Name, amount, m.density), ""
}
