package ledger

import (
	"math"
	"testing"

	"tallyfold/kit/quantity"
)

// JCGM 101:2008, 9.2.3 (published values from memory, re-simulated in the
// project's check values): four rectangular quantities of unit variance, summed:
// u = 2.00, 95 % between −3.88 and 3.88; exactly ±2√3·[2 − (3/5)^¼] = ±3.879.
func TestDrawsOfFourRectangulars(t *testing.T) {
	var four []*Figure
	for _, name := range []string{"a", "b", "c", "d"} {
		four = append(four, given(quantity.Mass, name, "0", "-1.732050808", "1.732050808"))
	}
	spread := Draw([]*Figure{Plus(quantity.Mass, "sum", four...)}, 400_000, 1)[0]
	exact := 2 * math.Sqrt(3) * (2 - math.Pow(0.6, 0.25))
	if math.Abs(spread.Standard-2) > 0.01 || math.Abs(spread.High-exact) > 0.03 || math.Abs(spread.Low+exact) > 0.03 {
		t.Errorf("got %+v, want u 2 and ±%.3f", spread, exact)
	}
	// 9.2.4: one input ten times as wide: u = 10.1, 95 % between −17.0 and 17.0.
	four[3] = given(quantity.Mass, "d", "0", "-17.32050808", "17.32050808")
	spread = Draw([]*Figure{Plus(quantity.Mass, "sum", four...)}, 400_000, 1)[0]
	if math.Abs(spread.Standard-10.15) > 0.05 || math.Abs(spread.High-17.0) > 0.1 || math.Abs(spread.Low+17.0) > 0.1 {
		t.Errorf("got %+v, want u 10.15 and ±17.0", spread)
	}
}

func TestDrawsAgreeWithPropagationAndRespectCorrelation(t *testing.T) {
	wax := given(quantity.Mass, "wax", "360", "350", "370")
	oil := given(quantity.Mass, "oil", "30", "29", "31")
	share := Over(quantity.Share, "share", oil, Plus(quantity.Mass, "mixture", wax, oil))
	nothing := Minus("", wax, wax.Called("the same wax"))
	spreads := Draw([]*Figure{share, nothing}, 200_000, 7)
	if u := share.Likely(); math.Abs(spreads[0].Standard-u) > 0.02*u {
		t.Errorf("drawn %v, propagated %v", spreads[0].Standard, u)
	}
	if spreads[1].Standard != 0 {
		t.Errorf("wax − wax is drawn as %+v", spreads[1])
	}
	low, high := share.Worst()
	if spreads[0].Low < low.Float() || spreads[0].High > high.Float() {
		t.Errorf("draws lie outside the worst case: %+v", spreads[0])
	}
}

func TestTheSameSeedGivesTheSameDraws(t *testing.T) {
	f := []*Figure{given(quantity.Mass, "wax", "360", "350", "370")}
	if a, b := Draw(f, 10_000, 3)[0], Draw(f, 10_000, 3)[0]; a != b {
		t.Errorf("%+v and %+v", a, b)
	}
}
