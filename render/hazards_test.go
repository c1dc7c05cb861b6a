package render

import (
	"strings"
	"testing"

	"tallyfold/kit/handbook"
	"tallyfold/templates"
)

// The caution of the booklet says in English what the handbook says, and all that a row
// names is there in every language.
func TestHazardWords(t *testing.T) {
	for _, language := range templates.Shipped().Languages() {
		words, err := templates.Shipped().Words(language)
		if err != nil {
			t.Fatal(err)
		}
		for _, h := range handbook.Hazards() {
			text := words.Say(hazardWord + strings.ToLower(h.ID))
			if want := strings.TrimSpace(h.Happens + " " + h.Avoid); language == "en" && text != want {
				t.Errorf("%s: the booklet says %q, the handbook %q", h.ID, text, want)
			}
			for _, name := range []string{h.Wear, h.Place, h.Company, h.Aid} {
				if name != "" && strings.HasPrefix(words.Say(beforeWord+name), "[") {
					t.Errorf("%s: %s asks for %q, for which there is no word", language, h.ID, name)
				}
			}
			if strings.HasPrefix(text, "[") {
				t.Errorf("%s: there is no caution of %s", language, h.ID)
			}
		}
	}
}
