package ledger_test

import (
	"math"
	"testing"

	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// ounce is 28.349523125 g (NIST Handbook 44, App. C).
var ounce = quantity.Ratio(28349523125, 1_000_000_000)

// base is a floor wax poured from a kettle into eight tubs.
const base = `name: Floor wax
maker: Brindle Quay Workroom
makes: 8 tubs
components:
  base: {name: Wax base, packed: 64 oz weight}
  tub: {name: Tub, packed: 8, container: {brimful: 300 mL}}
tools:
  kettle: {name: Kettle, from: customer, essential: true, holds: 3 L}
`

// Common practice, no source: 64 oz by weight of base for 8 containers, with 12 oz
// left after filling, is (64 − 12)/8 = 6.5 oz each; 8 × 6.5 = 52 oz would have done.
// The surplus is 12/64 = 18.75 % of the batch.
func TestTwelveOuncesLeftOfSixtyFour(t *testing.T) {
	l := ledger.Follow(read(t, base, "## [Pour](step:pour?in=kettle)\n\nMelt [all of the base](take:base). "+
		"Fill [each of 8 tubs to 6.5 oz weight](fill:tub).\n"))
	fill, left := l.Fillings[0], lastOf(l)[0].Mass()
	if want := ounce.Times(quantity.Ratio(13, 2)); !fill.Mass().Value().Equal(want) {
		t.Errorf("each holds %s, want 6.5 oz", exact(fill.Mass()))
	}
	if want := ounce.Times(whole(12)); !left.Value().Equal(want) {
		t.Errorf("%s is left, want 12 oz", exact(left))
	}
	if in := l.Balance("base").Packed.Value().Minus(left.Value()); !in.Equal(ounce.Times(whole(52))) {
		t.Errorf("%s g would have done, want 52 oz", in)
	}
	surplus := ledger.Over(quantity.Share, "surplus", left, l.Balance("base").Packed)
	if !surplus.Value().Equal(quantity.Ratio(1875, 10_000)) {
		t.Errorf("the surplus is %s of the batch, want 0.1875", exact(surplus))
	}
}

// Common practice, no source: 64 fl oz at 1.03 g/mL weighs 68.8 oz. A US fluid ounce
// is 29.5735295625 mL (NIST Handbook 44, App. C).
func TestSixtyFourFluidOuncesWeighMore(t *testing.T) {
	l := ledger.Follow(read(t, `name: Floor wash
maker: Brindle Quay Workroom
makes: 1 can
components:
  wash: {name: Floor wash, packed: 64 fl oz, density: 1.03 g/mL}
tools:
  kettle: {name: Kettle, from: customer, essential: true, holds: 3 L}
`, "## [Pour](step:pour?in=kettle)\n\nPour in [all of the wash](take:wash).\n"))
	mass := lastOf(l)[0].Mass().Value()
	want := quantity.Ratio(295735295625, 10_000_000_000).Times(whole(64)).Times(quantity.Ratio(103, 100))
	if !mass.Equal(want) {
		t.Errorf("it weighs %s g, want %s", mass, want)
	}
	if oz := mass.Over(ounce).Float(); math.Abs(oz-68.8) > 0.05 {
		t.Errorf("it weighs %v oz, want 68.8", oz)
	}
}

// The premix balance: 10 g of gum in 100 g of glycerin, dosed at 2.2 g, gives 0.2 g of
// gum and 2.0 g of glycerin (arithmetic: 10/110 × 2.2).
func TestPremixIsDosedInProportion(t *testing.T) {
	l := ledger.Follow(read(t, `name: Paper paste
maker: Brindle Quay Workroom
makes: 1 pot
components:
  gum: {name: Gum powder, packed: 10 g}
  glycerin: {name: Glycerin, packed: 100 g}
tools:
  cup: {name: Cup, from: customer, essential: true}
  bowl: {name: Bowl, from: customer, essential: true}
`, "## [Stir](step:stir?in=cup)\n\nStir [all of the gum](take:gum) into [all of the glycerin](take:glycerin). "+
		"Move [2.2 g](move:cup?into=bowl) over.\n"))
	holdsTrue(t, l, "bowl keeps gum 0.2; bowl keeps glycerin 2; cup keeps gum 9.8; cup keeps glycerin 98")
}

// 10 % of the wax is 9.09 % of the total: 10/110 = 1/11 (arithmetic).
func TestAShareOfTheWaxIsLessOfTheWhole(t *testing.T) {
	l := ledger.Follow(read(t, polish, inPan("Melt [200 g of wax](take:wax) with [20 g of chalk](take:chalk).")))
	pan := lastOf(l)[0]
	ofWax := ledger.Over(quantity.Share, "of the wax", pan.MassOf("chalk"), pan.MassOf("wax"))
	if !ofWax.Value().Equal(quantity.Ratio(1, 10)) {
		t.Errorf("%s of the wax, want 0.1", exact(ofWax))
	}
	if share := pan.Share("chalk"); !share.Value().Equal(quantity.Ratio(1, 11)) {
		t.Errorf("%s of the whole, want 1/11 = 9.09 %%", exact(share))
	}
}
