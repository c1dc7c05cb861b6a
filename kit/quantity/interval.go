package quantity

// A Range is all numbers from Low to High, both included.
type Range struct{ Low, High Number }

// Exact is the range of one number.
func Exact(n Number) Range { return Range{n, n} }

// Plus is every sum of a number of r and one of s.
func (r Range) Plus(s Range) Range { return Range{r.Low.Plus(s.Low), r.High.Plus(s.High)} }

// Minus is every difference of a number of r and one of s, as if the two did not
// hang together.
func (r Range) Minus(s Range) Range { return Range{r.Low.Minus(s.High), r.High.Minus(s.Low)} }

// Times is every product of a number of r and one of s.
func (r Range) Times(s Range) Range {
	product := Exact(r.Low.Times(s.Low))
	for _, n := range []Number{r.Low.Times(s.High), r.High.Times(s.Low), r.High.Times(s.High)} {
		product.Low, product.High = Smaller(product.Low, n), Larger(product.High, n)
	}
	return product
}

// Over is every quotient of a number of r and one of s. It is false where s holds
// 0, by which nothing can be divided.
func (r Range) Over(s Range) (Range, bool) {
	if s.Low.Sign() <= 0 && s.High.Sign() >= 0 {
		return Range{}, false
	}
	return r.Times(Range{one.Over(s.High), one.Over(s.Low)}), true
}

// Holds says whether n is in the range.
func (r Range) Holds(n Number) bool { return !n.Less(r.Low) && !r.High.Less(n) }
