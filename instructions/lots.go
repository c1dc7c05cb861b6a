package instructions

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// packLots reads amounts told in the packs inside a pack: of yarn packed as "2 skeins
// of 50 g", "one skein" is 50 g, "both skeins" 100 g, "half a skein" 25 g.
func (f *phrasing) packLots() {
	c := f.kit.Component(f.target)
	if c == nil || !c.Lots.Told() {
		return
	}
	noun := f.language.stem(strings.ToLower(c.Lots.Noun))
	for i := range f.tokens {
		if f.tokens[i].used {
			continue
		}
		if count, last, ok := f.lotsAt(i, noun); ok {
			f.tellLots(i, last, count, c.Lots)
			return
		}
	}
}

// lotsAt reads a number or a part of lots that begins at token i. last is its last token.
func (f *phrasing) lotsAt(i int, noun string) (count quantity.Number, last int, ok bool) {
	t := f.tokens[i]
	if t.isAmount {
		return t.amount.Nominal, i, t.amount.Dimension == quantity.Count && f.isLotWord(strings.ToLower(t.amount.Noun), noun)
	}
	if value, first, isPart := f.fractionAt(i); isPart && first == i {
		next := f.skip(i+1, f.language.articles, f.language.of, f.language.ofThe, f.language.indefinite)
		return value, next, f.isLot(next, noun)
	}
	if f.has(i, f.language.indefinite) {
		return quantity.Whole(1), i + 1, f.isLot(i+1, noun)
	}
	if n, at, counted := f.countAt(i); counted {
		next := f.skip(at+1, f.language.articles, f.language.of, f.language.ofThe)
		return quantity.Whole(int64(n)), next, f.isLot(next, noun)
	}
	return count, i, false
}

// isLot says whether one lot is named at token i: "skein", or "one skein" in one.
func (f *phrasing) isLot(i int, noun string) bool {
	if i >= len(f.tokens) {
		return false
	}
	if t := f.tokens[i]; t.isAmount {
		one := t.amount.Dimension == quantity.Count && t.amount.Nominal.Equal(quantity.Whole(1))
		return one && f.isLotWord(strings.ToLower(t.amount.Noun), noun)
	}
	return f.isLotWord(f.tokens[i].text, noun)
}

// isLotWord says whether a word means a pack inside the pack. A translation calls it
// by a word of its own for a pack.
func (f *phrasing) isLotWord(word, noun string) bool {
	return f.language.stem(word) == noun || f.translates != nil && f.language.isPack(word)
}

// tellLots keeps the amount of so many lots, told as it is written.
func (f *phrasing) tellLots(first, last int, count quantity.Number, lots kit.Lots) {
	amount := lots.Each
	amount.Nominal, amount.Low, amount.High = amount.Nominal.Times(count), amount.Low.Times(count), amount.High.Times(count)
	// A whole sheet is laid out, not cut out of one: it has no sides of its own.
	amount.Across, amount.Along, amount.Slack = quantity.Number{}, quantity.Number{}, quantity.Number{}
	from, to := f.tokens[first].start, f.tokens[last].end
	amount.Written = strings.TrimSpace(string(f.link.text.text[from:to]))
	f.use(first, last)
	f.phrase.Portion, f.phrase.Lots = kit.Exactly, count
	f.phrase.Amounts = append(f.phrase.Amounts, amount)
	f.phrase.AmountSpans = append(f.phrase.AmountSpans, f.link.text.span(from, to))
}
