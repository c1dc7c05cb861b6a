package render

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/hazard"
	"tallyfold/kit/ledger"
	"tallyfold/kit/market"
	"tallyfold/templates"
)

// TestFormSizes holds the pages against published sizes (ISO 216; ANSI/ASME Y14.1 by 25.4 mm to the inch), and the
// panels against the sheet they are folded from.
func TestFormSizes(t *testing.T) {
	published := map[string][2]float64{
		"a5": {148, 210}, "half-letter": {139.7, 215.9}, "a6": {105, 148}, "a4": {210, 297}, "letter": {215.9, 279.4},
		"a4-large": {210, 297}, "letter-large": {215.9, 279.4},
		"a4-in-three": {297, 210}, "letter-in-three": {279.4, 215.9}, "a4-in-four": {297, 210}, "letter-in-four": {279.4, 215.9},
		"a3-in-three": {420, 297}, "tabloid-in-three": {431.8, 279.4}, "a3-in-four": {420, 297}, "tabloid-in-four": {431.8, 279.4},
		"a5-card": {148, 210}, "half-letter-card": {139.7, 215.9}, "a4-card": {210, 297}, "letter-card": {215.9, 279.4},
		"a3-card": {297, 420}, "tabloid-card": {279.4, 431.8},
		"a2-poster": {420, 594}, "ansi-c-poster": {431.8, 558.8}, "a1-poster": {594, 841}, "ansi-d-poster": {558.8, 863.6},
	}
	if len(Forms()) != len(published) {
		t.Errorf("%d forms, %d published sizes", len(Forms()), len(published))
	}
	for _, form := range Forms() {
		width := form.Paper.Width
		if form.Way == Leaf {
			width = form.Across()
		}
		if want := published[form.Name]; math.Abs(width-want[0]) > 1e-9 || math.Abs(form.Paper.Height-want[1]) > 1e-9 {
			t.Errorf("%s is %g × %g mm, published %v", form.Name, width, form.Paper.Height, want)
		}
		if again, found := FormNamed(form.Name); !found || again != form {
			t.Errorf("%s is not found by its name", form.Name)
		}
		if form.Tells() == "" || form.Narrow() && form.Large {
			t.Errorf("%s: %q", form.Name, form.Tells())
		}
	}
	if _, found := FormNamed("a7"); found {
		t.Error("a form that nobody defined was found")
	}
}

// TestSmallestType: the x of the smallest type has at least 1.2 mm, the yardstick taken (Regulation (EU) 1169/2011,
// article 13); its height, 0.507 of the size, is measured in render/print. Large print begins at 16 points.
func TestSmallestType(t *testing.T) {
	if x := smallestType / 72 * 25.4 * 0.507; x < 1.2 {
		t.Errorf("the x is %.3f mm high", x)
	}
	if smallest := largeType * 0.86; smallest < 16 {
		t.Errorf("large print has letters of %.2f points", smallest)
	}
}

var everyExample = []string{"harbour-candles", "pocket-notebooks", "drawer-sachets", "harbour-yarns"}

// TestNothingIsLost makes every form of every example in each of its languages, and of kits with hazards that their
// makers say nothing of, and looks for every caution of the method, of the remedies, of the suppliers and of the
// booklet's own, for what the law asks to be said, and for every amount that a link of the method tells.
func TestNothingIsLost(t *testing.T) {
	folders := []string{
		"../kit/rules/testdata/caution-missing/fails", "../kit/rules/testdata/lye-for-children/fails",
		"../cmd/tallyfold/testdata/markets/bath", "../cmd/tallyfold/testdata/markets/candle", "../cmd/tallyfold/testdata/markets/child",
	}
	for _, name := range everyExample {
		folders = append(folders, "../examples/"+name)
	}
	for _, folder := range folders {
		name := filepath.Base(folder)
		opened, diagnoses := instructions.Open(os.DirFS(folder), name)
		if opened == nil || diagnoses.MustFix() {
			t.Fatalf("%s: %v", name, diagnoses)
		}
		for _, tag := range Languages(opened) {
			told := opened
			if translation := opened.Translation(tag); translation != nil {
				told = opened.In(translation)
			}
			for _, form := range Forms() {
				for _, black := range []bool{false, true} {
					options := Options{Form: form, Black: black}
					booklet, err := InLanguages(opened, ledger.Follow(opened), templates.Shipped(), options, []string{tag})
					if err != nil {
						t.Fatal(err)
					}
					page, err := booklet.HTML()
					if err != nil {
						t.Fatal(err)
					}
					words := printedWords(t, string(page))
					for _, lost := range append(lostFrom(words, told), ownLostFrom(t, words, told, tag)...) {
						t.Errorf("%s in %s as %s: lost %q", name, tag, form.Name, lost)
					}
				}
			}
		}
	}
}

// ownLostFrom lists what the booklet has to say of its own and a text does not have: the
// cautions of hazards that the maker has none for, and what the law asks to be read in it.
func ownLostFrom(t *testing.T, text string, k *kit.Kit, tag string) []string {
	t.Helper()
	words, err := templates.Shipped().Words(tag)
	if err != nil {
		t.Fatal(err)
	}
	l := ledger.Follow(k)
	var must []string
	for _, action := range hazard.In(k, l) {
		if !action.Answered() {
			must = append(must, words.Say("hazard-"+strings.ToLower(action.Hazard.ID)))
		}
	}
	for _, s := range market.Statements(k, l, handbook.InBooklet) {
		switch {
		case s.Word != "":
			must = append(must, words.Say(s.Word))
		case !s.Hazards:
			must = append(must, s.Text)
		}
	}
	var missing []string
	for _, one := range must {
		if one = squeezed(one); one == "" || !strings.Contains(text, one) {
			missing = append(missing, one)
		}
	}
	return missing
}

// lostFrom lists the cautions and amounts of a kit that a text does not have.
func lostFrom(words string, k *kit.Kit) []string {
	var missing []string
	look := func(text string) {
		if text = squeezed(text); !strings.Contains(words, text) {
			missing = append(missing, text)
		}
	}
	cautions := func(cautions []kit.Caution) {
		for _, caution := range cautions {
			for _, paragraph := range strings.Split(caution.Text, "\n\n") {
				look(paragraph)
			}
		}
	}
	for _, part := range k.Method.Parts {
		cautions(part.Cautions)
	}
	for _, step := range k.Method.Steps() {
		cautions(step.Cautions)
		for _, o := range step.Operations {
			if _, tells := o.Phrase.Amount(); tells && !o.Aside && o.Kind != kit.Same && (tellsHowMuch(o) || o.Kind == kit.Work) {
				look(o.Text)
			}
		}
	}
	for _, trouble := range k.Troubles {
		cautions(trouble.Cautions)
	}
	for _, component := range k.Components {
		for _, caution := range component.Cautions {
			look(caution.Value)
		}
	}
	return missing
}

// squeezed leaves letters and digits alone: marks, spaces and fractions are set in another way in print.
func squeezed(text string) string {
	text = strings.NewReplacer("½", "12", "⅓", "13", "¼", "14", "¾", "34", "⅔", "23", "⅛", "18").Replace(text)
	return strings.Map(func(r rune) rune {
		if r < 0x80 && !(r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z') || r >= 0x2000 && r < 0x2300 || r == 0xa0 || r == 0xb7 || r == 0xab || r == 0xbb {
			return -1
		}
		return r
	}, text)
}

func printedWords(t *testing.T, page string) string {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	var walk func(*html.Node)
	walk = func(node *html.Node) {
		if node.Type == html.TextNode && node.Parent.Data != "style" {
			out.WriteString(node.Data)
		}
		for child := node.FirstChild; child != nil; child = child.NextSibling {
			walk(child)
		}
	}
	walk(root)
	return squeezed(out.String())
}
