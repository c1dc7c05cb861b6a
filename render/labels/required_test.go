package labels

import (
	"html"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit"
)

// bath is a kit of one bottle of foaming bath, our own.
func bath(t *testing.T, age string) *kit.Kit {
	t.Helper()
	k, found := instructions.Open(fstest.MapFS{
		"kit.yaml": {Data: []byte(`name: Quay foam bath
maker: Brindle Quay Workroom
makes: 1 bottle
sold as: rinse-off cosmetic
audience: {age: ` + age + `, skill: beginner}
components:
  base: {name: Foam base, packed: 180 g, density: 1.03 g/mL, hazards: foaming-bath, ingredients: [70 % Water, 25 % Sodium coco-sulfate, 5 % Glycerin]}
  scent: {name: Harbour scent, packed: 2 g, density: 0.95 g/mL, counts as: fragrance, allergens: 4 % Linalool}
  dye: {name: CI 42090, packed: 0.1 g, density: 1 g/mL}
  bottle: {name: Bottle, packed: 1, container: {brimful: 250 mL, panel: 90 × 120 mm}}
tools:
  jug: {name: Jug, from: customer, essential: true, holds: 1 L}
mixtures:
  foam: {name: Foam bath, made in: jug, density: 1.03 g/mL}
pieces:
  bath: {name: Bottle of foam bath, count: 1, in: bottle, of: foam}
labels:
  containers: a4-99x139
`)},
		"method.md": {Data: []byte("## [Mix](step:mix?in=jug)\n\nPut [all of the base](take:base), [all of the scent](take:scent) and [all of the dye](take:dye) into [the jug](vessel:jug). Fill [all of it](fill:bottle).\n")},
	}, "bath")
	if k == nil || found.MustFix() {
		t.Fatal(found)
	}
	return k
}

// words of a page in a row, without its marks.
func plainText(page string) string {
	text := html.UnescapeString(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(page, " "))
	return strings.Join(strings.Fields(strings.ReplaceAll(text, "\u00a0", " ")), " ")
}

// The caution of 21 CFR 740.17(b), character by character, and the ingredients by falling
// share: of 182.1 g the base is 98.8 %, so water 69.2, sulfate 24.7, glycerin 4.94, scent
// 1.1 %; the colour last. 4 % of 1.1 % are 0.044 % of linalool, above the 0.01 % of what is
// rinsed off. A product for adults alone need not bear the caution.
func TestWhatALabelMustSay(t *testing.T) {
	const caution = "Caution—Use only as directed. Excessive use or prolonged exposure may cause irritation to skin and urinary tract. Discontinue use if rash, redness, or itching occurs. Consult your physician if irritation persists. Keep out of reach of children."
	const list = "Ingredients: Water, Sodium coco-sulfate, Glycerin, Parfum (Fragrance), Linalool, CI 42090"
	said := plainText(page(t, made(t, bath(t, "12+"), Options{}), "containers"))
	if !strings.Contains(said, caution) {
		t.Errorf("the caution is not on the label:\n%s", said)
	}
	if !strings.Contains(said, list) {
		t.Errorf("the ingredients are not on the label:\n%s", said)
	}
	adults := plainText(page(t, made(t, bath(t, "18+"), Options{}), "containers"))
	if strings.Contains(adults, "urinary") {
		t.Errorf("for adults alone the caution need not be there:\n%s", adults)
	}
}
