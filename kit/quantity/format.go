package quantity

import (
	"math/big"
	"strings"
)

// shownDigits is how many significant digits a figure is shown with unless more
// are needed to tell its whole part: as many as a kitchen scale has.
const shownDigits = 4

// A Style changes how Show tells a number.
type Style func(*style)

type style struct {
	tolerance Number
	comma     bool
}

// Within never shows more digits than the tolerance (base units, half width) supports.
func Within(tolerance Number) Style { return func(s *style) { s.tolerance = tolerance } }

// Comma tells decimals with a comma.
func Comma() Style { return func(s *style) { s.comma = true } }

// Show tells n base units of d in a sensible unit, rounded once, half to even
// (NIST SP 811 B.7.1): "705 g", "1.25 kg", "12 mL", "85 °C", "1 h 20 min", "7.27 %".
// Durations are told to the second, counts without a unit.
func Show(n Number, d Dimension, how ...Style) string {
	var s style
	for _, set := range how {
		set(&s)
	}
	text := ""
	switch d {
	case Duration:
		text = showDuration(n)
	case Money:
		text = rounded(n, 2, true)
	default:
		unit := unitFor(n, d)
		text = s.figure(n.Over(unit.factor), s.tolerance.Over(unit.factor)) + unit.symbol
	}
	if s.comma {
		text = strings.Replace(text, ".", ",", 1)
	}
	return text
}

// A scale is a unit to show figures in: from is the least figure shown in it.
type scale struct {
	from, factor Number
	symbol       string
}

// scales of each dimension, greatest first; the last takes all that is smaller.
var scales = map[Dimension][]scale{
	Mass:                  {{Whole(1000), Whole(1000), " kg"}, {Ratio(1, 10), one, " g"}, {Number{}, Ratio(1, 1000), " mg"}},
	Volume:                {{Whole(1000), Whole(1000), " L"}, {Number{}, one, " mL"}},
	Length:                {{Whole(1000), Whole(1000), " m"}, {Whole(100), Whole(10), " cm"}, {Number{}, one, " mm"}},
	Area:                  {{Whole(1_000_000), Whole(1_000_000), " m²"}, {Whole(100), Whole(100), " cm²"}, {Number{}, one, " mm²"}},
	Temperature:           {{Number{}, one, " °C"}},
	TemperatureDifference: {{Number{}, one, " °C"}},
	Share:                 {{Number{}, Ratio(1, 100), " %"}},
	Density:               {{Number{}, one, " g/mL"}},
	VolumePerMass:         {{Number{}, one, " mL/g"}},
}

func unitFor(n Number, d Dimension) scale {
	all := scales[d]
	for _, s := range all {
		if n.Abs().Cmp(s.from) >= 0 && !(n.IsZero() && len(all) > 1 && s.factor.Less(one)) {
			return s
		}
	}
	if n.IsZero() && d == Mass {
		return all[1] // nothing is 0 g, not 0 mg
	}
	if len(all) == 0 {
		return scale{factor: one}
	}
	return all[len(all)-1]
}

// figure rounds to what the digits shown and the tolerance allow.
func (s style) figure(n, tolerance Number) string {
	decimals := shownDigits - wholeDigits(n)
	if tolerance.Sign() > 0 {
		decimals = min(decimals, placesOf(tolerance))
	}
	return rounded(n, max(0, decimals), false)
}

// wholeDigits is how many digits stand before the point, counted negative for
// zeros behind it: 2 for 35, 0 for 0.35, −1 for 0.035.
func wholeDigits(n Number) int {
	if n.IsZero() {
		return shownDigits
	}
	count, ten, a := 0, Whole(10), n.Abs()
	for a.Cmp(one) >= 0 {
		a, count = a.Over(ten), count+1
	}
	for tenth := Ratio(1, 10); a.Less(tenth) && count > -MaxDigits; count-- {
		a = a.Times(ten)
	}
	return count
}

// placesOf is the number of decimals at which a tolerance has its first digit.
func placesOf(tolerance Number) int {
	return 1 - wholeDigits(tolerance)
}

// rounded tells n with so many decimals at most, half to even; the zeros at the
// end go unless they are kept.
func rounded(n Number, decimals int, keep bool) string {
	scaled := n.Times(power(decimals))
	whole := halfEven(scaled)
	text := new(big.Rat).SetFrac(whole, new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(decimals)), nil)).FloatString(decimals)
	if keep || decimals == 0 {
		return minus(text)
	}
	return minus(strings.TrimRight(strings.TrimRight(text, "0"), "."))
}

// minus writes a negative number with the sign that print has for it, and zero
// without one.
func minus(text string) string {
	digits, negative := strings.CutPrefix(text, "-")
	if !negative || strings.Trim(digits, "0.") == "" {
		return digits
	}
	return "−" + digits
}

// power is ten to the n.
func power(n int) Number {
	ten, result := Whole(10), one
	for range n {
		result = result.Times(ten)
	}
	return result
}

// halfEven rounds to a whole number, an exact half to the even neighbour.
func halfEven(n Number) *big.Int {
	r := n.Rat()
	twice := new(big.Int).Mul(r.Num(), big.NewInt(2))
	whole, rest := new(big.Int).DivMod(twice.Add(twice, r.Denom()), new(big.Int).Mul(r.Denom(), big.NewInt(2)), new(big.Int))
	if rest.Sign() == 0 && whole.Bit(0) == 1 {
		whole.Sub(whole, big.NewInt(1))
	}
	return whole
}

// showDuration tells days, hours, minutes and seconds, leaving out those that
// are nothing: "1 h 20 min", "3 days 6 h".
func showDuration(n Number) string {
	left := halfEven(n.Abs()).Int64()
	var parts []string
	for _, u := range []struct {
		seconds     int64
		one, others string
	}{{86400, " day", " days"}, {3600, " h", " h"}, {60, " min", " min"}, {1, " s", " s"}} {
		count := left / u.seconds
		left %= u.seconds
		if count == 0 {
			continue
		}
		name := u.others
		if count == 1 {
			name = u.one
		}
		parts = append(parts, Whole(count).String()+name)
	}
	if len(parts) == 0 {
		return "0 min"
	}
	if n.Sign() < 0 {
		return "−" + strings.Join(parts, " ")
	}
	return strings.Join(parts, " ")
}
