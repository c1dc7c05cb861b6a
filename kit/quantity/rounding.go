package quantity

import (
	"math/big"
	"strconv"
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

// powerOfTen is ten to the places, which may be negative.
func powerOfTen(places int) Number {
	switch {
	case places >= 0 && places < len(smallPowers):
		return Number{num: smallPowers[places]}
	case places < 0:
		return one.Over(powerOfTen(-places))
	}
	return fromRat(new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil)))
}

// smallPowers are the powers of ten that a machine word holds.
var smallPowers = func() (powers [19]int64) {
	powers[0] = 1
	for i := range powers[1:] {
		powers[i+1] = powers[i] * 10
	}
	return powers
}()

// order is the power of ten of the first digit: 2 for 705, −2 for 0.05; 0 for 0.
func (n Number) order() int {
	if n.IsZero() {
		return 0
	}
	guess := n.digitsOverDigits()
	if n.Abs().Less(powerOfTen(guess)) {
		guess--
	}
	return guess
}

// digitsOverDigits is how many digits the top of the fraction has more than the
// bottom: the order, or one more.
func (n Number) digitsOverDigits() int {
	if n.wide == nil {
		return digitCount(magnitude(n.num)) - digitCount(uint64(n.below+1))
	}
	return len(new(big.Int).Abs(n.wide.Num()).String()) - len(n.wide.Denom().String())
}

func digitCount(n uint64) int {
	count := 1
	for ; n >= 10; n /= 10 {
		count++
	}
	return count
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
	places, ends := n.decimals()
	if !ends {
		return endless
	}
	return n.order() + 1 + places
}

// decimals is how many decimal places tell the number exactly, if any number does.
func (n Number) decimals() (places int, ends bool) {
	if n.wide != nil {
		return n.wide.FloatPrec()
	}
	bottom, twos, fives := n.below+1, 0, 0
	for ; bottom%2 == 0; bottom /= 2 {
		twos++
	}
	for ; bottom%5 == 0; bottom /= 5 {
		fives++
	}
	return max(twos, fives), bottom == 1
}

// fixed tells a number of no more than so many decimal places with just so many.
func (n Number) fixed(places int) string {
	scaled := n.Times(powerOfTen(places))
	if scaled.wide != nil || scaled.below != 0 {
		return n.asRat().FloatString(places)
	}
	text := strconv.FormatInt(scaled.num, 10)
	if places == 0 {
		return text
	}
	sign := ""
	if text[0] == '-' {
		sign, text = "-", text[1:]
	}
	if len(text) <= places {
		text = strings.Repeat("0", places-len(text)+1) + text
	}
	return sign + text[:len(text)-places] + "." + text[len(text)-places:]
}

// decimalText is n with so many decimal places, zeros at the end left out, and a
// true minus sign.
func decimalText(n Number, places int, how rounding, comma bool) string {
	text := n.round(places, how).fixed(max(places, 0))
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

// The bounds of Shortened: two hundred and fifty-six binary digits are more than
// any sum needs in which a few things are mixed and divided; forty decimals are a
// hundred-millionth of an atom.
const (
	longestBelow = 256
	keptPlaces   = 40
)

// Shortened is n, or where its fraction has grown beyond all use, as after pouring a
// part of a part many times over, n rounded down to forty decimals. Such fractions
// would double their digits with every pour.
func (n Number) Shortened() Number {
	if n.wide == nil || n.wide.Denom().BitLen() <= longestBelow {
		return n
	}
	return n.round(keptPlaces, down)
}
