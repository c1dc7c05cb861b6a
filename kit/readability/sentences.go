package readability

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A Sentence is a part of a text, in bytes, with at least one word.
type Sentence struct {
	Start, End int
	Words      []Word
}

// A Word is a run of letters, digits and what joins them ("wind-up", "don't",
// "1.5", "2–3"), in bytes of the text.
type Word struct{ Start, End int }

// Of is the word in its text.
func (w Word) Of(text string) string { return text[w.Start:w.End] }

// Sentences cuts a text. A sentence ends at a full stop, question or exclamation
// mark before a blank, unless it belongs to a number, an abbreviation or a unit in
// the middle of it, or a small letter goes on; at an empty line; and at the head of
// an item of a list.
func (l *Language) Sentences(text string) []Sentence {
	var all []Sentence
	start := 0
	for _, word := range wordsIn(text) {
		last := len(all) - 1
		if last < 0 || l.parts(text, all[last].Words, word) {
			all = append(all, Sentence{Start: word.Start})
			last++
		}
		all[last].Words = append(all[last].Words, word)
		all[last].End = endOf(text, word.End)
		start = word.End
	}
	if last := len(all) - 1; last >= 0 {
		all[last].End = endOf(text, start)
	}
	return all
}

// endOf takes the marks that close a sentence along.
func endOf(text string, at int) int {
	for at < len(text) {
		r, size := utf8.DecodeRuneInString(text[at:])
		if !strings.ContainsRune(`.!?…:;"'”’)]`, r) {
			break
		}
		at += size
	}
	return at
}

// parts says whether a sentence ends between the words so far and the next one.
func (l *Language) parts(text string, before []Word, next Word) bool {
	last := before[len(before)-1]
	gap := text[last.End:next.Start]
	if beginsItem(gap) {
		return true
	}
	at := strings.IndexAny(gap, ".!?…")
	if at < 0 {
		return false
	}
	_, size := utf8.DecodeRuneInString(gap[at:])
	if after := gap[at+size:]; after == "" || !strings.ContainsAny(after, " \t\n\r") {
		return false // file.txt
	}
	first, _ := utf8.DecodeRuneInString(text[next.Start:])
	small := unicode.IsLower(first)
	if gap[at] != '.' {
		return !small
	}
	word := strings.ToLower(text[last.Start:last.End])
	return !small && !l.abbreviations[word] && !l.abbreviations[dotted(text, before)] &&
		!(l.labels[word] && unicode.IsDigit(first)) && (!l.units[word] || unicode.IsUpper(first))
}

// dotted is an abbreviation of single letters with points, "e.g", that ends before.
func dotted(text string, before []Word) string {
	letters := ""
	for i := len(before) - 1; i >= 0; i-- {
		word := before[i]
		if word.End-word.Start != 1 || i+1 < len(before) && text[word.End:before[i+1].Start] != "." {
			break
		}
		letters = strings.TrimSuffix(strings.ToLower(text[word.Start:word.End])+"."+letters, ".")
	}
	return letters
}

// bullets are the marks of lists without an order.
var bullets = []string{"-", "*", "+", "•"}

// beginsItem says whether the gap holds an empty line or the mark of a list item.
func beginsItem(gap string) bool {
	lines := strings.Split(strings.ReplaceAll(gap, "\r", ""), "\n")
	for i, line := range lines[1:] {
		line = strings.TrimSpace(line)
		switch {
		case line == "" && i < len(lines)-2:
			return true
		case slices.Contains(bullets, line), strings.Trim(line, "0123456789") == "." || strings.Trim(line, "0123456789") == ")":
			return true
		}
	}
	return false
}

// isMark says whether a word is a figure with a point or bracket and a blank behind
// it that stands at the head of a line.
func isMark(text string, word Word) bool {
	line := text[strings.LastIndexByte(text[:word.Start], '\n')+1 : word.Start]
	if strings.TrimSpace(line) != "" || strings.Trim(text[word.Start:word.End], "0123456789") != "" {
		return false
	}
	rest := text[word.End:]
	return strings.HasPrefix(rest, ". ") || strings.HasPrefix(rest, ") ")
}

// wordsIn cuts a text into words.
func wordsIn(text string) []Word {
	var all []Word
	start := -1
	for i := 0; i <= len(text); {
		r, size := ' ', 1
		if i < len(text) {
			r, size = utf8.DecodeRuneInString(text[i:])
		}
		inside := i < len(text) && (isWordRune(r) || start >= 0 && joins(text, i, r, size))
		switch {
		case inside && start < 0:
			start = i
		case !inside && start >= 0:
			all = append(all, Word{start, i})
			start = -1
		}
		i += size
	}
	return withoutMarks(text, all)
}

// withoutMarks leaves out the figures of ordered lists.
func withoutMarks(text string, words []Word) []Word {
	kept := words[:0:0]
	for _, word := range words {
		if !isMark(text, word) {
			kept = append(kept, word)
		}
	}
	return kept
}

func isWordRune(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsMark(r) }

// joins says whether a sign stands inside a word: a hyphen or apostrophe before a
// letter or figure, a point, comma, slash or dash between figures.
func joins(text string, i int, r rune, size int) bool {
	before, _ := utf8.DecodeLastRuneInString(text[:i])
	next, _ := utf8.DecodeRuneInString(text[i+size:])
	switch r {
	case '-', '\'', '’', '‑':
		return isWordRune(next) && isWordRune(before)
	case '.', ',', '/', '–', ':', '⁄':
		return unicode.IsDigit(before) && unicode.IsDigit(next)
	}
	return false
}

// Syllables counts those of a word: of each part of "two-handed". Figures and symbols
// have one: an amount makes no sentence hard. (Flesch 1948 lets long figures be left
// out.)
func (l *Language) Syllables(word string) int {
	n := 0
	for _, part := range strings.FieldsFunc(word, func(r rune) bool { return r == '-' || r == '‑' }) {
		if strings.ContainsFunc(part, unicode.IsDigit) {
			n++
			continue
		}
		n += max(1, l.syllables(strings.ReplaceAll(strings.ToLower(part), "’", "'")))
	}
	return max(1, n)
}
