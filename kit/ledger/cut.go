package ledger

import (
	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// This file has what is cut: lengths of thread with their ends and strands, pieces
// out of sheets with their margins.

// cutLength is what lengths told of a thread take from the skein.
//
// A length loses its allowance at both ends. A thread used in fewer strands than it
// is laid of gives as many lots as there are whole lots of strands in it; a length
// that is begun counts whole, even where not all of its strands are used. A length
// longer than a skein, or told "in all", is the sum of such lots.
func (f *follower) cutLength(m *material, told, times *Figure) *Figure {
	name := m.name + ", " + f.here()
	each := told
	if m.perEnd != nil {
		two := Fixed(quantity.Count, "ends", quantity.Whole(2))
		each = Plus(quantity.Length, "one length", told, Times(quantity.Length, "at the ends", two, m.perEnd))
	}
	lots := m.lotsOf(f.operation.Strands)
	if times == nil && lots > 1 && (f.operation.Phrase.InAll || m.skein.Less(told.Value())) {
		return Over(quantity.Length, name, each, Fixed(quantity.Count, "lots in each length", quantity.Whole(lots)))
	}
	lengths := quantity.Whole(1)
	if times != nil {
		lengths = times.Value()
	}
	if lots > 1 {
		whole := lengths.Over(quantity.Whole(lots))
		if lengths = quantity.Whole(whole.Int()); lengths.Less(whole) {
			lengths = lengths.Plus(quantity.Whole(1))
		}
	}
	if lengths.Equal(quantity.Whole(1)) {
		return each.Called(name)
	}
	return Times(quantity.Length, name, Fixed(quantity.Count, "lengths cut", lengths), each)
}

// lotsOf is how many lots of so many strands a length gives; one where the strands
// are not told.
func (m *material) lotsOf(strands int) int64 {
	if strands == 0 || m.strands == 0 {
		return 1
	}
	return max(1, int64(m.strands/strands))
}

// setCutting takes over what is said of cutting.
func (m *material) setCutting(c *kit.Component) {
	m.strands = c.Strands.Value
	m.skein = c.Packed.Value.Nominal
	if c.Lots.Told() {
		m.skein, m.lots = c.Lots.Each.Nominal, int64(c.Lots.Count)
	}
	if c.EndAllowance.Given() {
		m.perEnd = Written("lost at each end of "+m.name, c.EndAllowance.Value, c.EndAllowance.Span)
	}
	if c.CutMargin.Given() {
		m.margin = Written("margin of "+m.name, c.CutMargin.Value, c.CutMargin.Span)
	}
}

// A Cutting is what is cut out of the sheets of one component, over all runs.
type Cutting struct {
	Component *kit.Component
	// Sheets there are, and the sides of one at its smallest, mm.
	Sheets        int
	Across, Along quantity.Number
	// Pieces in the order they are cut; sides with their margins, mm.
	Pieces []CutPiece
	// Placed is how many pieces a way was found to lay out, the largest first and
	// with cuts from edge to edge. Pieces may be turned.
	Placed int
	// Unknown says why nothing can be told of the sheets, "" where it can.
	Unknown string
}

// A CutPiece is a number of pieces of one size.
type CutPiece struct {
	Step          *kit.Step
	Operation     *kit.Operation
	Count         int
	Across, Along quantity.Number
}

// Wanted is how many pieces are cut in all.
func (c *Cutting) Wanted() int {
	n := 0
	for _, p := range c.Pieces {
		n += p.Count
	}
	return n
}

// cutArea is what pieces told by their sides take from a sheet, margins included.
// The pieces are kept, to be laid out when all are known.
func (f *follower) cutArea(m *material, told, times *Figure) *Figure {
	name := m.name + ", " + f.here()
	amount := f.operation.Phrase.Amounts[0]
	across, along := amount.Across, amount.Along
	each := told
	if across.Sign() > 0 && m.margin != nil {
		two := Fixed(quantity.Count, "sides", quantity.Whole(2))
		margins := Times(quantity.Length, "margins", two, m.margin)
		side := func(what string, n quantity.Number) *Figure {
			return Plus(quantity.Length, what, Fixed(quantity.Length, what, n), margins)
		}
		each = Times(quantity.Area, "one piece with its margins", side("across", across), side("along", along))
		across, along = across.Plus(margins.Value()), along.Plus(margins.Value())
	}
	count := 1
	if times != nil {
		count = int(times.Value().Int())
	}
	if across.Sign() > 0 {
		m.pieces = append(m.pieces, CutPiece{f.step, f.operation, count, across, along})
	}
	if times == nil {
		return each.Called(name)
	}
	return Times(quantity.Area, name, times, each)
}

// cuttings lays out what was cut of each component.
func (f *follower) cuttings() []*Cutting {
	var all []*Cutting
	for _, c := range f.kit.Components {
		m := f.materials[c.ID]
		if len(m.pieces) == 0 {
			continue
		}
		cutting := &Cutting{Component: c, Pieces: m.pieces}
		cutting.sheet(c)
		if cutting.Unknown == "" {
			cutting.Placed = layOut(cutting)
		}
		all = append(all, cutting)
	}
	return all
}

// sheet takes the sides of a sheet from the pack.
func (c *Cutting) sheet(component *kit.Component) {
	each := component.Packed.Value
	c.Sheets = 1
	if component.Lots.Told() {
		each, c.Sheets = component.Lots.Each, component.Lots.Count
	}
	if each.Across.Sign() <= 0 {
		c.Unknown = "kit.yaml does not give the sides of one sheet, as in “2 sheets of 30 × 40 cm”"
		return
	}
	if c.Wanted() > mostLaidOut {
		c.Unknown = "so many pieces are not laid out"
		return
	}
	c.Across, c.Along = each.Across.Minus(each.Slack), each.Along.Minus(each.Slack)
}
