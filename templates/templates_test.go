package templates

import (
	"io/fs"
	"regexp"
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
	asked := regexp.MustCompile(`say "([a-z-]+)"`)
	found := 0
	walk(t, "booklet", func(name, text string) {
		for _, word := range asked.FindAllStringSubmatch(text, -1) {
			found++
			if strings.HasPrefix(words.Say(word[1]), "[") {
				t.Errorf("%s asks for the word %q", name, word[1])
			}
		}
	})
	if found == 0 {
		t.Error("no template asks for a word")
	}
}

// Every language says all that English says, with the same places to fill in.
func TestLanguagesAreComplete(t *testing.T) {
	source, err := Shipped().Words(SourceLanguage)
	if err != nil {
		t.Fatal(err)
	}
	places := regexp.MustCompile(`\{[a-z]+\}`)
	walk(t, "words", func(name, _ string) {
		language := strings.TrimSuffix(strings.TrimPrefix(name, "words/"), ".txt")
		words, err := Shipped().Words(language)
		if err != nil {
			t.Fatal(err)
		}
		if missing := words.Missing(source); len(missing) > 0 {
			t.Errorf("%s lacks %v", name, missing)
		}
		for _, word := range source.Names() {
			for _, place := range places.FindAllString(source.Say(word), -1) {
				if !strings.Contains(words.Say(word), place) {
					t.Errorf("%s: %s has no place for %s", name, word, place)
				}
			}
		}
	})
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
	if total > 400_000 {
		t.Errorf("the faces weigh %d bytes", total)
	}
	rules, err := Shipped().FaceRules()
	if err != nil || strings.Count(rules, "@font-face") != len(faces()) || strings.Contains(rules, "http") {
		t.Errorf("the face rules are not whole: %v", err)
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
