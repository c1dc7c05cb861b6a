package readability

import (
	"math"
	"strings"
	"testing"
)

// Worked values of Flesch 1948 and Kincaid et al. 1975: the formulas on counts that
// were made by hand; 121.22 and −3.40 are the published ends of both scales.
func TestWorkedScores(t *testing.T) {
	for _, c := range []struct {
		counts      Counts
		ease, grade float64
	}{
		{Counts{1, 1, 1}, 121.22, -3.40},
		{Counts{1, 6, 6}, 116.145, -1.45},
		{Counts{1, 13, 24}, 37.455, 11.265},
		{Counts{1, 16, 23}, 68.98, 7.6125},
		{Counts{1, 16, 24}, 63.695, 8.35},
		{Counts{}, 0, 0},
	} {
		if got := english.Ease.Score(c.counts); math.Abs(got-c.ease) > 0.0051 {
			t.Errorf("%+v: ease %.3f, want %.3f", c.counts, got, c.ease)
		}
		if got := english.Grade.Score(c.counts); math.Abs(got-c.grade) > 0.0051 {
			t.Errorf("%+v: grade %.3f, want %.3f", c.counts, got, c.grade)
		}
	}
}

// The sentence that is quoted most with these formulas: 13 words, 24 syllables.
func TestTheQuotedSentence(t *testing.T) {
	got := english.Count("The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.")
	if want := (Counts{1, 13, 24}); got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
}

func TestSentences(t *testing.T) {
	for text, want := range map[string][]string{
		"Melt it. Pour it!":                              {"Melt it.", "Pour it!"},
		"Is it clear? Then pour.":                        {"Is it clear?", "Then pour."},
		"Warm it to 60. 3 jars wait.":                    {"Warm it to 60.", "3 jars wait."},
		"Take 1.5 g, or 2–3 drops.":                      {"Take 1.5 g, or 2–3 drops."},
		"Use a No. 10 wick. Trim it.":                    {"Use a No. 10 wick.", "Trim it."},
		"Is there glue? There is no. Go on.":             {"Is there glue?", "There is no.", "Go on."},
		"Use colours, e.g. Blue or red. Stir.":           {"Use colours, e.g. Blue or red.", "Stir."},
		"Soften it (approx. Five minutes). Stir.":        {"Soften it (approx. Five minutes).", "Stir."},
		"Add 5 oz. of wax. Then add 3 oz. Stir it.":      {"Add 5 oz. of wax.", "Then add 3 oz.", "Stir it."},
		"Warm it to 75 °C. Add wax.":                     {"Warm it to 75 °C.", "Add wax."},
		"It says “Stop.” Then stop.":                     {"It says “Stop.”", "Then stop."},
		"Take bag A. Open it.":                           {"Take bag A.", "Open it."},
		"Wait … then go on.":                             {"Wait … then go on."},
		"Look at jar.svg now.":                           {"Look at jar.svg now."},
		"You need:\n\n- wax\n- a jar\n- one wick":        {"You need:", "wax", "a jar", "one wick"},
		"1. Fold it;\n2. Cut it in 2. Then\n   press it": {"Fold it;", "Cut it in 2.", "Then\n   press it"},
		"":    nil,
		"… !": nil,
	} {
		var got []string
		for _, sentence := range english.Sentences(text) {
			got = append(got, text[sentence.Start:sentence.End])
		}
		if strings.Join(got, "|") != strings.Join(want, "|") {
			t.Errorf("%q:\n got %q\nwant %q", text, got, want)
		}
	}
}

func TestSyllables(t *testing.T) {
	for word, want := range map[string]int{
		"wax": 1, "little": 2, "tables": 2, "melted": 2, "baked": 1, "boxes": 2, "bakes": 1, "hundred": 2, "litre": 2,
		"two-handed": 3, "don't": 1, "isn't": 2, "don’t": 1, "glass's": 2, "café": 2, "naïve": 2, "2-ply": 2, "550": 1,
		"mL": 1, "PDF": 1, "o'clock": 2, "Thermometer": 4, "league": 1, "microwave": 3, "A4": 1, "1920s": 1, "'": 1,
	} {
		if got := english.Syllables(word); got != want {
			t.Errorf("%s: %d, want %d", word, got, want)
		}
	}
}

func TestNoTableForALanguage(t *testing.T) {
	if _, ok := In("xx"); ok {
		t.Error("there is a table for no language")
	}
	if l, ok := In("en"); !ok || l != english {
		t.Error("there is no table for English")
	}
}

// Whatever the text, words lie inside sentences and in order, and each has a syllable.
func FuzzSentences(f *testing.F) {
	f.Add("Warm it to 75 °C. Add 1.5 g, e.g. of wax.\n\n1. Stir\n- it’s “done.”")
	f.Add("é'é'-.-\r\n\r\n..A. 1) b")
	f.Fuzz(func(t *testing.T, text string) {
		at := 0
		for _, sentence := range english.Sentences(text) {
			if sentence.Start < at || sentence.End > len(text) || len(sentence.Words) == 0 {
				t.Fatalf("%q: sentence %d to %d after %d", text, sentence.Start, sentence.End, at)
			}
			at = sentence.Start
			for _, word := range sentence.Words {
				if word.Start < at || word.End <= word.Start || word.End > sentence.End || english.Syllables(word.Of(text)) < 1 {
					t.Fatalf("%q: word %+v of %+v", text, word, sentence)
				}
				at = word.End
			}
		}
	})
}
