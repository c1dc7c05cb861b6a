package rules

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var ratioOutsideLimits = Rule{
	Name:     "ratio-outside-limits",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "Two things are not in the ratio that their limits ask for",
	Explanation: `Plaster with too much water stays soft; yarn in too little dye bath comes out patchy. Each
“ratio” in kit.yaml is held, in every run, against the vessel in which most of the thing
meets the other. Fibre counts dry, whatever water it carries.

A ratio outside its limits as written must be fixed; one that can be, with every figure
at its bad end, by more than a tenth of the limit, should be.

Change one of the two amounts.`,
	Check: func(s Subject) []diag.Finding {
		var all []perRun
		for _, r := range ratios(s.Kit) {
			for _, run := range s.Kit.Passes() {
				if contents := r.meeting(s, run); contents != nil {
					if finding, ok := r.holdRatio(s, run, contents); ok {
						all = append(all, perRun{run, finding})
					}
				}
			}
		}
		return overRuns(s.Kit, all)
	},
	NotLookedAt: func(s Subject) []string {
		if len(ratios(s.Kit)) > 0 {
			return nil
		}
		return []string{"no ratio of two things is told"}
	},
}

// ratios gives all limits on ratios; they are limits like those on shares.
func ratios(k *kit.Kit) []limit {
	var all []limit
	for _, c := range k.Components {
		for _, told := range c.Ratios {
			all = append(all, limit{c.ID, told})
		}
	}
	for _, h := range k.Household {
		for _, told := range h.Ratios {
			all = append(all, limit{h.ID, told})
		}
	}
	return all
}

// meeting is what held most of the thing together with what it is measured against.
func (l limit) meeting(s Subject, run *kit.Run) *ledger.Contents {
	base := resolved(run, l.told.Value.Of)
	var most *ledger.Contents
	consider := func(c *ledger.Contents) {
		if !c.Holds(l.thing) || !c.Holds(base) {
			return
		}
		if most == nil || !c.MassOf(l.thing).Known() || most.MassOf(l.thing).Known() && most.MassOf(l.thing).Value().Less(c.MassOf(l.thing).Value()) {
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
	for _, f := range s.Ledger.Fillings {
		if f.Run == run {
			consider(&f.Contents)
		}
	}
	return most
}

func (l limit) holdRatio(s Subject, run *kit.Run, c *ledger.Contents) (diag.Finding, bool) {
	told := l.told.Value
	base := resolved(run, told.Of)
	ratio := c.Ratio(told.Dimension, l.thing, base)
	name := s.Kit.Called(l.thing) + " to " + s.Kit.Called(base)
	finding := diag.Finding{
		Where: l.told.Span, About: l.thing, Expected: told.Written,
		Also: []diag.Place{{Where: l.told.Span, Note: "the limit, " + told.Written}},
	}
	if entry := lastTaken(s.Ledger, run, l.thing); entry != nil {
		finding.Where = amountSpan(entry.Operation)
	}
	if !ratio.Known() && !bothAmountsKnown(c, l.thing, base) {
		return diag.Finding{}, false // told by no-amount
	}
	if !ratio.Known() {
		finding.Severity = diag.WorthKnowing
		finding.Found = "cannot check the ratio of " + name + ": " + ratio.Why()
		finding.Remedies = diag.Fix("give the density that is missing, or tell both in grams")
		return finding, true
	}
	finding.Sum = lines("ratio: "+ratio.Sum(), worstCase("it", ratio))
	way := l.outside(ratio.Value())
	low, high := ratio.Worst()
	switch {
	case way != within:
		finding.Found = name + " is " + l.inItsUnit(ratio)
	case l.farOutside(low) != within || l.farOutside(high) != within:
		way = l.farOutside(low)
		if way == within {
			way = l.farOutside(high)
		}
		finding.Severity = diag.ShouldFix
		finding.Found = name + " is " + l.inItsUnit(ratio) + " as told, but can go further than its limit where every figure is at its bad end"
	default:
		return diag.Finding{}, false
	}
	if ratio.Value().Sign() <= 0 || l.edge(way).Sign() <= 0 {
		finding.Remedies = diag.Fix("take some of " + name + ", or take its ratio out of kit.yaml")
		return finding, true
	}
	factor := l.edge(way).Over(ratio.Value())
	finding.Remedies = []diag.Remedy{
		scaled(s, run, c.Vessel, l.thing, factor, way == tooLow),
		scaled(s, run, c.Vessel, base, ratio.Value().Over(l.edge(way)), way == tooHigh),
	}
	return finding, true
}

func bothAmountsKnown(c *ledger.Contents, things ...string) bool {
	for _, part := range append(c.Parts(), c.Objects()...) {
		if slices.Contains(things, part.Thing) && !part.Amount.Known() {
			return false
		}
	}
	return true
}

// inItsUnit tells a ratio in the unit that the limit is told in.
func (l limit) inItsUnit(ratio *ledger.Figure) string {
	unit := l.told.Value.Unit
	if unit.Factor.Sign() <= 0 {
		return ratio.Show()
	}
	return quantity.Show(ratio.Value(), ratio.Dimension, quantity.In(unit))
}
