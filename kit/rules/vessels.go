package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// lastMaking is the mixture that last left a vessel in a run, or nil.
func lastMaking(l *ledger.Ledger, run *kit.Run, vessel string) *ledger.Making {
	return lastMakingUpTo(l, run, vessel, nil)
}

// lastMakingUpTo is the same among those up to and with a step; nil is all steps.
func lastMakingUpTo(l *ledger.Ledger, run *kit.Run, vessel string, step *kit.Step) *ledger.Making {
	var last *ledger.Making
	for _, m := range l.Makings {
		if m.Run == run && m.Vessel == vessel && (step == nil || m.Step.Number <= step.Number) {
			last = m
		}
	}
	return last
}

// lastInto is the last entry that put something into a vessel in a run, or nil.
func lastInto(l *ledger.Ledger, run *kit.Run, vessel string) *ledger.Entry {
	var last *ledger.Entry
	for i, e := range l.Entries {
		if e.Run == run && e.To == vessel && e.Move != ledger.LeftOver {
			last = &l.Entries[i]
		}
	}
	return last
}

// contentsIn gives mass or volume.
func contentsIn(c *ledger.Contents, dimension quantity.Dimension) *ledger.Figure {
	if dimension == quantity.Volume {
		return c.Volume()
	}
	return c.Mass()
}

// likePacked is the amount whose unit a remedy about a thing is told in.
func likePacked(k *kit.Kit, id string, dimension quantity.Dimension) quantity.Amount {
	if c := k.Component(id); c != nil && c.Packed.Value.Dimension == dimension {
		return c.Packed.Value
	}
	return quantity.Amount{Dimension: dimension}
}

// oneDigit tells a number of pieces with one digit behind the point, cut not
// rounded: 1.8 of 1.87.
func oneDigit(n quantity.Number) string {
	return rounded(n, quantity.Ratio(1, 10), false).String()
}

// emptyContainers is how many containers of a kind nothing was filled into,
// beyond the spare.
func emptyContainers(s Subject, c *kit.Component) int {
	b := s.Ledger.Balance(c.ID)
	if b == nil || !b.Packed.Known() || c.Container == nil || c.Container.UsedAgain.Value {
		return 0
	}
	cavities := max(1, c.Container.Cavities.Value)
	empty := int(b.Packed.Value().Int())*cavities - filled(s.Ledger, c)
	if b.Spare != nil {
		empty -= int(b.Spare.Value().Int()) * cavities
	}
	return max(0, empty)
}

// filled is how many containers of a kind end up with a piece in them. Where any
// of them is filled with a mixture, those that only got an insert do not count.
func filled(l *ledger.Ledger, c *kit.Component) int {
	poured, all := 0, 0
	for _, f := range l.Fillings {
		if f.Container != c {
			continue
		}
		all += f.Count
		if len(f.Parts()) > 0 {
			poured += f.Count
		}
	}
	if poured > 0 {
		return poured
	}
	return all
}

// containersCause groups what containers left empty bring about.
func containersCause(id string) string { return "containers " + id }
