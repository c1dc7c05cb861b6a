package hazard

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
)

// answer looks for the caution of the maker's that speaks of a hazard: before the action
// in its step, at the head of its part, after it, or in another step.
func (f *finder) answer(a *Action) {
	if a.Hazard.ID == handbook.Burning && f.answeredInWords(a) {
		return
	}
	for _, c := range f.step.Cautions {
		if f.speaksOf(c, f.step.Operations, a) {
			caution := c
			if c.Span.Start < a.Where.Start {
				a.Caution, a.Place = &caution, Before
				return
			}
			a.Caution, a.Place = &caution, After
		}
	}
	if a.Place == After {
		return
	}
	for _, c := range f.part.Cautions {
		if f.speaksOf(c, f.part.Operations, a) {
			caution := c
			a.Caution, a.Place = &caution, AtPart
			return
		}
	}
	for _, step := range f.kit.Method.Steps() {
		for _, c := range step.Cautions {
			if step != f.step && f.speaksOf(c, step.Operations, a) {
				caution := c
				a.Caution, a.Place = &caution, Elsewhere
				return
			}
		}
	}
}

// answeredInWords looks for words on the use of what is made: they are read when the steps
// are done. Their signal word is not judged.
func (f *finder) answeredInWords(a *Action) bool {
	for _, words := range f.kit.Words {
		text := strings.ToLower(strings.Join(strings.Fields(words.Body.Text()), " "))
		for _, phrase := range a.Hazard.Answers[f.language] {
			if strings.Contains(text, phrase) {
				a.Caution, a.Place = &kit.Caution{Signal: a.Hazard.Signal, Text: words.Title, Span: words.Body}, InWords
				return true
			}
		}
	}
	return false
}

// speaksOf says whether a caution is about a hazard: by a link in it, or else by its words.
func (f *finder) speaksOf(c kit.Caution, operations []*kit.Operation, a *Action) bool {
	linked := false
	for _, o := range operations {
		if o.Kind == kit.Hazard && c.Span.Contains(o.Span) {
			linked = true
			if strings.EqualFold(o.Target, a.Hazard.ID) {
				return true
			}
		}
	}
	if linked {
		return false
	}
	words := split(c.Text)
	begins := func(beginning string) bool {
		return slices.ContainsFunc(words, func(word string) bool { return strings.HasPrefix(word, beginning) }) ||
			strings.Contains(beginning, " ") && strings.Contains(strings.ToLower(c.Text), beginning)
	}
	return slices.ContainsFunc(a.Hazard.Answers[f.language], begins)
}
