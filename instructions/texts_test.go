package instructions

import (
	"maps"
	"testing"

	"tallyfold/kit/source"
)

func TestReadTexts(t *testing.T) {
	for _, test := range []struct {
		why, text string
		want      map[string]string
		found     int
	}{
		{"pairs, notes and blank lines", "# note\nA bag\n  Un sachet\n\nTwo: bags\n\tDeux : sachets\n", map[string]string{"A bag": "Un sachet", "Two: bags": "Deux : sachets"}, 0},
		{"line ends of other systems", "A bag\r\n  Un sachet\r\n", map[string]string{"A bag": "Un sachet"}, 0},
		{"a text without translation has none", "A bag\nTwo bags\n  Deux sachets\n", map[string]string{"Two bags": "Deux sachets"}, 0},
		{"a translation of nothing", "  Un sachet\n", map[string]string{}, 1},
		{"a translation in two lines", "A bag\n  Un sachet\n  de coton\n", map[string]string{"A bag": "Un sachet"}, 1},
		{"characters that are no text", "A bag\n  Un\x00sachet\n", map[string]string{}, 1},
	} {
		texts, found := ReadTexts(source.NewFile("kit.fr.txt", []byte(test.text)))
		if !maps.Equal(texts, test.want) || len(found) != test.found {
			t.Errorf("%s: %v, %d findings (%v)", test.why, texts, len(found), found)
		}
	}
}

func FuzzReadTexts(f *testing.F) {
	f.Add("A bag\n  Un sachet\n")
	f.Add("  lost\n# note\nA\n\tB\n")
	f.Fuzz(func(t *testing.T, text string) {
		file := source.NewFile("kit.fr.txt", []byte(text))
		texts, found := ReadTexts(file)
		for own, other := range texts {
			if own == "" || other == "" {
				t.Errorf("%q stands for %q", other, own)
			}
		}
		for _, one := range found {
			if !one.Where.Known() {
				t.Error("a finding without a place")
			}
		}
	})
}

// The texts beside a method in another language are read with the names of those that
// they translate.
func TestTextsBesideATranslation(t *testing.T) {
	k, found := Open(folder(map[string]string{
		"kit.yaml":      gels,
		"method.md":     oneStep,
		"trouble.md":    "## [Water on top](trouble:weeping)\n\nPour it off.\n",
		"words.md":      "## Welcome\n\nGood day.\n",
		"method.fr.md":  "## [Chauffer l'eau](step:warm?in=pan)\n\nChauffez [570 g d'eau](take:water) [à 80 °C](warm:).\n",
		"trouble.fr.md": "## [De l'eau dessus](trouble:weeping)\n\nVersez-la.\n",
		"words.fr.md":   "## [Bienvenue](words:welcome)\n\nBonjour.\n",
		"kit.fr.txt":    "Gels\n  Gelées\n",
	}), "quayside")
	if len(found) > 0 {
		t.Fatalf("findings: %v", found)
	}
	translation := k.Translation("fr-CA")
	if translation == nil {
		t.Fatal("French in Canada is not served by French")
	}
	told := k.In(translation)
	if told.Trouble("weeping") == nil || told.Trouble("weeping").Title != "De l'eau dessus" {
		t.Errorf("troubles: %+v", told.Troubles)
	}
	if told.WordsAbout("welcome") == nil || told.WordsAbout("welcome").Title != "Bienvenue" {
		t.Errorf("words: %+v", told.Words)
	}
	if told.Language.Value != "fr" || k.Language.Value == "fr" || k.Trouble("weeping").Title != "Water on top" {
		t.Error("the kit itself was changed, or its translation was not")
	}
}
