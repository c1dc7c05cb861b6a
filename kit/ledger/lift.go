package ledger

import (
	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// lift takes one thing out of a vessel, all of it or the part that is told. What
// carries liquid takes it along: fibre out of a dye bath.
func (f *follower) lift(source, to *vessel, m *material) {
	held := source.amountOf(m)
	if held == nil {
		f.snag(Empty, m.key, nil, nil, "none of it is in "+source.name)
		return
	}
	amount := f.partThatLeaves(m, held)
	liquid := f.carried(source, m, amount)
	source.lower(m, amount)
	f.enter(Moved, m.key, source.Vessel, to.Vessel, amount, nil)
	to.put(portion{m, amount})
	for _, p := range liquid {
		f.enterMoved(p, source, to, p.amount, nil)
		to.put(p)
	}
}

// carried takes out of a vessel the liquid that a lifted thing holds on to: its
// share of the dry mass, as far as there is so much liquid.
func (f *follower) carried(v *vessel, m *material, amount *Figure) []portion {
	if m.carries == nil || len(v.portions) == 0 {
		return nil
	}
	held := v.Mass()
	wanted := Times(quantity.Mass, "carried by "+m.name, m.mass(amount), m.carries)
	if !held.Known() || !wanted.Known() {
		f.snag(NoDensity, v.Vessel, wanted, held, why(held, wanted))
		return v.takeShare(Unknown(quantity.Share, "part of "+v.name, why(held, wanted)))
	}
	if held.Value().IsZero() {
		return nil
	}
	return v.takeShare(shareOf("part of "+v.name, Smaller("carried by "+m.name, wanted, held), held))
}

// why is what the first unknown of some figures rests on.
func why(figures ...*Figure) string { return firstUnknown(figures) }

// amountOf one thing in it, nil when there is none.
func (c *Contents) amountOf(m *material) *Figure {
	for _, list := range [][]portion{c.portions, c.objects} {
		for _, p := range list {
			if p.material == m {
				return p.amount
			}
		}
	}
	return nil
}

// lower takes an amount of one thing out. All of it leaves no trace.
func (c *Contents) lower(m *material, amount *Figure) {
	for _, list := range []*[]portion{&c.portions, &c.objects} {
		for i, p := range *list {
			if p.material != m {
				continue
			}
			if isAllOf(amount, p.amount) {
				*list = append((*list)[:i:i], (*list)[i+1:]...)
				return
			}
			kept := append([]portion{}, *list...)
			kept[i].amount = Minus(m.name, p.amount, amount)
			*list = kept
			return
		}
	}
}

// isAllOf: a told amount that is exactly what was there leaves nothing behind.
func isAllOf(amount, held *Figure) bool {
	return amount == held || amount.Known() && held.Known() && amount.Value().Equal(held.Value())
}

// solid: a thing that carries liquid lies in it and is no part of it, though it is
// weighed.
func (m *material) solid() bool { return m.carries != nil }

func (m *material) setCarries(said kit.Said[quantity.Amount]) {
	if said.Given() {
		m.carries = Written("liquid that "+m.name+" holds, of its own weight", said.Value, said.Span)
	}
}
