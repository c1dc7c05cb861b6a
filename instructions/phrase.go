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
	// repeated: the words say how often, and nothing can be made of it.
	repeated bool
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
	f.packLots()
	f.lots()
	f.portion()
	f.containers()
	f.amountsTold()
	f.judge()
	operation.Phrase = f.phrase
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
			t.amount = &quantity.Amount{Dimension: quantity.Count, Nominal: number, Low: number, High: number, Written: t.text}
		}
		f.tell(i, t)
	}
	if f.phrase.Portion == kit.NoPortion && len(f.phrase.Amounts) > 0 {
		f.phrase.Portion = kit.Exactly
	}
}

// tellsCount says whether a bare number is an amount: "2 of the bags", "the
// remaining two", and of what is packed by the piece just "2". "570 of water" has
// lost its unit, and "bag 2" is a name.
func (f *phrasing) tellsCount(i int) bool {
	switch {
	case f.phrase.Portion == kit.RestOf, f.phrase.Portion == kit.AllOf:
		return true
	case f.isCounted():
		return !f.isName(i)
	}
	return f.is(i+1, "of") && f.is(i+2, append(articles, "them")...)
}

// tell adds one amount.
func (f *phrasing) tell(i int, t token) {
	if f.isDifference(i, t) {
		if amount, err := f.amounts.Difference(t.text); err == nil {
			t.amount = &amount
		}
		f.phrase.By = true
	}
	if f.isBase(i) {
		f.sayBase(i)
		return
	}
	if f.miscounts(t) {
		return
	}
	if t.amount.Dimension == quantity.Share && t.amount.Of == "" && f.meaning.sorts != 0 && f.meaning.kind != kit.Same {
		f.shareOfWhat(t)
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
	f.phrase.Amounts = append(f.phrase.Amounts, *t.amount)
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
