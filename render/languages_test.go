package render

import (
	"os"
	"strings"
	"testing"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/templates"
)

func bookletInLanguages(t *testing.T, folder string, tags ...string) (*kit.Kit, *Booklet) {
	t.Helper()
	k, found := instructions.Open(os.DirFS(folder), "kit")
	if k == nil {
		t.Fatalf("%s can't be read: %v", folder, found)
	}
	booklet, err := InLanguages(k, ledger.Follow(k), templates.Shipped(), Options{}, tags)
	if err != nil {
		t.Fatal(err)
	}
	return k, booklet
}

const sachets = "../examples/drawer-sachets"

// The booklet of the example in its other languages, kept word for word and read line by
// line. Nothing of the kit's own language is left in it but the maker's name.
func TestBookletsInOtherLanguages(t *testing.T) {
	for _, tag := range []string{"de", "fr"} {
		k, booklet := bookletInLanguages(t, sachets, tag)
		compareGolden(t, "drawer-sachets."+tag+".md", booklet.Markdown)
		var own []string
		for _, text := range k.Texts() {
			if !strings.Contains(k.Translation(tag).Texts[text.Value], text.Value) { // "8 sachets" is both
				own = append(own, text.Value)
			}
		}
		for _, step := range k.Method.Steps() {
			own = append(own, step.Title)
		}
		for _, trouble := range k.Troubles {
			own = append(own, trouble.Title)
		}
		for _, name := range k.Names() {
			if !strings.Contains(name.In(tag), name.String()) {
				own = append(own, name.String())
			}
		}
		for _, text := range own {
			if strings.Contains(string(booklet.Markdown), text) {
				t.Errorf("%s still says %q", tag, text)
			}
		}
		page, err := booklet.HTML()
		if err != nil {
			t.Fatal(err)
		}
		checkPage(t, string(page))
		if !strings.Contains(string(page), `<html lang="`+tag+`" dir="ltr">`) {
			t.Errorf("the page does not say that it is in %s", tag)
		}
	}
}

// Several languages stand in one booklet one behind the other, each marked with its
// language (WCAG 2.2, SC 3.1.2), and no place is named twice.
func TestSeveralLanguagesInOneBooklet(t *testing.T) {
	_, booklet := bookletInLanguages(t, sachets, "en", "fr", "de")
	body := booklet.body()
	checkReferences(t, body)
	seen := map[string]bool{}
	for _, part := range strings.Split(body, ` id="`)[1:] {
		id, _, _ := strings.Cut(part, `"`)
		if seen[id] {
			t.Errorf("two places are called %q", id)
		}
		seen[id] = true
	}
	for _, want := range []string{`lang="en" dir="ltr"`, `lang="fr" dir="ltr"`, `lang="de" dir="ltr"`, `<section id="fr-step-1"`,
		`<a href="#fr-step-1"><span>1. Préparer la table</span><span class="leader"></span><span class="page" data-page-of="fr-step-1"></span>`} {
		if !strings.Contains(body, want) {
			t.Errorf("%q is not in the booklet", want)
		}
	}
	text := string(booklet.Text())
	if !strings.Contains(text, "# Drawer sachets") || !strings.Contains(text, "# Duftsäckchen für Schubladen") {
		t.Error("the Markdown does not hold all languages")
	}
}

func TestLanguageWithoutTranslation(t *testing.T) {
	k, _ := instructions.Open(os.DirFS(sachets), "kit")
	_, err := InLanguages(k, ledger.Follow(k), templates.Shipped(), Options{}, []string{"it"})
	if err == nil || !strings.Contains(err.Error(), "method.it.md") || !strings.Contains(err.Error(), "en, de, fr") {
		t.Errorf("a language without translation gives %v", err)
	}
}

// Spoons, cups and degrees Fahrenheit are for readers in the United States; all others
// have metric units (which countries: common practice, no source).
func TestReadersUnits(t *testing.T) {
	for _, test := range []struct {
		tag, own string
		want     measuring
	}{
		{"en", "en", asWritten}, {"en-US", "en", inUSCustomary}, {"es-US", "en", inUSCustomary}, {"en-GB", "en", inMetric},
		{"fr", "en", inMetric}, {"fr", "fr", asWritten}, {"de-AT", "de", inMetric},
	} {
		if got := measuringIn(test.tag, test.own); got != test.want {
			t.Errorf("%s of a kit in %s: %d, want %d", test.tag, test.own, got, test.want)
		}
	}
	_, american := bookletInLanguages(t, "../examples/harbour-candles", "en-US")
	_, british := bookletInLanguages(t, "../examples/harbour-candles", "en-GB")
	// °F = °C × 1.8 + 32 (NIST SP 811, B.8): 75 °C is 167 °F.
	if !strings.Contains(string(american.Markdown), "(167 °F)") || strings.Contains(string(british.Markdown), "°F") {
		t.Error("75 °C is not told as 167 °F in the United States alone")
	}
}

// Spoons stand beside grams where people have them; elsewhere grams are enough.
func TestSpoonsBesideGrams(t *testing.T) {
	folder := copyOf(t, sachets)
	folder["method.md"].Data = []byte(strings.Replace(string(folder["method.md"].Data), "[4 level teaspoons of orris-root powder]", "[10.8 g of orris-root powder]", 1))
	folder["kit.yaml"].Data = []byte(strings.Replace(string(folder["kit.yaml"].Data), "0.50–0.60 g/mL loose", "0.54–0.56 g/mL loose", 1))
	k, _ := instructions.Open(folder, "kit")
	if k == nil {
		t.Fatal("the kit can't be read")
	}
	const beside = "| Orris-root powder | 10.8 g | 1 tbsp + 1 tsp |"
	for tag, want := range map[string]bool{"en": true, "en-US": true, "en-GB": false} {
		booklet, err := InLanguages(k, ledger.Follow(k), templates.Shipped(), Options{}, []string{tag})
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Contains(string(booklet.Markdown), beside); got != want {
			t.Errorf("%s: spoons beside grams is %v", tag, got)
		}
	}
}

// A language read from right to left turns the page; its style sheet knows no left and
// right but those of the sheet of paper.
func TestRightToLeft(t *testing.T) {
	folder := copyOf(t, sachets)
	folder["kit.yaml"].Data = []byte(strings.Replace(string(folder["kit.yaml"].Data), "language: en\n", "language: ar\n", 1))
	k, _ := instructions.Open(folder, "kit")
	if k == nil {
		t.Fatal("the kit can't be read")
	}
	booklet, err := Assemble(k, ledger.Follow(k), templates.Shipped(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	page, err := booklet.HTML()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`<html lang="ar" dir="rtl">`, "<h2>المحتويات</h2>", "من 8 سنوات فأكثر"} {
		if !strings.Contains(string(page), want) {
			t.Errorf("%q is not in the page", want)
		}
	}
	css, err := templates.Shipped().File("book.css")
	if err != nil {
		t.Fatal(err)
	}
	for _, physical := range []string{"margin-left", "margin-right", "padding-left", "padding-right", "text-align: left", "text-align: right", "border-left", "border-right", "float: left", "float: right", "margin: 0 0 0 ", "padding: 0 0 0 "} {
		if strings.Contains(string(css), physical) {
			t.Errorf("book.css says %q, which a language from right to left would have on the other side", physical)
		}
	}
}

func TestUntranslated(t *testing.T) {
	folder := copyOf(t, sachets)
	delete(folder, "trouble.fr.md")
	folder["words.fr.md"].Data = []byte("## [Bienvenue](words:welcome)\n\nBonjour.\n")
	folder["kit.fr.txt"].Data = []byte("Drawer sachets\n  Sachets\n")
	folder["kit.yaml"].Data = []byte(strings.Replace(string(folder["kit.yaml"].Data), "{fr: Règle, de: Lineal}", "{de: Lineal}", 1))
	method := string(folder["method.fr.md"].Data)
	folder["method.fr.md"].Data = []byte(method[:strings.Index(method, "## [Ranger]")])
	k, _ := instructions.Open(folder, "kit")
	if k == nil {
		t.Fatal("the kit can't be read")
	}
	set := templates.Shipped()
	missing, err := UntranslatedIn(k, set, "fr")
	if err != nil {
		t.Fatal(err)
	}
	var told []string
	for _, one := range missing {
		told = append(told, one.Kind+" "+one.Text)
		if one.Caution != (one.Text == "A fine dust. Do not breathe it in.") {
			t.Errorf("%q: caution is %v", one.Text, one.Caution)
		}
	}
	want := []string{
		"text Eight cotton sachets of lavender, orange peel and cedar, mixed by the spoon and tied with ribbon.", "text 8 sachets",
		"text A fine dust. Do not breathe it in.", "text 2 sheets", "name Ruler", "step Clear up",
		"trouble The scent is weak", "trouble Dust comes through the cloth", "trouble The last bag stays half empty",
		"trouble The mix feels damp", "trouble The bow comes undone", "section Storing", "section About the maker",
	}
	if strings.Join(told, "\n") != strings.Join(want, "\n") {
		t.Errorf("untranslated:\n%s\nwant:\n%s", strings.Join(told, "\n"), strings.Join(want, "\n"))
	}
	if missing, _ := UntranslatedIn(k, set, "en"); len(missing) > 0 {
		t.Errorf("the kit's own language lacks %v", missing)
	}
}
