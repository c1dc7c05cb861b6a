package render

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit/handbook"
	"tallyfold/kit/ledger"
	"tallyfold/templates"
)

// TestOwnCautionsInEveryLanguage: a kit whose packs bear every hazard that the handbook has,
// with no caution of its maker's, written in each language that there are words for. In every
// form of its booklet each hazard is told, in that language, and so is what the law of all
// markets asks to be said.
func TestOwnCautionsInEveryLanguage(t *testing.T) {
	for _, language := range templates.Shipped().Languages() {
		words, err := templates.Shipped().Words(language)
		if err != nil {
			t.Fatal(err)
		}
		yaml, method := bearingEverything(language)
		k, found := instructions.Open(fstest.MapFS{"kit.yaml": {Data: []byte(yaml)}, "method.md": {Data: []byte(method)}}, "all")
		if k == nil {
			t.Fatal(found)
		}
		l := ledger.Follow(k)
		for _, form := range Forms() {
			booklet, err := Assemble(k, l, templates.Shipped(), Options{Form: form})
			if err != nil {
				t.Fatal(err)
			}
			page, err := booklet.HTML()
			if err != nil {
				t.Fatal(err)
			}
			printed := printedWords(t, string(page))
			for _, id := range handbook.MaterialIDs() {
				told := words.Say("hazard-" + strings.ToLower(id))
				if told == "" || !strings.Contains(printed, squeezed(told)) {
					t.Errorf("%s as %s: %s is not told: %q", language, form.Name, id, told)
				}
			}
			for _, lost := range ownLostFrom(t, printed, k, language) {
				t.Errorf("%s as %s: lost %q", language, form.Name, lost)
			}
		}
	}
}

// bearingEverything is a toy for four-year-olds with a pack for each hazard of the handbook.
func bearingEverything(language string) (yaml, method string) {
	yaml = "language: " + language + "\nname: Alles\nmakes: 1 x\nsold as: candle\nmarkets: [US, EU, UK]\n" +
		"audience: {age: 4+, toy: yes}\ncomponents:\n  bead: {name: Bead, packed: 1, size: sphere 20 mm wide}\n" +
		"  jar: {name: Jar, packed: 1, container: {brimful: 500 mL}}\n"
	method = "## [X](step:x-one?in=pan)\n\n"
	for i, id := range handbook.MaterialIDs() {
		yaml += fmt.Sprintf("  c%d: {name: C%d, packed: 1 g, hazards: %s, density: 1 g/mL}\n", i, i, id)
		method += fmt.Sprintf("[C%d 1 g](take:c%d)\n", i, i)
	}
	yaml += "tools:\n  pan: {name: Pan, from: box, holds: 1 L}\npieces:\n  one: {name: One, count: 1, in: jar}\n"
	return yaml, method + "\n## [Y](step:y-two?in=pan)\n\n[1](fill:jar)\n"
}
