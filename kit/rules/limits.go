package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// A limit is on the share of a thing in the base that it names.
type limit struct {
	thing string
	told  kit.Said[quantity.Amount]
}

// wholeMixture is the base of a limit that names no other.
const wholeMixture = "mixture"

// limits gives all limits on shares of a kit.
func limits(k *kit.Kit) []limit {
	var all []limit
	add := func(thing string, shares []kit.Said[quantity.Amount]) {
		for _, told := range shares {
			all = append(all, limit{thing, told})
		}
	}
	for _, c := range k.Components {
		add(c.ID, c.Shares)
	}
	for _, h := range k.Household {
		add(h.ID, h.Shares)
	}
	for _, m := range k.Mixtures {
		add(m.ID, m.Shares)
	}
	return all
}

// A side says where a share lies.
type side int

const (
	within side = iota
	tooLow
	tooHigh
)

// outside holds a share against the limit: “at most” and “at least” include their
// figure, “below” and “above” do not.
func (l limit) outside(share quantity.Number) side {
	told := l.told.Value
	switch told.Bound {
	case quantity.AtMost, quantity.UpTo:
		return sideOf(told.Nominal.Less(share), tooHigh)
	case quantity.Below:
		return sideOf(told.Nominal.Cmp(share) <= 0, tooHigh)
	case quantity.AtLeast:
		return sideOf(share.Less(told.Nominal), tooLow)
	case quantity.Above:
		return sideOf(share.Cmp(told.Nominal) <= 0, tooLow)
	}
	low, high := l.ends()
	switch {
	case share.Less(low):
		return tooLow
	case high.Less(share):
		return tooHigh
	}
	return within
}

func sideOf(is bool, where side) side {
	if is {
		return where
	}
	return within
}

// ends of a share told as a range; a single figure is meant to within a twentieth.
func (l limit) ends() (low, high quantity.Number) {
	told := l.told.Value
	if told.HasTolerance() {
		return told.Low, told.High
	}
	near := told.Nominal.Times(aboutAllows)
	return told.Nominal.Minus(near), told.Nominal.Plus(near)
}

// edge is the figure of the limit on one side.
func (l limit) edge(way side) quantity.Number {
	told := l.told.Value
	if told.Bound != quantity.Exactly && told.Bound != quantity.About {
		return told.Nominal
	}
	low, high := told.Low, told.High
	if way == tooLow {
		return low
	}
	return high
}

// farOutside says the same of a worst case that goes well over the limit.
func (l limit) farOutside(share quantity.Number) side {
	way := l.outside(share)
	if way == within {
		return within
	}
	edge := l.edge(way)
	return sideOf(edge.Times(bearable).Less(share.Minus(edge).Abs()), way)
}

// A limited is one mixture that a limit is held against.
type limited struct {
	run       *kit.Run
	contents  *ledger.Contents
	operation *kit.Operation // that takes the mixture out, or nil
	share     *ledger.Figure
	base      string // what people call the base
	whole     bool   // the base is all of the mixture
	mass      *ledger.Figure
}

// mixtures gives the mixtures of all runs that the limit is about.
func (l limit) mixtures(s Subject) []limited {
	var all []limited
	for _, run := range s.Kit.Passes() {
		for _, m := range l.candidates(s, run) {
			if m.run = run; l.reckon(s, &m) {
				all = append(all, m)
			}
		}
	}
	return all
}

// candidates are the named mixture the limit is of, or else what a run ends with.
func (l limit) candidates(s Subject, run *kit.Run) []limited {
	named := s.Kit.Mixture(l.told.Value.Of)
	var all []limited
	for _, m := range s.Ledger.Makings {
		isMeant := named == nil && m.Operation.Kind == kit.Fill || named != nil && m.Mixture == named
		if m.Run == run && isMeant && l.isIn(s, run, &m.Contents) {
			all = append(all, limited{contents: &m.Contents, operation: m.Operation})
		}
	}
	for _, f := range s.Ledger.Fillings {
		if f.Run == run && f.Operation.Kind != kit.Fill && named == nil && l.isIn(s, run, &f.Contents) {
			all = append(all, limited{contents: &f.Contents, operation: f.Operation})
		}
	}
	if len(all) > 0 {
		return all
	}
	return l.fullest(s, run, named)
}

// fullest is for what is never filled into anything: the vessel that held most of
// any that held the thing, since a premix is always less than its mixture.
func (l limit) fullest(s Subject, run *kit.Run, named *kit.Mixture) []limited {
	var most *ledger.Contents
	consider := func(c *ledger.Contents) {
		if named != nil && c.Mixture != named || !l.isIn(s, run, c) {
			return
		}
		if most == nil || !most.Mass().Known() || c.Mass().Known() && most.Mass().Value().Cmp(c.Mass().Value()) <= 0 {
			most = c
		}
	}
	for _, stage := range s.Ledger.Stages {
		for i := range stage.Vessels {
			if stage.Run == run {
				consider(&stage.Vessels[i])
			}
		}
	}
	for _, m := range s.Ledger.Makings {
		if m.Run == run {
			consider(&m.Contents)
		}
	}
	if most == nil {
		return nil
	}
	return []limited{{contents: most}}
}

// isIn says whether the thing, or for a mixture something poured from it, is there,
// together with the one thing that its share is of.
func (l limit) isIn(s Subject, run *kit.Run, c *ledger.Contents) bool {
	if base := l.told.Value.Of; !l.isOfMixture(s.Kit) && !c.Holds(resolved(run, base)) {
		return false
	}
	if m := s.Kit.Mixture(l.thing); m != nil {
		return c.Mixture != m && len(pouredFrom(s.Ledger, m.MadeIn.Value, c.Vessel)) > 0
	}
	return c.Holds(l.thing)
}

// isOfMixture says whether the base is a mixture, not one thing.
func (l limit) isOfMixture(k *kit.Kit) bool {
	base := l.told.Value.Of
	return base == "" || base == wholeMixture || k.Mixture(base) != nil
}

// reckon fills in the share; false where the base is not in the mixture.
func (l limit) reckon(s Subject, m *limited) bool {
	mass := m.contents.MassOf(l.thing)
	if mixture := s.Kit.Mixture(l.thing); mixture != nil {
		mass = massPoured(s, m, mixture)
	}
	base := l.told.Value.Of
	if l.isOfMixture(s.Kit) {
		m.whole, m.base, m.mass = true, "the mixture", m.contents.Mass()
		if m.contents.Mixture != nil {
			m.base = m.contents.Mixture.String()
		}
	} else {
		base = resolved(m.run, base)
		if !m.contents.Holds(base) {
			return false
		}
		m.base, m.mass = s.Kit.Called(base), m.contents.MassOf(base)
	}
	m.share = ledger.Over(quantity.Share, s.Kit.Called(l.thing), mass, m.mass)
	return true
}

// baseSum shows what the base was added up from.
func (m limited) baseSum() string {
	if !m.whole {
		return ""
	}
	return m.base + ": " + m.mass.Sum()
}

// massAt is the mass of the thing at which its share would be the edge.
func (m limited) massAt(edge quantity.Number) (quantity.Number, bool) {
	if !m.whole {
		return edge.Times(m.mass.Value()), true
	}
	one := quantity.Whole(1)
	if edge.Cmp(one) >= 0 {
		return quantity.Number{}, false
	}
	others := m.mass.Value().Times(one.Minus(m.share.Value()))
	return edge.Times(others).Over(one.Minus(edge)), true
}

// pouredFrom are the entries that moved something from one vessel into another.
func pouredFrom(l *ledger.Ledger, from, to string) []ledger.Entry {
	var entries []ledger.Entry
	for _, e := range l.Entries {
		if e.Move == ledger.Moved && e.From == from && e.To == to {
			entries = append(entries, e)
		}
	}
	return entries
}

// massPoured is the mass of a mixture that was poured into another.
func massPoured(s Subject, m *limited, from *kit.Mixture) *ledger.Figure {
	var masses []*ledger.Figure
	for _, e := range pouredFrom(s.Ledger, from.MadeIn.Value, m.contents.Vessel) {
		for _, part := range m.contents.Parts() {
			if e.Run == m.run && part.Thing == e.Thing {
				perUnit := ledger.Over(quantity.Mass, "", part.Mass, part.Amount)
				masses = append(masses, ledger.Times(quantity.Mass, s.Kit.Called(e.Thing), e.Amount, perUnit))
			}
		}
	}
	return ledger.Plus(quantity.Mass, from.String(), masses...)
}
