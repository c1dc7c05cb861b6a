package instructions

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"tallyfold/kit"
)

// The translations of an example, read whole; UPDATE_GOLDEN=1 writes the files anew.
func TestTranslationsOfTheExample(t *testing.T) {
	k, found := Open(os.DirFS("../examples/drawer-sachets"), "drawer-sachets")
	if k == nil || len(found) > 0 {
		t.Fatalf("cannot be read: %v", toldFindings(found))
	}
	var tags []string
	for _, translation := range k.Translations {
		tags = append(tags, translation.Language)
		if !translation.WordsRead {
			t.Errorf("%s is not read", translation.Language)
		}
		compareGolden(t, "testdata/drawer-sachets."+translation.Language+".want", toldMethod(translation.Method, nil))
		for _, step := range translation.Method.Steps() {
			if own := k.Step(step.ID); own == nil || step.Of.Value != own.Fingerprint() || step.Vessel != own.Vessel {
				t.Errorf("%s, step %s: of %q in %q", translation.Language, step.ID, step.Of.Value, step.Vessel)
			}
		}
	}
	if diff := cmp.Diff([]string{"de", "fr"}, tags); diff != "" {
		t.Error(diff)
	}
}

const (
	ownMethod  = "# Wax\n\n## [Melt](step:melt?in=jug)\n\n[all of the wax](take:wax) [5 minutes](work:)\n\n# Labels\n\n## [Dry](step:dry)\n\n[5 minutes](wait:)\n"
	inGerman   = "# Das Wachs\n\n## [Schmelzen](step:melt?of=00000000)\n\n[alles Wachs](take:wax) [5 Minuten](work:)\n\n# Etiketten\n\n## [Trocknen](step:dry)\n\n[5 Minuten](wait:)\n"
	candleRuns = candles + "runs: [{name: Plain, with: {scent: oil}, parts: [wax]}]\n"
)

// Which files are translations, and what their names tell.
func TestTranslationFiles(t *testing.T) {
	for _, test := range []struct{ file, language, want string }{
		{"method.de.md", "de", ""},
		{"method.de-AT.md", "de-AT", ""},
		{"method.DE.md", "de", ""},
		{"method.pl.md", "pl", `language-not-read ""`},
		{"method.german.md", "", `misnamed-file ""`},
		{"method.new.md", "", `misnamed-file ""`},
		{"method.en.md", "", `misnamed-file ""`},
		{"methods.md", "", ""},
		{"method.de.md.orig", "", ""},
	} {
		files := fstest.MapFS{"kit.yaml": {Data: []byte(candleRuns)}, "method.md": {Data: []byte(ownMethod)}, test.file: {Data: []byte(inGerman)}}
		k, found := Open(files, "candles")
		if diff := cmp.Diff(test.want, strings.Join(toldFindings(found), " | ")); diff != "" {
			t.Errorf("%s: %s", test.file, diff)
		}
		got := ""
		for _, translation := range k.Translations {
			got += translation.Language
		}
		if got != test.language {
			t.Errorf("%s: languages %q, want %q", test.file, got, test.language)
		}
	}
}

// A translated step is that of the method: its vessel, its part, its fingerprint.
func TestTranslatedSteps(t *testing.T) {
	k, found := Open(fstest.MapFS{"kit.yaml": {Data: []byte(candleRuns)}, "method.md": {Data: []byte(ownMethod)}, "method.de.md": {Data: []byte(inGerman)}}, "candles")
	if len(found) > 0 {
		t.Fatal(toldFindings(found))
	}
	var told []string
	for _, part := range k.Translations[0].Method.Parts {
		for _, step := range part.Steps {
			told = append(told, fmt.Sprintf("%s/%s in %q of %q", part.ID, step.ID, step.Vessel, step.Of.Value))
		}
	}
	if diff := cmp.Diff([]string{`wax/melt in "jug" of "00000000"`, `labels/dry in "" of ""`}, told); diff != "" {
		t.Error(diff)
	}
	if _, found := readMethod(t, "## [Stir](step:stir?of=00000000)\n"); len(found) != 1 || found[0] != `unreadable-link "of"` {
		t.Errorf("the method itself is of nothing: %v", found)
	}
}

// A fingerprint changes with what a translator must know of, and with nothing else.
func TestFingerprint(t *testing.T) {
	of := func(text string) string {
		k, _ := Open(fstest.MapFS{"kit.yaml": {Data: []byte(candles)}, "method.md": {Data: []byte(text)}}, "candles")
		return k.Method.Steps()[0].Fingerprint()
	}
	const text = "## [Melt](step:melt?in=jug)\n\n> CAUTION: It is hot.\n\nTip in [all of the wax](take:wax) and wait.\n"
	was := of(text)
	if len(was) != 8 || strings.Trim(was, "0123456789abcdef") != "" {
		t.Errorf("%q are no eight digits", was)
	}
	for _, test := range []struct {
		was, is string
		changes bool
	}{
		{"(step:melt", "(step:molten", false}, // the name is what the translation goes by
		{"and wait.", "and\nwait.", false},
		{"Tip in", "Tip <!-- a note --> in", false},
		{"and wait.", "and  wait.", false},
		{"[Melt]", "[Melt it]", true},
		{"in=jug", "in=ladle", true},
		{"CAUTION", "WARNING", true},
		{"It is hot.", "It is very hot.", true},
		{"all of the wax", "half of the wax", true},
		{"(take:wax)", "(take:oil)", true},
		{"(take:wax)", "(take:wax?into=ladle)", true},
		{"and wait.", "and wait. Stir.", true},
	} {
		if now := of(strings.Replace(text, test.was, test.is, 1)); (now != was) != test.changes {
			t.Errorf("%q for %q: %s, was %s", test.is, test.was, now, was)
		}
	}
}

// Names for one language do for its regions, and the kit's own name always.
func TestNamesInLanguages(t *testing.T) {
	k := read(t, strings.Replace(candles, "de: Glas mit Deckel / Glas", "de: Glas mit Deckel / Glas, de-CH: Gläsli", 1))
	jar := k.Component("jar").Name
	for tag, want := range map[string]string{"de": "Glas mit Deckel", "de-AT": "Glas mit Deckel", "de-CH": "Gläsli", "pl": "Glass jar", "en": "Glass jar"} {
		if got := jar.In(tag); got != want {
			t.Errorf("in %s: %q, want %q", tag, got, want)
		}
	}
	if diff := cmp.Diff([]string{"Glas mit Deckel", "Glas", "Glass jar"}, jar.AllIn("de")); diff != "" {
		t.Error(diff)
	}
	if (kit.Name{ID: "jar"}).In("de") != "jar" {
		t.Error("a thing without a name is called by its key")
	}
}
