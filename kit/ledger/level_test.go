package ledger_test

import (
	"testing"

	"tallyfold/kit/ledger"
)

// vases is a box whose vases are filled by height: 60 mm square, 100 mm tall inside.
const vases = `name: Sand vases
maker: Brindle Quay Workroom
makes: 2 vases
components:
  sand: {name: Coloured sand, packed: 700 mL, density: 1.5 g/mL}
  vase: {name: Square vase, packed: 2, container: {inside: "box 60 mm by 60 mm, 100 mm tall"}}
tools:
  jug: {name: Jug, from: customer, essential: true, holds: 1 L}
`

// A fill told as a height: 60 × 60 × 80 mm³ are 288 mL, from the base up or from the rim
// down (geometry).
func TestFillToldAsAHeight(t *testing.T) {
	for _, words := range []string{"each of 2 vases to 80 mm", "each of 2 vases to 2 cm below the rim", "each of 2 vases to 20 mm from the rim"} {
		l := ledger.Follow(read(t, vases, "## [Fill](step:fill?in=jug)\n\nPour in [all of the sand](take:sand). Fill ["+words+"](fill:vase). Keep [what is left](left:jug?as=kept).\n"))
		holdsTrue(t, l, "vase 1-2 sand 288; sand kept 124")
		if got := exact(l.Fillings[0].FromRim()); got != "20" {
			t.Errorf("%s: %s mm from the rim, want 20", words, got)
		}
	}
}
