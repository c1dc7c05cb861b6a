package ledger

import (
	"tallyfold/kit/quantity"
)

// balance closes the account: packed against used, fillings, remainders.
func (f *follower) balance() {
	for _, c := range f.kit.Components {
		f.ledger.Balances = append(f.ledger.Balances, f.materials[c.ID].balance())
	}
	for _, h := range f.kit.Household {
		f.ledger.Household = append(f.ledger.Household, f.materials[h.ID].balance())
	}
	f.ledger.Fillings = f.fillings()
	f.ledger.Cuttings = f.cuttings()
	f.markUsedLater()
}

func (m *material) balance() *Balance {
	b := &Balance{
		Thing: m.key, Dimension: m.dimension, Packed: m.packed, Spare: m.spare,
		Uses: m.uses, LeftSaid: m.leftSaid,
	}
	used := make([]*Figure, len(m.uses))
	for i, use := range m.uses {
		used[i] = use.Amount
	}
	b.Used = Plus(m.dimension, m.name+" used", used...)
	if m.packed != nil {
		b.Left = Minus(m.name+" left", m.packed, b.Used)
	}
	return b
}

// markUsedLater tells remainders that a later run still draws on from those that
// nobody comes back to.
func (f *follower) markUsedLater() {
	after := map[string]int{} // vessel → position of the last run that takes from it
	position := f.positions()
	for _, e := range f.ledger.Entries {
		if e.Move == Moved || e.Move == Filled || e.Move == LeftOver || e.Move == WashedOut {
			after[e.From] = max(after[e.From], position[e.Run])
		}
	}
	for _, r := range f.ledger.Remainders {
		r.UsedLater = after[r.Vessel] > position[r.Run]
	}
}

// Sum writes how a balance was reckoned, a line each, for findings and the
// balance table: "120 g + 120 g = 240 g used".
func (b *Balance) Sum() []string {
	lines := []string{b.Used.Sum()}
	if b.Left != nil {
		lines = append(lines, b.Left.Sum())
	}
	return lines
}

// NeverUsed says whether no step takes from it.
func (b *Balance) NeverUsed() bool { return len(b.Uses) == 0 }

// Surplus is what is left beyond the spare; unknown where either is.
func (b *Balance) Surplus() *Figure {
	if b.Left == nil || b.Spare == nil {
		return b.Left
	}
	surplus := Minus("left beyond the spare", b.Left, b.Spare)
	if surplus.Known() && surplus.Value().Sign() < 0 && b.Left.Value().Sign() >= 0 {
		return Fixed(b.Dimension, surplus.Name, quantity.Number{})
	}
	return surplus
}
