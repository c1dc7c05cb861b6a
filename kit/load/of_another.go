package load

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// This file has the fields whose amount is of, or against, another thing of the kit.

// amountOf reads an amount and the thing that it is of: "10 g ± 5 g of water".
func amountOf[T any](key, expected, example string, fits fit, at func(*T) *kit.Said[quantity.Amount]) field[T] {
	k := fits.key(Key{Name: key, Expected: expected, Example: example, Form: Amount})
	return field[T]{k, func(r *reader, into *T, v value) {
		figure, of := v, ""
		if v.isText() {
			if at := strings.LastIndex(v.text(), " of "); at >= 0 {
				figure, of = v.piece(0, at), strings.TrimSpace(v.text()[at+len(" of "):])
			}
		}
		a, ok := r.amount(figure, k, fits)
		if !ok {
			return
		}
		if of == "" {
			r.report(BadAmount, v.span, v.told()+", which does not say of what", expected, "write it like “"+key+": "+example+"”")
			return
		}
		a.Of, a.Written = strings.TrimPrefix(of, "the "), v.oneLine()
		*at(into) = said(v, a)
	}}
}

// solubilities reads points of what a solvent takes up, rising in temperature.
func solubilities() field[kit.Component] {
	k := Key{Name: "dissolves", Expected: "how much a solvent takes up and at which temperature, or a list of such points from cold to hot",
		Example: "5 g per 100 g of water at 20 °C", Form: AmountList, Unit: true}
	return field[kit.Component]{k, func(r *reader, into *kit.Component, v value) {
		for _, one := range oneOrMore(v) {
			if !one.isText() || one.nothing() {
				r.wrong(one, k)
				continue
			}
			point, err := r.amounts.Solubility(one.text())
			if err != nil {
				r.noAmount(one, err, k)
				continue
			}
			if n := len(into.Dissolves); n > 0 && !warmer(into.Dissolves[n-1].Value, point) {
				r.report(BadAmount, one.span, one.told()+", which is not warmer than the point before it, or of another solvent",
					"points of one solvent from cold to hot", "put the points in order, and keep to one solvent")
				continue
			}
			into.Dissolves = append(into.Dissolves, said(one, point))
		}
	}}
}

func warmer(before, after quantity.Solubility) bool {
	return before.At.Nominal.Less(after.At.Nominal) && before.Solvent == after.Solvent && before.Ratio.Dimension == after.Ratio.Dimension
}

// densities reads the density of a mixture: one, or one as it is filled and one
// when it has set.
func densities() field[kit.Mixture] {
	k := aDensity.key(Key{Name: "density", Expected: expectDensity + ", measured as it is filled; a list “[0.87 g/mL liquid, 0.93 g/mL set]” tells how far it draws together",
		Example: "1.01–1.03 g/mL", Form: AmountList})
	return field[kit.Mixture]{k, func(r *reader, into *kit.Mixture, v value) {
		for _, one := range oneOrMore(v) {
			figure, state := one, kit.NoState
			if one.isText() {
				figure, state = r.state(one)
			}
			a, ok := r.amount(figure, k, aDensity)
			if !ok {
				continue
			}
			switch {
			case state == kit.Set && into.Density.Given() && !into.SetDensity.Given():
				into.SetDensity = said(one, a)
			case !into.Density.Given():
				into.Density, into.DensityState = said(one, a), state
			default:
				r.report(DuplicateKey, one.span, one.told()+", a further density of the same state", "one density as filled, and one that ends in “set”",
					"write “set” behind the one of the hardened mixture, or take one out")
			}
		}
	}}
}
