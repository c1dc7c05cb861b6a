package adopt

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// findCounts recognises what is counted out, by the names of the kit: "8 sheets", "both
// skeins", "2 sheets of newspaper", "all 3 cards".
func (r *reading) findCounts() {
	for i := 0; i+1 < len(r.words); i++ {
		w := r.words[i]
		if !r.isNumber(w.Text) && w.Text != "both" || !r.joins(w.End, r.words[i+1].Start) {
			continue
		}
		if name, first, last, ok := r.countedAt(i + 1); ok && r.isCounted(name.key) && !r.isNoCount(i, last) {
			r.count(name.key, i, first, last)
		}
	}
}

// countedAt gives the name that is counted from word i on; "sheets of", "of the" may stand
// before it.
func (r *reading) countedAt(i int) (name called, first, last int, ok bool) {
	if name, last, ok = r.callAt(i); ok {
		return name, i, last, true
	}
	if r.words[i].Text != "of" {
		i++ // "sheets"
	}
	if i+1 >= len(r.words) || r.words[i].Text != "of" || !r.joins(r.words[i-1].End, r.words[i].Start) || r.figureAfter(r.words[i-1].Start) == r.words[i-1].Start {
		return called{}, 0, 0, false
	}
	first = i + 1
	if articles[r.words[first].Text] && first+1 < len(r.words) {
		first++
	}
	if !r.joins(r.words[first-1].End, r.words[first].Start) {
		return called{}, 0, 0, false
	}
	name, last, ok = r.callAt(first)
	return name, first, last, ok
}

// isCounted: the kit packs it by the piece or in packs inside the pack. What is filled has
// words of its own.
func (r *reading) isCounted(key string) bool {
	if h := r.kit.HouseholdItem(key); h != nil {
		return h.Amount.Given() && h.Amount.Value.Dimension == quantity.Count
	}
	c := r.kit.Component(key)
	if c == nil {
		return false
	}
	return c.Container == nil && (c.Insert != nil || c.Lots.Told() || c.Packed.Value.Dimension == quantity.Count)
}

// isNoCount: "there is one label to spare" and "step 2 labels" tell of no use. A measure that
// begins at the number, as in "2 sheets of 40 cm", is read with it.
func (r *reading) isNoCount(i, last int) bool {
	at, end := r.words[i].Start, r.words[last].End
	if r.before(at, 2, "there") || r.before(at, 1, "step", "page", "part", "figure", "number", "every") {
		return true
	}
	measure := slices.ContainsFunc(r.figureEnds, func(e int) bool { return at < e && e <= end })
	next := last + 1
	return measure || next < len(r.words) && r.joins(end, r.words[next].Start) && (r.words[next].Text == "each" || r.words[next].Text == "more")
}

func (r *reading) count(key string, i, first, last int) {
	start, end := r.words[i].Start, r.words[last].End
	if i > 0 && r.words[i-1].Text == "all" && r.joins(r.words[i-1].End, start) {
		start = r.words[i-1].Start
	}
	said := oneLine(r.text[start:end])
	// What is done with them follows from what they are (linkOfThing).
	r.Proposals = append(r.Proposals, &Proposal{Kind: Amount, Start: start, End: end, AmountStart: start, AmountEnd: r.words[i].End,
		Names: []Name{{r.words[first].Start, end, key}}, Meaning: said, Why: "a number and a name of the kit", Open: noHandling})
}

// containerBehind is the container in "one wick in each jar", "" for none.
func (r *reading) containerBehind(last int) string {
	i := last + 1
	if i >= len(r.words) || !r.joins(r.words[last].End, r.words[i].Start) || r.words[i].Text != "in" && r.words[i].Text != "into" {
		return ""
	}
	for i++; i < len(r.words) && several[r.words[i].Text] && r.joins(r.words[i-1].End, r.words[i].Start); i++ {
	}
	if i >= len(r.words) {
		return ""
	}
	name, _, ok := r.callAt(i)
	if c := r.kit.Component(name.key); ok && c != nil && c.Container != nil {
		return name.key
	}
	return ""
}

// withLots goes back over "4 lengths of" before "40 cm".
func (r *reading) withLots(m *measured) {
	i := r.wordAt(m.start) - 1
	if m.amount.Dimension != quantity.Length || i < 2 || r.words[i].Text != "of" || !lotWords[r.words[i-1].Text] || !r.isNumber(r.words[i-2].Text) {
		return
	}
	if r.joins(r.words[i].End, m.start) && r.joins(r.words[i-1].End, r.words[i].Start) && r.joins(r.words[i-2].End, r.words[i-1].Start) {
		m.start = r.words[i-2].Start
	}
}

var lotWords = wordSet("lengths pieces strands strips ends")

// asInMethods joins what is told twice, "550 g (1 lb 3 1/2 oz)", and leaves out sizes.
func (r *reading) asInMethods(all []measured) []measured {
	var kept []measured
	for _, m := range all {
		if len(kept) > 0 && m.start < kept[len(kept)-1].end || r.isOnlySize(m) || r.isSpoonItself(m) {
			continue
		}
		m.end = r.withBracket(m.end)
		r.withLots(&m)
		kept = append(kept, m)
	}
	return kept
}

// isOnlySize: a length tells of a material only where it is "of" it: "a card, 105 mm from the
// edge" tells where.
func (r *reading) isOnlySize(m measured) bool {
	return m.known && m.amount.Dimension == quantity.Length && !r.ofFollows(m.end)
}

// isSpoonItself: "the back of a spoon", "with a level scoop" tell of no amount.
func (r *reading) isSpoonItself(m measured) bool {
	first := r.wordAt(m.start)
	return m.known && m.amount.Household && first < len(r.words) && articles[r.words[first].Text] && !r.ofFollows(m.end)
}

// roleOf is the role that all of several components play, "" for none: of "pine fragrance" and
// "orange fragrance" in two runs, "fragrance" is the scent.
func roleOf(k *kit.Kit, keys []string) string {
	role := ""
	for _, key := range keys {
		plays := ""
		for _, run := range k.Runs {
			for _, with := range run.With {
				if with.Component.Value == key {
					plays = with.Role.Value
				}
			}
		}
		if plays == "" || role != "" && plays != role {
			return ""
		}
		role = plays
	}
	return role
}
