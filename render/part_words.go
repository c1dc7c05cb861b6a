package render

import (
	"fmt"
	"slices"

	"tallyfold/kit"
)

// The sections of words.md that have a place of their own; any other stands
// before the colophon.
var placedWords = []string{"welcome", "storing", "about-the-maker", "before-you-start"}

// wordsView is a section of words.md. Strings are Markdown.
type wordsView struct{ Title, Anchor, Text string }

// wordsOf gives the text of a section of words.md, or "".
func (a *assembly) wordsOf(id string) string {
	words := a.kit.WordsAbout(id)
	if words == nil {
		return ""
	}
	return a.wordsText(words)
}

func (a *assembly) wordsText(words *kit.Words) string {
	return a.prose(passage{body: words.Body, operations: words.Operations, deeper: 1, passes: a.passes})
}

func storingValues(a *assembly) any {
	words := a.kit.WordsAbout("storing")
	if words == nil {
		return nil
	}
	return wordsView{Title: escape(words.Title), Text: a.wordsText(words)}
}

// moreValues are the maker's own further sections.
func moreValues(a *assembly) any {
	var more []wordsView
	for i, words := range a.kit.Words {
		if slices.Contains(placedWords, words.ID) {
			continue
		}
		more = append(more, wordsView{Title: escape(words.Title), Anchor: fmt.Sprintf("more-%d", i+1), Text: a.wordsText(words)})
	}
	if len(more) == 0 {
		return nil
	}
	return more
}
