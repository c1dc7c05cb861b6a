package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// lacks says whether kit.yaml leaves out the figure that turns an amount of a
// thing into a mass, or into the volume it adds to a mixture.
func lacks(l *ledger.Ledger, id string, dimension quantity.Dimension) bool {
	reckoned, ok := reckonedIn(l, id)
	if !ok {
		return false
	}
	told, _ := density(l.Kit, id)
	if dimension == quantity.Mass {
		return reckoned == quantity.Volume && !told.Given()
	}
	if c := l.Kit.Component(id); c != nil && c.TrueDensity.Given() {
		return false
	}
	return isLoose(l.Kit, id) || reckoned == quantity.Mass && !told.Given()
}

// reckonedIn is the kind of amount the ledger reckons a thing in; ok only for what
// mixes.
func reckonedIn(l *ledger.Ledger, id string) (dimension quantity.Dimension, ok bool) {
	b := l.Balance(id)
	if b == nil {
		return 0, false
	}
	return b.Dimension, b.Dimension == quantity.Mass || b.Dimension == quantity.Volume
}

// isLoose says whether a density is that of a loose powder; the ledger reads it
// the same way.
func isLoose(k *kit.Kit, id string) bool {
	told, state := density(k, id)
	return told.Given() && (state == kit.Loose || state == kit.NoState && isWide(told.Value))
}

// lacking are the things in a mixture that keep its mass or volume from being told.
func lacking(l *ledger.Ledger, c *ledger.Contents, dimension quantity.Dimension) []string {
	if dimension == quantity.Volume && !c.Added() {
		dimension = quantity.Mass // the measured density does the rest
	}
	var ids []string
	for _, part := range c.Parts() {
		if lacks(l, part.Thing, dimension) {
			ids = append(ids, part.Thing)
		}
	}
	return ids
}

// lightest is what a millilitre of anything that is poured weighs at least, g/mL
// (common practice, no source): it bounds the room of what has no density.
var lightest = quantity.Ratio(1, 10)

// volumeBounds says between which volumes a mixture lies where a density is
// missing: what lacks one takes no room at all, or as much as it can. ok is false
// where not even its mass is known.
func volumeBounds(k *kit.Kit, c *ledger.Contents) (low, high quantity.Number, ok bool) {
	for _, part := range c.Parts() {
		if part.Volume.Known() {
			low, high = low.Plus(part.Volume.Value()), high.Plus(part.Volume.Value())
			continue
		}
		if !part.Mass.Known() {
			return low, high, false
		}
		dense := lightest
		if told, _ := density(k, part.Thing); told.Given() && told.Value.Low.Sign() > 0 {
			dense = told.Value.Low
		}
		high = high.Plus(part.Mass.Value().Over(dense))
	}
	return low, high, true
}
