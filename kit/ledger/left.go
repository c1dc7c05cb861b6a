package ledger

import (
	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// This file has what leaves a vessel for good: what is kept, poured away, trimmed,
// or goes off as steam.

// The words after `?as=` that say more than where something goes.
const (
	kept       = "kept"
	discarded  = "discarded"
	pouredAway = "poured-away"
)

// left does with a remainder, or with a part of it, what the maker says.
func (f *follower) left() {
	m := f.material(f.operation.Target)
	if m != nil && f.operation.From != "" {
		f.leaves(m)
		return
	}
	if m != nil && f.vesselOf(f.operation.Target) == nil {
		m.leftSaid = f.operation
		return
	}
	v := f.vesselOf(f.operation.Target)
	if v == nil {
		return
	}
	if f.operation.As == pouredAway {
		f.keepMaking(v) // the bath as it was, before it goes
	}
	// What is poured away or kept leaves the residue behind, as every emptying does.
	share, all := f.leftShare(v)
	if all && f.operation.As == discarded && len(v.portions) > 0 {
		f.ledger.Discarded = append(f.ledger.Discarded, f.remainderIn(v))
	}
	gone := v.takeShare(share)
	// Pouring away takes the liquid; what lies in it stays.
	if all && f.operation.As != pouredAway {
		gone = append(gone, v.takeObjects()...)
	}
	for _, p := range gone {
		f.enter(LeftOver, p.material.key, v.Vessel, f.goesTo(), p.amount, nil)
	}
}

// leftShare is which part of a vessel leaves it; all says that it is emptied. A
// figure told with "about" is what is expected to be there.
func (f *follower) leftShare(v *vessel) (share *Figure, all bool) {
	phrase := f.operation.Phrase
	told := phrase.Portion == kit.Exactly && !phrase.About
	if (told || phrase.Portion == kit.FractionOf) && len(v.portions) > 0 {
		f.keepMaking(v)
		return f.shareOf(v)
	}
	if f.operation.As == pouredAway {
		return f.pouringOff(v), true
	}
	return f.emptying(v), true
}

// pouringOff is the share that leaves a vessel when its liquid is poured off what lies
// in it: that keeps what it carries, besides the residue of the vessel.
func (f *follower) pouringOff(v *vessel) *Figure {
	var carried []*Figure
	for _, p := range v.objects {
		if p.material.carries != nil {
			carried = append(carried, Times(quantity.Mass, "carried by "+p.material.name, p.material.mass(p.amount), p.material.carries))
		}
	}
	if len(carried) == 0 || len(v.portions) == 0 {
		return f.emptying(v)
	}
	if residue := f.residueOf(v); residue != nil && residue.Dimension == quantity.Mass {
		carried = append(carried, residue)
	}
	held := v.Mass()
	stays := Plus(quantity.Mass, "stays in "+v.name, carried...)
	if !held.Known() || !stays.Known() {
		f.snag(NoDensity, v.Vessel, stays, held, why(held, stays))
		return Unknown(quantity.Share, "part of "+v.name, why(held, stays))
	}
	if held.Value().IsZero() {
		return nil
	}
	return shareOf("part of "+v.name, Minus("leaves "+v.name, held, Smaller("stays in "+v.name, stays, held)), held)
}

func (f *follower) goesTo() string {
	if f.operation.As == "" {
		return kept
	}
	return f.operation.As
}

// leaves is for one thing that leaves a vessel while the rest stays: water that
// boils off, a stick that is lifted out.
func (f *follower) leaves(m *material) {
	v := f.vesselOf(f.operation.From)
	if v == nil {
		return
	}
	held := v.amountOf(m)
	if held == nil {
		f.snag(Empty, m.key, nil, nil, "none of it is in "+v.name)
		return
	}
	amount := f.partThatLeaves(m, held)
	v.lower(m, amount)
	f.enter(LeftOver, m.key, v.Vessel, f.goesTo(), amount, v.Temperature)
}

// partThatLeaves is the told amount or part of what is held, never more than that.
func (f *follower) partThatLeaves(m *material, held *Figure) *Figure {
	phrase := f.operation.Phrase
	name := m.name + ", " + f.here()
	switch phrase.Portion {
	case kit.FractionOf:
		return partOf(name, held, Fixed(quantity.Share, "part", phrase.Fraction))
	case kit.Exactly:
		told := Written(name, phrase.Amounts[0], phrase.AmountSpans[0])
		amount, trouble := m.inPackDimension(told)
		if trouble != "" {
			f.snag(trouble, m.key, told, held, amount.Why())
			return amount
		}
		if held.Known() && amount.Known() && held.Value().Less(amount.Value()) {
			f.snag(Short, m.key, told, held, "")
		}
		return Smaller(name, amount, held)
	}
	return held
}

// evaporate takes from a vessel what it loses in each step that warms it.
func (f *follower) evaporate(v *vessel) {
	if v.tool == nil || !v.tool.Evaporates.Given() {
		return
	}
	for _, other := range f.warmed {
		if other == v {
			return
		}
	}
	f.warmed = append(f.warmed, v)
	lost := v.tool.Evaporates
	m := f.materials[f.resolve(lost.Value.Of)]
	if m == nil {
		return
	}
	held := v.amountOf(m)
	if held == nil {
		return // none of it is in there: nothing goes off
	}
	amount := Smaller(m.name+" that goes off, "+f.here(), f.lossOf(v, m, held), held)
	v.lower(m, amount)
	f.enter(Evaporated, m.key, v.Vessel, "", amount, v.Temperature)
}

// lossOf is what a vessel is said to lose, in the dimension that the thing is
// reckoned in; a share is of what is there.
func (f *follower) lossOf(v *vessel, m *material, held *Figure) *Figure {
	said := v.tool.Evaporates
	name := "goes off from " + v.name
	told := Written(name, said.Value, said.Span)
	if told.Dimension == quantity.Share {
		return partOf(name, held, told)
	}
	amount, trouble := m.inPackDimension(told)
	if trouble != "" {
		f.snag(trouble, m.key, told, held, amount.Why())
	}
	return amount
}
