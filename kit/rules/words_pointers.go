package rules

import (
	"slices"
	"strconv"
	"strings"
)

// pointerWords of one language are those by which a text points at a step.
type pointerWords struct {
	step       []string
	ordinals   map[string]int
	directions []direction
	// plain words say nothing of what a step is about.
	plain []string
	// own words before "next step" make it one of the reader's life.
	own []string
	// ofOther words behind a number make it one of another paper: "step 3 of the leaflet".
	ofOther []string
}

// A direction says where the step stands that a word points at.
type direction struct {
	words []string
	later bool
	// nextTo: the very next or last one, and no other.
	nextTo bool
	// before: it may stand just before the link ("back to [the melting]").
	before bool
	means  string
}

func (d direction) right(from, target int) bool {
	switch {
	case d.nextTo && d.later:
		return target == from+1
	case d.nextTo:
		return target == from-1
	case d.later:
		return target > from
	}
	return target < from
}

var pointers = map[string]pointerWords{
	"en": {
		step: []string{"step"},
		ordinals: map[string]int{"first": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8,
			"ninth": 9, "tenth": 10, "eleventh": 11, "twelfth": 12},
		directions: []direction{
			{wordsOf("next step"), true, true, false, "the step after it"},
			{wordsOf("following step"), true, true, false, "the step after it"},
			{wordsOf("previous step"), false, true, false, "the step before it"},
			{wordsOf("above"), false, false, true, "a step further up"},
			{wordsOf("earlier"), false, false, false, "a step further up"},
			{wordsOf("back to"), false, false, true, "a step further up"},
			{wordsOf("below"), true, false, true, "a step further down"},
			{wordsOf("later"), true, false, false, "a step further down"},
			{wordsOf("further on"), true, false, false, "a step further down"},
		},
		own:     []string{"your", "a", "one"},
		ofOther: []string{"of", "on"},
		plain: strings.Fields("the a an step steps see as in again once more same this that how to of for and it its is with from into on at by your all " +
			"first second third next last part section page here there do go back before after next when what you made making make"),
	},
}

// number is the one that the words of a reference say: "step 5", "the third step".
func (p pointerWords) number(words []string) (int, bool) {
	for i, word := range words {
		if !slices.Contains(p.step, word) {
			continue
		}
		if i+1 < len(words) {
			if n, err := strconv.Atoi(words[i+1]); err == nil {
				return n, true
			}
		}
		if i > 0 {
			if n, ok := p.ordinals[words[i-1]]; ok {
				return n, true
			}
		}
	}
	return 0, false
}

// stems are what the words say beyond plain ones.
func (p pointerWords) stems(words []string) []string {
	var stems []string
	for _, word := range words {
		if !slices.Contains(p.plain, word) && len(word) > 2 {
			stems = append(stems, stem(word))
		}
	}
	return stems
}

// stem takes off what English adds to a word, well enough to compare two: fill,
// fills, filled and filling are one. Only for telling likeness, never for text.
func stem(word string) string {
	for _, ending := range []string{"ing", "ed", "es", "er", "s", "e"} {
		if cut, ok := strings.CutSuffix(word, ending); ok && len(cut) >= 3 && !strings.HasSuffix(word, "ss") {
			word = cut
			break
		}
	}
	if n := len(word); n > 3 && word[n-1] == word[n-2] && isDoubled(word) {
		return word[:n-1] // trimming, cutting
	}
	return word
}

// isDoubled says whether the letter at the end is one that English doubles before an
// ending, so that a stem may lose it.
func isDoubled(word string) bool { return strings.ContainsRune("bdgmnprt", rune(word[len(word)-1])) }
