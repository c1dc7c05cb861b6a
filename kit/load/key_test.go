package load

import (
	"strings"
	"testing"
)

// Names made from titles.
func TestSlug(t *testing.T) {
	for words, want := range map[string]string{
		"Fill the jars":           "fill-the-jars",
		"  Don’t stir! (Really.)": "dont-stir-really",
		"Préparer à 80 °C":        "preparer-a-80-c",
		"Ⅱ / 2nd":                 "2nd",
		"注ぐ":                      "",
	} {
		if got := Slug(words); got != want {
			t.Errorf("Slug(%q) = %q, want %q", words, got, want)
		}
	}
}

// Keys made of names are keys.
func TestFreeKey(t *testing.T) {
	for name, want := range map[string]string{
		"Soy wax flakes": "soy-wax-flakes",
		"Box":            "the-box",
		"Yes":            "the-yes",
		"3 cup pan":      "the-3-cup-pan",
		"注ぐ":             "thing",
		"Wonderful silvery northern mosses from old quarries": "wonderful-silvery-northern-mosses-from",
		"Pieces of a name that has 41 letters in a row":       "pieces-of-a-name-that-has-41-letters-in",
		strings.Repeat("u", 3000):                             strings.Repeat("u", longestKey),
		strings.Repeat("7", 3000):                             "the-" + strings.Repeat("7", longestKey-4),
	} {
		key := FreeKey(name, func(string) bool { return false })
		if key != want {
			t.Errorf("%.60q gives %q, not %q", name, key, want)
		}
		second := FreeKey(name, func(other string) bool { return other == key })
		tenth := FreeKey(name, func(other string) bool { return other != key && !strings.HasSuffix(other, "-10") || other == key })
		for _, made := range []string{key, second, tenth} {
			if why, ok := IsKey(made); !ok {
				t.Errorf("%.60q gives %q: %s", name, made, why)
			}
		}
		if second == key || !strings.HasSuffix(tenth, "-10") {
			t.Errorf("%.60q gives %q, then %q and %q", name, key, second, tenth)
		}
	}
}
