package templates

import (
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

// What a maker replaces comes first; all else stays as shipped.
func TestMakersFilesComeFirst(t *testing.T) {
	set := Shipped().Over(fstest.MapFS{
		"book.css":     {Data: []byte("p { color: plum }")},
		"words/en.txt": {Data: []byte("bag: Pouch\n")},
	})
	css, err := set.File("book.css")
	if err != nil || string(css) != "p { color: plum }" {
		t.Errorf("book.css is %q, %v", css, err)
	}
	if _, err := set.File("print.css"); err != nil {
		t.Error(err)
	}
	words, err := set.Words("en")
	if err != nil {
		t.Fatal(err)
	}
	if words.Say("bag") != "Pouch" || words.Say("contents") != "Contents" {
		t.Errorf("bag is %q, contents is %q", words.Say("bag"), words.Say("contents"))
	}
}

func TestWhatIsNotThereIsSaid(t *testing.T) {
	if _, err := Shipped().File("booklet/nothing.md"); err == nil || !strings.Contains(err.Error(), "booklet/nothing.md") {
		t.Errorf("a missing template gives %v", err)
	}
	for _, language := range []string{"xx", "../en", "en/..", ""} {
		if _, err := Shipped().Words(language); err == nil {
			t.Errorf("there are words in the language %q", language)
		}
	}
	broken := Shipped().Over(fstest.MapFS{"words/en.txt": {Data: []byte("bag: Bag\nno colon here\n")}})
	if _, err := broken.Words("en"); err == nil || !strings.Contains(err.Error(), "words/en.txt:2") {
		t.Errorf("a line without a colon gives %v", err)
	}
	misfit := Shipped().Over(fstest.MapFS{"x.md": {Data: []byte("{{.Nowhere}}")}})
	if _, err := misfit.Execute("x.md", nil, struct{ Here string }{}); err == nil || !strings.Contains(err.Error(), "x.md") {
		t.Errorf("a template that doesn't fit gives %v", err)
	}
}

// Every word that a template asks for is there. Words asked for in Go are
// tested where they are asked.
func TestTemplatesFindTheirWords(t *testing.T) {
	words, err := Shipped().Words(SourceLanguage)
	if err != nil {
		t.Fatal(err)
	}
	asked := regexp.MustCompile(`(?:say|count) "([a-z-]+)"`)
	found := 0
	walk(t, "booklet", func(name, text string) {
		for _, word := range asked.FindAllStringSubmatch(text, -1) {
			found++
			if strings.HasPrefix(words.Say(word[1]), "[") && strings.HasPrefix(words.Count(word[1], 2), "[") {
				t.Errorf("%s asks for the word %q", name, word[1])
			}
		}
	})
	if found == 0 {
		t.Error("no template asks for a word")
	}
}

// Every language says all that English says, with the same places to fill in, and
// nothing that nobody asks for. Unicode's plural rules, not our own list, tell which
// forms of a counted word a language must have.
func TestLanguagesAreComplete(t *testing.T) {
	source, err := Shipped().Words(SourceLanguage)
	if err != nil {
		t.Fatal(err)
	}
	for _, language := range []string{"ar", "de", "en", "es", "fr", "it", "nl"} {
		words, err := Shipped().Words(language)
		if err != nil {
			t.Fatal(err)
		}
		if missing := words.Missing(source); len(missing) > 0 {
			t.Errorf("%s lacks %v", language, missing)
		}
		for _, name := range words.Names() {
			checkPlaces(t, source, words, name)
		}
	}
}

var places = regexp.MustCompile(`\{[a-z]+\}`)

func checkPlaces(t *testing.T, source, words Words, name string) {
	t.Helper()
	asked := name
	if word, form, counted := strings.Cut(name, "."); counted {
		asked = word + ".other"
		if !slices.Contains(formsOf(words.Language), form) {
			t.Errorf("%s: %s is a form that the language does not have", words.Language, name)
		}
		if form == "one" || form == "two" {
			return // may say the number in a word
		}
	}
	want, got := places.FindAllString(source.Say(asked), -1), places.FindAllString(words.Say(name), -1)
	slices.Sort(want)
	slices.Sort(got)
	if !slices.Equal(want, got) {
		t.Errorf("%s: %s has places for %v, English for %v", words.Language, name, got, want)
	}
}

// The forms of cardinal numbers are those of CLDR's chart "Language Plural Rules"
// (integers; told from memory: Arabic zero 0, one 1, two 2, few 3–10 and 103–110, many
// 11–99, other 100; French one 0–1; German, English, Spanish, Italian and Dutch one 1).
func TestPluralForms(t *testing.T) {
	for _, want := range []struct {
		language string
		number   int
		form     string
	}{
		{"en", 0, "other"}, {"en", 1, "one"}, {"en", 2, "other"}, {"fr", 0, "one"}, {"fr", 1, "one"}, {"fr", 2, "other"},
		{"de", 0, "other"}, {"de", 1, "one"}, {"es", 1, "one"}, {"es", 21, "other"}, {"it", 1, "one"}, {"nl", 1, "one"},
		{"ar", 0, "zero"}, {"ar", 1, "one"}, {"ar", 2, "two"}, {"ar", 8, "few"}, {"ar", 14, "many"}, {"ar", 100, "other"},
	} {
		if got := pluralForm(want.language, want.number); got != want.form {
			t.Errorf("%d in %s is %q, want %q", want.number, want.language, got, want.form)
		}
	}
	words, err := Shipped().Words("fr-CA")
	if err != nil || words.Count("age-and-over", 8) != "dès 8 ans" {
		t.Errorf("French in Canada says %q, %v", words.Count("age-and-over", 8), err)
	}
	if words, _ := Shipped().Words("ar"); words.Say("direction") != "rtl" {
		t.Error("Arabic is not read from right to left")
	}
}

// No number is typed in a template: all come from the kit.
func TestTemplatesHoldNoNumbers(t *testing.T) {
	action := regexp.MustCompile(`(?s)\{\{.*?\}\}`)
	walk(t, "booklet", func(name, text string) {
		if digits := regexp.MustCompile(`[0-9]`).FindString(action.ReplaceAllString(text, "")); digits != "" {
			t.Errorf("%s holds the figure %s", name, digits)
		}
	})
}

// The faces are there, are web fonts by their first bytes, are small enough for
// a file that carries them, and their licences lie beside them.
func TestFaces(t *testing.T) {
	total := 0
	for _, f := range faces() {
		data, err := Shipped().File("fonts/" + f.file + ".woff2")
		if err != nil {
			t.Error(err)
			continue
		}
		if !strings.HasPrefix(string(data), "wOF2") {
			t.Errorf("%s is no WOFF2 file", f.file)
		}
		total += len(data)
	}
	if total > 620_000 {
		t.Errorf("the faces weigh %d bytes", total)
	}
	// A page carries what its letters need: six Latin faces, six more for Łódź, four more for Arabic.
	for text, want := range map[string]int{"Fill to 190 g — “½ cup” at 60 °C, Œuf": 6, "Łódź": 12, "كتيّب": 10, "Łódź كتيّب": 16} {
		rules, err := Shipped().FaceRules(text)
		if err != nil || strings.Count(rules, "@font-face") != want || strings.Contains(rules, "http") {
			t.Errorf("%s: %d faces, not %d (error %v)", text, strings.Count(rules, "@font-face"), want, err)
		}
	}
}

func walk(t *testing.T, folder string, visit func(name, text string)) {
	t.Helper()
	err := fs.WalkDir(shipped, folder, func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := shipped.ReadFile(name)
		visit(name, string(text))
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

// A page that is read from right to left is the other way round: no rule tells the left
// from the right side. (Ticks are drawn, and the margins of a printed page are those of
// its sheet.)
func TestStylesTellStartFromEnd(t *testing.T) {
	sided := regexp.MustCompile(`(?:margin|padding|border)-(?:left|right)|float: (?:left|right)|text-align: (?:left|right)`)
	four := regexp.MustCompile(`(?:margin|padding): ([^\s;]+) ([^\s;]+) ([^\s;]+) ([^\s;]+);`)
	for _, name := range []string{"book.css", "narrow.css"} {
		text, err := Shipped().File(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, found := range sided.FindAllString(string(text), -1) {
			t.Errorf("%s: %s", name, found)
		}
		for _, found := range four.FindAllStringSubmatch(string(text), -1) {
			if found[2] != found[4] {
				t.Errorf("%s: %s tells left from right", name, found[0])
			}
		}
	}
}
