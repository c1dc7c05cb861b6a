package quantity

// A Found is an amount that stands in prose.
type Found struct {
	Amount Amount
	// Start and End are the bytes of the text that tell it, End not included.
	Start, End int
}

// Find gives every amount that stands in running prose, from left to right, none
// inside another, each as long as it can be read.
//
// It is the careful sibling of Amount: what may be no amount at all is left out.
//
//   - A figure without a unit counts only with a noun behind it, "6 jars". The noun
//     is any word that may name a thing, so that "6 small jars" gives "small",
//     unless Counted knows what the kit counts: then only such counts are told, and
//     the caller need not sort out "3 ways" and "two sides".
//   - Names with numbers are no counts: "step 3", "size 24 needle", "2-ply",
//     "6-strand".
//   - "A cup" is a vessel; "a cup of water" and "half a cup" are amounts.
//   - "in" is an inch only where no preposition fits: "4 in wide", "to 4 in."
//   - "5 g to 10 g" is two amounts ("add 5 g to 10 g of wax"); "5 to 10 g", "5–10 g"
//     and "from 5 g to 10 g" are one.
//   - "By 5 °C" is a difference of temperature.
//   - "Over", "under" and "around" before an amount say where, not how much.
//
// A Loose reader also takes "a pint rose water", "two or three gallons" and "80° C.
// to 90° C."
//
// The time grows with the length of the text alone.
func (r Reader) Find(text string) []Found {
	p := r.parser(text, true)
	var all []Found
	for i := 0; i < len(p.tokens); {
		if !p.mayBegin(i) {
			i++
			continue
		}
		amount, next, err := p.amount(i)
		if err != nil || !p.standsAlone(&amount, i, next) {
			i++
			continue
		}
		start, end := p.span(i, next)
		all = append(all, Found{Amount: amount, Start: start, End: end})
		i = next
	}
	return all
}

// mayBegin says whether an amount can begin at a token. It is asked of every one.
func (p *parser) mayBegin(i int) bool {
	t := &p.tokens[i]
	switch t.kind {
	case slipToken:
		return false
	case numberToken, vulgarToken:
		return !p.partOfName(i)
	case wordToken:
		return t.first != nil && t.first.begins && !(p.joined(i) && (p.is(i-1, "-") || p.is(i-1, "'")))
	}
	if t.low == "-" || t.low == "−" {
		return p.kind(i+1, numberToken) && p.joined(i+1) && !(p.joined(i) && p.kind(i-1, wordToken))
	}
	return t.first != nil && t.first.begins
}

// partOfName: the digits of "A4", "jar-20", "#5", "v1" and of paths are no figures.
func (p *parser) partOfName(i int) bool {
	if !p.joined(i) {
		return false
	}
	before := p.tokens[i-1]
	switch before.kind {
	case signToken:
		switch before.low {
		case "-":
			return !p.joined(i-1) || p.tokens[max(i-2, 0)].kind == wordToken
		case "#", ".", "@", "&", "\\", "'":
			return true
		case "/":
			return !p.joined(i-1) || p.tokens[max(i-2, 0)].kind != wordToken
		}
		return false
	}
	return true
}

// standsAlone says whether what was read is an amount in its surroundings.
func (p *parser) standsAlone(a *Amount, i, next int) bool {
	if p.joined(next) {
		switch t := p.tokens[next]; {
		case t.kind != signToken:
			return false
		case t.low == "/" && p.joined(next+1) && p.kind(next+1, wordToken):
			return false // 5 m/s
		}
	}
	if a.Dimension != Count {
		return true
	}
	return a.Noun != "" && !p.namedByNumber(i) && a.Nominal.Sign() > 0
}

// namedByNumber: the figure belongs to the word before it, "step 3", "size 24".
func (p *parser) namedByNumber(i int) bool {
	if i == 0 || p.tokens[i-1].kind != wordToken && !p.is(i-1, ".") {
		return false
	}
	word := i - 1
	if p.is(word, ".") && word > 0 {
		word-- // no. 3
		if p.tokens[i].kind == wordToken || !abbreviatedLabels[p.tokens[word].low] {
			return false
		}
	}
	_, next := p.find(word, labelWord)
	return next > 0
}

// abbreviatedLabels end with a point that ends no sentence.
var abbreviatedLabels = map[string]bool{"no": true, "nos": true, "nr": true, "fig": true, "abb": true, "n": true}

// onlyAWord says whether a unit in prose is rather a word of the language.
func (p *parser) onlyAWord(i, next int, unit Unit, m *measure) bool {
	word := p.tokens[i].low
	switch {
	case word == "in":
		return !p.inchFits(m, next)
	case len(word) == 1 && p.is(next, "'") && p.joined(next):
		return true // l'eau
	case !m.figure.article || m.fill != "":
		return false
	case unit.Dimension == Duration:
		return unit.Factor.Equal(one) // "a second coat"
	}
	if _, more := p.find(next, moreWord); more > 0 {
		return false // a pound and a half
	}
	if p.reader.Loose && !unit.Household {
		return false // a pint rose water
	}
	_, of := p.find(next, ofWord)
	return of == 0
}

// inchFits says whether "in" behind a figure can be an inch: before what a length
// is told of, or at the end of a clause that began with a word for a size.
func (p *parser) inchFits(m *measure, next int) bool {
	if next < len(p.tokens) && p.tokens[next].kind == wordToken {
		return behindInch[p.tokens[next].low]
	}
	if p.is(next, "×") || p.is(next, "–") || p.is(next, "-") || !m.figure.value.IsWhole() {
		return true
	}
	return m.start > 0 && beforeInch[p.tokens[m.start-1].low]
}

var behindInch = wordSet("of long wide tall deep thick high across square apart by x from above below")

var beforeInch = wordSet("to at of by about every is are over under leave cut measure measures – - × x another")

func wordSet(words string) map[string]bool {
	set := map[string]bool{}
	for _, t := range tokenize(words, false, nil) {
		set[t.low] = true
	}
	return set
}
