package ledger

import (
	"math"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// This file says how high something stands: the fill in a container, from the base
// and from the rim, hot and set; what is worked in a vessel, with its foam.

// Height is how high the fill stands above the base, mm, with what its inserts take
// of the room. It needs the inside shape.
func (l *Filling) Height() *Figure { return l.heightOf("fill height", l.Volume()) }

// FromRim is how far below the rim the fill stands, mm.
func (l *Filling) FromRim() *Figure {
	shape := l.Container.Container.Inside.Value
	if shape.Tall.IsZero() && shape.Form != kit.Table {
		return Unknown(quantity.Length, "from the rim", "the inside height of "+l.Container.String()+" is not given")
	}
	tall := shape.Tall
	if shape.Form == kit.Table {
		tall = shape.Levels[len(shape.Levels)-1].Height
	}
	return Minus("from the rim", Fixed(quantity.Length, "inside height", tall), l.Height())
}

// SetVolume is the volume of the fill once it has cooled or hardened: by the density
// that the maker gives for that state. Not known without one.
func (l *Filling) SetVolume() *Figure {
	if l.Mixture == nil || !l.Mixture.SetDensity.Given() {
		return Unknown(quantity.Volume, "volume when set", "kit.yaml gives no density of the set mixture")
	}
	density := Written("density of "+l.Mixture.String()+" when set", l.Mixture.SetDensity.Value, l.Mixture.SetDensity.Span)
	return Over(quantity.Volume, "volume when set", l.Mass(), density)
}

// SetHeight is how high the fill stands when it has set, if it sinks evenly: a model,
// as wax and resin draw down more in the middle than at the wall.
func (l *Filling) SetHeight() *Figure { return l.heightOf("height when set", l.SetVolume()) }

// Shrinks is the share of its volume that the fill loses when it sets.
func (l *Filling) Shrinks() *Figure {
	return Over(quantity.Share, "draws together by", Minus("lost when it sets", l.Volume(), l.SetVolume()), l.Volume())
}

// Dried is the mass of what stays of one fill when it has dried out, g; the fill
// itself where the maker says nothing of drying.
func (l *Filling) Dried() *Figure {
	if l.Mixture == nil || !l.Mixture.DriesBy.Given() || l.Mixture.DriesBy.Value.High.IsZero() {
		return l.Mass()
	}
	dries := Written("share of "+l.Mixture.String()+" that dries out", l.Mixture.DriesBy.Value, l.Mixture.DriesBy.Span)
	return Minus("when dry", l.Mass(), Times(quantity.Mass, "dries out", l.Mass(), dries))
}

func (l *Filling) heightOf(name string, volume *Figure) *Figure {
	all := []*Figure{volume}
	for _, insert := range l.Inserts {
		if insert.Component.Insert != nil {
			all = append(all, l.Takes(insert))
		}
	}
	under := Plus(quantity.Volume, "under the surface", all...)
	if !under.Known() {
		return Unknown(quantity.Length, name, under.Why())
	}
	return heightAt(l.Container, name, under)
}

// heightAt turns a volume in a container into the height it reaches. The ends are
// those of the worst case: the shape is no straight line, so the sum goes no further.
func heightAt(container *kit.Component, name string, volume *Figure) *Figure {
	shape := container.Container.Inside.Value
	height, ok := HeightAt(shape, volume.Value())
	if !ok {
		return Unknown(quantity.Length, name, "the inside shape of "+container.String()+" is not given, or not that tall")
	}
	low, high := volume.Worst()
	lowest, okLow := HeightAt(shape, low)
	highest, okHigh := HeightAt(shape, high)
	if !okLow || !okHigh {
		lowest, highest = height, height
	}
	return Between(quantity.Length, name, height, lowest, highest)
}

// HeightAt is the height above the base (mm) that a volume (mL) reaches in a shape:
// VolumeTo turned round, by halving, to a ten-thousandth of a millimetre.
func HeightAt(shape kit.Shape, volume quantity.Number) (height quantity.Number, ok bool) {
	top := shape.Tall
	switch {
	case shape.Form == kit.NoForm || volume.Sign() < 0:
		return height, false
	case shape.Form == kit.Table:
		top = shape.Levels[len(shape.Levels)-1].Height
	case shape.Form == kit.Sphere:
		top = shape.Widths[0]
	case top.IsZero():
		top = quantity.Whole(tallest)
	}
	if most, fits := VolumeTo(shape, top); !fits || most.Less(volume) {
		return height, false
	}
	low, high := 0.0, top.Float()
	wanted := volume.Float()
	for high-low > 1e-5 {
		middle := (low + high) / 2
		reached, _ := VolumeTo(shape, quantity.FromFloat(middle))
		if reached.Float() < wanted {
			low = middle
		} else {
			high = middle
		}
	}
	return quantity.FromFloat(math.Round(high*1e4) / 1e4), true
}

// tallest is the height, mm, up to which a shape without one is searched.
const tallest = 10_000

// A Level is how full a vessel is after a step.
type Level struct {
	Tool *kit.Tool
	// Volume of what mixes, Solids of what lies in it, Foam the room to leave above,
	// mL; Stands is all of it.
	Volume, Solids, Foam, Stands *Figure
	// Holds is the vessel up to its rim.
	Holds *Figure
}

// Level tells how full a vessel of the kit is with these contents, nil for a thing
// that is no tool or does not say what it holds.
func (l *Ledger) Level(c *Contents) *Level {
	tool := l.Kit.Tool(c.Vessel)
	if tool == nil || !tool.Holds.Given() {
		return nil
	}
	level := &Level{
		Tool: tool, Volume: c.Volume(), Solids: c.solids(),
		Holds: Written(tool.String()+" up to the rim", tool.Holds.Value, tool.Holds.Span),
	}
	level.Foam = foam(tool, level.Volume)
	level.Stands = Plus(quantity.Volume, "in "+tool.String(), level.Volume, level.Solids, level.Foam)
	return level
}

func foam(tool *kit.Tool, volume *Figure) *Figure {
	if !tool.Foam.Given() {
		return Fixed(quantity.Volume, "foam", quantity.Number{})
	}
	told := Written("foam", tool.Foam.Value, tool.Foam.Span)
	if told.Dimension == quantity.Volume {
		return told
	}
	return Times(quantity.Volume, "foam", volume, told)
}

// solids is the volume of what lies in a mixture, mL: weighed things by their true
// density, inserts by their volume. Things without any figure are not known.
func (c *Contents) solids() *Figure {
	all := make([]*Figure, len(c.objects))
	for i, p := range c.objects {
		all[i] = p.material.room(p.amount)
	}
	return Plus(quantity.Volume, "solids", all...)
}

// room that an amount of a solid or a number of things takes, mL.
func (m *material) room(amount *Figure) *Figure {
	name := "volume of " + m.name
	switch {
	case m.dimension == quantity.Mass && m.trueDensity != nil:
		return Over(quantity.Volume, name, amount, m.trueDensity)
	case m.dimension == quantity.Count && m.each != nil:
		return Times(quantity.Volume, name, amount, m.each)
	}
	return Unknown(quantity.Volume, name, "kit.yaml gives no figure for the room that "+m.name+" takes")
}
