package load

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// betweenLots are the words between the packs inside a pack and what is in each:
// "2 skeins of 8 m", "2 écheveaux de 8 m". The sign × does in every language.
var betweenLots = map[string][]string{
	"en": {"of"}, "fr": {"de", "d'"}, "de": {"zu", "à"}, "es": {"de"}, "nl": {"van"}, "it": {"da", "di"},
}

// packedOf reads what is packed: an amount, or packs inside the pack.
func packedOf() field[kit.Component] {
	k := packable.key(Key{Name: "packed", Expected: expectPacked, Example: "720 g ± 5 g", Form: Amount, Required: true})
	return field[kit.Component]{k, func(r *reader, into *kit.Component, v value) {
		if lots, total, ok := r.lots(v); ok && r.suits(v, total, k, packable) {
			into.Packed, into.Lots = said(v, total), lots
			return
		}
		if a, ok := r.amount(v, k, packable); ok {
			into.Packed = said(v, a)
		}
	}}
}

// lots reads "2 skeins of 8 m": how many there are, and all of them together.
func (r *reader) lots(v value) (kit.Lots, quantity.Amount, bool) {
	if !v.isText() {
		return kit.Lots{}, quantity.Amount{}, false
	}
	words := strings.Fields(v.text())
	for i, word := range words {
		if i == 0 || i == len(words)-1 || !r.isBetweenLots(word) {
			continue
		}
		count, err := r.amounts.Amount(strings.Join(words[:i], " "))
		if err != nil || !isLotCount(count) {
			continue
		}
		each, err := r.amounts.Amount(strings.Join(words[i+1:], " "))
		if err != nil || each.Bound != quantity.Exactly {
			continue
		}
		lots := kit.Lots{Count: int(count.Nominal.Int()), Each: each, Noun: count.Noun}
		return lots, allLots(lots, v.oneLine()), true
	}
	return kit.Lots{}, quantity.Amount{}, false
}

func (r *reader) isBetweenLots(word string) bool {
	language := r.amounts.Language
	if _, ok := betweenLots[language]; !ok {
		language = "en"
	}
	return word == "×" || word == "x" || slices.Contains(betweenLots[language], strings.ToLower(word))
}

// isLotCount: a plain whole number of named things, and not so many that it is a slip.
func isLotCount(a quantity.Amount) bool {
	const most = 100_000
	return a.Dimension == quantity.Count && a.Bound == quantity.Exactly && !a.HasTolerance() &&
		a.Noun != "" && a.Nominal.IsWhole() && a.Nominal.Sign() > 0 && a.Nominal.Less(quantity.Whole(most))
}

// allLots is what all packs hold together. Each may be off by its whole tolerance in
// the same way, so tolerances add up too.
func allLots(lots kit.Lots, written string) quantity.Amount {
	count := quantity.Whole(int64(lots.Count))
	total := lots.Each
	total.Nominal, total.Low, total.High = total.Nominal.Times(count), total.Low.Times(count), total.High.Times(count)
	total.Across, total.Along, total.Slack = quantity.Number{}, quantity.Number{}, quantity.Number{}
	total.Written = written
	return total
}
