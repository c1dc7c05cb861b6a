package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var lastContainerShort = Rule{
	Name:     "last-container-short",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "What clings to the vessel is missing in the last container",
	Explanation: `Three jars of 200 g cannot be filled from a jug that holds 600 g and keeps 8 g for itself:
the last one gets 192 g. After every fill told as an amount, what is left in the vessel
is held against its residue.

Where the last container lacks more than a twentieth of its fill it must be fixed, from
a fiftieth on it should be. Less than that nobody sees.

Make a little more, or fill a little less into each.`,
	Check: func(s Subject) []diag.Finding {
		var all []perRun
		for _, snag := range s.Ledger.Snags {
			if snag.Trouble != ledger.Clings {
				continue
			}
			if finding, ok := shortByResidue(s, snag); ok {
				all = append(all, perRun{snag.Run, finding})
			}
		}
		return overRuns(s.Kit, all)
	},
}

func shortByResidue(s Subject, snag ledger.Snag) (diag.Finding, bool) {
	filling := filledBy(s.Ledger, snag)
	if filling == nil || alreadyShort(s.Ledger, snag) {
		return diag.Finding{}, false
	}
	dimension := snag.Wanted.Dimension
	each := contentsIn(&filling.Contents, dimension)
	short := snag.Wanted.Value().Minus(snag.Had.Value())
	if !each.Known() || short.Cmp(each.Value().Times(quantity.Ratio(1, 50))) <= 0 {
		return diag.Finding{}, false // what is not known is told by no-density
	}
	vessel, container := snag.Why, filling.Container.String()
	finding := diag.Finding{
		Where: amountSpan(snag.Operation), About: snag.Thing,
		Found: "the last " + container + " gets " + show(each.Value().Minus(short), dimension) + " instead of " + each.Show() +
			": " + show(short, dimension) + " stays in " + vessel,
		Expected: "what clings to " + vessel + " left in it after the last fill",
		Sum: lines("left in "+vessel+" after "+inStep(snag.Step)+": "+snag.Had.Show(), "clings to it: "+snag.Wanted.Show(),
			snag.Wanted.Show()+" − "+snag.Had.Show()+" = "+show(short, dimension)+" missing", worstCase("what clings to it", snag.Wanted)),
		Remedies: enoughForAll(s.Kit, snag, filling, each, short),
	}
	if snag.Wanted.Where.Known() {
		finding.Also = []diag.Place{{Where: snag.Wanted.Where, Note: "clings to " + vessel}}
	}
	if short.Cmp(each.Value().Times(quantity.Ratio(1, 20))) <= 0 {
		finding.Severity = diag.ShouldFix
	}
	return finding, true
}

// enoughForAll offers a little less in each, or a little more in the vessel.
func enoughForAll(k *kit.Kit, snag ledger.Snag, filling *ledger.Filling, each *ledger.Figure, short quantity.Number) []diag.Remedy {
	remedies := []diag.Remedy{{Do: "make at least " + show(rounded(short, step(short, each.Dimension), true), each.Dimension) + " more"}}
	told, ok := snag.Operation.Phrase.Amount()
	if !ok || told.Nominal.Sign() <= 0 || each.Value().Sign() <= 0 {
		return remedies
	}
	part := each.Value().Minus(short.Over(whole(filling.Count))).Over(each.Value())
	less := told.Nominal.Times(part)
	return append([]diag.Remedy{{
		Do:      "fill each to " + down(less, told) + " instead of " + told.Written,
		Changes: retell(k, snag.Operation, less, false),
	}}, remedies...)
}

// filledBy is the group of containers that the snag's link filled.
func filledBy(l *ledger.Ledger, snag ledger.Snag) *ledger.Filling {
	for _, f := range l.Fillings {
		if f.Run == snag.Run && f.Operation == snag.Operation {
			return f
		}
	}
	return nil
}

// alreadyShort: there was less in the vessel than the fill takes; taken-from-empty tells it.
func alreadyShort(l *ledger.Ledger, snag ledger.Snag) bool {
	for _, other := range l.Snags {
		if other.Run == snag.Run && other.Operation == snag.Operation && (other.Trouble == ledger.Short || other.Trouble == ledger.Empty) {
			return true
		}
	}
	return false
}
