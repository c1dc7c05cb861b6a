package templates

import (
	"regexp"
	"strings"
	"testing"

	"tallyfold/kit/colour"
)

func read(t *testing.T, written string) colour.Colour {
	t.Helper()
	c, ok := colour.Read(written)
	if !ok {
		t.Fatalf("%q is no colour", written)
	}
	return c
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
			if got := colour.Contrast(read(t, palette[pair.on]), read(t, palette[pair.under])); got < pair.least {
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
