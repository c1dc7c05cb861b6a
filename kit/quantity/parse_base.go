package quantity

// base reads what a share or ratio is of: "of the mixture by mass".
func (p *parser) base(a *Amount, i int) int {
	if a.Dimension != Share && a.Dimension != Proportion && a.Dimension != VolumePerMass && a.Dimension != Density {
		return i
	}
	i = p.overMass(i)
	_, at := p.find(i, ofWord)
	if at == 0 {
		return i
	}
	if _, after := p.find(at, theWord); after > 0 {
		at = after
	}
	end := p.baseEnd(at)
	if end == at {
		return i
	}
	a.Of = p.written(at, end)
	return p.overMass(end)
}

// overMass passes "by weight", which every share is.
func (p *parser) overMass(i int) int {
	if _, next := p.find(i, massWord); next > 0 {
		return next
	}
	return i
}

// baseEnd is where the name of a base ends. In a field it runs on to the end, to
// "by weight" or "at 20 °C". In prose it is one word, or two where the first
// cannot stand alone.
func (p *parser) baseEnd(i int) int {
	const longest = 12 // tokens
	end := i
	for end < len(p.tokens) && end-i < longest && p.inBase(end) {
		t := p.tokens[end]
		_, weighed := p.find(end, massWord)
		_, at := p.find(end, atWord)
		if weighed > 0 || at > 0 && p.kind(at, numberToken) {
			break
		}
		end++
		if p.prose && t.kind != signToken && !halfBase[t.low] && !(p.joined(end) && p.inBase(end)) {
			if p.is(end, "weight") || p.is(end, "mass") {
				end++
			}
			break
		}
	}
	return end
}

// inBase says whether a token can be part of the name of a base: a word, an
// apostrophe, or what a hyphen joins to a word, as in "part-1".
func (p *parser) inBase(i int) bool {
	switch p.tokens[i].kind {
	case wordToken:
		return true
	case numberToken:
		return p.joined(i) && p.is(i-1, "-") && p.joined(i-1)
	}
	hyphen := p.is(i, "-") && p.joined(i+1) && (p.kind(i+1, wordToken) || p.kind(i+1, numberToken))
	return p.joined(i) && (hyphen || p.is(i, "'"))
}

// halfBase: words that only begin the name of a base.
var halfBase = map[string]bool{
	"whole": true, "total": true, "finished": true, "dry": true, "wet": true, "entire": true, "final": true, "same": true,
}
