package instructions

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"tallyfold/kit"
	"tallyfold/kit/source"
)

// callNames are the words by which running text may name a tool or container:
// its key or its names, as lower-case words, by the first of them without its ending.
type callNames struct {
	byFirst map[string][]callName
	stem    func(string) string
}

type callName struct {
	key   string
	words []string
}

// callNamesOf gathers the names of the tools and containers of a kit, and those of
// its containers and pieces.
func callNamesOf(k *kit.Kit, tag string, stem func(string) string) (called, pieces callNames) {
	called = callNames{byFirst: map[string][]callName{}, stem: stem}
	pieces = callNames{byFirst: map[string][]callName{}, stem: stem}
	for _, tool := range k.Tools {
		called.add(tool.Name, tag)
	}
	for _, component := range k.Components {
		if component.Container != nil {
			called.add(component.Name, tag)
			pieces.add(component.Name, tag)
		}
	}
	for _, piece := range k.Pieces {
		pieces.add(piece.Name, tag)
	}
	called.sort()
	pieces.sort()
	return called, pieces
}

// sort puts longer names before shorter: "measuring cup" is not a mention of "cup".
func (c callNames) sort() {
	for first := range c.byFirst {
		slices.SortStableFunc(c.byFirst[first], func(a, b callName) int { return len(b.words) - len(a.words) })
	}
}

func (c callNames) add(name kit.Name, tag string) {
	for _, called := range append(name.AllIn(tag), name.ID, strings.ReplaceAll(name.ID, "-", " ")) {
		if words := wordsOf(called); len(words) > 0 {
			first := c.stem(words[0].text)
			c.byFirst[first] = append(c.byFirst[first], callName{name.ID, textsOf(words)})
		}
	}
}

// A textWord is a word of a text, in lower case, with its bytes.
type textWord struct {
	text       string
	start, end int
}

// wordsOf cuts a text into words: letters, digits, and hyphens within.
func wordsOf(text string) []textWord {
	var words []textWord
	start := -1
	for i := 0; i <= len(text); {
		r, size := utf8.DecodeRuneInString(text[i:])
		inside := i < len(text) && (unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' && start >= 0)
		if inside && start < 0 {
			start = i
		}
		if !inside && start >= 0 {
			words = append(words, textWord{strings.ToLower(text[start:i]), start, i})
			start = -1
		}
		i += max(size, 1)
	}
	return words
}

func textsOf(words []textWord) []string {
	texts := make([]string, len(words))
	for i, w := range words {
		texts[i] = w.text
	}
	return texts
}

// mention notes the tools and containers that a text names. except is the key a
// link already stands for; place gives the place of bytes of the text.
func (p *passage) mention(text, except string, place func(start, end int) source.Span) {
	words := wordsOf(text)
	for i := 0; i < len(words); {
		name, ok := p.names.called.at(words[i:])
		if !ok {
			i++
			continue
		}
		last := words[i+len(name.words)-1]
		if name.key != except {
			p.mentions = append(p.mentions, kit.Mention{Key: name.key, Span: place(words[i].start, last.end)})
		}
		i += len(name.words)
	}
}

// at gives the name that the words begin with, whatever their endings.
func (c callNames) at(words []textWord) (callName, bool) {
	for _, name := range c.byFirst[c.stem(words[0].text)] {
		if len(name.words) <= len(words) && c.match(name, words) {
			return name, true
		}
	}
	return callName{}, false
}

func (c callNames) match(name callName, words []textWord) bool {
	for i, word := range name.words {
		if words[i].text != word && c.stem(words[i].text) != c.stem(word) {
			return false
		}
	}
	return true
}
