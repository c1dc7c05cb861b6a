package rules_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/rules"
	"tallyfold/kit/schedule"
)

// translated gives what the rules say of the clean French kit with its translation
// edited, fingerprints aside.
func translated(t *testing.T, file string, edits ...string) diag.List {
	t.Helper()
	folder := filepath.Join("testdata", "translation-missing-step", "clean")
	files := fstest.MapFS{}
	for _, name := range []string{"kit.yaml", "method.md", "method.fr.md"} {
		text, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			t.Fatal(err)
		}
		files[name] = &fstest.MapFile{Data: text}
	}
	for i := 0; i < len(edits); i += 2 {
		text := string(files[file].Data)
		if !strings.Contains(text, edits[i]) {
			t.Fatalf("%s does not hold %q", file, edits[i])
		}
		files[file] = &fstest.MapFile{Data: []byte(strings.Replace(text, edits[i], edits[i+1], 1))}
	}
	k, reading := instructions.Open(files, "translated")
	if k == nil {
		t.Fatalf("cannot be read:\n%s", told(reading))
	}
	return append(reading, rules.Check(rules.Subject{Kit: k, Ledger: ledger.Follow(k), Plan: schedule.Of(k)})...)
}

// One slip of a translator gives one finding, of the rule meant, with what is wrong in
// its words and the place in the method beside it.
func TestOneSlipInATranslation(t *testing.T) {
	for _, test := range []struct{ was, is, rule, found string }{
		{"570 g", "750 g", "translation-differs", "says “750 g”, and the method “570 g”"},
		{"570 g", "57 oz", "translation-differs", "says “57 oz”"},
		{"570 g", "570 g (2 lb)", "translation-differs", "says “2 lb”, and the method “570 g”"},
		{"570 g", "5,7 kg", "translation-differs", "says “5,7 kg”"},
		{"[570 g de cire]", "[toute la cire]", "translation-differs", "says “toute la cire”, which is all of it"},
		{"[à 75 °C](warm:)", "[de 75 °C](warm:)", "translation-differs", "says “75 °C”"},
		{"[à 75 °C](warm:)", "[à 75 °C](cool:)", "translation-differs", "has “[à 75 °C](cool:)” where the method has “[to 75 °C](warm:)”"},
		{"[à 75 °C](warm:)", "[en dessous de 75 °C](warm:)", "translation-differs", "says “en dessous de 75 °C”"},
		{"[15 minutes]", "[15 heures]", "translation-differs", "says “15 heures”, and the method “15 minutes”"},
		{"[2 heures]", "[2 minutes]", "translation-differs", "says “2 minutes”, and the method “2 hours”"},
		{"tout le parfum", "le tiers du parfum", "translation-differs", "which is 1/3 of what is there"},
		{"(take:scent)", "(take:wax)", "translation-differs", "where the method has “[all of the fragrance](take:scent)”"},
		{"chacun des 3 pots jusqu'à 195 g", "chacun des 3 pots avec 195 g", "", ""}, // from empty, the same
		{"chacun des 3 pots jusqu'à 195 g", "2 pots à 195 g", "translation-differs", "195 g, for 2"},
		{"chacun des 3 pots jusqu'à 195 g", "chacun des 3 pots jusqu'à 159 g", "translation-differs", "says “159 g”"},
		{", en [5 minutes](work:)", "", "translation-differs", "leaves “[5 minutes](work:)” of the method out"},
		{"Comptez [5 minutes](work:).", "Comptez [5 minutes](work:), puis [encore 5 minutes](work:).", "translation-differs", "and the method has nothing of it"},
		{"[il ne reste plus de paillettes](cue:)", "il ne reste plus de paillettes", "translation-differs", "has 0 cues, and the method 1 cue"},
		{"> ATTENTION : Le pichet devient très chaud.\n", "", "translation-differs", "has 0 cautions, and the method 1 caution"},
		{"> ATTENTION :", "> DANGER :", "translation-differs", "the signal word of DANGER, and the method with CAUTION"},
		{"[le pichet](vessel:jug)", "[le pichet](tool:spoon)", "translation-differs", "does not speak of Pouring jug"},
		{"avec la cuillère en bois", "avec une baguette", "translation-differs", "does not speak of Wooden spoon"},
		{"Laissez-les", "Laissez-les, avec la cuillère en bois,", "translation-differs", "speaks of “cuillère en bois” (Wooden spoon)"},
		{"(step:stir", "(step:remuer", "translation-missing-step", "is no step of the method"},
		{"?of=39c5700b", "?of=00000000", "translation-stale", "another state of this step: 00000000"},
		{"?of=39c5700b", "", "translation-stale", "cannot check whether step 1"},
		{"(step:melt?of=39c5700b)", "(step:melt?in=jug&of=39c5700b)", "", ""},
		{"(step:melt?of=39c5700b)", "(step:melt?in=spoon&of=39c5700b)", "translation-differs", "is worked in Wooden spoon, and in Pouring jug"},
		{"Comptez [15", "Ajoutez un peu d'eau. Comptez [15", "vague-amount", "“un peu d'eau”"},
		{"Comptez [15", "Il en faut 1.5 kg. Comptez [15", "number-format", "“1.5” in a text in the language fr"},
		{"Comptez [15", "Il en faut 1,5 kg, pas 1\u00a0500 g. Comptez [15", "", ""},
		{"570 g de cire", "un peu de cire", "unreadable-amount", "which tells no amount"},
		{"[570 g de cire]", "[0.57 kg de cire]", "unreadable-amount", "0.57"},
		{"[15 minutes]", "[un moment]", "unreadable-amount", "“un moment”"},
		{"570 g", "20 oz", "", ""}, // 567 g, and half of the last digit is 14 g
		{"[à 75 °C]", "[à 167 °F]", "", ""},
		{"[à 75 °C]", "[à 75 °C (167 °F)]", "", ""},
		{"tout le parfum", "la totalité du parfum", "", ""},
		{"tout le parfum", "30 mL de parfum", "", ""}, // what the pack holds
		{"[2 heures]", "[120 minutes]", "", ""},
		{"[15 minutes]", "[environ 15 minutes]", "", ""},
		{"chacun des 3 pots", "chaque pot", "", ""},
		{"une étiquette sur chaque pot", "3 étiquettes", "", ""},
		{"Laissez-les", "Laissez les pots près du pichet", "", ""},
	} {
		found := translated(t, "method.fr.md", test.was, test.is)
		found = slices.DeleteFunc(found, func(f diag.Finding) bool {
			return f.Follows && f.Rule != "translation-stale" || f.Rule == "vague-amount" && test.rule == "unreadable-amount" // told under it
		})
		switch {
		case test.rule == "" && len(found) > 0:
			t.Errorf("%q for %q: want silence, got:\n%s", test.is, test.was, told(found))
		case test.rule == "":
		case len(found) != 1 || found[0].Rule != test.rule || !strings.Contains(found[0].Found, test.found):
			t.Errorf("%q for %q: want one finding of %s with %q, got:\n%s", test.is, test.was, test.rule, test.found, told(found))
		case test.rule != "vague-amount" && test.rule != "unreadable-amount" && (len(found[0].Also) == 0 || found[0].Also[0].Where.File == found[0].Where.File):
			t.Errorf("%q for %q: the place in the method must stand beside:\n%s", test.is, test.was, told(found))
		}
	}
}

// A change in the method alone makes the step stale, and differs where a figure does.
func TestAChangeInTheMethod(t *testing.T) {
	for _, test := range []struct {
		was, is string
		want    []string
	}{
		{"The jug gets hot.", "The jug gets hot, handle and all.", []string{"translation-stale"}},
		{"Tip [570 g of wax](take:wax) into", "Tip <!-- the new one --> [570 g of wax](take:wax) into", nil},
		{"in a water bath\n[to 75", "in a water bath [to 75", nil},
		{"[10 minutes](work:)", "[12 minutes](work:)", []string{"translation-differs", "translation-stale"}},
	} {
		var got []string
		for _, f := range translated(t, "method.md", test.was, test.is) {
			got = append(got, f.Rule)
		}
		if strings.Join(got, " ") != strings.Join(test.want, " ") {
			t.Errorf("%q for %q: %v, want %v", test.is, test.was, got, test.want)
		}
	}
}

// A language whose words are not read is told once, and what can be compared is.
func TestATranslationInAnotherLanguage(t *testing.T) {
	folder := filepath.Join("testdata", "translation-missing-step", "clean")
	files := fstest.MapFS{}
	for _, name := range []string{"kit.yaml", "method.md"} {
		text, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			t.Fatal(err)
		}
		files[name] = &fstest.MapFile{Data: text}
	}
	files["method.pl.md"] = &fstest.MapFile{Data: []byte("## [Stopić wosk](step:melt?of=39c5700b)\n\n> CAUTION: Gorące.\n\n" +
		"[570 g wosku](take:wax), [dzbanek](vessel:jug), [do 75 °C](warm:), [płatki znikną](cue:), [15 minut](work:).\n")}
	k, reading := instructions.Open(files, "translated")
	if len(reading) != 1 || reading[0].Rule != "language-not-read" || reading[0].Where.File.Name != "method.pl.md" {
		t.Errorf("want language-not-read, got:\n%s", told(reading))
	}
	for _, f := range rules.Check(rules.Subject{Kit: k, Ledger: ledger.Follow(k), Plan: schedule.Of(k)}) {
		if f.Rule != "translation-missing-step" {
			t.Errorf("unexpected:\n%s", told(diag.List{f}))
		}
	}
}
