package readability

import (
	"encoding/json"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// A passage is what other people's counters say of a text; testdata/oracle.mjs
// writes it, and passages.json names them with their versions.
type passage struct {
	Name                        string
	Sentences, Words, Syllables int
	Ease, Grade                 float64
	LibraryEase, LibraryGrade   float64
}

func passages(t *testing.T) (told []passage, texts map[string]string) {
	t.Helper()
	data, err := os.ReadFile("testdata/passages.json")
	if err != nil {
		t.Fatal(err)
	}
	var answers struct{ Passages []passage }
	if err := json.Unmarshal(data, &answers); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile("testdata/passages.txt")
	if err != nil {
		t.Fatal(err)
	}
	texts = map[string]string{}
	for _, block := range strings.Split(string(text), "\n== ")[1:] {
		name, body, _ := strings.Cut(block, "\n")
		texts[name] = strings.TrimSpace(body)
	}
	if len(answers.Passages) < 50 || len(texts) != len(answers.Passages) {
		t.Fatalf("%d texts and %d answers, want the same number and at least 50", len(texts), len(answers.Passages))
	}
	return answers.Passages, texts
}

// figures is how many words of a text begin with a digit. The syllable counter gives
// those none, we one; they are left out where the two are compared.
func figures(text string) int {
	n := 0
	for _, sentence := range english.Sentences(text) {
		for _, word := range sentence.Words {
			if c := text[word.Start]; c >= '0' && c <= '9' {
				n++
			}
		}
	}
	return n
}

// Words and sentences agree exactly: on these passages both definitions coincide.
func TestWordsAndSentencesAgreeWithTheLibrary(t *testing.T) {
	told, texts := passages(t)
	for _, p := range told {
		got := english.Count(texts[p.Name])
		if got.Words != p.Words || got.Sentences != p.Sentences {
			t.Errorf("%s: %d words in %d sentences, the library says %d in %d", p.Name, got.Words, got.Sentences, p.Words, p.Sentences)
		}
	}
}

// Syllables agree within 5 % of each passage and within 1 % of all of them.
func TestSyllablesAgreeWithTheLibrary(t *testing.T) {
	told, texts := passages(t)
	ours, theirs := 0, 0
	for _, p := range told {
		got := english.Count(texts[p.Name]).Syllables - figures(texts[p.Name])
		if off := math.Abs(float64(got-p.Syllables)) / float64(p.Syllables); off > 0.05 {
			t.Errorf("%s: %d syllables, the library says %d, %.1f %% off", p.Name, got, p.Syllables, 100*off)
		}
		ours, theirs = ours+got, theirs+p.Syllables
	}
	if off := math.Abs(float64(ours-theirs)) / float64(theirs); off > 0.01 {
		t.Errorf("%d syllables in all, the library says %d", ours, theirs)
	}
}

// The formulas agree to the last digit on the library's own counts, and within the
// syllables' margin on ours: half a syllable in ten words is 4 points and 0.6 grades.
// text-readability rounds syllables a word to a tenth first: that alone is worth up
// to 0.05 × 84.6 = 4.2 points and 0.05 × 11.8 = 0.6 grades more.
func TestScoresAgreeWithTheLibrary(t *testing.T) {
	told, texts := passages(t)
	for _, p := range told {
		counts := Counts{p.Sentences, p.Words, p.Syllables}
		if ease, grade := english.Ease.Score(counts), english.Grade.Score(counts); math.Abs(ease-p.Ease) > 1e-9 || math.Abs(grade-p.Grade) > 1e-9 {
			t.Errorf("%s: the formulas give %v and %v, the library's %v and %v", p.Name, ease, grade, p.Ease, p.Grade)
		}
		own := english.Count(texts[p.Name])
		own.Syllables -= figures(texts[p.Name])
		within(t, p.Name+", ease", english.Ease.Score(own), p.Ease, 5)
		within(t, p.Name+", grade", english.Grade.Score(own), p.Grade, 0.7)
		within(t, p.Name+", ease rounded", english.Ease.Score(own), p.LibraryEase, 9.3)
		within(t, p.Name+", grade rounded", english.Grade.Score(own), p.LibraryGrade, 1.3)
	}
}

func within(t *testing.T, what string, got, want, margin float64) {
	t.Helper()
	if math.Abs(got-want) > margin {
		t.Errorf("%s: %.2f, want %.2f ± %.2f", what, got, want, margin)
	}
}

// A pronouncing dictionary says how many syllables each word is spoken with. At most
// 2 % of the words may differ from all ways to say them.
func TestSyllablesAgreeWithThePronouncingDictionary(t *testing.T) {
	data, err := os.ReadFile("testdata/words.tsv")
	if err != nil {
		t.Fatal(err)
	}
	var differ []string
	words := 0
	for _, line := range strings.Split(strings.TrimSpace(string(data)), "\n")[1:] {
		word, spoken, _ := strings.Cut(line, "\t")
		words++
		got := strconv.Itoa(english.Syllables(word))
		if !strings.Contains(" "+spoken+" ", " "+got+" ") {
			differ = append(differ, word+" "+got+" (spoken "+spoken+")")
		}
	}
	if words < 1500 {
		t.Fatalf("only %d words", words)
	}
	if 50*len(differ) > words {
		t.Errorf("%d of %d words differ:\n%s", len(differ), words, strings.Join(differ, "\n"))
	}
	t.Logf("%d of %d words differ: %s", len(differ), words, strings.Join(differ, ", "))
}
