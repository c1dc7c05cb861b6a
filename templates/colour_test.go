package templates

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// contrast of two colours by WCAG 2.2: (L1 + 0.05)/(L2 + 0.05).
func contrast(a, b string) float64 {
	light, dark := luminance(a), luminance(b)
	if light < dark {
		light, dark = dark, light
	}
	return (light + 0.05) / (dark + 0.05)
}

func luminance(colour string) float64 {
	channel := func(at int) float64 {
		value, err := strconv.ParseUint(colour[at:at+2], 16, 8)
		if err != nil {
			panic("no colour: " + colour)
		}
		c := float64(value) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*channel(1) + 0.7152*channel(3) + 0.0722*channel(5)
}

// Published pairs: the W3C's formula, values reckoned from it in the project's
// check values (#767676 is the usual example of the lightest grey that passes).
func TestContrastFormula(t *testing.T) {
	for _, pair := range []struct {
		a, b string
		want float64
	}{
		{"#000000", "#FFFFFF", 21},
		{"#767676", "#FFFFFF", 4.542},
		{"#777777", "#FFFFFF", 4.478},
		{"#949494", "#FFFFFF", 3.034},
		{"#595959", "#FFFFFF", 7.005},
		{"#FF0000", "#FFFFFF", 3.998},
		{"#0000FF", "#FFFFFF", 8.592},
		{"#FFFF00", "#FFFFFF", 1.074},
		{"#FF8800", "#000000", 8.774},
	} {
		if got := contrast(pair.a, pair.b); math.Abs(got-pair.want) > 0.001 {
			t.Errorf("%s on %s is %.3f, want %.3f", pair.a, pair.b, got, pair.want)
		}
	}
}

// Text reaches 4.5 : 1 and marks 3 : 1 (WCAG 2.2, SC 1.4.3 and 1.4.11), in light
// and in dark.
func TestColoursAreReadable(t *testing.T) {
	css, err := Shipped().File("book.css")
	if err != nil {
		t.Fatal(err)
	}
	light := colours(string(css[:strings.Index(string(css), "prefers-color-scheme")]))
	dark := colours(string(css))
	for name, palette := range map[string]map[string]string{"light": light, "dark": dark} {
		for _, pair := range []struct {
			on, under string
			least     float64
		}{
			{"ink", "paper", 7}, {"soft", "paper", 4.5}, {"accent", "paper", 4.5}, {"on-accent", "accent", 4.5},
			{"on-danger", "danger", 4.5}, {"on-warning", "warning", 4.5}, {"on-caution", "caution", 4.5}, {"on-notice", "notice", 4.5},
		} {
			if palette[pair.on] == "" || palette[pair.under] == "" {
				t.Errorf("%s: no colour for %s or %s", name, pair.on, pair.under)
				continue
			}
			if got := contrast(palette[pair.on], palette[pair.under]); got < pair.least {
				t.Errorf("%s: %s on %s is %.2f : 1, less than %.1f", name, pair.on, pair.under, got, pair.least)
			}
		}
	}
	if light["paper"] == dark["paper"] {
		t.Error("the dark palette was not read")
	}
}

// colours reads the custom properties of a style sheet; a later one wins.
func colours(css string) map[string]string {
	palette := map[string]string{}
	for _, found := range regexp.MustCompile(`--([a-z-]+): (#[0-9a-f]{6});`).FindAllStringSubmatch(css, -1) {
		palette[found[1]] = found[2]
	}
	return palette
}
