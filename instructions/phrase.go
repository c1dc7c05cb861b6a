package instructions

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// A phrasing is the text of a link while it is being found out how much it says.
//
// The words are gone through once for each thing they may say; what has been
// understood is marked, so that "3 jars" is a number of jars and no amount. What
// remains are the amounts told, the first of which is what the customer does.
type phrasing struct {
	*passage
	link    link
	meaning *meaning
	target  string
	tokens  []token
	phrase  kit.Phrase
	// problem: a finding was told, so that there is no second one.
	problem bool
}

// operationPhrase reads what the text of a link says about how much.
func (p *passage) operationPhrase(operation *kit.Operation, m *meaning, l link) {
	f := &phrasing{passage: p, link: l, meaning: m, target: operation.Target}
	f.tokens = tokensOf(l.text.String(), p.amounts)
	f.splitRanges()
	f.wholeBox()
	f.each()
	f.about()
	f.times()
	f.portion()
	f.containers()
	f.amountsTold()
	f.judge()
	operation.Phrase = f.phrase
}

// splitRanges takes "two to 180 g" of a fill apart where the words before it show
// that two jars are meant: "the remaining two to 180 g".
func (f *phrasing) splitRanges() {
	if f.meaning.kind != kit.Fill {
		return
	}
	for i := 0; i < len(f.tokens); i++ {
		if !f.tokens[i].isAmount || !f.tokens[i].amount.Ranged || !f.is(i-1, "remaining", "other", "of", "the", "first", "last", "next") {
			continue
		}
		t := f.tokens[i]
		count, fill, found := strings.Cut(t.text, " to ")
		amount, err := f.amounts.Amount(fill)
		number, countErr := f.amounts.Amount(count)
		if !found || err != nil || countErr != nil || number.Dimension != quantity.Count {
			continue
		}
		f.tokens = slices.Replace(f.tokens, i, i+1,
			token{text: count, start: t.start, end: t.start + len(count)},
			token{text: "to", start: t.start + len(count) + 1, end: t.start + len(count) + 3},
			token{text: fill, start: t.end - len(fill), end: t.end, amount: amount, isAmount: true})
	}
}

// is says whether the token at i is one of these words.
func (f *phrasing) is(i int, words ...string) bool {
	return i >= 0 && i < len(f.tokens) && !f.tokens[i].isAmount && slices.Contains(words, f.tokens[i].text)
}

// skip gives the first token from i on that is none of these words.
func (f *phrasing) skip(i int, words ...string) int {
	for f.is(i, words...) {
		i++
	}
	return i
}

// articles stand before a noun and say nothing of how much.
var articles = []string{"the", "your", "this", "that", "these", "those", "its", "their"}

// wholeBox: "10 g in all".
func (f *phrasing) wholeBox() {
	for i := range f.tokens {
		if f.is(i, "in") && f.is(i+1, "all", "total") {
			f.phrase.InAll = true
			f.tokens[i].used, f.tokens[i+1].used = true, true
		}
		if f.is(i, "altogether") {
			f.phrase.InAll = true
		}
	}
}

// each: "each of 3 jars to 235 g", "each jar with 90 g", "20 g per jar". "Every
// five minutes" is no amount but how often something is done meanwhile.
func (f *phrasing) each() {
	for i := range f.tokens {
		if !f.is(i, "each", "every", "per", "apiece") {
			continue
		}
		next := f.skip(i+1, append(articles, "of")...)
		if next < len(f.tokens) && f.tokens[next].isAmount && f.tokens[next].amount.Dimension == quantity.Duration {
			f.tokens[next].used = true
			continue
		}
		f.phrase.Each = true
		if count, last, ok := f.countAt(next); ok && f.is(i+1, "of") {
			f.phrase.EachCount, f.phrase.Count = count, count
			f.use(next, last)
		}
	}
}

// use marks tokens first to last as understood.
func (f *phrasing) use(first, last int) {
	for i := first; i <= last; i++ {
		f.tokens[i].used = true
	}
}

// countAt reads a whole number at token i: "3 jars", "three", "both". last is its
// last token.
func (f *phrasing) countAt(i int) (count, last int, ok bool) {
	if f.is(i, "both") {
		return 2, i, true
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
	t := f.tokens[i]
	if !t.isAmount {
		amount, err := f.amounts.Amount(t.text)
		if err != nil {
			return quantity.Number{}, false
		}
		t.amount = amount
	}
	plain := t.amount.Dimension == quantity.Count && !t.amount.Ranged
	return t.amount.Nominal, plain
}

var aboutWords = []string{"about", "around", "roughly", "approximately", "approx", "circa", "ca"}

// about: "about 200 g each". The word counts where an amount follows it.
func (f *phrasing) about() {
	for i := range f.tokens {
		if !f.is(i, aboutWords...) {
			continue
		}
		next := f.skip(i+1, "to", "a", "an", "the")
		if _, number := f.numberAt(next); number || next < len(f.tokens) && f.tokens[next].isAmount || f.is(next, "half") {
			f.phrase.About = true
		}
	}
}

// times: "twice", "five more times", "once more".
func (f *phrasing) times() {
	for i := range f.tokens {
		switch {
		case f.is(i, "once"):
			f.setCount(1, i, i)
		case f.is(i, "twice"):
			f.setCount(2, i, i)
		case f.is(i, "thrice"):
			f.setCount(3, i, i)
		default:
			f.timesAt(i)
		}
	}
	if f.meaning.kind == kit.Again {
		f.againCount()
	}
}

// timesAt reads "three times", "five more times", "two more".
func (f *phrasing) timesAt(i int) {
	count, last, ok := f.countAt(i)
	if !ok {
		return
	}
	next := f.skip(last+1, "more", "further", "other")
	switch {
	case f.is(next, "times", "time"):
		f.setCount(count, i, next)
	case next > last+1 && f.meaning.kind == kit.Again:
		f.setCount(count, i, next-1)
	case f.tokens[i].isAmount && slices.Contains([]string{"times", "time", "more times"}, f.tokens[i].amount.Noun):
		f.setCount(count, i, last)
	}
}

// againCount: for the five other jars is five more times, "the same again" once.
func (f *phrasing) againCount() {
	for i := range f.tokens {
		if count, last, ok := f.countAt(i); ok && f.phrase.Count == 0 {
			f.setCount(count, i, last)
		}
	}
	for i := range f.tokens {
		if f.phrase.Count == 0 && f.is(i, "again") {
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
		if !ok {
			continue
		}
		switch {
		case f.meaning.kind == kit.Fill, f.is(i, "both"), f.otherContainer(f.tokens[i]):
			f.setCount(count, i, last)
		}
	}
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

// amountsTold keeps the amounts that remain, those of the dimension that fits the
// link. The first is what the customer does.
func (f *phrasing) amountsTold() {
	for i, t := range f.tokens {
		if t.used {
			continue
		}
		if !t.isAmount {
			number, ok := f.numberAt(i)
			if !ok || !f.tellsCount(i) {
				continue
			}
			t.amount = quantity.Amount{Dimension: quantity.Count, Nominal: number, Low: number, High: number, Written: t.text}
		}
		f.tell(i, t)
	}
	if f.phrase.Portion == kit.NoPortion && len(f.phrase.Amounts) > 0 {
		f.phrase.Portion = kit.Exactly
	}
}

// tellsCount says whether a bare number is an amount: "2 of the bags", "the
// remaining two", and any number where only counting makes sense.
func (f *phrasing) tellsCount(i int) bool {
	return f.is(i+1, "of") || f.phrase.Portion == kit.RestOf || f.phrase.Portion == kit.AllOf
}

// tell adds one amount.
func (f *phrasing) tell(i int, t token) {
	if f.isDifference(i, t) {
		if amount, err := f.amounts.Difference(t.text); err == nil {
			t.amount = amount
		}
		f.phrase.By = true
	}
	if s, ok := f.isSlip(t); ok {
		f.saySlip(s)
		return
	}
	if !f.fits(t.amount.Dimension) {
		f.otherDimension(t)
		return
	}
	if t.amount.Bound == quantity.About {
		f.phrase.About = true
	}
	if len(f.phrase.Amounts) == 0 {
		f.phrase.To = f.meaning.kind == kit.Fill && f.follows(i, "to") && !f.is(i-2, "up")
	}
	f.phrase.Amounts = append(f.phrase.Amounts, t.amount)
	f.phrase.AmountSpans = append(f.phrase.AmountSpans, f.link.text.span(t.start, t.end))
}

// isDifference: "by 5 °C".
func (f *phrasing) isDifference(i int, t token) bool {
	isTemperature := t.amount.Dimension == quantity.Temperature || t.amount.Dimension == quantity.TemperatureDifference
	return isTemperature && (f.follows(i, "by") || t.amount.Dimension == quantity.TemperatureDifference)
}

// follows says whether the word stands before token i, words of about in between.
func (f *phrasing) follows(i int, word string) bool {
	for i--; f.is(i, append(aboutWords, "the", "exactly", "just")...); i-- {
	}
	return f.is(i, word)
}

func (f *phrasing) fits(d quantity.Dimension) bool {
	return f.meaning.dimensions == nil || slices.Contains(f.meaning.dimensions, d)
}

// place is where a token stands.
func (f *phrasing) place(t token) source.Span { return f.link.text.span(t.start, t.end) }

// wholeText is where the text of the link stands; the link where it has none.
func (f *phrasing) wholeText() source.Span {
	if span := f.link.text.span(0, len(f.link.text.text)); span.Known() {
		return span
	}
	return f.link.span
}

// written tells what a link says, for findings.
func (f *phrasing) written() string { return quoted(strings.TrimSpace(f.link.text.String())) }
