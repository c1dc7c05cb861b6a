package instructions

import (
	"regexp"
	"strings"

	"tallyfold/kit/source"
)

// This file is for whoever makes a method of a text that is none yet.

// Refused says why a text could not be read as a method.md: too large, with characters
// that are no text, nested too deeply. "" when it can.
func Refused(file *source.File) string {
	if refused := refuse(file); refused != nil {
		return refused[0].Found + " (" + refused[0].Expected + ")"
	}
	return ""
}

// RestPhrases gives the bytes of the words in running text that speak of what is left
// of something, by the words of the language: "rest", "remainder".
func RestPhrases(text, tag string) [][2]int {
	l, _ := languageFor(tag)
	words := wordsOf(text)
	var found [][2]int
	for i := range words {
		for _, phrase := range l.rest.byFirst[words[i].text] {
			if i+len(phrase) <= len(words) && strings.Join(textsOf(words[i:i+len(phrase)]), " ") == strings.Join(phrase, " ") {
				found = append(found, [2]int{words[i].start, words[i+len(phrase)-1].end})
				break
			}
		}
	}
	return found
}

// ownLink is a link with a destination of ours whose words hold no bracket.
var ownLink = regexp.MustCompile(`\[([^\[\]]*)\]\((?:` + strings.Join(kindNames(), "|") + `):[^()\s]*\)`)

// A LinkPlace is where a link that says what happens stands: the whole of it, and its words.
type LinkPlace struct{ Start, End, WordsStart, WordsEnd int }

// LinkPlaces are all such links of a text, in its order.
func LinkPlaces(text []byte) []LinkPlace {
	var all []LinkPlace
	for _, at := range ownLink.FindAllSubmatchIndex(text, -1) {
		all = append(all, LinkPlace{at[0], at[1], at[2], at[3]})
	}
	return all
}

// ownDestination is where the destination of such a link begins.
var ownDestination = regexp.MustCompile(`\]\([ \t]*(?:` + strings.Join(kindNames(), "|") + `):`)

// HasLinks says whether a text already has links that say what happens.
func HasLinks(text []byte) bool { return ownDestination.Match(text) }
