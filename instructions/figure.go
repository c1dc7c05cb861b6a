package instructions

import (
	"errors"
	"slices"
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

// isSlip finds a count of something that is nothing to count: "720 gramms", "two
// pinches". A pack, the thing itself, and what is packed by the piece are counted
// by any name.
func (f *phrasing) isSlip(t token) (slip, bool) {
	switch f.meaning.kind {
	case kit.Take, kit.Use, kit.Place:
	default:
		return slip{}, false
	}
	noun := wordsOf(t.amount.Noun)
	if t.amount.Dimension != quantity.Count || len(noun) == 0 || f.isCounted() {
		return slip{}, false
	}
	last := singular(noun[len(noun)-1].text)
	if slices.Contains(packWords, last) || f.isOfTarget(last) {
		return slip{}, false
	}
	return f.slipAt(t.start, t.end)
}
