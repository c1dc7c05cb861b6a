package ledger

import (
	"strings"
	"unicode/utf8"

	"tallyfold/kit/quantity"
)

// lastDigit is the worth of the last digit the maker wrote, in base units: 0.1 g
// for "2.5 g", 1 g for "20 g", an ounce for "1 lb 5 oz", a quarter of one for
// "3 1/4 oz".
func lastDigit(amount quantity.Amount) quantity.Number {
	written, _, _ := strings.Cut(amount.Written, "±")
	end := 0 // behind the last digit
	for i, r := range written {
		if isDigit(r) || fractionSigns[r] > 0 {
			end = i + utf8.RuneLen(r)
		}
	}
	return unitBehind(written[end:], amount).Over(quantity.Whole(fineness(written[:end], partsThousands(amount))))
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

var fractionSigns = map[rune]int64{'½': 2, '⅓': 3, '⅔': 3, '¼': 4, '¾': 4, '⅛': 8, '⅜': 8, '⅝': 8, '⅞': 8}

// unitBehind is the worth of the unit told behind the last figure, which is the
// smaller one of "1 lb 5 oz"; else of the amount's own unit.
func unitBehind(text string, amount quantity.Amount) quantity.Number {
	unit, ok := quantity.UnitNamed(strings.TrimSpace(text), quantity.USCustomary)
	if ok && unit.Dimension == amount.Dimension && !amount.Household {
		return unit.Factor
	}
	return amount.Unit.Factor
}

// thousands is how many digits stand behind a mark that parts thousands.
const thousands = 3

// partsThousands says whether a mark before three digits may part thousands in an
// amount: "1,200 g" in English and "1.200 g" in German are whole and above 999, "0,125
// kg" and "1.200 kg" are not.
func partsThousands(amount quantity.Amount) bool {
	figure := amount.Figure()
	return figure.IsWhole() && !figure.Abs().Less(quantity.Whole(1000))
}

// fineness is into how many parts the last digit of a text divides a unit: 10 for
// "2.5", 4 for "3 1/4", 1 for "20".
func fineness(text string, parted bool) int64 {
	if last, _ := utf8.DecodeLastRuneInString(text); fractionSigns[last] > 0 {
		return fractionSigns[last]
	}
	start := strings.LastIndexFunc(text, func(r rune) bool { return !isDigit(r) })
	if start < 0 {
		return 1
	}
	digits := text[start+1:]
	switch sign, _ := utf8.DecodeRuneInString(text[start:]); {
	case sign == '/' || sign == '⁄':
		if below, ok := quantity.ParseNumber(digits); ok && below.Sign() > 0 {
			return below.Int()
		}
	case (sign == '.' || sign == ',') && !(parted && len(digits) == thousands):
		parts := int64(1)
		for range min(len(digits), 12) {
			parts *= 10
		}
		return parts
	}
	return 1
}
