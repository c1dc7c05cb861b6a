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
	f.tokens = tokensOf(l.text.String(), p.amounts, p.language)
	f.splitRanges()
	f.splitLimits()
	f.splitNouns()
	f.wholeBox()
	f.each()
	f.about()
	f.times()
	f.packLots()
	f.lots()
	f.portion()
	f.containers()
	f.amountsTold()
	f.oneInEach()
	f.plural()
	f.judge()
	operation.Phrase = f.phrase
}

// oneInEach: the three of "a wick in each of 3 jars" are jars and no wicks.
func (f *phrasing) oneInEach() {
	switch f.meaning.kind {
	case kit.Take, kit.Use, kit.Place:
		if f.phrase.Portion == kit.NoPortion && f.phrase.Count == f.phrase.EachCount {
			f.phrase.Count = 0
		}
	}
}

// wholeBox: "10 g in all".
func (f *phrasing) wholeBox() {
	for i := range f.tokens {
		if n := f.at(i, f.language.inAll); n > 0 {
			f.phrase.InAll = true
			f.use(i, i+n-1)
		}
	}
}

// about: "about 200 g each", "200 g environ". The word counts where an amount
// stands beside it.
func (f *phrasing) about() {
	for i := range f.tokens {
		if f.has(i, f.language.aboutBehind) && i > 0 && f.tokens[i-1].isAmount {
			f.phrase.About = true
		}
		n := f.at(i, f.language.about)
		if n == 0 {
			continue
		}
		next := f.skip(i+n, f.language.to, f.language.indefinite, f.language.articles)
		if _, number := f.numberAt(next); number || next < len(f.tokens) && (f.tokens[next].isAmount || f.language.fractions[f.tokens[next].text] == 2) {
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
	return f.has(i+1, f.language.ofThe) || f.has(i+1, f.language.ofThem)
}

// tell adds one amount.
func (f *phrasing) tell(i int, t token) {
	if f.isDifference(i, t) {
		if amount, err := f.amounts.Difference(f.link.text.String()[t.start:t.end]); err == nil {
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
		f.phrase.To = f.meaning.kind == kit.Fill && f.follows(i, f.language.to)
	}
	f.phrase.Amounts = append(f.phrase.Amounts, *t.amount)
	f.phrase.AmountSpans = append(f.phrase.AmountSpans, f.link.text.span(t.start, t.end))
}

// isDifference: "by 5 °C".
func (f *phrasing) isDifference(i int, t token) bool {
	switch t.amount.Dimension {
	case quantity.TemperatureDifference:
		return true
	case quantity.Temperature:
		heated := f.meaning.kind == kit.Warm || f.meaning.kind == kit.Cool
		return f.follows(i, f.language.by) || heated && i > 0 && f.at(0, f.language.byHead) == i
	}
	return false
}

// follows says whether one of the phrases stands before token i, words of about in
// between, and not as a part of "up to".
func (f *phrasing) follows(i int, before phrases) bool {
	for {
		n := max(f.endsAt(i, f.language.about), f.endsAt(i, f.language.exactly))
		if n == 0 || f.endsAt(i, before) > 0 {
			break
		}
		i -= n
	}
	return f.endsAt(i, before) > 0 && f.endsAt(i, f.language.upTo) == 0
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
