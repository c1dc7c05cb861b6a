package ledger

import (
	"math"
	"testing"

	"tallyfold/kit/quantity"
)

func number(text string) quantity.Number {
	n, ok := quantity.ParseNumber(text)
	if !ok {
		panic("no number: " + text)
	}
	return n
}

func given(dimension quantity.Dimension, name, value, low, high string) *Figure {
	return Between(dimension, name, number(value), number(low), number(high))
}

func TestNothingUnknownBecomesZero(t *testing.T) {
	known := given(quantity.Mass, "wax", "100", "99", "101")
	missing := Unknown(quantity.Density, "density", "no density is given for wax")
	for _, f := range []*Figure{
		Plus(quantity.Mass, "", known, Unknown(quantity.Mass, "", missing.Why())),
		Minus("", Unknown(quantity.Mass, "", missing.Why()), known),
		Times(quantity.Mass, "", known, missing),
		Over(quantity.Volume, "", known, missing),
		Smaller("", known, Unknown(quantity.Mass, "", missing.Why())),
		Larger("", Unknown(quantity.Mass, "", missing.Why()), known),
	} {
		if f.Known() || f.Why() != "no density is given for wax" {
			t.Errorf("%v should be unknown and say why, says %q", f.how, f.Why())
		}
	}
	if f := Over(quantity.Share, "", known, Fixed(quantity.Mass, "mixture", quantity.Number{})); f.Known() {
		t.Error("a share of nothing was told")
	}
}

func TestWorstCaseTakesEachFigureAtOneEnd(t *testing.T) {
	wax := given(quantity.Mass, "wax", "360", "350", "370")
	oil := given(quantity.Mass, "oil", "30", "29", "31")
	whole := Plus(quantity.Mass, "mixture", wax, oil)
	// oil/(wax+oil) is greatest with the most oil and the least wax. Plain intervals,
	// which let the oil be 29 above the line and 31 under it, would give less.
	low, high := Over(quantity.Share, "share", oil, whole).Worst()
	if low.Cmp(quantity.Ratio(29, 399)) != 0 || high.Cmp(quantity.Ratio(31, 381)) != 0 {
		t.Errorf("share between %v and %v, want 29/399 and 31/381", low, high)
	}
	// The same figure taken from itself is nothing, however uncertain it is.
	if low, high := Minus("", wax, wax.Called("the same wax")).Worst(); low.Sign() != 0 || high.Sign() != 0 {
		t.Errorf("wax − wax lies between %v and %v", low, high)
	}
}

func TestSmallerAndLargerChooseAgainAtTheWorst(t *testing.T) {
	held := given(quantity.Mass, "held", "8", "3", "12")
	residue := given(quantity.Mass, "residue", "6", "4", "8")
	low, high := Smaller("stays", residue, held).Worst()
	if low.Cmp(number("4")) != 0 || high.Cmp(number("8")) != 0 {
		t.Errorf("stays between %v and %v", low, high)
	}
	if got := Larger("", residue, held).Value(); got.Cmp(number("8")) != 0 {
		t.Errorf("larger is %v", got)
	}
}

// JCGM 101:2008, 9.2.3: the sum of four rectangular quantities of unit variance
// (±√3 each) has the standard uncertainty 2 (value from memory, re-simulated in
// the project's check values). √3 is written here to nine digits.
func TestLikelyRangeOfFourRectangulars(t *testing.T) {
	var four []*Figure
	for _, name := range []string{"a", "b", "c", "d"} {
		four = append(four, given(quantity.Mass, name, "0", "-1.732050808", "1.732050808"))
	}
	if u := Plus(quantity.Mass, "sum", four...).Likely(); math.Abs(u-2) > 1e-8 {
		t.Errorf("u = %v, want 2", u)
	}
	// 9.2.4: with one input ten times as wide u is √(3 + 100) = 10.15 (published 10.1).
	four[3] = given(quantity.Mass, "d", "0", "-17.32050808", "17.32050808")
	if u := Plus(quantity.Mass, "sum", four...).Likely(); math.Abs(u-math.Sqrt(103)) > 1e-7 {
		t.Errorf("u = %v, want √103", u)
	}
	// Four times the same quantity errs the same way: u is 4, not 2.
	same := four[0]
	if u := Plus(quantity.Mass, "sum", same, same, same, same).Likely(); math.Abs(u-4) > 1e-8 {
		t.Errorf("u of four times the same = %v, want 4", u)
	}
}
