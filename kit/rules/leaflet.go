package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/source"
)

// This file lends the word lists of the rules to whoever reads prose that is no method
// yet. Each function takes running text and the tag of its language and gives places in
// bytes of the text. Of a language that a list is not kept for there is nothing.

// A Passage is a part of a text that a word list knows.
type Passage struct{ Start, End int }

// A NamedTool is a tool that a text speaks of, by the name the list has for it.
type NamedTool struct {
	Passage
	Called string
}

// ToolsNamed gives the tools that a text speaks of as used, by the words of the rule
// tool-not-listed, in the order of the text.
func ToolsNamed(text, tag string) []NamedTool {
	r, k := plainReading(text), kitIn(tag)
	all := unlisted(k, toolSenses[baseOf(tag)])
	var found []NamedTool
	for i := 0; i < len(r.words); {
		longest, called := 0, ""
		for _, name := range all[singular(r.words[i].text)] {
			if n := r.phrase(i, name.words); n > longest && !isInnocent(k, r, i, name.toolSense) {
				longest, called = n, name.called
			}
		}
		if longest > 0 {
			found = append(found, NamedTool{r.passage(i, i+longest-1), called})
		}
		i += max(longest, 1)
	}
	return found
}

// VagueAmounts gives the phrases that leave an amount to the reader, by the words of
// the rule vague-amount: "a handful of", "plenty of".
func VagueAmounts(text, tag string) []Passage {
	language := baseOf(tag)
	v := vagueSearch{table: vagueWords[language], phrases: vaguePhrases[language]}
	r := plainReading(text)
	var found []Passage
	for i := 0; i < len(r.words); {
		n := v.phraseAt(r, i)
		if n > 0 {
			found = append(found, r.passage(i, i+n-1))
		}
		i += max(n, 1)
	}
	return found
}

// An OpenPhrase leaves a time, a heat or a place to the reader.
type OpenPhrase struct {
	Passage
	Heat, Place bool // neither: a time
}

// OpenPhrases gives the phrases that leave a time, a heat or a place to the reader, by
// the words of the rule vague-instruction: "until done", "a gentle heat".
func OpenPhrases(text, tag string) []OpenPhrase {
	r, phrases := plainReading(text), openPhrases[baseOf(tag)]
	var found []OpenPhrase
	for i := 0; i < len(r.words); {
		n, kind := 0, openTime
		for _, open := range phrases[r.words[i].text] {
			length := r.phrase(i, open.parts)
			if length > n && !slices.Contains(open.unless, r.neighbour(i+length-1, 1)) && !slices.Contains(open.after, r.neighbour(i, -1)) {
				n, kind = length, open.kind
			}
		}
		if n > 0 {
			found = append(found, OpenPhrase{r.passage(i, i+n-1), kind == openHeat, kind == openPlace})
		}
		i += max(n, 1)
	}
	return found
}

// A Doing is what an order has done, as far as the rules need to know.
type Doing int

const (
	NoOrder  Doing = iota // no word that orders a handling
	Handles               // "cut", "pour"
	Heats                 // "melt", "boil"
	Mixes                 // "stir", "knead"
	Leaves                // "leave", "let": goes on by itself
	SetsDown              // "dry", "cool", "soak": what goes on meanwhile
)

// DoingOf says what a word of a text orders, by the words of the rules no-end-point and
// no-verb-first. The word may stand in any case.
func DoingOf(word, tag string) Doing {
	word = strings.ToLower(word)
	verbs := endless[baseOf(tag)]
	switch {
	case slices.Contains(verbs.heating, word):
		return Heats
	case slices.Contains(verbs.mixing, word):
		return Mixes
	case slices.Contains(verbs.leaving, word):
		return Leaves
	case slices.Contains(verbs.settling, word):
		return SetsDown
	case slices.Contains(actionVerbs[baseOf(tag)], word):
		return Handles
	}
	return NoOrder
}

// Singular takes the s of an English plural off, well enough to compare two words.
func Singular(word string) string { return singular(word) }

// A Word of a text in lower case, with its bytes and the sentence it stands in, from 0.
type Word struct {
	Text       string
	Start, End int
	Sentence   int
}

// Words cuts a text into words as the rules read it.
func Words(text string) []Word {
	words := make([]Word, 0, len(text)/6)
	for _, w := range cut(text) {
		words = append(words, Word{w.text, w.start, w.end, w.sentence})
	}
	return words
}

// plainReading reads a text that has no links.
func plainReading(text string) reading {
	return reading{text: text, at: source.NewFile("", []byte(text)).Span(0, len(text)), words: cut(text)}
}

func kitIn(tag string) *kit.Kit { return &kit.Kit{Language: kit.Said[string]{Value: tag}} }

func (r reading) passage(first, last int) Passage {
	return Passage{r.words[first].start, r.words[last].end}
}
