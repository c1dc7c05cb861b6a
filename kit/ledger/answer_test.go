package ledger_test

import (
	"math"
	"strings"
	"testing"

	"tallyfold/kit/ledger"
)

// tight is a box in which two pours of one pack are just enough, and a jar just holds
// what is poured in.
const tight = `name: Bench polish
maker: Brindle Quay Workroom
makes: 2 tins
components:
  wax: {name: Beeswax pellets, packed: 200 g ± 4 g, density: 0.95–0.97 g/mL liquid}
  oil: {name: Linseed oil, packed: 100 g ± 2 g, density: 0.92–0.94 g/mL, share: at most 40 % of mixture}
  tin: {name: Tin, packed: 2, container: {brimful: 160 mL}}
tools:
  pan: {name: Pan, from: customer, essential: true, residue: 4 g ± 2 g}
`

func answersOf(t *testing.T, method string) map[string]ledger.Answer {
	t.Helper()
	all := map[string]ledger.Answer{}
	for _, a := range ledger.Follow(read(t, tight, method)).Answers() {
		all[string(a.Sort)+", "+a.About] = a
	}
	return all
}

// One pack of 200 g ± 4 g of which 200 g are told: left is 0 ± 4 g, rectangular, so 95
// of 100 kits lie within ±3.8 g (arithmetic: 0.95 × 4), less than the ±4.53 g that the
// law of propagation would have (1.96 × 4/√3): the draws decide (JCGM 101:2008, 8.1).
func TestOneToleranceIsDrawn(t *testing.T) {
	a := answersOf(t, inPan("Melt [200 g of wax](take:wax) and [40 g of oil](take:oil). Fill [the tins equally](fill:tin)."))["left in the pack, Beeswax pellets"]
	if !a.Drawn || math.Abs(a.LikelyLow+3.8) > 0.05 || math.Abs(a.LikelyHigh-3.8) > 0.05 {
		t.Errorf("likely %v to %v, drawn %v; want −3.8 to 3.8, drawn", a.LikelyLow, a.LikelyHigh, a.Drawn)
	}
	if !a.Low.Equal(whole(-4)) || !a.High.Equal(whole(4)) {
		t.Errorf("worst case %s", a.Worst())
	}
	if !a.MayFail() || !strings.Contains(a.Sentence(), "more than 1 kit in 40 runs short") {
		t.Errorf("told as %q", a.Sentence())
	}
}

// All of the wax and all of the oil in two tins: the mass in each is (300 − 4)/2 with
// u² = (16 + 4 + 4)/3/4, so 148 g ± 2.77 g by propagation (JCGM 100:2008, 5.1.2): three
// rectangular parts are near enough to normal for the law to stand.
func TestSeveralTolerancesPropagate(t *testing.T) {
	a := answersOf(t, inPan("Melt [all of the wax](take:wax) and [all of the oil](take:oil). Fill [the tins equally](fill:tin)."))["in each, Tin 1 to 2"]
	want := 1.96 * math.Sqrt(24.0/12)
	if a.Drawn || math.Abs(a.LikelyLow-(148-want)) > 1e-6 || math.Abs(a.LikelyHigh-(148+want)) > 1e-6 {
		t.Errorf("likely %v to %v, drawn %v; want 148 ± %v by propagation", a.LikelyLow, a.LikelyHigh, a.Drawn, want)
	}
}

// What fails in the worst case only, and what fails as written, are told apart.
func TestSentencesOfAnswers(t *testing.T) {
	for _, c := range []struct{ wax, want string }{
		{"195 g", "even with everything at its bad end 1 g is left"},
		{"196.1 g", "in 39 of 40 kits at least"},
		{"199 g", "more than 1 kit in 40 runs short"},
		{"210 g", "as written 10 g is missing"},
	} {
		a := answersOf(t, inPan("Melt ["+c.wax+" of wax](take:wax). Fill [the tins equally](fill:tin)."))["left in the pack, Beeswax pellets"]
		if !strings.Contains(a.Sentence(), c.want) {
			t.Errorf("%s: %q, want %q", c.wax, a.Sentence(), c.want)
		}
	}
}

// Of what is exact there is nothing to ask.
func TestExactFiguresHaveNoAnswers(t *testing.T) {
	for _, a := range ledger.Follow(read(t, polish, inPan("Melt [200 g of wax](take:wax)."))).Answers() {
		if a.Figure.Uncertain() {
			continue
		}
		t.Errorf("%s, %s: an exact figure was asked of", a.Sort, a.About)
	}
}
