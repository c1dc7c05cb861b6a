// Package readability counts what the Flesch formulas ask for, the sentences, words
// and syllables of a text, and gives the two scores. It knows nothing of kits.
//
// Counting follows the table of one language (see english.go). A further language is
// one more table in languages.
package readability

// Counts are the three figures that both formulas rest on.
type Counts struct{ Sentences, Words, Syllables int }

// Plus adds the counts of another text.
func (c Counts) Plus(d Counts) Counts {
	return Counts{c.Sentences + d.Sentences, c.Words + d.Words, c.Syllables + d.Syllables}
}

// A Formula is a score linear in words a sentence and syllables a word.
type Formula struct{ Base, PerSentenceLength, PerWordLength float64 }

// Score gives the score of a text; 0 where there is no word.
func (f Formula) Score(c Counts) float64 {
	if c.Words == 0 || c.Sentences == 0 {
		return 0
	}
	return f.Base + f.PerSentenceLength*float64(c.Words)/float64(c.Sentences) +
		f.PerWordLength*float64(c.Syllables)/float64(c.Words)
}

// A Language is what is needed to count in one language.
type Language struct {
	// Ease is higher the easier a text reads, Grade the year at school that a reader
	// must have reached.
	Ease, Grade Formula
	// abbreviations end with a point that never ends a sentence, labels with one that
	// does not before a figure ("no. 3"), units with one that does only before a capital.
	abbreviations, labels, units map[string]bool
	// syllables counts those of one word of letters, in lower case, without hyphens.
	syllables func(word string) int
}

// languages by the first part of their tag.
var languages = map[string]*Language{
	"en": english,
}

// In gives the table of a language by the first part of its tag ("en" of "en-GB");
// ok is false where there is none.
func In(tag string) (l *Language, ok bool) {
	l, ok = languages[tag]
	return l, ok
}

// Count counts a text.
func (l *Language) Count(text string) Counts {
	var counts Counts
	for _, sentence := range l.Sentences(text) {
		counts = counts.Plus(l.CountIn(text, sentence))
	}
	return counts
}

// CountIn counts one sentence of a text.
func (l *Language) CountIn(text string, sentence Sentence) Counts {
	counts := Counts{Sentences: 1, Words: len(sentence.Words)}
	for _, word := range sentence.Words {
		counts.Syllables += l.Syllables(word.Of(text))
	}
	return counts
}
