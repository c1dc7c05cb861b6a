package quantity

import "strings"

// An Error says what could not be read as an amount, in words for the person who
// wrote it.
type Error struct {
	// Start and End are the bytes of the text that it is about.
	Start, End int
	// Found and Expected are phrases; Hint is what to write instead, "" when unknown.
	Found, Expected, Hint string
}

// Error puts the three phrases into one line.
func (e *Error) Error() string {
	var b strings.Builder
	b.WriteString("found " + e.Found + "; expected " + e.Expected)
	if e.Hint != "" {
		b.WriteString("; " + e.Hint)
	}
	return b.String()
}

// slipError explains a figure that is none.
func (p *parser) slipError(i int) *Error {
	expected, hint := "a plain figure, such as 1.25", ""
	switch p.tokens[i].slip {
	case hexadecimal:
		hint = "figures are written with the digits 0 to 9 alone"
	case exponent:
		hint = "write the figure out instead of with an e: 1500, not 1.5e3"
	case underscore:
		hint = "write 1200 or 1,200, without the line below"
	case clockTime:
		hint = "for a time write 1 h 30 min, for a ratio 1 : 30 with spaces"
	case date:
		hint = "this looks like a date; an amount has a figure and a unit"
	case strayPoint:
		hint = "a point here is neither a decimal point nor between thousands"
		if p.reader.DecimalComma {
			hint = "this text writes a decimal comma: 1,5"
		}
	case strayComma:
		hint = "a comma here is neither between thousands nor a decimal sign: write 1.5 or 1,500"
		if p.reader.DecimalComma {
			hint = "write one decimal comma only, and a point or no-break space between thousands"
		}
	case tooManyDigits:
		expected = "a figure of at most 30 digits"
		hint = "no amount in a kit needs so many; is it a serial number?"
	}
	return p.refuse(i, i+1, expected, hint)
}
