package load

import (
	"errors"
	"slices"

	"tallyfold/kit/quantity"
)

// A fit says which amounts a key may hold.
type fit struct {
	kinds []quantity.Dimension
	// limit: "at most", "at least" and the like may stand before it.
	limit bool
	// zero: nothing is allowed.
	zero bool
	// whole: no half pieces.
	whole bool
	// base: a share must say of what.
	base bool
	// step: a temperature is meant as a step of a scale, not as a reading.
	step bool
}

// key notes in a key what its amounts may be, for the schema.
func (f fit) key(k Key) Key {
	k.Unit = !slices.Contains(f.kinds, quantity.Count)
	k.Positive, k.Whole = !f.zero, f.whole
	return k
}

// The fits that several keys share.
var (
	packable    = fit{kinds: []quantity.Dimension{quantity.Mass, quantity.Volume, quantity.Count, quantity.Length, quantity.Area}}
	spareable   = fit{kinds: packable.kinds, zero: true}
	pieces      = fit{kinds: []quantity.Dimension{quantity.Count}, whole: true}
	aDensity    = fit{kinds: []quantity.Dimension{quantity.Density}}
	aVolume     = fit{kinds: []quantity.Dimension{quantity.Volume}}
	aWidth      = fit{kinds: []quantity.Dimension{quantity.Length}}
	aPrice      = fit{kinds: []quantity.Dimension{quantity.Money}}
	aMass       = fit{kinds: []quantity.Dimension{quantity.Mass}}
	massOrRoom  = fit{kinds: []quantity.Dimension{quantity.Mass, quantity.Volume}, zero: true}
	roomOrDepth = fit{kinds: []quantity.Dimension{quantity.Volume, quantity.Length}, zero: true}
	aReading    = fit{kinds: []quantity.Dimension{quantity.Temperature}, zero: true}
	aDuration   = fit{kinds: []quantity.Dimension{quantity.Duration}, limit: true}
	aShare      = fit{kinds: []quantity.Dimension{quantity.Share}, limit: true, zero: true, base: true}
	ownShare    = fit{kinds: []quantity.Dimension{quantity.Share}, limit: true, zero: true}
	aLength     = fit{kinds: []quantity.Dimension{quantity.Length}, zero: true}
	aRatio      = fit{kinds: []quantity.Dimension{quantity.VolumePerMass, quantity.Proportion, quantity.Density}, limit: true, base: true}
	lossOf      = fit{kinds: []quantity.Dimension{quantity.Mass, quantity.Volume, quantity.Share}, zero: true}
	foamRoom    = fit{kinds: []quantity.Dimension{quantity.Volume, quantity.Share}, zero: true}
	netContents = fit{kinds: packable.kinds, limit: true}
	scaleStep   = fit{kinds: []quantity.Dimension{quantity.Mass, quantity.Volume, quantity.Length, quantity.Duration, quantity.TemperatureDifference}, step: true}
)

// kindNames say what kind an amount is, to a person.
var kindNames = map[quantity.Dimension]string{
	quantity.Mass: "a weight", quantity.Volume: "a volume", quantity.Count: "a count", quantity.Length: "a length",
	quantity.Area: "an area", quantity.Temperature: "a temperature", quantity.TemperatureDifference: "a difference of temperature",
	quantity.Duration: "a time", quantity.Money: "money", quantity.Share: "a share", quantity.Density: "a density",
	quantity.VolumePerMass: "a volume for each weight", quantity.Proportion: "a ratio",
}

// amount reads a text as an amount that fits the key, or reports why not.
func (r *reader) amount(v value, key Key, fits fit) (quantity.Amount, bool) {
	if !v.isText() || v.nothing() {
		r.wrong(v, key)
		return quantity.Amount{}, false
	}
	a, err := r.amounts.Amount(v.text())
	if err == nil && fits.step && a.Dimension == quantity.Temperature {
		a, err = r.amounts.Difference(v.text())
	}
	if err != nil {
		r.noAmount(v, err, key)
		return quantity.Amount{}, false
	}
	return a, r.suits(v, a, key, fits)
}

// noAmount reports a text that is no amount, at the very bytes that are the trouble.
func (r *reader) noAmount(v value, err error, key Key) {
	var trouble *quantity.Error
	if !errors.As(err, &trouble) {
		r.report(BadAmount, v.span, v.told(), key.Expected, "write it like “"+key.Name+": "+key.Example+"”")
		return
	}
	at := v.part(trouble.Start, trouble.End)
	if at.Start == at.End {
		at = v.span
	}
	orders := []string{"write it like “" + key.Name + ": " + key.Example + "”"}
	if trouble.Hint != "" {
		orders = append([]string{trouble.Hint}, orders...)
	}
	r.report(BadAmount, at, trouble.Found, trouble.Expected, orders...)
}

// suits says whether an amount is of the kind and size that a key wants.
func (r *reader) suits(v value, a quantity.Amount, key Key, fits fit) bool {
	order := "write it like “" + key.Name + ": " + key.Example + "”"
	wrong := func(why string) bool {
		r.report(BadAmount, v.span, v.told()+why, key.Expected, order)
		return false
	}
	switch {
	case !slices.Contains(fits.kinds, a.Dimension) && a.Dimension == quantity.Count && a.Noun == "":
		return wrong(", a figure without a unit")
	case !slices.Contains(fits.kinds, a.Dimension):
		return wrong(", " + kindNames[a.Dimension])
	case fits.base && a.Of == "":
		r.report(ShareWithoutBase, v.span, v.told()+", which does not say of what", key.Expected,
			"name what it is a part of, such as “"+v.oneLine()+" of mixture”")
		return false
	case !fits.limit && a.Bound != quantity.Exactly:
		return wrong(", where only the figure belongs")
	case !fits.zero && a.High.Sign() <= 0:
		return wrong(", which is nothing")
	case fits.whole && !a.Nominal.IsWhole():
		return wrong(", which is no whole number")
	case a.Dimension == quantity.Density && heaviest.Less(a.High):
		return wrong(", which is heavier than any metal; grams for each litre are a thousandth of that in g/mL")
	case a.Dimension == quantity.Density && a.High.Less(lightest):
		return wrong(", which is lighter than air")
	case a.Of == wholeMixture && quantity.Whole(1).Less(a.High):
		return wrong(", which is more than the whole")
	}
	return true
}

// heaviest and lightest bound a density, g/mL: osmium has 22.6, the densest of all
// metals; air has 0.0012 (both from memory).
var (
	heaviest = quantity.Whole(23)
	lightest = quantity.Ratio(1, 1000)
)

// wholeMixture is the base of a share that is of everything in the vessel.
const wholeMixture = "mixture"
