package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// endWords of one language tell when something is over or how often it is done.
type endWords struct {
	// until begins a clause that says when it is over, or counts how often.
	until [][]string
	// unless: before one of these it says something else ("once more").
	unless []string
	// begins open a step that takes up what the one before left to itself.
	begins []string
	// units behind a figure make it a time, a temperature or a number of times.
	units []string
}

var ends = map[string]endWords{
	"en": {
		until: cutAll([]string{"until", "till", "when", "once", "as soon as", "before", "while", "so long as", "as long as", "overnight", "twice",
			"all the time", "all the while", "straight away", "at once", "briefly", "for a moment", "just to", "in turn", "enough to",
			"little by little", "bit by bit", "at a time"}),
		unless: []string{"more", "again"},
		begins: []string{"when", "once", "after", "as", "if"},
		units: []string{"times", "time", "strokes", "stroke", "turns", "turn", "rounds", "seconds", "second", "minutes", "minute", "min", "hours", "hour",
			"h", "days", "day", "weeks", "week", "nights", "night", "°c", "°f", "degrees", "c", "f"},
	},
}

// hasEnd says whether a step tells anywhere how long, to what temperature or until
// what its work goes on.
func hasEnd(step *kit.Step) bool {
	for _, o := range step.Operations {
		switch o.Kind {
		case kit.Work, kit.Wait, kit.Warm, kit.Cool, kit.Cue, kit.After:
			if !o.Aside {
				return true
			}
		}
		for _, told := range o.Phrase.Amounts {
			if told.Dimension == quantity.Duration || told.Dimension == quantity.Temperature {
				return true
			}
		}
	}
	return false
}

// endsIn says whether a sentence tells when it is over or how often it is done.
func (r reading) endsIn(sentence int, e endWords) bool {
	for i, w := range r.words {
		before := r.neighbour(i, -1)
		counted := slices.Contains(e.units, w.text) && before != "" && (isNumber(before) || isNumberWord(before))
		if w.sentence == sentence && (counted || r.isUntil(i, e)) {
			return true
		}
	}
	return false
}

// looksIn says whether a sentence tells more than a time: what to look for, or how hot.
func (r reading) looksIn(sentence int, e endWords) bool {
	for i, w := range r.words {
		if w.sentence != sentence {
			continue
		}
		link := r.link(r.span(i, i))
		if r.isUntil(i, e) || strings.HasPrefix(w.text, "°") || link != nil && (link.Kind == kit.Warm || link.Kind == kit.Cue || link.Kind == kit.Cool) {
			return true
		}
	}
	return false
}

// isUntil says whether a word begins a clause that tells when something is over.
func (r reading) isUntil(i int, e endWords) bool {
	for _, phrase := range e.until {
		if n := r.phrase(i, phrase); n > 0 && !slices.Contains(e.unless, r.neighbour(i+n-1, 1)) {
			return true
		}
	}
	return false
}

var numberWords = strings.Fields("a an one two three four five six seven eight nine ten eleven twelve fifteen twenty thirty forty fifty sixty few several half")

func isNumberWord(word string) bool { return slices.Contains(numberWords, word) }

// takenUp says whether the step that follows in a run begins with when it may begin:
// "When the glass feels cold".
func takenUp(k *kit.Kit, step *kit.Step, e endWords) bool {
	for _, run := range k.Passes() {
		steps := followed(k, run)
		at := slices.Index(steps, step)
		if at < 0 || at+1 == len(steps) {
			continue
		}
		next := steps[at+1]
		for _, o := range next.Operations {
			if o.Kind == kit.After {
				return true
			}
		}
		if readStep(next).beginsWhen(e) {
			return true
		}
	}
	return false
}

// beginsWhen says whether the first sentence of a text says when to begin.
func (r reading) beginsWhen(e endWords) bool {
	for i, w := range r.words {
		if w.sentence != r.words[0].sentence {
			break
		}
		if i == 0 && slices.Contains(e.begins, w.text) || r.isUntil(i, e) {
			return true
		}
	}
	return false
}
