package colour

import "math"

// An Eye lacks one of the three lights that others see.
type Eye int

const (
	// RedBlind (protanopia) and GreenBlind (deuteranopia): together about one man in
	// twelve has one of the two or a milder form of it.
	RedBlind Eye = iota
	GreenBlind
)

// eyes are the matrices, over linear light, of G. M. Machado, M. M. Oliveira and L. A. F.
// Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency",
// IEEE TVCG 15 (2009), severity 1.0.
var eyes = [...][3][3]float64{
	RedBlind:   {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
	GreenBlind: {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
}

// SeenBy gives the colour as such an eye sees it.
func (c Colour) SeenBy(eye Eye) Colour {
	light := [3]float64{Linear(c.R), Linear(c.G), Linear(c.B)}
	var seen [3]uint8
	for i, row := range eyes[eye] {
		seen[i] = Coded(row[0]*light[0] + row[1]*light[1] + row[2]*light[2])
	}
	return Colour{seen[0], seen[1], seen[2]}
}

// Difference of two colours as the eye tells them apart: the distance in CIE L*a*b*
// (1976) under daylight D65. Below 2 hardly anybody sees one; from 10 up they are
// told apart at a glance.
func Difference(a, b Colour) float64 {
	x, y := a.lab(), b.lab()
	return math.Sqrt((x[0]-y[0])*(x[0]-y[0]) + (x[1]-y[1])*(x[1]-y[1]) + (x[2]-y[2])*(x[2]-y[2]))
}

// lab gives L*, a* and b* (CIE 15; matrix and white of IEC 61966-2-1).
func (c Colour) lab() [3]float64 {
	r, g, b := Linear(c.R), Linear(c.G), Linear(c.B)
	x := cubed((0.4124*r + 0.3576*g + 0.1805*b) / 0.9505)
	y := cubed(0.2126*r + 0.7152*g + 0.0722*b)
	z := cubed((0.0193*r + 0.1192*g + 0.9505*b) / 1.0890)
	return [3]float64{116*y - 16, 500 * (x - y), 200 * (y - z)}
}

func cubed(part float64) float64 {
	if part > 216.0/24389 {
		return math.Cbrt(part)
	}
	return (24389.0/27*part + 16) / 116
}
