package quantity

import (
	"math/big"
	"strings"
)

// rounding says which way a number goes that has more digits than are shown.
type rounding int

const (
	halfEven rounding = iota // the nearest; a tie to the even digit (NIST SP 811, B.7.1)
	halfUp                   // the nearest; a tie away from 0 (21 CFR 101.9)
	down                     // towards less
	up                       // towards more
)

// round keeps so many decimal places; of fewer than none, tens, hundreds and so on.
func (n Number) round(places int, how rounding) Number {
	scale := powerOfTen(places)
	scaled := n.Times(scale)
	whole := Whole(scaled.Int()) // rounded down
	if scaled.wide != nil {
		r := scaled.asRat()
		whole = fromRat(new(big.Rat).SetInt(new(big.Int).Div(r.Num(), r.Denom())))
	}
	rest := scaled.Minus(whole)
	if rest.IsZero() || how == down {
		return whole.Over(scale)
	}
	half := rest.Cmp(Ratio(1, 2))
	upwards := how == up || half > 0
	if half == 0 {
		upwards = how == up || how == halfUp && n.Sign() > 0 || how == halfEven && isOdd(whole)
	}
	if upwards {
		whole = whole.Plus(one)
	}
	return whole.Over(scale)
}

func isOdd(whole Number) bool { return !whole.Over(Whole(2)).IsWhole() }

// roundTo gives the nearest multiple of a step.
func (n Number) roundTo(step Number, how rounding) Number {
	return n.Over(step).round(0, how).Times(step)
}

func powerOfTen(places int) Number {
	const fits = 18
	if places >= 0 && places <= fits {
		n := int64(1)
		for range places {
			n *= 10
		}
		return Whole(n)
	}
	if places < 0 {
		return one.Over(powerOfTen(-places))
	}
	return fromRat(new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil)))
}

// order is the power of ten of the first digit: 2 for 705, −2 for 0.05; 0 for 0.
func (n Number) order() int {
	if n.IsZero() {
		return 0
	}
	r := n.Abs().asRat()
	guess := len(r.Num().String()) - len(r.Denom().String())
	if fromRat(new(big.Rat).Set(r)).Less(powerOfTen(guess)) {
		guess--
	}
	return guess
}

// firstDigit is the first digit that is not 0.
func (n Number) firstDigit() int64 {
	return n.Abs().Times(powerOfTen(-n.order())).Int()
}

// placesFor is how many decimal places keep so many significant digits.
func (n Number) placesFor(significant int) int { return significant - 1 - n.order() }

// significantDigits counts the digits of an exact decimal from its first to its
// last, zeros before the point included: 3 for 570, 2 for 0.012. A number that does
// not end has more than anyone shows.
func (n Number) significantDigits() int {
	const endless = 99
	places, ends := n.asRat().FloatPrec()
	if !ends {
		return endless
	}
	return n.order() + 1 + places
}

// decimalText is n with so many decimal places, zeros at the end left out, and a
// true minus sign.
func decimalText(n Number, places int, how rounding, comma bool) string {
	text := n.round(places, how).asRat().FloatString(max(places, 0))
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if comma {
		text = strings.Replace(text, ".", ",", 1)
	}
	if rest, negative := strings.CutPrefix(text, "-"); negative {
		return "−" + rest
	}
	return text
}
