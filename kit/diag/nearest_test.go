package diag

import (
	"strings"
	"testing"
)

func TestNearest(t *testing.T) {
	known := []string{"packed", "spare", "density", "true density", "add below", "jar", "pan", "hands-on"}
	for _, c := range []struct{ why, word, want string }{
		{"a letter left out", "packd", "packed"},
		{"a letter too many", "sparee", "spare"},
		{"another letter", "densitx", "density"},
		{"two changed over", "spaer", "spare"},
		{"capitals", "PACKED", "packed"},
		{"a hyphen for a space", "add-below", "add below"},
		{"a space for a hyphen", "hands on", "hands-on"},
		{"short words bear one slip", "jr", "jar"},
		{"short words bear no more", "xy", ""},
		{"the first of two equally near", "pax", "pan"},
		{"nothing near", "colour", ""},
		{"nothing at all", "", ""},
		{"one letter says nothing", "j", ""},
		{"a sentence is no slip", strings.Repeat("packed ", 10), ""},
		{"the word itself", "jar", "jar"},
	} {
		if got := Nearest(c.word, known); got != c.want {
			t.Errorf("%s: Nearest(%q) = %q, want %q", c.why, c.word, got, c.want)
		}
	}
}
