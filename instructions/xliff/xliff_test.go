package xliff

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/templates"
)

func opened(t *testing.T, folder fstest.MapFS) *kit.Kit {
	t.Helper()
	k, found := instructions.Open(folder, "kit")
	if k == nil {
		t.Fatalf("the kit can't be read: %v", found)
	}
	return k
}

// folderOf is an example without its translations.
func folderOf(t *testing.T, name string) fstest.MapFS {
	t.Helper()
	folder := fstest.MapFS{}
	for _, file := range []string{"kit.yaml", "method.md", "trouble.md", "words.md"} {
		text, err := os.ReadFile(filepath.Join("../../examples", name, file))
		if err != nil {
			t.Fatal(err)
		}
		folder[file] = &fstest.MapFile{Data: text}
	}
	pictures, err := filepath.Glob(filepath.Join("../../examples", name, "pictures", "*"))
	if err != nil {
		t.Fatal(err)
	}
	for _, picture := range pictures {
		text, err := os.ReadFile(picture)
		if err != nil {
			t.Fatal(err)
		}
		folder["pictures/"+filepath.Base(picture)] = &fstest.MapFile{Data: text}
	}
	return folder
}

func filesFor(t *testing.T, k *kit.Kit, tag string) []*File {
	t.Helper()
	words, err := templates.Shipped().Words(tag)
	if err != nil {
		t.Fatal(err)
	}
	return Files(k, words)
}

var sources = regexp.MustCompile(`(?s)<source xml:space="preserve">(.*?)</source>`)

// translatedBy fills in the targets of a document from its sources.
func translatedBy(t *testing.T, document []byte, say func(source string) string) *Translated {
	t.Helper()
	filled := sources.ReplaceAllStringFunc(string(document), func(found string) string {
		return found + "<target>" + say(sources.FindStringSubmatch(found)[1]) + "</target>"
	})
	told, err := Read([]byte(filled))
	if err != nil {
		t.Fatal(err)
	}
	return told
}

func same(source string) string { return source }

// A translator of another English who changes no word gets the same kit back: every
// link, amount, caution and paragraph of all examples.
func TestRoundTrip(t *testing.T) {
	for _, name := range []string{"drawer-sachets", "harbour-candles", "harbour-yarns", "pocket-notebooks"} {
		folder := folderOf(t, name)
		k := opened(t, folder)
		files := filesFor(t, k, "en-GB")
		told := translatedBy(t, Write(files, "en", "en-GB"), same)
		for _, file := range files[1:] {
			text, troubles := told.Markdown(file, func(string) string { return "" })
			if len(troubles) > 0 {
				t.Errorf("%s: %v", name, troubles)
			}
			folder[file.Name+".en-GB.md"] = &fstest.MapFile{Data: []byte(text)}
		}
		texts, troubles := told.Texts(files[0], "", nil)
		if len(troubles) > 0 {
			t.Errorf("%s: %v", name, troubles)
		}
		folder["kit.en-GB.txt"] = &fstest.MapFile{Data: []byte(texts)}
		again := opened(t, folder)
		translation := again.Translation("en-GB")
		if translation == nil {
			t.Fatalf("%s: no translation was read", name)
		}
		for i, step := range again.Method.Steps() {
			other := translation.Method.Steps()[i]
			if other.Fingerprint() != step.Fingerprint() || other.Of.Value != step.Fingerprint() || other.ID != step.ID {
				t.Errorf("%s, step %s came back otherwise:\n%s\n%s", name, step.ID, step.Body.Text(), other.Body.Text())
			}
		}
		if left := Pending(filesFor(t, again, "en-GB"), again, translation, "en-GB"); countUnits(left) > 0 {
			t.Errorf("%s: %d texts are still untranslated, such as %q", name, countUnits(left), firstUnit(left).Text())
		}
		if len(translation.Troubles) != len(again.Troubles) || len(translation.Words) != len(again.Words) {
			t.Errorf("%s: troubles or further texts are missing", name)
		}
	}
}

func countUnits(files []*File) int {
	n := 0
	for _, file := range files {
		for _, section := range file.Sections {
			n += len(section.Units)
		}
	}
	return n
}

func firstUnit(files []*File) *Unit {
	for _, file := range files {
		for _, section := range file.Sections {
			return section.Units[0]
		}
	}
	return nil
}

// Amounts come back in the words of the language, signal words too, and the translator
// sees neither link nor figure as text.
func TestAmountsAreLocked(t *testing.T) {
	k := opened(t, folderOf(t, "drawer-sachets"))
	files := filesFor(t, k, "fr")
	document := string(Write(files, "en", "fr"))
	for _, source := range sources.FindAllStringSubmatch(document, -1) {
		if text := regexp.MustCompile(`<[^>]*>`).ReplaceAllString(source[1], ""); strings.Contains(text, "](") {
			t.Errorf("a link stands in the text to translate: %s", text)
		}
	}
	text, troubles := translatedBy(t, []byte(document), same).Markdown(files[1], func(string) string { return "" })
	if len(troubles) > 0 {
		t.Fatal(troubles)
	}
	text = strings.Join(strings.Fields(text), " ")
	for _, want := range []string{"> AVERTISSEMENT : The mix", "> ATTENTION : Orris", "[4 c. à café rase of", "[40 cm of ribbon](use:ribbon)", "[](take:cedar)", "[12 h](wait:night)"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in the translation:\n%s", want, text)
		}
	}
}

// What a translator may not do is told, and nothing of that section is taken over.
func TestWhatCannotBeTakenOver(t *testing.T) {
	k := opened(t, folderOf(t, "drawer-sachets"))
	files := filesFor(t, k, "fr")
	document := Write(files, "en", "fr")
	code := regexp.MustCompile(`<ph [^>]*"4 level teaspoons"[^>]*/>`)
	for _, test := range []struct {
		why, want string
		say       func(string) string
	}{
		{"a code is gone", "which is locked, is missing", func(s string) string { return code.ReplaceAllString(s, "5 level teaspoons") }},
		{"a code twice", "twice", func(s string) string { return code.ReplaceAllStringFunc(s, func(c string) string { return c + c }) }},
		{"a code of their own", "does not have", func(s string) string {
			return code.ReplaceAllStringFunc(s, func(c string) string { return c + `<ph id="99"/>` })
		}},
		{"a link of their own", "a link of its own", func(s string) string {
			return code.ReplaceAllStringFunc(s, func(c string) string { return c + `[x](take:orris)` })
		}},
	} {
		text, troubles := translatedBy(t, document, test.say).Markdown(files[1], func(name string) string { return "KEPT " + name })
		if len(troubles) != 1 || troubles[0].Unit != "step-mix-3" || !strings.Contains(troubles[0].Why, test.want) {
			t.Errorf("%s: %v", test.why, troubles)
		}
		if !strings.Contains(text, "KEPT step:mix\n") || strings.Contains(text, "step:mix?") {
			t.Errorf("%s: the section was taken over all the same", test.why)
		}
	}
	changed := folderOf(t, "drawer-sachets")
	changed["method.md"].Data = []byte(strings.Replace(string(changed["method.md"].Data), "Roll up your sleeves", "Tie on an apron", 1))
	_, troubles := translatedBy(t, document, same).Markdown(filesFor(t, opened(t, changed), "fr")[1], func(string) string { return "" })
	if len(troubles) != 1 || !strings.Contains(troubles[0].Why, "changed since") {
		t.Errorf("a changed step gives %v", troubles)
	}
}

// A translation of some steps leaves the others as they were.
func TestOnlyWhatIsPending(t *testing.T) {
	folder := folderOf(t, "drawer-sachets")
	for _, file := range []string{"method.fr.md", "trouble.fr.md", "words.fr.md", "kit.fr.txt"} {
		text, err := os.ReadFile(filepath.Join("../../examples/drawer-sachets", file))
		if err != nil {
			t.Fatal(err)
		}
		folder[file] = &fstest.MapFile{Data: text}
	}
	k := opened(t, folder)
	if n := countUnits(Pending(filesFor(t, k, "fr"), k, k.Translation("fr"), "fr")); n != 0 {
		t.Errorf("%d texts of a whole translation are handed out", n)
	}
	folder["method.md"].Data = []byte(strings.Replace(string(folder["method.md"].Data), "Roll up your sleeves", "Tie on an apron", 1))
	k = opened(t, folder)
	all := filesFor(t, k, "fr")
	left := Pending(all, k, k.Translation("fr"), "fr")
	if len(left[1].Sections) != 1 || left[1].Sections[0].Name != "step:table" {
		t.Fatalf("handed out: %+v", left[1].Sections)
	}
	told := translatedBy(t, Write(left, "en", "fr"), same)
	text, troubles := told.Markdown(all[1], func(name string) string { return Kept(k.Translation("fr"), name) })
	if len(troubles) > 0 || !strings.Contains(text, "Tie on an apron") || !strings.Contains(text, "Couvrez le saladier avec [l'assiette](tool:plate)") {
		t.Errorf("%v\n%s", troubles, text)
	}
}

func TestReadRefuses(t *testing.T) {
	for text, want := range map[string]string{
		"":          "no XLIFF 2 file",
		"not xml <": "cannot be read as XML",
		"<xliff":    "cannot be read as XML",
		`<xliff xmlns="urn:oasis:names:tc:xliff:document:1.2" version="1.2"/>`:              "XLIFF 1.2",
		`<xliff xmlns="urn:oasis:names:tc:xliff:document:2.0" version="2.0" srcLang="en"/>`: "trgLang",
		`<xliff version="2.0" trgLang="fr"><unit id="a"><source>x`:                          "cannot be read as XML",
	} {
		if _, err := Read([]byte(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q gives %v, want %q", text, err, want)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add(`<xliff version="2.0" srcLang="en" trgLang="fr"><file id="method"><unit id="step-mix-1"><segment><source>Mix</source><target>Mêler</target></segment></unit></file></xliff>`)
	f.Add(`<xliff version="2.1" trgLang="fr"><unit id="a"><source><pc id="1">x<ph id="2"/></pc></source><target></pc></target></unit></xliff>`)
	f.Fuzz(func(t *testing.T, text string) {
		if told, err := Read([]byte(text)); err == nil && told.To == "" {
			t.Error("a document without a language was read")
		}
	})
}

// A library of another hand read our document and wrote it anew with its targets
// (testdata/NOTICE.md). What it wrote is read as our own: it found every unit and code.
func TestAnotherHand(t *testing.T) {
	folder := fstest.MapFS{}
	for _, file := range []string{"kit.yaml", "method.md", "trouble.md", "words.md"} {
		text, err := os.ReadFile(filepath.Join("testdata/kit", file))
		if err != nil {
			t.Fatal(err)
		}
		folder[file] = &fstest.MapFile{Data: text}
	}
	returned, err := os.ReadFile("testdata/returned.fr.xlf")
	if err != nil {
		t.Fatal(err)
	}
	theirs, err := Read(returned)
	if err != nil {
		t.Fatal(err)
	}
	if theirs.From != "en" || theirs.To != "fr" {
		t.Errorf("it is from %q to %q", theirs.From, theirs.To)
	}
	files := filesFor(t, opened(t, folder), "fr")
	ours := translatedBy(t, Write(files, "en", "fr"), same)
	for _, file := range files[1:] {
		nothing := func(string) string { return "" }
		got, troubles := theirs.Markdown(file, nothing)
		want, _ := ours.Markdown(file, nothing)
		if len(troubles) > 0 || got != want || want == "" {
			t.Errorf("%s: %v\ngot:\n%s\nwant:\n%s", file.Name, troubles, got, want)
		}
	}
}
