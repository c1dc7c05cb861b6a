package label

import (
	"math"
	"testing"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

func shape(form kit.Form, tall float64, widths ...float64) kit.Shape {
	s := kit.Shape{Form: form, Tall: quantity.FromFloat(tall)}
	for _, width := range widths {
		s.Widths = append(s.Widths, quantity.FromFloat(width))
	}
	return s
}

// The sums are by hand from the cylinder of 16 CFR 1501.4: 31.75 mm wide, 25.4 mm deep at
// one side and 57.15 mm at the other, so that its floor rises by 1 mm in 1 mm.
func TestSmallParts(t *testing.T) {
	diagonal := math.Hypot(31.75, 57.15) // from the rim at the shallow side to the deep corner: 65.4 mm
	for _, c := range []struct {
		why  string
		size kit.Shape
		want bool
	}{
		{"a ball as wide as the cylinder", shape(kit.Sphere, 0, 31.75), true},
		{"a ball a hair wider", shape(kit.Sphere, 0, 31.8), false},
		{"a coin as wide", shape(kit.Cylinder, 2, 31.0), true},
		{"a coin too wide in any way", shape(kit.Cylinder, 2, 60), false},
		{"a rod on end at the deep side", shape(kit.Cylinder, 55, 1), true},
		{"a rod laid from rim to deep corner", shape(kit.Box, diagonal-1.5, 0.2, 0.2), true},
		{"a rod longer than that", shape(kit.Box, diagonal+0.5, 0.2, 0.2), false},
		// A block 20 × 20 mm is 28.3 mm across its corners; pushed to the deep side, square on,
		// its far edge lies at the wall less its width: the floor there leaves about 35 mm.
		{"a block that stands clear of the floor", shape(kit.Box, 30, 20, 20), true},
		{"a block too high", shape(kit.Box, 60, 20, 20), false},
		{"a cube whose face does not go in", shape(kit.Box, 24, 24, 24), false},
		{"a plate that goes in on edge", shape(kit.Box, 3, 25, 30), true},
	} {
		got, ok := FitsSmallParts(c.size)
		if !ok || got != c.want {
			t.Errorf("%s: fits %v, ok %v; want %v", c.why, got, ok, c.want)
		}
	}
	for _, untold := range []kit.Shape{{}, shape(kit.Box, 0, 20, 20), shape(kit.Cone, 20, 10, 12)} {
		if _, ok := FitsSmallParts(untold); ok {
			t.Errorf("%+v tells no size, but was judged", untold)
		}
	}
}
