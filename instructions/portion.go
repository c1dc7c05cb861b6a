package instructions

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// portion finds words that speak of a part of what is there. They rule over a
// figure told beside them, which is compared. A fraction goes before the rest:
// "half of what is left" is half.
func (f *phrasing) portion() {
	if f.meaning.kind == kit.Again {
		return // "the remaining two" are two more times
	}
	if f.phrase.Portion == kit.Exactly {
		return // told in lots of the pack
	}
	if f.fraction() {
		f.phrase.Portion = kit.FractionOf
		return
	}
	for i := range f.tokens {
		switch {
		case f.tokens[i].used && !f.isLastPart(i) || f.countsContainers(i):
		case f.is(i, "all", "everything", "whole", "entire"):
			f.phrase.Portion = kit.AllOf
		case f.phrase.Portion == kit.NoPortion && f.isRest(i):
			f.phrase.Portion = kit.RestOf
		}
	}
}

// isRest: "the rest of", "the remaining", "what is left", "what's left over".
func (f *phrasing) isRest(i int) bool {
	if f.is(i, "rest", "remainder", "remaining", "remains", "leftover", "leftovers", "left-over") {
		return true
	}
	return f.isLastPart(i) || f.is(i, "left") && (f.is(i-1, "is", "was", "what's", "are", "that's") || f.is(i+1, "over") || f.is(i-1, "have"))
}

// isLastPart: "the other half", "the remaining third", "the last two thirds".
func (f *phrasing) isLastPart(i int) bool {
	if f.tokens[i].isAmount || fractionWords[f.tokens[i].text] == 0 {
		return false
	}
	before := i - 1
	if _, number := f.numberAt(before); number || before >= 0 && f.tokens[before].used {
		before--
	}
	return f.is(before, "other", "remaining", "last") || f.is(i, "half") && f.is(before, "second")
}

// countsContainers: "all the jars to 200 g" and "the remaining two" of a fill
// speak of the containers, not of what goes into them.
func (f *phrasing) countsContainers(i int) bool {
	if f.meaning.kind != kit.Fill || !f.is(i, "all", "whole", "rest", "remaining") {
		return false
	}
	next := f.skip(i+1, append(articles, "of", "other")...)
	_, _, counted := f.countAt(next)
	if !counted && !f.namesTarget(next) {
		return false
	}
	if f.is(i, "all") {
		f.phrase.Each = true
	}
	return true
}

// namesTarget says whether token i is a word of the name of what the link is about.
func (f *phrasing) namesTarget(i int) bool {
	return i < len(f.tokens) && !f.tokens[i].isAmount && f.isOfTarget(singular(f.tokens[i].text))
}

// isOfTarget says whether a word, in the singular, is in the name or key of what
// the link is about.
func (f *phrasing) isOfTarget(one string) bool {
	return slices.ContainsFunc(f.targetWords(), func(w textWord) bool { return singular(w.text) == one })
}

func (f *phrasing) targetWords() []textWord {
	return wordsOf(f.kit.Called(f.target) + " " + strings.ReplaceAll(f.target, "-", " "))
}

// fractionWords are the parts that have a name of their own.
var fractionWords = map[string]int64{
	"half": 2, "halves": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "fourth": 4, "fourths": 4,
	"fifth": 5, "fifths": 5, "sixth": 6, "sixths": 6, "eighth": 8, "eighths": 8, "tenth": 10, "tenths": 10,
}

// fraction finds "half of the", "two thirds of the pack", "1/2 of it", "50 % of
// what is left".
func (f *phrasing) fraction() bool {
	for i := range f.tokens {
		value, first, ok := f.fractionAt(i)
		if !ok {
			continue
		}
		f.phrase.Fraction = value
		f.use(first, i)
		if of := wordsOf(f.tokens[i].amount.Of); len(of) > 0 { // of a share, which tells it itself
			f.phrase.OfPack = slices.Contains(packWords, singular(of[len(of)-1].text))
			return true
		}
		f.fractionOf(i + 1)
		return true
	}
	return false
}

// fractionAt reads a fraction that ends at token i. first is its first token.
func (f *phrasing) fractionAt(i int) (value quantity.Number, first int, ok bool) {
	t := f.tokens[i]
	switch {
	case t.used:
		return value, i, false
	case t.isAmount && t.amount.Dimension == quantity.Share:
		return t.amount.Nominal, i, t.amount.Of != "" && f.isPartOfItself(t.amount.Of)
	case !t.isAmount && fractionWords[t.text] != 0:
		return f.namedFraction(i)
	}
	number, isNumber := f.numberAt(i)
	isPart := isNumber && number.Sign() > 0 && number.Less(quantity.Whole(1))
	return number, i, isPart && f.is(i+1, "of")
}

// namedFraction reads "half", "a third of", "two thirds". "The third jar" is none,
// and "the other half" is the rest.
func (f *phrasing) namedFraction(i int) (value quantity.Number, first int, ok bool) {
	if f.isLastPart(i) {
		if _, number := f.numberAt(i - 1); number {
			f.use(i-1, i)
		}
		return value, i, false
	}
	part := fractionWords[f.tokens[i].text]
	value, first = quantity.Ratio(1, part), i
	if number, counted := f.numberAt(i - 1); counted && number.Sign() > 0 && number.Less(quantity.Whole(part)) {
		return value.Times(number), i - 1, true
	}
	if f.is(i-1, "one", "a") {
		first = i - 1
	}
	half := part == 2 && !f.is(i+1, "full", "way")
	return value, first, half || f.is(i+1, "of")
}

// packWords are what a pack is called.
var packWords = []string{"pack", "packet", "package", "bag", "bottle", "sachet", "tub", "tin", "pouch", "box", "tube",
	"skein", "roll", "sheet", "spool", "block", "bar", "envelope", "jar", "vial", "cake", "ball", "cone", "carton"}

// fractionOf reads what a fraction is of, from token i on: the pack, or what is
// there. A part of a figure ("half of the 12 g") would be a figure that nobody
// compares, so it is a finding.
func (f *phrasing) fractionOf(i int) {
	i = f.skip(i, append(articles, "of", "a", "an")...)
	if i < len(f.tokens) && f.tokens[i].isAmount && !f.tokens[i].used && f.tokens[i].start == f.behindOf(i) {
		f.unreadable(i, "a part of a figure: "+f.written(), "the part or the figure alone",
			"write what is taken as an amount", "write the part without the figure, as in half of the pack")
		return
	}
	for f.namesTarget(i) && !f.isPack(i) {
		i++
	}
	f.phrase.OfPack = f.isPack(i)
}

// behindOf gives the start of token i when nothing but words like "of the" stand
// between it and the fraction, else -1: "half, 360 g" tells the figure again.
func (f *phrasing) behindOf(i int) int {
	if f.is(i-1, append(articles, "of", "a", "an")...) {
		return f.tokens[i].start
	}
	return -1
}

// isPack says whether token i is a word for a pack, and not for a container of
// the kit that is filled.
func (f *phrasing) isPack(i int) bool {
	if i >= len(f.tokens) || f.tokens[i].isAmount || !slices.Contains(packWords, singular(f.tokens[i].text)) {
		return false
	}
	name, ok := f.names.called.at([]textWord{{text: f.tokens[i].text}})
	return !ok || f.names.sorts[name.key]&container == 0
}

// shareOfWhat is a share without its base. "96 % alcohol" may be called so, and a
// fraction may be told again as a share; otherwise nobody can tell of what it is.
func (f *phrasing) shareOfWhat(t token) {
	switch {
	case strings.Contains(strings.ToLower(f.kit.Called(f.target)), t.text):
	case f.phrase.Portion == kit.FractionOf && f.phrase.Fraction.Equal(t.amount.Nominal):
	default:
		f.problem = true
		f.say(unreadableAmount, f.place(t), f.target, quoted(t.text)+" in "+f.written()+", which doesn't say of what", "a share and what it is of",
			"write what it is of, as in 2 % of the mixture, or 50 % of the pack")
	}
}

// isPartOfItself says whether a share is told of the thing taken: of the pack, of
// it, of what is left. Of anything else it is a share of a mixture.
func (f *phrasing) isPartOfItself(of string) bool {
	words := textsOf(wordsOf(of))
	words = slices.DeleteFunc(words, func(w string) bool { return slices.Contains(articles, w) })
	if len(words) == 0 {
		return false
	}
	switch first := words[0]; {
	case slices.Contains([]string{"it", "them", "rest", "remainder", "what", "remaining"}, first):
		return true
	case slices.Contains(packWords, singular(words[len(words)-1])):
		return true
	}
	return !slices.ContainsFunc(words, func(w string) bool { return !f.isOfTarget(singular(w)) })
}
