package quantity

import (
	"math/big"
	"strings"
	"unicode/utf8"
)

// MaxDigits is how many digits one number may have. The largest figure that a
// kit needs has a dozen; a longer run of digits is a serial number or a slip,
// and would only cost time.
const MaxDigits = 30

// ParseNumber reads plain digits with at most one decimal point and an optional
// leading minus: "6", "1.25", ".5", "-3". Nothing else: no exponents, no
// hexadecimal, no separators between thousands.
func ParseNumber(s string) (Number, bool) {
	plain, negative := strings.CutPrefix(s, "-")
	if plain == "" {
		return Number{}, false
	}
	var t token
	end := t.scanDigits(plain, '.', 0)
	if end != len(plain) || t.slip != noSlip {
		return Number{}, false
	}
	if negative {
		return t.number.Negated(), true
	}
	return t.number, true
}

// readNumeral reads the figure at t.start. Thousands may be parted by the other
// one of comma and point, or by a no-break or thin space.
func (t *token) readNumeral(text string, comma bool) {
	point, group := byte('.'), byte(',')
	if comma {
		point, group = group, point
	}
	t.kind = numberToken
	t.end = t.scanDigits(text, point, group)
	if reason := slipAfter(text, t.start, t.end, group); reason != noSlip {
		t.slip = reason
	}
	if t.slip != noSlip {
		t.kind, t.end = slipToken, endOfLump(text, t.end)
	}
	t.low = text[t.start:t.end]
}

// scanDigits reads digits, groups of thousands and decimals from t.start, and
// gives the place where they end. A group of 0 allows no separators at all.
func (t *token) scanDigits(text string, point, group byte) (end int) {
	var d digits
	i := t.start
	for ; i < len(text) && isDigit(text[i]); i++ {
		d.add(text[i])
	}
	if lead := i - t.start; group != 0 && lead > 0 && lead <= 3 && text[t.start] != '0' {
		i = d.addThousands(text, i, group)
	}
	if i+1 < len(text) && text[i] == point && isDigit(text[i+1]) {
		for i++; i < len(text) && isDigit(text[i]); i++ {
			d.add(text[i])
			d.decimals++
		}
	}
	if d.count > MaxDigits {
		t.slip = tooManyDigits
		return i
	}
	t.number = d.number()
	return i
}

// digits is a run of decimal digits, of which MaxDigits are kept.
type digits struct {
	text            [MaxDigits]byte
	count, decimals int
}

// add takes one digit more; zeros before all others count for nothing, so that .5 and
// 0.5 are of one length.
func (d *digits) add(digit byte) {
	if d.count == 0 && digit == '0' {
		return
	}
	if d.count < MaxDigits {
		d.text[d.count] = digit
	}
	d.count++
}

// addThousands takes groups of exactly three digits, all parted the same way.
func (d *digits) addThousands(text string, i int, group byte) int {
	for first := ""; ; {
		size := separatorAt(text, i, group)
		separator := text[i : i+size]
		if size == 0 || first != "" && separator != first || !beginsWithThree(text[i+size:]) {
			return i
		}
		first = separator
		for range 3 {
			d.add(text[i+size])
			i++
		}
		i += size
	}
}

// number is the value of what was kept.
func (d *digits) number() Number {
	const fitsInt64 = 18
	kept := d.text[:d.count]
	if max(d.count, d.decimals) > fitsInt64 {
		n, _ := new(big.Int).SetString("0"+string(kept), 10)
		scale := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(d.decimals)), nil)
		return fromRat(new(big.Rat).SetFrac(n, scale))
	}
	var n int64
	for _, digit := range kept {
		n = n*10 + int64(digit-'0')
	}
	scale := int64(1)
	for range d.decimals {
		scale *= 10
	}
	return Ratio(n, scale)
}

func beginsWithThree(s string) bool {
	return len(s) >= 3 && isDigit(s[0]) && isDigit(s[1]) && isDigit(s[2]) && (len(s) == 3 || !isDigit(s[3]))
}

// separatorAt is the length of a separator between thousands at i, or 0.
func separatorAt(text string, i int, group byte) int {
	if i == len(text) {
		return 0
	}
	if text[i] == group {
		return 1
	}
	if text[i] < utf8.RuneSelf {
		return 0
	}
	switch c, size := utf8.DecodeRuneInString(text[i:]); c {
	case '\u00a0', '\u2007', '\u2009', '\u202f': // no-break, figure, thin, narrow no-break
		return size
	}
	return 0
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }
