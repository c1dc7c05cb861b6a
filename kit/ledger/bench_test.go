package ledger_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
)

// large writes a kit of forty components and thirty steps: thirty-eight materials with
// tolerances and densities, of which a step or two each takes part, stirred in a vessel
// and filled into twelve jars with an insert each. more is what every step does besides.
func large(t testing.TB, vessel, more string) *kit.Kit {
	var definition, method strings.Builder
	definition.WriteString("name: Large box\nmaker: Brindle Quay Workroom\nmakes: 12 jars\ncomponents:\n")
	for i := range 38 {
		fmt.Fprintf(&definition, "  part-%d: {name: Part %d, packed: %d g ± 1 g, spare: 1 g, density: 0.8–0.9 g/mL liquid}\n", i, i, 100+i)
	}
	definition.WriteString("  jar: {name: Jar, packed: 12, container: {brimful: 500 mL, headspace: 20 mL}}\n" +
		"  stone: {name: Stone, packed: 12, insert: {mass: 9 g, volume: 4 mL, floats: no}}\n" +
		"tools:\n  pan: {name: Pan, from: customer, essential: true, residue: 10 g ± 3 g}\n" +
		"  bowl: {name: Bowl, from: customer, essential: true, residue: 2 g ± 1 g}\n")
	for step := range 29 {
		fmt.Fprintf(&method, "## [Stir %d](step:stir-%d?in=%s)\n\nStir in [half of the part](take:part-%d) and [20 mL of it](take:part-%d), "+
			"[to 60 °C](warm:) for [3 minutes](work:). %s\n\n", step, step, vessel, step, step+9, more)
	}
	method.WriteString("## [Fill](step:fill?in=pan)\n\nLay [one stone](place:stone?into=jar) in each jar and fill [each of 12 jars to 100 g](fill:jar). " +
		"Keep [what is left](left:pan?as=kept).\n")
	return read(t, definition.String(), method.String())
}

// The aim is under a millisecond.
func BenchmarkFollowLargeKit(b *testing.B) { follow(b, large(b, "pan", "")) }

// A bowl that is wiped out after each step: its residue is reckoned anew each time.
func BenchmarkFollowWipedBowl(b *testing.B) {
	follow(b, large(b, "bowl", pouredOver+" Wipe [the bowl](clean:bowl)."))
}

// A bowl that is never wiped: what stays behind in it is a part of a part of what stayed
// behind before, twenty-nine times over, and the exact fractions grow with every step.
func BenchmarkFollowUnwipedBowl(b *testing.B) { follow(b, large(b, "bowl", pouredOver)) }

const pouredOver = "Pour [all of it](move:bowl?into=pan) over."

func follow(b *testing.B, k *kit.Kit) {
	b.ReportAllocs()
	for b.Loop() {
		ledger.Follow(k)
	}
}

func BenchmarkFollowExample(b *testing.B) {
	follow(b, example(b, "harbour-candles"))
}

// 100,000 draws of all balances: the aim is under a second on two processors.
func BenchmarkDrawLargeKit(b *testing.B) {
	var figures []*ledger.Figure
	for _, balance := range ledger.Follow(large(b, "pan", "")).Balances {
		figures = append(figures, balance.Used, balance.Left)
	}
	const draws = 100_000
	for b.Loop() {
		ledger.Draw(figures, draws, 1)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/draws, "ns/draw")
}

// A bare loop that only draws as many normal numbers as figures with a tolerance stand
// behind these balances (38 packs, 29 densities): what the draws are measured against.
func BenchmarkBareNormals(b *testing.B) {
	random := rand.New(rand.NewPCG(1, 1))
	const draws, figures = 100_000, 38 + 29
	total := 0.0
	for b.Loop() {
		for range draws * figures {
			total += random.NormFloat64()
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/draws, "ns/draw")
	if total == 0 {
		b.Error("nothing was drawn")
	}
}
