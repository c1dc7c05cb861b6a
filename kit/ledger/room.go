package ledger

import (
	"math"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// Room is what one container takes, mL: brimful less headspace less its inserts.
func (l *Filling) Room() *Figure {
	brimful := l.Brimful()
	headspace := l.Headspace()
	all := []*Figure{}
	for _, insert := range l.Inserts {
		if insert.Component.Insert != nil {
			all = append(all, l.Takes(insert))
		}
	}
	if len(all) == 0 {
		return Minus("room for the fill", brimful, headspace)
	}
	inserts := Plus(quantity.Volume, "inserts", all...)
	return Minus("room for the fill", Minus("under the headspace", brimful, headspace), inserts)
}

// Free is Room less the volume of the fill; less than nothing is overfull.
func (l *Filling) Free() *Figure { return Minus("free", l.Room(), l.Volume()) }

// Brimful is the volume up to the rim: as given, else by the inside shape.
func (l *Filling) Brimful() *Figure {
	container := l.Container.Container
	name := "brimful " + l.Container.String()
	if container.Brimful.Given() {
		return Written(name, container.Brimful.Value, container.Brimful.Span)
	}
	shape := container.Inside.Value
	if volume, ok := VolumeTo(shape, shape.Tall); ok && shape.Tall.Sign() > 0 {
		return Fixed(quantity.Volume, name, volume)
	}
	return Unknown(quantity.Volume, name, "kit.yaml gives neither brimful nor a whole inside shape for "+l.Container.String())
}

// Headspace as a volume; one told as a height needs the inside shape.
func (l *Filling) Headspace() *Figure {
	container := l.Container.Container
	name := "headspace"
	if !container.Headspace.Given() {
		return Fixed(quantity.Volume, name, quantity.Number{})
	}
	told := Written(name, container.Headspace.Value, container.Headspace.Span)
	if told.Dimension == quantity.Volume {
		return told
	}
	volume, ok := headspaceVolume(container.Inside.Value, told.Value())
	if !ok {
		return Unknown(quantity.Volume, name, "the headspace is told as a height, and the inside shape of "+
			l.Container.String()+" is not given")
	}
	return Fixed(quantity.Volume, name, volume)
}

// Takes is the room that an insert takes from the fill, mL. A floating body
// displaces its own mass of the fill (Archimedes); a sunk one its whole volume.
func (l *Filling) Takes(placed PlacedInsert) *Figure {
	insert := placed.Component.Insert
	name := placed.Component.String()
	count := Fixed(quantity.Count, name, quantity.Whole(int64(placed.Count)))
	switch insert.Sits.Value {
	case kit.OnTop:
		return Fixed(quantity.Volume, name, quantity.Number{})
	case kit.Floats:
		if !insert.Mass.Given() {
			return Unknown(quantity.Volume, name, "kit.yaml gives no mass for "+name+", which floats")
		}
		mass := Times(quantity.Mass, name, count, Written("mass of "+name, insert.Mass.Value, insert.Mass.Span))
		return Over(quantity.Volume, name, mass, l.Density())
	}
	if !insert.Volume.Given() {
		return Unknown(quantity.Volume, name, "kit.yaml gives no volume for "+name)
	}
	return Times(quantity.Volume, name, count, Written("volume of "+name, insert.Volume.Value, insert.Volume.Span))
}

// Density of what is in it, g/mL.
func (c *Contents) Density() *Figure {
	if c.Mixture != nil && c.Mixture.Density.Given() {
		return Written("density of "+c.Mixture.String(), c.Mixture.Density.Value, c.Mixture.Density.Span)
	}
	return Over(quantity.Density, "density of the fill", c.Mass(), c.Volume())
}

// VolumeTo gives the volume (mL) of an inside shape up to a height above its base
// (mm). ok is false where the shape is not told or not that tall. Circles are
// reckoned with π in floating point, good to fifteen digits.
func VolumeTo(shape kit.Shape, height quantity.Number) (volume quantity.Number, ok bool) {
	if height.Sign() < 0 || shape.Tall.Sign() > 0 && shape.Tall.Less(height) {
		return quantity.Number{}, false
	}
	h := height.Float()
	width := func(i int) float64 { return shape.Widths[i].Float() }
	switch shape.Form {
	case kit.Cylinder:
		return cubicMillimetres(math.Pi / 4 * width(0) * width(0) * h), true
	case kit.Box:
		return cubicMillimetres(width(0) * width(1) * h), true
	case kit.Cone:
		if shape.Tall.IsZero() {
			return quantity.Number{}, false
		}
		r, top := width(0)/2, width(1)/2
		at := r + (top-r)*h/shape.Tall.Float()
		return cubicMillimetres(math.Pi * h / 3 * (r*r + r*at + at*at)), true
	case kit.Sphere:
		r := width(0) / 2
		return cubicMillimetres(math.Pi * h * h * (3*r - h) / 3), h <= 2*r
	case kit.Table:
		return volumeInTable(shape.Levels, height)
	}
	return quantity.Number{}, false
}

// volumeInTable reads between two levels on a straight line.
func volumeInTable(levels []kit.Level, height quantity.Number) (quantity.Number, bool) {
	below := kit.Level{}
	for _, level := range levels {
		if height.Cmp(level.Height) <= 0 {
			span := level.Height.Minus(below.Height)
			if span.IsZero() {
				return level.Volume, true
			}
			part := height.Minus(below.Height).Over(span)
			return below.Volume.Plus(level.Volume.Minus(below.Volume).Times(part)), true
		}
		below = level
	}
	return quantity.Number{}, false
}

// headspaceVolume is the volume of the uppermost height of a shape. A cylinder
// and a box need no inside height for it.
func headspaceVolume(shape kit.Shape, height quantity.Number) (quantity.Number, bool) {
	if shape.Tall.IsZero() {
		if shape.Form != kit.Cylinder && shape.Form != kit.Box {
			return quantity.Number{}, false
		}
		return VolumeTo(shape, height)
	}
	whole, ok := VolumeTo(shape, shape.Tall)
	under, fits := VolumeTo(shape, shape.Tall.Minus(height))
	return whole.Minus(under), ok && fits
}

func cubicMillimetres(mm3 float64) quantity.Number { return quantity.FromFloat(mm3 / 1000) }
