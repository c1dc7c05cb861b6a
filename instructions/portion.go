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
	switch f.meaning.kind {
	case kit.Again: // "the remaining two" are two more times
		return
	case kit.Work, kit.Wait, kit.Warm, kit.Cool: // "the whole night" is no time
		return
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
		case f.isAll(i):
			f.phrase.Portion = kit.AllOf
		case f.phrase.Portion == kit.NoPortion && f.isRest(i):
			f.phrase.Portion = kit.RestOf
		}
	}
}

// isAll: "all of", "the whole". "Tout doucement" is none.
func (f *phrasing) isAll(i int) bool {
	if !f.has(i, f.language.all) && !f.has(i, f.language.whole) {
		return false
	}
	for first := max(0, i-1); first <= i; first++ {
		if f.at(first, f.language.notAll) > i-first {
			return false
		}
	}
	return true
}

// isRest: "the rest of", "the remaining", "what is left", "what's left over".
func (f *phrasing) isRest(i int) bool { return f.has(i, f.language.rest) || f.isLastPart(i) }

// isLastPart: "the other half", "the remaining third", "the last two thirds".
func (f *phrasing) isLastPart(i int) bool {
	part := f.language.fractions[f.tokens[i].text]
	if f.tokens[i].isAmount || part == 0 {
		return false
	}
	before := i
	if _, number := f.numberAt(i - 1); number || i > 0 && f.tokens[i-1].used {
		before--
	}
	return f.endsAt(before, f.language.last) > 0 || part == 2 && f.endsAt(before, f.language.second) > 0 ||
		f.has(i+1, f.language.remaining)
}

// countsContainers: "all the jars to 200 g" and "the remaining two" of a fill
// speak of the containers, not of what goes into them.
func (f *phrasing) countsContainers(i int) bool {
	all, rest := f.at(i, f.language.all), f.at(i, f.language.rest)
	whole := f.at(i, f.language.whole)
	if f.meaning.kind != kit.Fill || all+whole+rest == 0 {
		return false
	}
	next := f.skip(i+max(all, whole, rest), f.language.articles, f.language.of, f.language.ofThe, f.language.last)
	_, _, counted := f.countAt(next)
	if _, _, before := f.countAt(i - 1); rest > 0 && (before || i > 0 && f.namesTarget(i-1)) {
		return true
	}
	if !counted && !f.namesTarget(next) {
		return false
	}
	if all > 0 {
		f.phrase.Each = true
	}
	return true
}

// namesTarget says whether token i is a word of the name of what the link is about.
func (f *phrasing) namesTarget(i int) bool {
	return i < len(f.tokens) && !f.tokens[i].isAmount && f.isOfTarget(f.language.stem(f.tokens[i].text))
}

// isOfTarget says whether a word, without its ending, is in the name or key of what
// the link is about.
func (f *phrasing) isOfTarget(stem string) bool {
	return slices.ContainsFunc(f.targetWords(), func(w textWord) bool { return f.language.stem(w.text) == stem })
}

func (f *phrasing) targetWords() []textWord {
	return wordsOf(strings.Join(f.names.allCalled(f.target), " ") + " " + strings.ReplaceAll(f.target, "-", " "))
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
			f.phrase.OfPack = f.language.isPack(of[len(of)-1].text)
			return true
		}
		if f.tokens[i].isAmount && f.isPartOfPack(f.tokens[i]) {
			f.phrase.OfPack = true
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
	case t.isAmount && f.isPartOfPack(t):
		return t.amount.Nominal, i, true
	case !t.isAmount && f.language.fractions[t.text] != 0:
		return f.namedFraction(i)
	}
	number, isNumber := f.numberAt(i)
	return number, i, isNumber && isPart(number) && f.hasOf(i+1)
}

// isPartOfPack: "die halbe Packung" is half of the pack, where no pieces are counted.
func (f *phrasing) isPartOfPack(t token) bool {
	a := t.amount
	return a.Dimension == quantity.Count && isPart(a.Nominal) && f.language.isPack(strings.ToLower(a.Noun)) && !f.isCounted()
}

func isPart(n quantity.Number) bool { return n.Sign() > 0 && n.Less(quantity.Whole(1)) }

// hasOf says whether "of" or "of the" stands at token i.
func (f *phrasing) hasOf(i int) bool {
	return f.has(i, f.language.of) || f.has(i, f.language.ofThe) || f.has(i, f.language.ofThem)
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
	part := f.language.fractions[f.tokens[i].text]
	value, first = quantity.Ratio(1, part), i
	if number, counted := f.numberAt(i - 1); counted && number.Sign() > 0 && number.Less(quantity.Whole(part)) {
		return value.Times(number), i - 1, true
	}
	first = i - f.endsAt(i, f.language.indefinite)
	half := part == 2 && !f.has(i+1, f.language.notHalf) && (!f.has(i, f.language.halves) || f.isPack(i+1) || f.namesTarget(i+1))
	return value, first, half || f.hasOf(i+1)
}

// fractionOf reads what a fraction is of, from token i on: the pack, or what is
// there. A part of a figure ("half of the 12 g") would be a figure that nobody
// compares, so it is a finding.
func (f *phrasing) fractionOf(i int) {
	i = f.skip(i, f.language.articles, f.language.of, f.language.ofThe, f.language.indefinite)
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
	l := f.language
	if f.endsAt(i, l.articles)+f.endsAt(i, l.of)+f.endsAt(i, l.ofThe)+f.endsAt(i, l.indefinite) == 0 {
		return -1
	}
	return f.tokens[i].start
}

// isPack says whether token i is a word for a pack, and not for a container of
// the kit that is filled.
func (f *phrasing) isPack(i int) bool {
	if i >= len(f.tokens) || f.tokens[i].isAmount || !f.language.isPack(f.tokens[i].text) {
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
	words = slices.DeleteFunc(words, f.language.articles.hasWord)
	if len(words) == 0 {
		return false
	}
	switch {
	case slices.Contains(f.language.itself, words[0]), f.language.isPack(words[len(words)-1]):
		return true
	}
	return !slices.ContainsFunc(words, func(w string) bool { return !f.isOfTarget(f.language.stem(w)) })
}
