package instructions

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// Numbers in the text of a link that count containers or times rather than tell
// an amount.

// each: "each of 3 jars to 235 g", "each jar with 90 g", "20 g per jar". "Every
// five minutes" is no amount but how often something is done meanwhile.
func (f *phrasing) each() {
	l := f.language
	for i := range f.tokens {
		n := max(f.at(i, l.each), f.at(i, l.every))
		if n == 0 {
			f.perThing(i)
			continue
		}
		next := f.skip(i+n, l.articles, l.of, l.ofThe)
		if f.has(i, l.every) && next < len(f.tokens) && f.tokens[next].isAmount && f.tokens[next].amount.Dimension == quantity.Duration {
			f.use(i, next)
			continue
		}
		if !f.has(i, l.each) {
			continue
		}
		f.phrase.Each = true
		f.use(i, i+n-1)
		if count, last, ok := f.countAt(next); ok && (f.has(i+n, l.of) || f.has(i+n, l.ofThe)) {
			f.phrase.EachCount, f.phrase.Count = count, count
			f.use(next, last)
		}
	}
}

// perThing: "20 g par pot", where the word may mean other things elsewhere.
func (f *phrasing) perThing(i int) {
	n := f.at(i, f.language.per)
	if n == 0 {
		return
	}
	next := f.skip(i+n, f.language.articles)
	if next >= len(f.tokens) || f.tokens[next].isAmount {
		return
	}
	if name, ok := f.names.pieces.at(wordsOf(f.tokens[next].text)); ok && f.names.sorts[name.key]&(container|piece) != 0 {
		f.phrase.Each = true
	}
}

// countAt reads a whole number at token i: "3 jars", "three", "both". last is its
// last token.
func (f *phrasing) countAt(i int) (count, last int, ok bool) {
	if n := f.at(i, f.language.both); n > 0 {
		return 2, i + n - 1, true
	}
	number, ok := f.numberAt(i)
	if !ok || !number.IsWhole() || number.Sign() <= 0 || quantity.Whole(maxTimes).Less(number) {
		return 0, i, false
	}
	return int(number.Int()), i, true
}

// numberAt reads token i as a number of things, with or without a noun.
func (f *phrasing) numberAt(i int) (quantity.Number, bool) {
	if i < 0 || i >= len(f.tokens) || f.tokens[i].used {
		return quantity.Number{}, false
	}
	count := f.countOf(f.tokens[i])
	return count.number, count.is
}

// times: "twice", "five more times", "3 × 10 minutes".
func (f *phrasing) times() {
	for i := range f.tokens {
		if !f.multiple(i) {
			f.timesAt(i)
		}
	}
	if f.meaning.kind == kit.Again {
		f.againCount()
	}
}

// multiple reads "twice", "una vez". "Once" says something only of what is done again.
func (f *phrasing) multiple(i int) bool {
	last := i + 1
	count, known := f.language.multiples[f.wordAt(i)+" "+f.wordAt(last)]
	if !known {
		last = i
		count, known = f.language.multiples[f.wordAt(i)]
	}
	switch {
	case !known:
	case count > 1:
		f.repeat(count, i, last)
	case f.meaning.kind == kit.Again:
		f.setCount(count, i, last)
	}
	return known
}

// timesAt reads "three times", "five more times", "two more", "3 ×".
func (f *phrasing) timesAt(i int) {
	count, last, ok := f.countAt(i)
	if !ok {
		return
	}
	next := f.skip(last+1, f.language.more)
	switch {
	case f.has(next, f.language.times), f.is(next, "×", "x") && next+1 < len(f.tokens) && f.tokens[next+1].isAmount:
		f.repeat(count, i, next)
	case next > last+1 && f.meaning.kind == kit.Again:
		f.setCount(count, i, next-1)
	}
}

// repeat notes that what the link tells is done so many times. Time and material
// are then so many times the amount; pouring and placing again needs words of its
// own, as something may happen in between.
func (f *phrasing) repeat(count, first, last int) {
	f.setCount(count, first, last)
	switch f.meaning.kind {
	case kit.Work, kit.Wait, kit.Take, kit.Use:
		f.repeated = f.phrase.Each
		f.phrase.Each, f.phrase.EachCount = true, count
	case kit.Move, kit.Fill, kit.Place:
		f.repeated = true
	}
}

// lots: "two lengths of 40 cm", "3 strips, 20 cm each" of what is not packed by
// the piece are so many times the amount.
func (f *phrasing) lots() {
	if f.meaning.kind != kit.Take && f.meaning.kind != kit.Use || f.isCounted() || f.phrase.Each && f.phrase.EachCount > 0 {
		return
	}
	for i, t := range f.tokens {
		if !t.isAmount || t.amount.Noun == "" || f.otherContainer(t) {
			continue
		}
		count, last, ok := f.countAt(i)
		amount := f.nextMeasure(i + 1)
		if ok && amount >= 0 && (f.endsAt(amount, f.language.lotsOf) > 0 || f.has(amount+1, f.language.each)) {
			f.phrase.Each, f.phrase.EachCount = true, count
			f.setCount(count, i, last)
			return
		}
	}
}

// nextMeasure gives the next amount from token i on that is no count, or -1.
func (f *phrasing) nextMeasure(i int) int {
	for ; i < len(f.tokens); i++ {
		if f.tokens[i].isAmount && f.tokens[i].amount.Dimension != quantity.Count {
			return i
		}
	}
	return -1
}

// againCount: for the five other jars is five more times, "the same again" once.
func (f *phrasing) againCount() {
	for i := range f.tokens {
		if count, last, ok := f.countAt(i); ok && f.phrase.Count == 0 {
			f.setCount(count, i, last)
		}
	}
	for i := range f.tokens {
		if f.phrase.Count == 0 && f.has(i, f.language.again) {
			f.setCount(1, i, i)
		}
	}
}

func (f *phrasing) setCount(count, first, last int) {
	f.phrase.Count = count
	f.use(first, min(last, len(f.tokens)-1))
}

// containers: "3 jars to 200 g", "both jars", "the remaining two", where a fill
// counts what is filled, and elsewhere "20 g for 3 jars".
func (f *phrasing) containers() {
	for i := range f.tokens {
		count, last, ok := f.countAt(i)
		if !ok || f.meaning.kind != kit.Fill && !f.has(i, f.language.both) && !f.otherContainer(f.tokens[i]) {
			continue
		}
		if f.isBase(i) {
			f.sayBase(i)
			continue
		}
		f.setCount(count, i, last)
	}
	if f.meaning.kind == kit.Fill && f.phrase.Count == 0 && !f.phrase.Each {
		f.oneContainer()
	}
}

// oneContainer: "the first jar to 200 g" fills one.
func (f *phrasing) oneContainer() {
	c := f.kit.Component(f.target)
	if c == nil || c.Container == nil || c.Container.Cavities.Value > 1 {
		return
	}
	for i, t := range f.tokens {
		if f.namesTarget(i) && f.endsAt(i, f.language.ordinals) > 0 && f.isOne(t.text) {
			f.phrase.Count = 1
		}
	}
}

// isOne says whether a word of the target's name stands there as in the name, so
// that it is no plural.
func (f *phrasing) isOne(word string) bool {
	return slices.Contains(textsOf(f.targetWords()), word)
}

// isBase: the six of "two of the six jars", which says of how many.
func (f *phrasing) isBase(i int) bool {
	n := f.endsAt(i, f.language.ofThe)
	return n > 0 && i > n && f.countOf(f.tokens[i-n-1]).is
}

// sayBase tells a number that says of how many. Nothing would compare it with the
// kit, so it could become wrong unseen.
func (f *phrasing) sayBase(i int) {
	f.tokens[i].used = true
	f.unreadable(i, "a part of a number: "+f.written(), "the part alone", "write it without the whole, as in two of the jars")
}

// otherContainer says whether a counted noun names a container that is not what
// the link is about.
func (f *phrasing) otherContainer(t token) bool {
	if !t.isAmount || t.amount.Noun == "" {
		return false
	}
	noun := wordsOf(t.amount.Noun)
	name, ok := callName{}, false
	if len(noun) > 0 {
		name, ok = f.names.called.at(noun)
	}
	return ok && name.key != f.target && f.names.sorts[name.key]&container != 0
}
