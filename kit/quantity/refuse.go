package quantity

import "strings"

// noFigure says that an amount lacks its figure.
func (p *parser) noFigure(i int) *Error {
	if p.prose {
		return noAmount
	}
	hint := "write a figure and a unit, such as 20 g"
	_, next, unit := p.unit(i)
	switch {
	case p.anyVague(0): // "some" has been read as "about"
		hint = noMeasure
	case unit:
		hint = "how many? Write 1 " + p.written(i, next)
	case i < len(p.tokens) && ambiguousWords[p.tokens[i].low] != "":
		hint = ambiguousWords[p.tokens[i].low]
	}
	return p.refuse(i, len(p.tokens), "a figure", hint)
}

func (p *parser) anyVague(i int) bool {
	for ; i < len(p.tokens); i++ {
		if vague[p.tokens[i].low] || vagueWords[p.tokens[i].low] {
			return true
		}
	}
	return false
}

// leftOver refuses what stands behind a complete amount.
func (p *parser) leftOver(i int, a *Amount) *Error {
	if i >= len(p.tokens) {
		return nil
	}
	expected, hint := "nothing after “"+a.Written+"”", ""
	_, of := p.find(i, ofWord)
	_, times := p.find(i, timesWord)
	switch t := p.tokens[i]; {
	case of > 0:
		hint = "write only the amount here, not what it is of"
	case t.low == "(" || t.low == "=" || t.low == ",":
		hint = "one telling of the amount is enough here"
	case p.zeroBelow(i):
		hint = "nothing can be divided by 0"
	case times > 0 && (a.Dimension == Area || p.timesAgain(times)):
		hint = "a body has three sides; tell width, depth and height apart"
	case times > 0 && a.Dimension == Count:
		hint = "write the total, or the packs and what is in each apart; the sides of an area need a unit, as in 30 × 20 cm"
	case t.low == "/" && p.kind(i+1, numberToken):
		hint = "one telling of the amount is enough here"
	case t.low == "/" || p.saysPer(i):
		hint = "such a ratio is not one that kits reckon with; known are g/mL, mL/g and g per 100 g"
	case t.low == "+":
		hint = "write at least " + a.Written
	case t.kind == numberToken && a.Dimension == Count && a.Noun == "":
		hint = "two figures side by side; write 1200 or 1,200 for thousands"
	case t.kind == numberToken || t.kind == vulgarToken:
		hint = p.secondAmount(i, a)
	case strings.HasPrefix(strings.ToLower(p.written(i, i+2)), "by vol"):
		hint = "shares count by mass; work it out with the density"
	case t.kind == wordToken && a.Dimension != Count:
		hint = "write only the amount here"
	}
	return p.refuse(i, len(p.tokens), expected, hint)
}

func (p *parser) saysPer(i int) bool {
	_, next := p.find(i, perWord)
	return next > 0
}

// timesAgain says whether a second times sign follows behind the next figure.
func (p *parser) timesAgain(i int) bool {
	_, next := p.figure(i)
	_, times := p.find(next, timesWord)
	return next > i && times > 0
}

// zeroBelow: the tokens are the "/0" of a fraction.
func (p *parser) zeroBelow(i int) bool {
	return p.is(i, "/") && p.kind(i+1, numberToken) && p.tokens[i+1].number.IsZero()
}

// secondAmount says why "2 kg 3 mL" and "2 lb 30 g" cannot be added.
func (p *parser) secondAmount(i int, a *Amount) string {
	second, _, err := p.measure(i)
	switch {
	case err != nil || second.bare():
		return "write only one figure, or give the second one its unit"
	case second.dimension() != a.Dimension:
		return "a " + a.Dimension.String() + " and a " + second.dimension().String() + " do not add up"
	}
	return "figures in two units add up only where the smaller follows the larger of one family, as in 2 lb 3 oz"
}
