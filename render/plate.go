package render

import (
	"math"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
	"tallyfold/render/figure"
)

// plate draws what is packed, to scale where a size or a volume is known.
func (a *assembly) plate() string {
	drawn := figure.Plate{Title: a.say("in-the-box"), Unscaled: a.say("unscaled"), Lengths: a.scaleLengths()}
	for _, c := range a.kit.Components {
		says := a.packedInPlate(c)
		shape, wide, tall := a.outward(c)
		tells := c.Letter + ", " + c.String()
		if says != "" {
			tells += ", " + says
		}
		drawn.Items = append(drawn.Items, figure.Item{Shape: shape, Letter: c.Letter, Says: says, Tells: tells, Wide: wide, Tall: tall})
	}
	if len(drawn.Items) == 0 {
		return ""
	}
	return a.draw("plate", drawn.Draw())
}

// packedInPlate is how much there is, as short as it can be told: "× 6", "1.12 kg".
func (a *assembly) packedInPlate(c *kit.Component) string {
	switch packed := c.Packed; {
	case !packed.Given():
		return ""
	case c.Lots.Told():
		return a.times(int64(c.Lots.Count))
	case packed.Value.Dimension == quantity.Count:
		return "× " + a.show(packed.Value.Nominal, quantity.Count)
	}
	return a.show(c.Packed.Value.Nominal, c.Packed.Value.Dimension)
}

func (a *assembly) times(count int64) string {
	return "× " + a.show(quantity.Whole(count), quantity.Count)
}

// scaleLengths are round lengths in the units of the booklet's readers.
func (a *assembly) scaleLengths() []figure.Length {
	var all []figure.Length
	for _, millimetres := range []int64{10, 20, 50, 100, 200, 500} {
		all = append(all, figure.Length{Millimetres: float64(millimetres), Says: a.show(quantity.Whole(millimetres), quantity.Length)})
	}
	return all
}

// drawnShapes are the words of kit.yaml for an outline.
var drawnShapes = map[string]figure.Shape{
	"bag": figure.BagShape, "bottle": figure.BottleShape, "jar": figure.JarShape,
	"sheet": figure.SheetShape, "reel": figure.ReelShape, "piece": figure.PieceShape,
}

// outward gives the outline of a component and its size in millimetres, zero where kit.yaml
// tells neither size nor volume.
func (a *assembly) outward(c *kit.Component) (shape figure.Shape, wide, tall float64) {
	shape = a.shapeOf(c)
	switch {
	case c.Container != nil && shape == figure.BagShape && !c.Container.Inside.Given():
		wide, tall = bagSize(c.Container.Brimful.Value.Nominal.Float())
	case c.Container != nil:
		wide, tall = containerSize(c.Container)
	case c.Insert != nil && c.Insert.Wide.Given() && c.Insert.Tall.Given():
		wide, tall = c.Insert.Wide.Value.Nominal.Float(), c.Insert.Tall.Value.Nominal.Float()
	case c.Lots.Told() && c.Lots.Each.Across.Sign() > 0:
		wide, tall = c.Lots.Each.Across.Float(), c.Lots.Each.Along.Float()
	case shape == figure.BottleShape:
		wide, tall = bottleSize(a.packedVolume(c))
	case shape == figure.BagShape:
		wide, tall = bagSize(a.packedVolume(c))
	}
	return shape, wide, tall
}

// shapeOf is what the maker says, else what fits how it is packed: a liquid in a bottle,
// thread on a reel, what is weighed in a bag.
func (a *assembly) shapeOf(c *kit.Component) figure.Shape {
	if shape, ok := drawnShapes[c.DrawnAs.Value]; ok {
		return shape
	}
	dimension := c.Packed.Value.Dimension
	if c.Lots.Told() {
		dimension = c.Lots.Each.Dimension
	}
	switch {
	case c.Container != nil:
		return figure.JarShape
	case dimension == quantity.Volume:
		return figure.BottleShape
	case dimension == quantity.Length:
		return figure.ReelShape
	case dimension == quantity.Area:
		return figure.SheetShape
	case dimension == quantity.Mass:
		return figure.BagShape
	}
	return figure.PieceShape
}

// packedVolume is what one pack holds in mL, 0 where that isn't known. A density in
// another state than that of the pack says nothing about its size.
func (a *assembly) packedVolume(c *kit.Component) float64 {
	amount := c.Packed.Value
	if c.Lots.Told() {
		amount = c.Lots.Each
	}
	switch density := c.Density; {
	case !c.Packed.Given():
		return 0
	case amount.Dimension == quantity.Volume:
		return amount.Nominal.Float()
	case amount.Dimension != quantity.Mass || !density.Given() || density.Value.Nominal.Sign() <= 0:
		return 0
	case c.DensityState == kit.Liquid && a.shapeOf(c) != figure.BottleShape:
		return 0 // flakes or blocks, told as they are once melted
	default:
		return amount.Nominal.Over(density.Value.Nominal).Float()
	}
}

// containerSize is the inside of a container; where only its volume is told, that of a
// cylinder as wide as it is high.
func containerSize(c *kit.Container) (wide, tall float64) {
	brimful := c.Brimful.Value.Nominal
	shape := c.Inside.Value
	for _, width := range shape.Widths {
		wide = math.Max(wide, width.Float())
	}
	if wide > 0 {
		if tall = insideHeight(shape, brimful); tall > 0 {
			return wide, tall
		}
	}
	if !c.Brimful.Given() || brimful.Sign() <= 0 {
		return 0, 0
	}
	side := math.Cbrt(4 / math.Pi * brimful.Float() * 1000)
	return side, side
}

// bottleSize: a body twice as high as wide, and a neck a quarter of its height on top.
func bottleSize(volume float64) (wide, tall float64) {
	wide = math.Cbrt(2 / math.Pi * volume * 1000)
	return wide, 2.5 * wide
}

// bagSize: a filled bag three wide, four high and one deep.
func bagSize(volume float64) (wide, tall float64) {
	unit := math.Cbrt(volume * 1000 / 12)
	return 3 * unit, 4 * unit
}
