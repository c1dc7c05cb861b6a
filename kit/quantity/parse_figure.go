package quantity

// A figure is a number as written, without its unit.
type figure struct {
	value Number
	// article: only "a" was written, which counts as one where a unit follows.
	article bool
	// linked is the place behind "of a" after a fraction, or 0: the unit stands
	// there or right behind the fraction.
	linked int
	// inWords: not told in digits.
	inWords bool
}

// figure reads a number in digits or words. Where there is none, next is i.
func (p *parser) figure(i int) (f figure, next int) {
	first := i
	negative := false
	if p.is(i, "-") || p.is(i, "−") {
		negative = p.kind(i+1, numberToken) && p.joined(i+1)
		i++
	} else if _, after := p.find(i, minusWord); after > 0 && p.kind(after, numberToken) {
		negative = true
		i = after
	}
	if i > first && !negative {
		return figure{}, first
	}
	switch {
	case p.kind(i, numberToken):
		f.value, next = p.digits(i)
		f.linked = p.overArticle(f.value, next)
	case p.kind(i, vulgarToken):
		f.value, next = p.tokens[i].number, i+1
		f.linked = p.overArticle(f.value, next)
	default:
		f, next = p.figureInWords(i)
	}
	if next == i {
		return figure{}, first
	}
	if negative {
		f.value = f.value.Negated()
		return f, next
	}
	return p.dozens(f, next)
}

// overArticle gives the place behind the "a" of "½ a pint", 0 where there is none.
func (p *parser) overArticle(value Number, i int) int {
	if value.Sign() <= 0 || !value.Less(one) {
		return 0
	}
	_, next := p.find(i, articleWord)
	return next
}

// digits reads "12", "1.5", "1/2", "1 1/2", "1-1/2", "1½", "1 and 1/2", "2 and a half".
func (p *parser) digits(i int) (Number, int) {
	whole := p.tokens[i].number
	if fraction, next := p.fraction(i); next > i {
		return fraction, next
	}
	i++
	if !whole.IsWhole() {
		return whole, i
	}
	if p.kind(i, vulgarToken) {
		return whole.Plus(p.tokens[i].number), i + 1
	}
	at := i
	if p.is(i, "-") && p.joined(i) && p.joined(i+1) && whole.Sign() > 0 {
		at = i + 1 // 1-1/2 is 1½; a range would run backwards
	} else if _, after := p.find(i, andWord); after > 0 {
		at = after
	}
	if p.kind(at, numberToken) {
		if part, next := p.fraction(at); next > at && part.Less(one) {
			return whole.Plus(part), next
		}
	}
	if more, next := p.find(i, moreWord); next > 0 {
		return whole.Plus(more.number), next
	}
	return whole, i
}

// fraction reads "1/2", written without spaces. Where there is none, next is i.
func (p *parser) fraction(i int) (Number, int) {
	if !p.is(i+1, "/") || !p.joined(i+1) || !p.joined(i+2) || !p.kind(i+2, numberToken) {
		return Number{}, i
	}
	top, bottom := p.tokens[i].number, p.tokens[i+2].number
	if !top.IsWhole() || !bottom.IsWhole() || bottom.IsZero() {
		return Number{}, i
	}
	return top.Over(bottom), i + 3
}

// figureInWords reads "six", "one and a half", "half a", "three quarters of an", "a".
func (p *parser) figureInWords(i int) (figure, int) {
	if !p.kind(i, wordToken) {
		return figure{}, i
	}
	number, next := p.find(i, numberWord)
	fraction, behind := p.find(i, fractionWord)
	switch {
	case fraction != nil && behind >= next:
		f := figure{value: fraction.number, inWords: true}
		if _, linked := p.find(behind, linkWord); linked > 0 {
			f.linked = linked
		}
		return f, behind
	case number != nil:
		f := figure{value: number.number, inWords: true}
		if more, after := p.find(next, moreWord); after > 0 {
			f.value = f.value.Plus(more.number)
			return f, after
		}
		return f, next
	}
	if _, next := p.find(i, articleWord); next > 0 {
		return figure{value: one, article: true, inWords: true}, next
	}
	return figure{}, i
}

// dozens multiplies by the dozen that may follow.
func (p *parser) dozens(f figure, next int) (figure, int) {
	at := next
	if f.linked > 0 {
		at = f.linked
	}
	dozen, after := p.find(at, dozenWord)
	if dozen == nil {
		dozen, after = p.find(next, dozenWord)
	}
	if dozen == nil {
		return f, next
	}
	return figure{value: f.value.Times(dozen.number), inWords: f.inWords}, after
}
