package instructions

import (
	"errors"
	"strings"
	"unicode"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// A figure that is no amount mostly has a slip in its unit: "570 mll". What reads
// amounts knows the unit that was meant, so it is asked.

// slip is why a text is no amount, at bytes of the flat text.
type slip struct {
	start, end int
	because    *quantity.Error
}

// slipAt reads bytes start to end of the text as an amount, and gives what is
// wrong with it, or ok = false when nothing is.
func (f *phrasing) slipAt(start, end int) (slip, bool) {
	_, err := f.amounts.Amount(string(f.link.text.text[start:end]))
	var because *quantity.Error
	if !errors.As(err, &because) {
		return slip{}, false
	}
	return slip{start + because.Start, start + because.End, because}, true
}

// saySlip tells a figure that is no amount at the bytes that are the trouble.
func (f *phrasing) saySlip(s slip) {
	f.problem = true
	where := f.link.text.span(s.start, s.end)
	if !where.Known() {
		where = f.wholeText()
	}
	remedies := []string{f.remedyForAmount()}
	if s.because.Hint != "" {
		remedies = append([]string{s.because.Hint}, remedies...)
	}
	f.say(unreadableAmount, where, f.target, s.because.Found+" in "+f.written(), s.because.Expected, remedies...)
}

// unreadFigure finds the first digit of a text that no amount was read of, with
// the word behind it.
func (f *phrasing) unreadFigure() (slip, bool) {
	text := f.link.text.String()
	start := strings.IndexFunc(text, unicode.IsDigit)
	if start < 0 {
		return slip{}, false
	}
	words := 0
	end := strings.IndexFunc(text[start:], func(r rune) bool {
		if unicode.IsSpace(r) {
			words++
		}
		return words == 2
	})
	if end < 0 {
		end = len(text) - start
	}
	return f.slipAt(start, start+end)
}

// unreadTelling finds a figure that was not read beside an amount that was: "600 g
// (1 lbx)". It would be told to the customer and compared by nobody.
func (f *phrasing) unreadTelling() (slip, bool) {
	for i := 0; i+1 < len(f.tokens); i++ {
		figure, unit := f.tokens[i], f.tokens[i+1]
		if figure.used || figure.isAmount || unit.isAmount || !isDigit(figure.text[0]) || isDigit(unit.text[0]) ||
			unit.start-figure.end > 1 || f.isName(i) || f.has(i+1, f.language.joins) {
			continue
		}
		if s, ok := f.slipAt(figure.start, unit.end); ok {
			return s, true
		}
	}
	return slip{}, false
}

// isName says whether a number belongs to a name: "bag 2", or "00 flour" where the
// kit calls it so.
func (f *phrasing) isName(i int) bool {
	return f.endsAt(i, f.language.labels) > 0 || f.isOfTarget(f.language.stem(f.tokens[i].text))
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// miscounts finds a count of something that is nothing to count, "720 gramms", "two
// pinches", "80 degrees", and tells it.
func (f *phrasing) miscounts(t token) bool {
	noun := wordsOf(t.amount.Noun)
	if t.amount.Dimension != quantity.Count || len(noun) == 0 {
		return false
	}
	fits := f.fits(quantity.Count)
	if fits && f.mayCount(noun[len(noun)-1].text) {
		return false
	}
	if s, ok := f.slipAt(t.start, t.end); ok {
		f.saySlip(s)
		return true
	}
	if fits && f.isMeasured() {
		f.problem = true
		f.say(unreadableAmount, f.place(t), f.target, quoted(t.text)+", a number of things that the kit doesn't count", f.meaning.expected(),
			f.remedyForAmount(), "say under measures in kit.yaml how much one of them holds")
		return true
	}
	return false
}

// isMeasured says whether the target is told by weight, volume, length or area.
func (f *phrasing) isMeasured() bool {
	if h := f.kit.HouseholdItem(f.target); h != nil {
		return h.Density.Given()
	}
	if f.isUntold() {
		return false // a finding of its own
	}
	return !f.isCounted()
}

// mayCount says whether so many of a noun can be taken: a pack, the thing itself,
// and by any name what is packed by the piece.
func (f *phrasing) mayCount(noun string) bool {
	switch f.meaning.kind {
	case kit.Take, kit.Use, kit.Place:
		return f.isCounted() || f.language.isPack(noun) || f.isOfTarget(f.language.stem(noun))
	}
	return true
}
