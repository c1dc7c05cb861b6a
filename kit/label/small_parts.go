package label

import (
	"math"

	"tallyfold/kit"
)

// The cylinder that tells a small part: 1.25 inches wide, with a slanted floor, 1 inch deep
// on one side and 2.25 inches on the other (16 CFR 1501.4, figure 1; from memory, 1.25 ×
// 2.25 inches read 2nd hand). The inches decide.
const (
	cylinderWide    = 1.25 * 25.4
	cylinderShallow = 1.00 * 25.4
	cylinderDeep    = 2.25 * 25.4
)

// turnStep is how finely a part is turned to try it, in degrees. A part that only just fits
// between two tries can be missed; tolerance keeps what fits exactly.
const (
	turnStep  = 2.0
	tolerance = 1e-6
)

type point struct{ x, y, z float64 }

// FitsSmallParts says whether a part goes into the cylinder for small parts in some
// orientation, without being pressed; ok is false where its size does not tell. The part
// is turned about all three axes by steps of two degrees: a model of the test, which
// uses the part itself, and parts that come off it.
func FitsSmallParts(size kit.Shape) (fits, ok bool) {
	corners, ok := cornersOf(size)
	if !ok {
		return false, false
	}
	if size.Form == kit.Sphere {
		return size.Widths[0].Float() <= cylinderWide+tolerance, true
	}
	if longest(corners) > cylinderLongest+tolerance {
		return false, true
	}
	// Turned about the z, the y and the z axis again: every way that it can lie.
	byA, byB, byC := make([]point, len(corners)), make([]point, len(corners)), make([]point, len(corners))
	for a := 0.0; a < 180; a += turnStep {
		turn(byA, corners, a, aboutZ)
		for b := 0.0; b <= 90; b += turnStep {
			turn(byB, byA, b, aboutY)
			for c := 0.0; c < 180; c += turnStep {
				turn(byC, byB, c, aboutZ)
				if fitsAs(byC) {
					return true, true
				}
			}
		}
	}
	return false, true
}

// HoldsMoreThanSmallParts says whether a container holds more than the cylinder does, so that
// it cannot lie in it, whatever its size outside.
func HoldsMoreThanSmallParts(c *kit.Component) bool {
	const millilitre = 1000 // mm³
	room := math.Pi * cylinderWide * cylinderWide / 4 * (cylinderShallow + cylinderDeep) / 2 / millilitre
	return c.Container != nil && c.Container.Brimful.Given() && c.Container.Brimful.Value.Nominal.Float() > room
}

// cylinderLongest is the longest line in the cylinder: what is longer cannot lie in it.
var cylinderLongest = math.Hypot(cylinderWide, cylinderDeep)

// longest is the greatest distance between two corners.
func longest(corners []point) float64 {
	far := 0.0
	for i, p := range corners {
		for _, q := range corners[:i] {
			far = max(far, math.Hypot(math.Hypot(p.x-q.x, p.y-q.y), p.z-q.z))
		}
	}
	return far
}

// cornersOf are points whose hull is the part, its middle at the origin. A round edge is
// taken by 24 points on a circle just around it, so that the hull holds the part.
func cornersOf(size kit.Shape) ([]point, bool) {
	tall := size.Tall.Float()
	switch {
	case size.Form == kit.Sphere && len(size.Widths) > 0:
		return nil, true
	case tall <= 0 || len(size.Widths) == 0:
		return nil, false
	case size.Form == kit.Box && len(size.Widths) > 1:
		var corners []point
		for _, x := range []float64{-0.5, 0.5} {
			for _, y := range []float64{-0.5, 0.5} {
				for _, z := range []float64{-0.5, 0.5} {
					corners = append(corners, point{x * size.Widths[0].Float(), y * size.Widths[1].Float(), z * tall})
				}
			}
		}
		return corners, true
	case size.Form == kit.Cylinder:
		const edge = 24
		radius := size.Widths[0].Float() / 2 / math.Cos(math.Pi/edge)
		if size.Widths[0].Float() > cylinderWide {
			radius = size.Widths[0].Float() / 2
		}
		var corners []point
		for i := range edge {
			turn := 2 * math.Pi * (float64(i) + 0.5) / edge
			for _, z := range []float64{-0.5, 0.5} {
				corners = append(corners, point{radius * math.Cos(turn), radius * math.Sin(turn), z * tall})
			}
		}
		return corners, true
	}
	return nil, false
}

// fitsAs tries one orientation. Seen from above the part is pushed to the deep side of the
// cylinder, as far as its wall lets it, and then down to just below the rim.
func fitsAs(corners []point) bool {
	const radius = cylinderWide / 2
	push, lowest, floor := math.Inf(1), math.Inf(1), math.Inf(1)
	pull := math.Inf(-1)
	for _, p := range corners {
		if math.Abs(p.y) > radius+tolerance {
			return false
		}
		wall := math.Sqrt(max(0, radius*radius-p.y*p.y))
		push, pull = min(push, wall-p.x), max(pull, -wall-p.x)
		lowest, floor = min(lowest, p.z), min(floor, p.x-p.z)
	}
	// z counts down from the rim: the floor lies at 1.625 inches + x.
	middle := (cylinderShallow + cylinderDeep) / 2
	return pull <= push+tolerance && -lowest <= middle+push+floor+tolerance
}

func aboutZ(p point, sin, cos float64) point { return point{p.x*cos - p.y*sin, p.x*sin + p.y*cos, p.z} }
func aboutY(p point, sin, cos float64) point {
	return point{p.x*cos + p.z*sin, p.y, -p.x*sin + p.z*cos}
}

// turn writes the corners into turned, turned about an axis by degrees.
func turn(turned, corners []point, degrees float64, about func(p point, sin, cos float64) point) {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	for i, p := range corners {
		turned[i] = about(p, sin, cos)
	}
}
