package ledger_test

import (
	"math"
	"testing"

	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// dyeing is a box for dyeing yarn in a pot: the yarn lies in the bath, is lifted out
// with the liquid it holds, and dries. A round density keeps the sums short.
const dyeing = `name: Harbour yarns
maker: Brindle Quay Workroom
makes: 2 skeins
components:
  yarn: {name: Wool yarn, packed: 2 skeins of 50 g, carries: 150 %, true density: 1.25 g/mL}
  alum: {name: Alum, packed: 12 g, dissolves: [5 g per 100 g of water at 20 °C, 25 g per 100 g of water at 60 °C], ratio: 8–12 g per 100 g of yarn}
  madder: {name: Madder extract, packed: 10 g, optional: yes}
  weld: {name: Weld extract, packed: 8 g}
household:
  water: {name: Tap water, density: 1 g/mL, ratio: 15–30 mL per g of yarn}
tools:
  pot: {name: Dye pot, from: customer, essential: true, holds: 4 L, evaporates: 30 g ± 10 g of water, foam: 10 %}
  sink: {name: Bowl, from: customer, essential: true, holds: 5 L, residue: 5 g}
  tub: {name: Tub, from: customer, essential: true, holds: 5 L}
`

func inPot(text string) string { return "## [Dye the yarn](step:dye?in=pot)\n\n" + text + "\n" }

var baths = []meant{
	{"fibre lies in the bath and is no part of it", dyeing,
		inPot("Pour [2 L of water](take:water) over [all of the yarn](take:yarn)."), "pot keeps water 2000; pot keeps yarn 100; yarn left 0"},
	// 150 % of 100 g dry is 150 g of water.
	{"lifted out it takes along what it carries", dyeing,
		inPot("Pour [2 L of water](take:water) over [all of the yarn](take:yarn). Lift [the yarn](move:yarn?from=pot&into=sink) over."),
		"sink keeps yarn 100; sink keeps water 150; pot keeps water 1850; pot keeps yarn none"},
	{"half of it takes along half as much", dyeing,
		inPot("Pour [2 L of water](take:water) over [all of the yarn](take:yarn). Lift [half of the yarn](move:yarn?from=pot&into=sink) over."),
		"sink keeps yarn 50; sink keeps water 75; pot keeps water 1925; pot keeps yarn 50"},
	{"an amount of it takes along its part", dyeing,
		inPot("Pour [2 L of water](take:water) over [all of the yarn](take:yarn). Lift [20 g of the yarn](move:yarn?from=pot&into=sink) over."),
		"sink keeps yarn 20; sink keeps water 30; pot keeps water 1970; pot keeps yarn 80"},
	{"no more is carried than there is", dyeing,
		inPot("Pour [100 mL of water](take:water) over [all of the yarn](take:yarn). Lift [the yarn](move:yarn?from=pot&into=sink) over."),
		"sink keeps yarn 100; sink keeps water 100; pot keeps water none"},
	// 8 g of alum in 2000 g of water: the liquid carried is of the same strength.
	{"what is dissolved goes along", dyeing,
		inPot("Stir [8 g of alum](take:alum) into [1992 g of water](take:water). Lay in [all of the yarn](take:yarn). Lift [the yarn](move:yarn?from=pot&into=sink) over."),
		"sink keeps alum 0.6; sink keeps water 149.4; pot keeps alum 7.4"},
	{"pouring away takes the liquid, never what lies in it, nor what that carries", dyeing,
		inPot("Pour [2 L of water](take:water) over [all of the yarn](take:yarn). [Pour off the liquid](left:pot?as=poured-away)."),
		"water poured-away 1850; pot keeps yarn 100; pot keeps water 150"},
	{"the residue of the vessel stays besides", dyeing,
		"## [Rinse](step:rinse?in=sink)\n\nPour [2 L of water](take:water) over [all of the yarn](take:yarn). [Pour off the liquid](left:sink?as=poured-away).\n",
		"water poured-away 1845; sink keeps water 155"},
	{"a told part is poured away, the rest stays", dyeing,
		inPot("Pour [2 L of water](take:water) in. [Half of it](left:pot?as=poured-away) goes down the drain."), "water poured-away 1000; pot keeps water 1000"},
	{"a told amount is poured away, the rest stays", dyeing,
		inPot("Pour [2 L of water](take:water) in. Ladle off [300 mL](left:pot?as=discarded)."), "water discarded 300; pot keeps water 1700"},
	{"each step that warms loses what the pot loses, once", dyeing,
		inPot("Pour [2 L of water](take:water) in and warm it [to 40 °C](warm:), then [to 60 °C](warm:).\n\n## [Again](step:again?in=pot)\n\nWarm it [to 80 °C](warm:)."),
		"water used 2000; water evaporated 30; pot keeps water 1940"},
	{"nothing goes off of what is not there", dyeing,
		inPot("Warm [all of the alum](take:alum) [to 40 °C](warm:)."), "pot keeps alum 12"},
	{"no more goes off than is there", dyeing,
		inPot("Pour [20 mL of water](take:water) in and warm it [to 60 °C](warm:)."), "water evaporated 20; pot keeps water none"},
	{"one thing leaves and the rest stays", dyeing,
		inPot("Stir [8 g of alum](take:alum) into [2 L of water](take:water). [500 g of water](left:water?from=pot&as=evaporated) boils off."),
		"water evaporated 500; pot keeps water 1500; pot keeps alum 8"},
	{"all of one thing leaves", dyeing,
		inPot("Stir [8 g of alum](take:alum) into [2 L of water](take:water). [All of the water](left:water?from=pot&as=dried-out) dries off."),
		"water dried-out 2000; pot keeps alum 8; pot keeps water none"},
	{"more cannot leave than is there", dyeing,
		inPot("Pour [100 g of water](take:water) in. [500 g of water](left:water?from=pot&as=evaporated) boils off."), "water evaporated 100; pot keeps water none; snags short water"},
	{"what is not there cannot leave", dyeing,
		inPot("Lay in [all of the alum](take:alum). [500 g of water](left:water?from=pot&as=evaporated) boils off."), "pot keeps alum 12; snags empty water"},
	{"equally between two vessels", dyeing,
		inPot("Stir [8 g of alum](take:alum) into [2 L of water](take:water). Pour [it, equally](move:pot?into=sink,tub) out."),
		"sink keeps water 1000; tub keeps water 1000; sink keeps alum 4; tub keeps alum 4; pot keeps water none"},
	{"a part, equally between two vessels", dyeing,
		inPot("Pour [2 L of water](take:water) in. Pour [half of it](move:pot?into=sink,tub) out."), "sink keeps water 500; tub keeps water 500; pot keeps water 1000"},
	{"a share of the fibre", dyeing, inPot("Lay [all of the yarn](take:yarn) into [2 L of water](take:water). Stir in [alum, 10 % of the yarn](take:alum)."),
		"alum used 10; alum left 2; pot keeps alum 10"},
	{"a share of what is told later in the words, by weight", dyeing, inPot("Lay [50 g of yarn](take:yarn) into [2 L of water](take:water). Stir in [4 % of the yarn weight of alum](take:alum)."),
		"alum used 2"},
	{"a share of the water", dyeing, inPot("Pour in [1 L of water](take:water). Stir in [madder, 0.5 % of the water](take:madder)."), "madder used 5"},
	{"a share of the mixture as it stands", dyeing, inPot("Stir [8 g of alum](take:alum) into [992 g of water](take:water). Stir in [madder, 0.5 % of the mixture](take:madder)."), "madder used 5"},
	{"a share of what is not there yet", dyeing, inPot("Stir in [madder, 0.5 % of the water](take:madder)."), "madder used unknown; snags no amount madder"},
	{"of a choice the first is followed, and the other counted against its pack", dyeing,
		inPot("Stir in [10 g of madder](take:madder?either=dye) or [8 g of weld](take:weld?either=dye)."),
		"madder used 10; weld used 8; weld not chosen 8; pot keeps madder 10; pot keeps weld none; weld left 0"},
}

func TestWhatIsMeantOfBaths(t *testing.T) {
	for _, c := range baths {
		t.Run(c.why, func(t *testing.T) {
			l := ledger.Follow(read(t, c.kit, c.method))
			holdsTrue(t, l, c.want)
			for _, balance := range append(l.Balances, l.Household...) {
				holds(t, c.why, l, balance.Thing)
			}
		})
	}
}

// A customer's other choice, and a customer who leaves the optional dye in its bag.
func TestOtherChoices(t *testing.T) {
	k := read(t, dyeing, inPot("Pour in [1 L of water](take:water). Stir in [10 g of madder](take:madder?either=dye) or [8 g of weld](take:weld?either=dye)."))
	wants := []string{
		"madder used 10; madder not chosen 10; weld used 8; pot keeps weld 8; pot keeps madder none",
		"madder used 10; madder not chosen 10; weld used 8; weld not chosen 8; pot keeps weld none; pot keeps madder none",
	}
	tellings := []string{"if the customer chooses Weld extract", "if the customer leaves out Madder extract"}
	choosings := ledger.Choosings(k)
	if len(choosings) != len(wants) {
		t.Fatalf("%d choices besides the first, want %d", len(choosings), len(wants))
	}
	for i, choosing := range choosings {
		if told := choosing.Tell(k); told != tellings[i] {
			t.Errorf("told as %q, want %q", told, tellings[i])
		}
		holdsTrue(t, ledger.FollowChoosing(k, choosing), wants[i])
	}
}

// Two warmings of 30 g ± 10 g lose 40 g to 80 g (arithmetic): on the same stove they err
// the same way, so that the likely range is twice that of one, ±0.95 × 20 g.
func TestWorstCaseOfTwoWarmings(t *testing.T) {
	l := ledger.Follow(read(t, dyeing, inPot("Pour [2 L of water](take:water) in and warm it [to 40 °C](warm:).\n\n## [Again](step:again?in=pot)\n\nWarm it [to 80 °C](warm:).")))
	low, high := lastOf(l)[0].Mass().Worst()
	if !low.Equal(whole(1920)) || !high.Equal(whole(1960)) {
		t.Errorf("%s to %s g stay, want 1920 to 1960", low, high)
	}
	for _, a := range l.Answers() {
		if a.Sort == ledger.StaysBehind && (math.Abs(a.LikelyLow-1921) > 0.3 || math.Abs(a.LikelyHigh-1959) > 0.3) {
			t.Errorf("likely %v to %v, want 1921 to 1959", a.LikelyLow, a.LikelyHigh)
		}
	}
}

// The pot with 2 L of water and 100 g of wool at 1.25 g/mL is full to 2080 mL, and a
// tenth of the 2 L is foam: 2280 mL of 4 L.
func TestLevelWithSolidsAndFoam(t *testing.T) {
	l := ledger.Follow(read(t, dyeing, inPot("Pour [2 L of water](take:water) over [all of the yarn](take:yarn).")))
	level := l.Level(&l.Stages[0].Vessels[0])
	if !level.Stands.Value().Equal(whole(2280)) || !level.Holds.Value().Equal(whole(4000)) {
		t.Errorf("it stands at %s of %s", level.Stands.Sum(), level.Holds.Show())
	}
}

// 15 g of alum in 100 g of water: at 40 °C, half way between the maker's points,
// 15 g dissolve (a straight line, arithmetic); beyond 60 °C nothing is told.
func TestSolutionAgainstPoints(t *testing.T) {
	for _, c := range []struct{ warm, takes string }{
		{"to 20 °C", "0.05"}, {"to 40 °C", "0.15"}, {"to 60 °C", "0.25"}, {"to 70 °C", "unknown"}, {"to 10 °C", "unknown"},
	} {
		l := ledger.Follow(read(t, dyeing, inPot("Stir [12 g of alum](take:alum) into [110 g of water](take:water). Warm it ["+c.warm+"](warm:).")))
		solutions := l.Solutions()
		if len(solutions) != 1 {
			t.Fatalf("%d solutions", len(solutions))
		}
		s := solutions[0]
		// 30 g of the water go off in the warming: 12 g in 80 g.
		if got := exact(s.Strength); got != "0.15" {
			t.Errorf("strength %s, want 0.15", got)
		}
		if got := exact(s.Takes); got != c.takes {
			t.Errorf("%s: takes up %s, want %s", c.warm, got, c.takes)
		}
	}
}

// 2 L of water on 100 g of yarn are 20 mL to the gram, 8 g of alum 8 g to 100 g.
// Fibre counts dry, so the ratio after lifting is that of what came along.
func TestRatioToDryFibre(t *testing.T) {
	l := ledger.Follow(read(t, dyeing, inPot("Stir [8 g of alum](take:alum) into [2 L of water](take:water). Lay in [all of the yarn](take:yarn).")))
	pot := l.Stages[0].Vessels[0]
	if got := exact(pot.Ratio(quantity.VolumePerMass, "water", "yarn")); got != "20" {
		t.Errorf("%s mL to the gram, want 20", got)
	}
	if got := exact(pot.Ratio(quantity.Proportion, "alum", "yarn")); got != "0.08" {
		t.Errorf("%s g to the gram, want 0.08", got)
	}
	if pot.Ratio(quantity.Proportion, "weld", "yarn").Known() {
		t.Error("a ratio of what is not there was told")
	}
}
