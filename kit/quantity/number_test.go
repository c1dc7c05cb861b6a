package quantity

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"
)

// sampleNumbers gives numbers of every shape: whole, fractions, negative, and so
// large that they leave the machine word.
func sampleNumbers() []Number {
	random := rand.New(rand.NewPCG(1, 2))
	all := []Number{
		{}, Whole(1), Whole(-1), Whole(math.MaxInt64), Whole(math.MinInt64), Whole(math.MaxInt64 - 1),
		Ratio(1, math.MaxInt64), Ratio(math.MinInt64, 3), Ratio(1, 3), Ratio(-7, 12), Ratio(6, -8), FromFloat(0.1),
	}
	for range 60 {
		bits := random.IntN(62)
		all = append(all, Ratio(random.Int64N(1<<bits|1)-1<<max(bits-1, 0), 1+random.Int64N(1<<random.IntN(62)|1)))
	}
	return all
}

// The oracle is math/big, which has no small form that could overflow.
func TestArithmeticAgreesWithBigRat(t *testing.T) {
	for _, a := range sampleNumbers() {
		for _, b := range sampleNumbers() {
			same := func(what string, got Number, want *big.Rat) {
				t.Helper()
				if got.Rat().Cmp(want) != 0 {
					t.Errorf("%v %s %v = %v, want %v", a, what, b, got, want)
				}
			}
			same("+", a.Plus(b), new(big.Rat).Add(a.Rat(), b.Rat()))
			same("−", a.Minus(b), new(big.Rat).Sub(a.Rat(), b.Rat()))
			same("×", a.Times(b), new(big.Rat).Mul(a.Rat(), b.Rat()))
			if !b.IsZero() {
				same("÷", a.Over(b), new(big.Rat).Quo(a.Rat(), b.Rat()))
			}
			if got, want := a.Cmp(b), a.Rat().Cmp(b.Rat()); got != want {
				t.Errorf("%v against %v: %d, want %d", a, b, got, want)
			}
			if !a.Plus(b).Minus(b).Equal(a) {
				t.Errorf("%v + %v − %v is not %v", a, b, b, a)
			}
			if !Smaller(a, b).Plus(Larger(a, b)).Equal(a.Plus(b)) {
				t.Errorf("smaller and larger of %v and %v are not the two", a, b)
			}
		}
	}
}

func TestNumberAlone(t *testing.T) {
	for _, a := range sampleNumbers() {
		if got, _ := a.Rat().Float64(); got != a.Float() {
			t.Errorf("%v as a float: %v, want %v", a, a.Float(), got)
		}
		floor := new(big.Int).Div(a.Rat().Num(), a.Rat().Denom())
		if got := a.Int(); floor.IsInt64() && got != floor.Int64() {
			t.Errorf("%v rounded down: %d, want %v", a, got, floor)
		}
		if a.IsWhole() != a.Rat().IsInt() || a.Sign() != a.Rat().Sign() || a.Abs().Sign() < 0 {
			t.Errorf("%v: whole %v, sign %d", a, a.IsWhole(), a.Sign())
		}
		if !a.Negated().Plus(a).IsZero() {
			t.Errorf("%v and its negative do not cancel", a)
		}
	}
}

func TestNumberString(t *testing.T) {
	for _, c := range []struct {
		n    Number
		want string
	}{
		{Number{}, "0"}, {Whole(-12), "-12"}, {Ratio(5, 4), "1.25"}, {Ratio(1, 3), "1/3"}, {Ratio(-10, 4), "-2.5"},
		{Ratio(473176473, 16000000), "29.5735295625"},
	} {
		if got := c.n.String(); got != c.want {
			t.Errorf("%v, want %s", got, c.want)
		}
	}
}

func TestParseNumber(t *testing.T) {
	for text, want := range map[string]string{
		"6": "6", "1.25": "1.25", ".5": "0.5", "-3": "-3", "017": "17", "0.10": "0.1",
		"123456789012345678901234567890": "123456789012345678901234567890", "12345678901234567890.123": "12345678901234567890.123",
	} {
		if n, ok := ParseNumber(text); !ok || n.String() != want {
			t.Errorf("%q: %v (%v), want %s", text, n, ok, want)
		}
	}
	for _, text := range []string{"", "-", ".", "5.", "1e3", "0x10", "1_000", "1,5", "1.2.3", "--1", "+1", " 1", "1 ", "½", "1/2",
		"Inf", "NaN", "1234567890123456789012345678901"} {
		if n, ok := ParseNumber(text); ok {
			t.Errorf("%q was read as %v", text, n)
		}
	}
}

func TestFromFinite(t *testing.T) {
	for _, f := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if n, ok := FromFinite(f); ok {
			t.Errorf("%v became %v", f, n)
		}
	}
	if n := FromFloat(0.375); !n.Equal(Ratio(3, 8)) {
		t.Errorf("0.375 became %v", n)
	}
}

func TestDividingByNothingPanics(t *testing.T) {
	for name, divide := range map[string]func(){
		"ratio": func() { Ratio(1, 0) },
		"over":  func() { Whole(1).Over(Number{}) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s: dividing by nothing gave a number", name)
				}
			}()
			divide()
		}()
	}
}

func TestRange(t *testing.T) {
	a, b := Range{Whole(-2), Whole(3)}, Range{Whole(4), Whole(5)}
	for _, c := range []struct {
		name string
		got  Range
		low  int64
		high int64
	}{
		{"sum", a.Plus(b), 2, 8}, {"difference", a.Minus(b), -7, -1}, {"product", a.Times(b), -10, 15},
		{"product with itself turned", a.Times(Range{Whole(-3), Whole(-1)}), -9, 6},
	} {
		if !c.got.Low.Equal(Whole(c.low)) || !c.got.High.Equal(Whole(c.high)) {
			t.Errorf("%s: %v–%v, want %d–%d", c.name, c.got.Low, c.got.High, c.low, c.high)
		}
	}
	if q, ok := b.Over(Range{Whole(2), Whole(4)}); !ok || !q.Low.Equal(Whole(1)) || !q.High.Equal(Ratio(5, 2)) {
		t.Errorf("quotient: %v", q)
	}
	if _, ok := b.Over(a); ok {
		t.Error("a range that holds 0 was divided by")
	}
	if !a.Holds(Whole(3)) || a.Holds(Whole(4)) || !Exact(Whole(4)).Holds(Whole(4)) {
		t.Error("a range does not know what it holds")
	}
}

// A fraction is left as it is until it is beyond all use; then it is rounded down, and
// loses less than its last decimal.
func TestShortened(t *testing.T) {
	third := Ratio(1, 3)
	if !third.Shortened().Equal(third) {
		t.Error("a third was rounded")
	}
	long := Whole(1)
	for range 200 {
		long = long.Over(Whole(3))
	}
	long = Whole(7).Minus(long)
	short := long.Shortened()
	if short.Equal(long) || long.Less(short) || !long.Minus(short).Less(powerOfTen(-keptPlaces)) {
		t.Errorf("%v became %v", long, short)
	}
}
