package quantity

import (
	"cmp"
	"math"
	"math/big"
	"math/bits"
)

// A Number is an exact rational number that never changes. The zero value is 0.
//
// Nearly every figure of a kit fits two machine words and is kept in them; what
// does not is kept as a big.Rat. Each value has one form only, but compare with
// Cmp or Equal: of the big form two equal ones are two pointers under ==.
type Number struct {
	num int64
	// below is the denominator less one, so that the zero value is 0/1.
	below int64
	// wide holds the value instead when the two above cannot; nobody changes it.
	wide *big.Rat
}

// Whole is n.
func Whole(n int64) Number { return Ratio(n, 1) }

// Ratio is a/b. Like a division of integers it panics when b is 0: whoever
// calls it with a figure that a maker wrote asks first.
func Ratio(a, b int64) Number {
	if b == 0 {
		panic("quantity: a number divided by nothing")
	}
	if a == math.MinInt64 || b == math.MinInt64 {
		return fromRat(big.NewRat(a, b))
	}
	if b < 0 {
		a, b = -a, -b
	}
	if shared := gcd(magnitude(a), uint64(b)); shared > 1 {
		a, b = a/int64(shared), b/int64(shared)
	}
	return Number{num: a, below: b - 1}
}

// FromRat is the value of r, which its owner may go on changing.
func FromRat(r *big.Rat) Number { return fromRat(new(big.Rat).Set(r)) }

// FromFloat is the exact value of f. It is for results of physics and
// simulation; what a maker wrote never passes through a float. It panics when f
// is infinite or not a number: FromFinite asks.
func FromFloat(f float64) Number {
	n, ok := FromFinite(f)
	if !ok {
		panic("quantity: a number must be finite")
	}
	return n
}

// FromFinite is FromFloat for a result that may not be finite.
func FromFinite(f float64) (Number, bool) {
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return Number{}, false
	}
	return fromRat(new(big.Rat).SetFloat64(f)), true
}

// fromRat takes r over: the caller forgets it.
func fromRat(r *big.Rat) Number {
	num, denom := r.Num(), r.Denom()
	if num.IsInt64() && denom.IsInt64() && num.Int64() != math.MinInt64 {
		return Number{num: num.Int64(), below: denom.Int64() - 1}
	}
	return Number{wide: r}
}

// Rat gives a copy as a big.Rat.
func (n Number) Rat() *big.Rat {
	if n.wide != nil {
		return new(big.Rat).Set(n.wide)
	}
	return big.NewRat(n.num, n.below+1)
}

// asRat gives the value for reading only.
func (n Number) asRat() *big.Rat {
	if n.wide != nil {
		return n.wide
	}
	return big.NewRat(n.num, n.below+1)
}

// Plus is n + m.
func (n Number) Plus(m Number) Number {
	if n.wide == nil && m.wide == nil {
		if sum, ok := plusSmall(n.num, n.below+1, m.num, m.below+1); ok {
			return sum
		}
	}
	return fromRat(new(big.Rat).Add(n.asRat(), m.asRat()))
}

// Minus is n − m.
func (n Number) Minus(m Number) Number { return n.Plus(m.Negated()) }

// Times is n × m.
func (n Number) Times(m Number) Number {
	if n.wide == nil && m.wide == nil {
		if product, ok := timesSmall(n.num, n.below+1, m.num, m.below+1); ok {
			return product
		}
	}
	return fromRat(new(big.Rat).Mul(n.asRat(), m.asRat()))
}

// Over is n ÷ m. It panics when m is 0, as Ratio does.
func (n Number) Over(m Number) Number {
	if m.IsZero() {
		panic("quantity: a number divided by nothing")
	}
	if m.wide != nil {
		return fromRat(new(big.Rat).Quo(n.asRat(), m.wide))
	}
	upside := Number{num: m.below + 1, below: m.num - 1}
	if m.num < 0 {
		upside = Number{num: -(m.below + 1), below: -m.num - 1}
	}
	return n.Times(upside)
}

// Negated is −n.
func (n Number) Negated() Number {
	if n.wide != nil {
		return fromRat(new(big.Rat).Neg(n.wide))
	}
	return Number{num: -n.num, below: n.below}
}

// Abs is n without its sign.
func (n Number) Abs() Number {
	if n.Sign() < 0 {
		return n.Negated()
	}
	return n
}

// Cmp is −1, 0 or 1 as n is less than, equal to or greater than m.
func (n Number) Cmp(m Number) int {
	if n.wide != nil || m.wide != nil {
		return n.asRat().Cmp(m.asRat())
	}
	if n.Sign() != m.Sign() {
		return cmp.Compare(n.Sign(), m.Sign())
	}
	left, leftLow := bits.Mul64(magnitude(n.num), uint64(m.below+1))
	right, rightLow := bits.Mul64(magnitude(m.num), uint64(n.below+1))
	switch {
	case left == right && leftLow == rightLow:
		return 0
	case left < right || left == right && leftLow < rightLow:
		return -n.Sign()
	}
	return n.Sign()
}

// Equal says whether both have the same value.
func (n Number) Equal(m Number) bool { return n.Cmp(m) == 0 }

// Less says whether n is below m.
func (n Number) Less(m Number) bool { return n.Cmp(m) < 0 }

// Sign is −1, 0 or 1.
func (n Number) Sign() int {
	switch {
	case n.wide != nil:
		return n.wide.Sign()
	case n.num < 0:
		return -1
	case n.num > 0:
		return 1
	}
	return 0
}

// IsZero says whether n is 0.
func (n Number) IsZero() bool { return n.Sign() == 0 }

// IsWhole says whether n has no fraction.
func (n Number) IsWhole() bool {
	if n.wide != nil {
		return n.wide.IsInt()
	}
	return n.below == 0
}

// Float is the nearest floating-point number.
func (n Number) Float() float64 {
	// Both parts exact in a float64 make one correctly rounded division.
	const exact = 1 << 53
	if n.wide == nil && magnitude(n.num) <= exact && n.below < exact {
		return float64(n.num) / float64(n.below+1)
	}
	f, _ := n.asRat().Float64()
	return f
}

// Int is the greatest whole number that is not above n. Where that needs more
// than an int64 it is the nearest int64.
func (n Number) Int() int64 {
	if n.wide == nil {
		whole := n.num / (n.below + 1)
		if n.num < 0 && n.below > 0 {
			whole--
		}
		return whole
	}
	floor := new(big.Int).Div(n.wide.Num(), n.wide.Denom())
	switch {
	case floor.IsInt64():
		return floor.Int64()
	case floor.Sign() < 0:
		return math.MinInt64
	}
	return math.MaxInt64
}

// String is the exact decimal ("1.25") where one exists, else a fraction ("1/3").
func (n Number) String() string {
	places, ends := n.decimals()
	if !ends {
		return n.asRat().RatString()
	}
	return n.fixed(places)
}

// Smaller is the lesser of a and b.
func Smaller(a, b Number) Number {
	if b.Less(a) {
		return b
	}
	return a
}

// Larger is the greater of a and b.
func Larger(a, b Number) Number {
	if a.Less(b) {
		return b
	}
	return a
}

func magnitude(n int64) uint64 {
	if n < 0 {
		return uint64(-n)
	}
	return uint64(n)
}

func gcd(a, b uint64) uint64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
