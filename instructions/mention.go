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
// its key or one of its names, as lower-case words, by the first of them.
type callNames map[string][]callName

type callName struct {
	key   string
	words []string
}

// callNamesOf gathers the names of a kit, longer ones before shorter: "measuring
// cup" is not a mention of "cup".
func callNamesOf(k *kit.Kit) callNames {
	all := callNames{}
	for _, tool := range k.Tools {
		all.add(tool.Name)
	}
	for _, component := range k.Components {
		if component.Container != nil {
			all.add(component.Name)
		}
	}
	for first := range all {
		slices.SortStableFunc(all[first], func(a, b callName) int { return len(b.words) - len(a.words) })
	}
	return all
}

func (c callNames) add(name kit.Name) {
	for _, called := range append(name.Names(), name.ID, strings.ReplaceAll(name.ID, "-", " ")) {
		if words := wordsOf(called); len(words) > 0 {
			first := singular(words[0].text)
			c[first] = append(c[first], callName{name.ID, textsOf(words)})
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

// at gives the name that the words begin with. The last word may be a plural.
func (c callNames) at(words []textWord) (callName, bool) {
	for _, name := range c[singular(words[0].text)] {
		if len(name.words) <= len(words) && name.matches(words) {
			return name, true
		}
	}
	return callName{}, false
}

func (n callName) matches(words []textWord) bool {
	last := len(n.words) - 1
	for i, word := range n.words[:last] {
		if words[i].text != word {
			return false
		}
	}
	return singular(words[last].text) == singular(n.words[last])
}

// singular takes the s of a plural off, well enough to compare two words.
func singular(word string) string {
	switch {
	case strings.HasSuffix(word, "ss"):
		return word
	case strings.HasSuffix(word, "xes"), strings.HasSuffix(word, "shes"), strings.HasSuffix(word, "ches"), strings.HasSuffix(word, "sses"):
		return word[:len(word)-2]
	case len(word) > 2 && strings.HasSuffix(word, "s"):
		return word[:len(word)-1]
	}
	return word
}
