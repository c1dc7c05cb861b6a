package instructions

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// What quantity reads as one amount and a link means as two things is taken apart
// here.

// splitRanges takes "two to 180 g" of a fill apart where the words before it show
// that two jars are meant: "the remaining two to 180 g".
func (f *phrasing) splitRanges() {
	if f.meaning.kind != kit.Fill {
		return
	}
	for i := 0; i < len(f.tokens); i++ {
		if !f.tokens[i].isAmount || !f.tokens[i].amount.Ranged || !f.countsBehind(i) {
			continue
		}
		t := f.tokens[i]
		text := f.link.text.String()[t.start:t.end]
		for _, to := range f.language.to.all {
			count, fill, found := strings.Cut(text, " "+strings.Join(to, " ")+" ")
			amount, err := f.amounts.Amount(fill)
			number, countErr := f.amounts.Amount(count)
			if !found || err != nil || countErr != nil || number.Dimension != quantity.Count {
				continue
			}
			between := strings.Join(to, " ")
			from := t.start + len(count) + 1
			f.tokens = slices.Replace(f.tokens, i, i+1,
				token{text: strings.ToLower(count), start: t.start, end: t.start + len(count), amount: unsaid},
				token{text: between, start: from, end: from + len(between), amount: unsaid},
				token{text: strings.ToLower(fill), start: t.end - len(fill), end: t.end, amount: &amount, isAmount: true})
			break
		}
	}
}

// countsBehind says whether the words before token i show that a number of
// containers follows.
func (f *phrasing) countsBehind(i int) bool {
	l := f.language
	for _, before := range []phrases{l.articles, l.of, l.ofThe, l.last, l.ordinals, l.rest} {
		if f.endsAt(i, before) > 0 {
			return true
		}
	}
	return false
}

// splitLimits takes "jusqu'à 190 g" of a fill or a fire apart: there it is what is
// reached and no limit.
func (f *phrasing) splitLimits() {
	switch f.meaning.kind {
	case kit.Fill, kit.Warm, kit.Cool:
	default:
		return
	}
	for i := 0; i < len(f.tokens); i++ {
		t := f.tokens[i]
		if !t.isAmount || t.amount.Bound != quantity.UpTo {
			continue
		}
		words := plainWords(f.link.text.String(), t.start, t.end, f.language)
		at := &phrasing{tokens: words}
		n := at.at(0, f.language.fillTo)
		if n == 0 || n >= len(words) {
			continue
		}
		start := words[n].start
		amount, err := f.amounts.Amount(f.link.text.String()[start:t.end])
		if err != nil {
			continue
		}
		rest := token{text: t.text[start-t.start:], start: start, end: t.end, amount: &amount, isAmount: true}
		f.tokens = slices.Replace(f.tokens, i, i+1, append(slices.Clone(words[:n]), rest)...)
	}
}

// splitNouns takes a count apart whose noun is no thing but a word for the rest:
// "los dos restantes".
func (f *phrasing) splitNouns() {
	for i := 0; i < len(f.tokens); i++ {
		t := f.tokens[i]
		if !t.isAmount || t.amount.Dimension != quantity.Count || t.amount.Noun == "" {
			continue
		}
		noun := strings.ToLower(t.amount.Noun)
		if f.language.rest.hasWord(noun) || f.language.more.hasWord(noun) {
			f.tokens = slices.Replace(f.tokens, i, i+1, plainWords(f.link.text.String(), t.start, t.end, f.language)...)
		}
	}
}
