package rules

import (
	"slices"
	"strings"
)

// The lists of this file are in English; in another language nothing is passed over
// for them.

// holdingWords are words that tell how much a spoon or a jar holds, not what is taken.
var holdingWords = []string{"holds", "contains", "weighs"}

// remaining are words behind an amount that tell what is left and not what is taken.
var remaining = []string{"left", "remain", "remains", "remaining"}

// pieceWords are words before a length that tell a piece of what was cut, not the cutting.
var pieceWords = []string{"leave", "leaves", "leaving", "tail", "trim", "fold", "hang", "hangs", "hem", "overlap"}

// carryingOn are words that may stand behind the name of a thing. Another word makes
// it part of a longer name: the orange of "orange peel" is none.
var carryingOn = []string{
	"and", "or", "but", "into", "in", "to", "from", "with", "on", "onto", "at", "for", "by", "over", "under", "until", "while",
	"when", "as", "before", "after", "then", "is", "are", "was", "were", "has", "have", "that", "which", "you", "it", "will",
	"can", "should", "must", "may", "per", "each", "again", "left", "remain", "remains", "together", "a", "an", "the", "so", "if", "goes", "go",
	"of", "off", "out", "up", "down", "through", "across", "around", "round", "along", "inside", "here", "there", "now",
	"first", "more", "straight", "all", "not", "too", "does", "do", "needs", "need", "holds", "hold", "keeps", "keep", "makes", "make", "gives", "give", "comes", "come", "beside", "between", "this", "your", "ready",
}

// isOtherwise says whether an amount is not meant to repeat the steps. Where told
// is set, nor is one that a remedy adds.
func (t *typedSearch) isOtherwise(text reading, first, last int, told, isLength bool) bool {
	for _, is := range []string{text.neighbour(first, -1), text.neighbour(first, -2), text.neighbour(last, 1), text.neighbour(last, 2)} {
		if slices.Contains(otherwise[language(t.Kit)], is) {
			return true
		}
	}
	for ahead := 1; text.neighbour(last, ahead) != ""; ahead++ {
		atATime := text.phrase(last+ahead, []string{"at", "a", "time"}) > 0
		if atATime || slices.Contains(remaining, text.neighbour(last, ahead)) {
			return true
		}
	}
	v := vagueSearch{table: vagueWords[language(t.Kit)]}
	if v.isBehind(text, first, holdingWords) || isLength && v.isBehind(text, first, pieceWords) {
		return true
	}
	return told && v.isBehind(text, first, slices.Concat(v.table.adding, v.table.stirring))
}

// named says whether a name stands at word i, and not as part of a longer noun
// such as "wax melts".
func (t *typedSearch) named(text reading, i int, name thingName) bool {
	n := text.phrase(i, name.words)
	if n == 0 {
		return false
	}
	next := text.neighbour(i+n-1, 1)
	if language(t.Kit) != "en" || slices.Equal(name.words, name.all) {
		return true // a name in full
	}
	if next == "" || strings.HasSuffix(next, "ly") || slices.Contains(carryingOn, next) || slices.Contains(name.all, next) {
		return true
	}
	gap := text.text[text.words[i+n-1].end:text.words[i+n].start]
	return strings.TrimSpace(gap) != "" // a comma, a bracket
}
