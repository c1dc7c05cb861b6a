package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var takenFromEmpty = Rule{
	Name:     "taken-from-empty",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "A step takes more from a pack or vessel than is there",
	Explanation: `The steps are followed to the letter. Where one takes from a pack that an earlier step
has used up, pours from a vessel that no step ever fills, or fills more than the vessel
holds, the customer is stuck. A vessel that a later step does fill is told by
used-before-made, one that an earlier step has emptied by emptied-twice.

A shortfall of less than one in two hundred is rounding and no finding. Where the
last container comes out short only because of what stays behind in the vessel, the
finding should be fixed.

Take less, make more, or put the steps into another order.`,
	Check: func(s Subject) []diag.Finding { return drainedFindings(s, ranOut) },
}

// rounding is the part of an amount that nobody misses (common practice, no source).
var rounding = quantity.Ratio(1, 200)

func isRounding(snag ledger.Snag) bool {
	missing := snag.Wanted.Value().Minus(snag.Had.Value())
	return missing.Cmp(snag.Wanted.Value().Times(rounding)) <= 0
}

// isEmptyPack: it is the pack of a component that has run empty, no vessel.
func isEmptyPack(s Subject, snag ledger.Snag) bool {
	return s.Kit.Component(snag.Thing) != nil && snag.Why == "" && s.Ledger.Balance(snag.Thing) != nil && snag.Had != nil
}

func emptyAt(s Subject, snag ledger.Snag) diag.Finding {
	name := s.Kit.Called(snag.Thing)
	finding := diag.Finding{
		Where: amountSpan(snag.Operation), About: snag.Thing, Cause: vesselCause(snag.Thing),
		Found:    name + " holds nothing when " + inStep(snag.Step) + " takes from it",
		Expected: "something in " + name + " by then",
		Remedies: diag.Fix(
			"put something into it in an earlier step, or say the vessel that is meant with ?from=",
			"change the order of the steps"),
	}
	if snag.Why != "" {
		finding.Found = inStep(snag.Step) + " takes " + name + ", and " + snag.Why
	}
	if before := lastOutOf(s.Ledger, snag); before != nil {
		finding.Sum = []string{"the last of it went out in " + inStep(before.Step)}
		finding.Also = []diag.Place{{Where: amountSpan(before.Operation), Note: "poured out here, " + inStep(before.Step)}}
	}
	return finding
}

func emptyPack(s Subject, snag ledger.Snag) diag.Finding {
	c, b := s.Kit.Component(snag.Thing), s.Ledger.Balance(snag.Thing)
	var before []ledger.Entry
	var taken []*ledger.Figure
	for _, use := range b.Uses {
		if use.Run == snag.Run && use.Operation == snag.Operation {
			break
		}
		before = append(before, use)
		taken = append(taken, use.Amount)
	}
	used := ledger.Plus(b.Dimension, c.String()+" taken before", taken...)
	return diag.Finding{
		Where: amountSpan(snag.Operation), About: c.ID, Cause: packCause(c.ID), Follows: true,
		Found:    "the pack of " + c.String() + " is empty when " + inStep(snag.Step) + " takes from it",
		Expected: "something left in the pack by then",
		Sum:      lines(used.Sum(), ledger.Minus("left", b.Packed, used).Sum()),
		Remedies: diag.Fix(
			"take less before: write an amount, such as “half of the pack”, instead of all of it",
			"pack more than "+up(used.Value(), c.Packed.Value)+" of "+c.String()),
		Also: places(s.Kit, before),
	}
}

// lastOutOf is the last entry of the run that took from the vessel before the snag.
func lastOutOf(l *ledger.Ledger, snag ledger.Snag) *ledger.Entry {
	var last *ledger.Entry
	for i, e := range l.Entries {
		if e.Run == snag.Run && e.From == snag.Thing && e.Step.Number <= snag.Step.Number && e.Operation != snag.Operation {
			last = &l.Entries[i]
		}
	}
	return last
}

func shortAt(s Subject, snag ledger.Snag) diag.Finding {
	name := s.Kit.Called(snag.Thing)
	dimension := snag.Wanted.Dimension
	missing := snag.Wanted.Value().Minus(snag.Had.Value())
	finding := diag.Finding{
		Where: amountSpan(snag.Operation), About: snag.Thing, Cause: vesselCause(snag.Thing),
		Found:    inStep(snag.Step) + " wants " + snag.Wanted.Show() + ", and " + name + " holds " + snag.Had.Show(),
		Expected: "at most " + snag.Had.Show(),
		Sum: lines("wanted: "+snag.Wanted.Sum(), "there: "+snag.Had.Sum(),
			snag.Wanted.Show()+" − "+snag.Had.Show()+" = "+show(missing, dimension)+" too little"),
	}
	if fewer := takeLessFrom(snag); fewer != "" {
		finding.Remedies = append(finding.Remedies, diag.Remedy{Do: fewer})
	}
	finding.Remedies = append(finding.Remedies, diag.Remedy{
		Do: "make at least " + show(rounded(missing, step(missing, dimension), true), dimension) + " more in " + name})
	if short := shortPackIn(s, snag); short != "" {
		finding.Cause, finding.Follows = packCause(short), true
	}
	return finding
}

// takeLessFrom is the amount in the link that would just do.
func takeLessFrom(snag ledger.Snag) string {
	told, ok := snag.Operation.Phrase.Amount()
	if !ok || snag.Wanted.Value().Sign() <= 0 {
		return ""
	}
	fits := told.Nominal.Times(snag.Had.Value()).Over(snag.Wanted.Value())
	if snag.Operation.Kind == kit.Fill {
		return "fill each to " + down(fits, told) + " instead of " + told.Written
	}
	return "take " + down(fits, told) + " instead of " + told.Written
}

// shortPackIn is a component of the vessel's mixture whose pack had run empty
// before in the run, or "".
func shortPackIn(s Subject, snag ledger.Snag) string {
	making := lastMakingUpTo(s.Ledger, snag.Run, snag.Thing, snag.Step)
	if making == nil {
		return ""
	}
	for _, part := range making.Parts() {
		b := s.Ledger.Balance(part.Thing)
		for _, other := range s.Ledger.Snags {
			if other.Trouble == ledger.Empty && other.Run == snag.Run && other.Thing == part.Thing && b != nil && b.Packed != nil {
				return part.Thing
			}
		}
	}
	return ""
}

// followChain marks what comes after the first finding on a vessel in a run: once
// it is short, everything later from it is short too.
func followChain(all []perRun) []perRun {
	type chain struct {
		run   any
		cause string
	}
	seen := map[chain]bool{}
	for i := range all {
		at := chain{all[i].run, all[i].finding.Cause}
		all[i].finding.Follows = all[i].finding.Follows || seen[at]
		seen[at] = true
	}
	return all
}
