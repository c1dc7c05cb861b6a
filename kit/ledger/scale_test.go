package ledger_test

import (
	"fmt"
	"strings"
	"testing"

	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// madeLarger writes the same box and method with every amount times a factor; the
// containers stay four, each larger.
func madeLarger(factor int) (definition, method string) {
	definition = fmt.Sprintf(`name: Bench polish
maker: Brindle Quay Workroom
makes: 4 tins
components:
  wax: {name: Beeswax pellets, packed: %d g ± %d g, spare: %d g}
  oil: {name: Linseed oil, packed: %d mL, density: 0.9 g/mL}
  tin: {name: Tin with lid, packed: 4, container: {brimful: %d mL}}
tools:
  pan: {name: Melting pan, from: customer, essential: true, residue: %d g ± %d g}
  cup: {name: Stirring cup, from: customer, essential: true, residue: %d g}
`, 400*factor, 4*factor, 20*factor, 500*factor, 150*factor, 10*factor, 3*factor, 2*factor)
	method = fmt.Sprintf("## [Make it](step:make?in=pan)\n\nMelt [half of the wax](take:wax) and [%d g of wax](take:wax). "+
		"Stir [%d mL of oil](take:oil?into=cup) and pour [all of it](move:cup) in. Fill [each of 4 tins to %d g](fill:tin) "+
		"and keep [what is left](left:pan?as=kept).\n", 70*factor, 90*factor, 60*factor)
	return definition, method
}

// A kit with k times everything has k times everything in its ledger, with k times
// the doubt.
func TestScalingAKitScalesItsLedger(t *testing.T) {
	definition, method := madeLarger(1)
	small := ledger.Follow(read(t, definition, method))
	for _, factor := range []int{2, 3, 7, 1000} {
		definition, method = madeLarger(factor)
		large := ledger.Follow(read(t, definition, method))
		a, b := amounts(small), amounts(large)
		if len(a) != len(b) || len(a) < 12 {
			t.Fatalf("%d figures and %d figures", len(a), len(b))
		}
		for i := range a {
			compareScaled(t, a[i], b[i], quantity.Whole(int64(factor)))
		}
	}
}

// amounts are all weights and volumes of a ledger, in its own order.
func amounts(l *ledger.Ledger) []*ledger.Figure {
	var all []*ledger.Figure
	for _, b := range l.Balances {
		if b.Dimension != quantity.Count {
			all = append(all, b.Used, b.Left)
		}
	}
	for _, e := range l.Entries {
		if e.Amount.Dimension != quantity.Count {
			all = append(all, e.Amount)
		}
	}
	for _, f := range l.Fillings {
		all = append(all, f.Mass(), f.MassOf("wax"), f.MassOf("oil"))
	}
	for _, r := range lastOf(l) {
		all = append(all, r.Mass())
	}
	return all
}

func compareScaled(t *testing.T, small, large *ledger.Figure, factor quantity.Number) {
	t.Helper()
	low, high := small.Worst()
	largeLow, largeHigh := large.Worst()
	if !small.Value().Times(factor).Equal(large.Value()) || !low.Times(factor).Equal(largeLow) || !high.Times(factor).Equal(largeHigh) {
		t.Errorf("%s × %s is %s (%s to %s); want the same of %s to %s", exact(small), factor, exact(large), largeLow, largeHigh, low, high)
	}
}

// The order of the takes in a step changes neither what is used nor what is in the pan.
func TestOrderOfTakesDoesNotMatter(t *testing.T) {
	takes := []string{
		"Melt [150 g of wax](take:wax).", "Pour in [90 g of oil](take:oil).",
		"Stir in [2 tbsp of resin](take:resin).", "Add [20 g of chalk](take:chalk).",
	}
	want := ""
	permute(takes, 0, func(order []string) {
		told := facts(ledger.Follow(read(t, polish, inPan(strings.Join(order, " ")))))
		if got := fmt.Sprint(told); want == "" {
			want = got
		} else if got != want {
			t.Errorf("%v:\n%s\nwant\n%s", order, got, want)
		}
	})
}

func permute(list []string, from int, do func([]string)) {
	if from == len(list) {
		do(list)
		return
	}
	for i := from; i < len(list); i++ {
		list[from], list[i] = list[i], list[from]
		permute(list, from+1, do)
		list[from], list[i] = list[i], list[from]
	}
}
