// Package colour reckons with colours as a printer and a reader's eye do: how
// readable one is on another, what is left of it in grey, how someone sees it who
// cannot tell red from green. It knows nothing of kits.
package colour

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// A Colour is one of sRGB (IEC 61966-2-1), 0 to 255 a channel.
type Colour struct{ R, G, B uint8 }

// White and Black are the ends of what paper and ink can show.
var (
	White = Colour{255, 255, 255}
	Black = Colour{}
)

// Read reads "#17566b" or, each figure doubled, "#157".
func Read(written string) (Colour, bool) {
	digits, ok := strings.CutPrefix(written, "#")
	if len(digits) == 3 {
		digits = strings.Join([]string{digits[:1], digits[:1], digits[1:2], digits[1:2], digits[2:], digits[2:]}, "")
	}
	value, err := strconv.ParseUint(digits, 16, 32)
	if !ok || err != nil || len(digits) != 6 {
		return Colour{}, false
	}
	return Colour{uint8(value >> 16), uint8(value >> 8), uint8(value)}, true
}

// String writes the colour as style sheets do: "#17566b".
func (c Colour) String() string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

// Linear gives the light of a channel, 0 to 1, by the formula of WCAG 2.2.
func Linear(channel uint8) float64 {
	c := float64(channel) / 255
	if c <= 0.04045 {
		return c / 12.92
	}
	return math.Pow((c+0.055)/1.055, 2.4)
}

// Coded is the channel that gives the light, cut to what a channel holds.
func Coded(light float64) uint8 {
	light = math.Min(1, math.Max(0, light))
	if light <= 0.0031308 {
		return uint8(math.Round(light * 12.92 * 255))
	}
	return uint8(math.Round((1.055*math.Pow(light, 1/2.4) - 0.055) * 255))
}

// Luminance is how light the colour is, 0 to 1, with the shares of the three lights
// from Rec. ITU-R BT.709.
func (c Colour) Luminance() float64 {
	return 0.2126*Linear(c.R) + 0.7152*Linear(c.G) + 0.0722*Linear(c.B)
}

// Grey is the grey of the same luminance: what black ink alone leaves of a colour.
func (c Colour) Grey() Colour {
	grey := Coded(c.Luminance())
	return Colour{grey, grey, grey}
}

// Contrast of two colours by WCAG 2.2, from 1 to 21.
func Contrast(a, b Colour) float64 {
	light, dark := a.Luminance(), b.Luminance()
	if light < dark {
		light, dark = dark, light
	}
	return (light + 0.05) / (dark + 0.05)
}

// What WCAG 2.2 asks for: of text (SC 1.4.3), and of marks (SC 1.4.11).
const (
	ForText  = 4.5
	ForMarks = 3.0
)

// Readable gives the colour with as little black, or on a dark ground white, as
// makes its contrast on the ground at least what is asked for.
func (c Colour) Readable(ground Colour, least float64) Colour {
	towards := Black
	if Contrast(White, ground) > Contrast(Black, ground) {
		towards = White
	}
	for step := 0; step <= 255; step++ {
		if mixed := c.Mixed(towards, float64(step)/255); Contrast(mixed, ground) >= least {
			return mixed
		}
	}
	return towards
}

// Mixed gives the colour with a part, 0 to 1, of another in it.
func (c Colour) Mixed(other Colour, part float64) Colour {
	mix := func(a, b uint8) uint8 { return uint8(math.Round(float64(a)*(1-part) + float64(b)*part)) }
	return Colour{mix(c.R, other.R), mix(c.G, other.G), mix(c.B, other.B)}
}
