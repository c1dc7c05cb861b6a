package quantity

import "strings"

// A slip says why something that begins like a number is none.
type slip uint8

const (
	noSlip slip = iota
	hexadecimal
	exponent
	underscore
	clockTime
	date
	strayPoint
	strayComma
	tooManyDigits
)

// slipAfter looks at what follows the digits text[start:end] without a space.
// Everything here is either read by some programs as another number than the
// one meant, or is no number.
func slipAfter(text string, start, end int, group byte) slip {
	rest := text[end:]
	if rest == "" {
		return noSlip
	}
	second := byte(0)
	if len(rest) > 1 {
		second = rest[1]
	}
	switch rest[0] {
	case '_':
		return underscore
	case 'x', 'X':
		if text[start:end] == "0" && isHex(second) {
			return hexadecimal
		}
	case 'e', 'E':
		if isDigit(second) || (second == '+' || second == '-') && len(rest) > 2 && isDigit(rest[2]) {
			return exponent
		}
	case ':':
		return slipInClock(text[start:end], rest[1:])
	case '-', '/', '.', ',':
		return slipInDate(text[start:end], rest, group)
	}
	return noSlip
}

// slipInClock tells 1:30 (a time of day, or minutes and seconds) from 100:70.
func slipInClock(before, after string) slip {
	minutes := leadingDigits(after)
	if minutes == 2 && after[0] < '6' && len(before) <= 2 {
		return clockTime
	}
	return noSlip
}

func slipInDate(before, rest string, group byte) slip {
	count := leadingDigits(rest[1:])
	if count == 0 {
		return noSlip
	}
	after := rest[1+count:]
	dated := len(after) > 1 && after[0] == rest[0] && isDigit(after[1])
	switch {
	case dated:
		return date
	case rest[0] == '.':
		return strayPoint
	case rest[0] == ',':
		return strayComma
	}
	return noSlip
}

// endOfLump is where the run of characters that belong to the slip ends.
func endOfLump(text string, i int) int {
	for i < len(text) && (isDigit(text[i]) || isHex(text[i]|0x20) || strings.IndexByte("xX_.,:/-+", text[i]) >= 0) {
		i++
	}
	for i > 0 && strings.IndexByte(".,:/-+", text[i-1]) >= 0 {
		i--
	}
	return i
}

func leadingDigits(s string) int {
	n := 0
	for n < len(s) && isDigit(s[n]) {
		n++
	}
	return n
}

func isHex(c byte) bool { return isDigit(c) || 'a' <= c && c <= 'f' || 'A' <= c && c <= 'F' }
