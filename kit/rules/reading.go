package rules

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"tallyfold/kit"
	"tallyfold/kit/source"
)

// A reading is a text as the customer reads it, cut into words. Links are read as
// their words; cautions and notes are left out. Each word knows its place.
type reading struct {
	text  string // as long as the place: what is not read is blank
	at    source.Span
	words []word
	links []*kit.Operation
}

// A word in lower case with its bytes in the text, and the sentence it stands in,
// counted from 0.
type word struct {
	text       string
	start, end int
	sentence   int
}

// readStep reads a step.
func readStep(step *kit.Step) reading {
	return read(step.Body, step.Prose, step.Operations, step.Cautions)
}

// readTrouble reads a trouble.
func readTrouble(trouble *kit.Trouble) reading {
	return read(trouble.Body, trouble.Prose, trouble.Operations, trouble.Cautions)
}

func read(body source.Span, prose []kit.Prose, links []*kit.Operation, cautions []kit.Caution) reading {
	r := reading{at: body, links: links}
	if !body.Known() {
		return r
	}
	text := blank(body)
	show := func(at source.Span) {
		if body.Contains(at) {
			copy(text[at.Start-body.Start:], body.File.Text[at.Start:at.End])
		}
	}
	for _, piece := range prose {
		if !inCaution(piece.Span, cautions) {
			show(piece.Span)
		}
	}
	for _, link := range links {
		if link.Kind != kit.ShowPicture && !inCaution(link.Span, cautions) {
			show(link.TextSpan)
		}
	}
	r.text = string(text)
	r.words = cut(r.text)
	return r
}

// blank is as many spaces as the place has bytes, its line ends kept.
func blank(at source.Span) []byte {
	text := make([]byte, at.End-at.Start)
	for i := range text {
		text[i] = ' '
		switch c := at.File.Text[at.Start+i]; {
		case c == '\n', c == '\r' && (at.Start+i+1 == at.End || at.File.Text[at.Start+i+1] != '\n'):
			text[i] = '\n'
		}
	}
	return text
}

func inCaution(at source.Span, cautions []kit.Caution) bool {
	for _, caution := range cautions {
		if caution.Span.Contains(at) {
			return true
		}
	}
	return false
}

// cut finds the words of a text. A sentence ends at a full stop, question or
// exclamation mark or semicolon before a blank, and at an empty line.
func cut(text string) []word {
	var words []word
	sentence, start, breaks := 0, -1, 0
	for i := 0; i <= len(text); {
		r, size := ' ', 1
		if i < len(text) {
			r, size = utf8.DecodeRuneInString(text[i:])
		}
		inside := i < len(text) && (unicode.IsLetter(r) || unicode.IsDigit(r) || start >= 0 && isJoint(text, start, i, r))
		switch {
		case inside && start < 0:
			start = i
		case !inside && start >= 0:
			words = append(words, word{strings.ToLower(text[start:i]), start, i, sentence})
			start = -1
		}
		switch {
		case r == '\n':
			breaks++
		case !unicode.IsSpace(r):
			breaks = 0
		}
		if endsSentence(text, i, r) || r == '\n' && breaks == 2 {
			sentence++
		}
		i += size
	}
	return words
}

// isJoint: hyphens and apostrophes within a word that began at byte start, points and
// commas within a number. An article or preposition before an apostrophe is a word of
// its own, "l'huile".
func isJoint(text string, start, i int, r rune) bool {
	next, _ := utf8.DecodeRuneInString(text[i+utf8.RuneLen(r):])
	switch r {
	case '\'', '’':
		if elided[strings.ToLower(text[start:i])] {
			return false
		}
		fallthrough
	case '-':
		return unicode.IsLetter(next) || unicode.IsDigit(next)
	case '.', ',':
		return unicode.IsDigit(next)
	}
	return false
}

// elided are the French and Italian words that an apostrophe joins to the next.
var elided = map[string]bool{
	"l": true, "d": true, "n": true, "s": true, "c": true, "j": true, "qu": true, "jusqu": true,
	"dell": true, "all": true, "nell": true, "dall": true, "sull": true, "un": true, "tutt": true, "mezz": true,
}

func endsSentence(text string, i int, r rune) bool {
	switch r {
	case '.', '!', '?', ';':
		return i+1 >= len(text) || text[i+1] == ' ' || text[i+1] == '\n'
	}
	return false
}

// span is the place of words first to last.
func (r reading) span(first, last int) source.Span {
	return r.at.Part(r.words[first].start, r.words[last].end)
}

// phrase says how many words from i on are those of the phrase, 0 if they are not.
// The phrase stays within one sentence. Its last word may be a plural.
func (r reading) phrase(i int, phrase []string) int {
	if len(phrase) == 0 || i+len(phrase) > len(r.words) {
		return 0
	}
	last := len(phrase) - 1
	for n, part := range phrase {
		is := r.words[i+n]
		if is.sentence != r.words[i].sentence || is.text != part && (n != last || singular(is.text) != part) {
			return 0
		}
	}
	return len(phrase)
}

// find gives the first place of a name in the text.
func (r reading) find(name string) (source.Span, bool) {
	phrase := wordsOf(name)
	for i := range r.words {
		if n := r.phrase(i, phrase); n > 0 {
			return r.span(i, i+n-1), true
		}
	}
	return source.Span{}, false
}

// neighbour is the word so many places away within the sentence, or "".
func (r reading) neighbour(i, away int) string {
	at := i + away
	if at < 0 || at >= len(r.words) || i < 0 || i >= len(r.words) || r.words[at].sentence != r.words[i].sentence {
		return ""
	}
	return r.words[at].text
}

// namesBehind says whether a name stands behind word i in its sentence, in words
// that no link says are cleaned: those the ledger knows of.
func (r reading) namesBehind(i int, name []string) bool {
	for at := i + 1; at < len(r.words) && r.words[at].sentence == r.words[i].sentence; at++ {
		if n := r.phrase(at, name); n > 0 {
			link := r.link(r.span(at, at+n-1))
			return link == nil || link.Kind != kit.Clean
		}
	}
	return false
}

// link is the link that a place lies in, or nil.
func (r reading) link(at source.Span) *kit.Operation {
	for _, o := range r.links {
		if o.Span.Contains(at) {
			return o
		}
	}
	return nil
}

// wordsOf cuts a name into lower-case words.
func wordsOf(name string) []string {
	var texts []string
	for _, w := range cut(name) {
		texts = append(texts, w.text)
	}
	return texts
}

// singular takes the s of a plural off, well enough to compare two words.
func singular(word string) string {
	switch {
	case len(word) < 4, word[len(word)-1] != 's', strings.HasSuffix(word, "ss"):
		return word
	case strings.HasSuffix(word, "xes"), strings.HasSuffix(word, "shes"), strings.HasSuffix(word, "ches"):
		return word[:len(word)-2]
	}
	return strings.TrimSuffix(word, "s")
}

// language is the one the kit's texts are written in: "en" of "en-GB", and "en"
// where nothing is said.
func language(k *kit.Kit) string {
	if k.Language.Value == "" {
		return "en"
	}
	return baseOf(k.Language.Value)
}

// baseOf is the language of a tag without region and script: "de" of "de-AT".
func baseOf(tag string) string {
	base, _, _ := strings.Cut(strings.ToLower(tag), "-")
	return base
}
