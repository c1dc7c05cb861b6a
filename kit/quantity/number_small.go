package quantity

import (
	"math"
	"math/bits"
)

// plusSmall adds a/b and c/d, both in lowest terms with b, d ≥ 1, where the
// result and everything on the way fits a machine word.
func plusSmall(a, b, c, d int64) (Number, bool) {
	if b == d {
		sum, ok := addSmall(a, c)
		if !ok {
			return Number{}, false
		}
		return Ratio(sum, b), true
	}
	shared := int64(gcd(uint64(b), uint64(d)))
	left, okLeft := mulSmall(a, d/shared)
	right, okRight := mulSmall(c, b/shared)
	bottom, okBottom := mulSmall(b/shared, d)
	if !okLeft || !okRight || !okBottom {
		return Number{}, false
	}
	sum, ok := addSmall(left, right)
	if !ok {
		return Number{}, false
	}
	return Ratio(sum, bottom), true
}

// timesSmall multiplies a/b by c/d under the same terms. Cancelling crosswise
// first leaves the product in lowest terms.
func timesSmall(a, b, c, d int64) (Number, bool) {
	if a == 0 || c == 0 {
		return Number{}, true
	}
	across := int64(gcd(magnitude(a), uint64(d)))
	back := int64(gcd(magnitude(c), uint64(b)))
	top, okTop := mulSmall(a/across, c/back)
	bottom, okBottom := mulSmall(b/back, d/across)
	return Number{num: top, below: bottom - 1}, okTop && okBottom
}

// addSmall and mulSmall keep off math.MinInt64, whose negative does not exist.

func addSmall(a, b int64) (int64, bool) {
	sum := a + b
	overflown := (a^sum)&(b^sum) < 0 // the sum has another sign than both
	return sum, !overflown && sum != math.MinInt64
}

func mulSmall(a, b int64) (int64, bool) {
	high, low := bits.Mul64(magnitude(a), magnitude(b))
	if high != 0 || low > math.MaxInt64 {
		return 0, false
	}
	if (a < 0) != (b < 0) {
		return -int64(low), true
	}
	return int64(low), true
}
