package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
)

var noAmount = Rule{
	Name:     "no-amount",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "A step leaves an amount to the reader",
	Explanation: `A link takes something and its words do not say how much. A customer who has never made
the thing before cannot know, and no sum can be made from there on.

Write the amount into the words of the link: “[20 g of oil](take:oil)”, “[all of the
oil](take:oil)”, “[half of the oil](take:oil)”. A link without words is filled in with
the whole pack, shared over the runs.`,
	Check: func(s Subject) []diag.Finding {
		var all []perRun
		for _, snag := range s.Ledger.Snags {
			if snag.Trouble == ledger.NoAmount && !isVague(s.Kit, snag.Operation) {
				all = append(all, perRun{snag.Run, unsaid(s, snag)})
			}
		}
		return overRuns(s.Kit, all)
	},
}

func unsaid(s Subject, snag ledger.Snag) diag.Finding {
	name := s.Kit.Called(snag.Thing)
	finding := diag.Finding{
		Where: amountSpan(snag.Operation), About: snag.Thing,
		Found:    inStep(snag.Step) + " leaves the amount of " + name + " to the reader",
		Expected: "how much, in the words of the link",
		Remedies: diag.Fix("write the amount into the link: [… g of " + name + "](" + string(snag.Operation.Kind) + ":" + snag.Operation.Target + ")"),
	}
	if snag.Operation.Phrase.Portion != kit.NoPortion {
		finding.Found = inStep(snag.Step) + ": " + snag.Why
		finding.Expected = "an amount that can be measured"
		return finding
	}
	if snag.Had.Known() && snag.Had.Value().Sign() > 0 {
		finding.Remedies = append(finding.Remedies, diag.Remedy{
			Do:   "write [all of the " + name + "](" + string(snag.Operation.Kind) + ":" + snag.Operation.Target + "), if that is meant",
			Then: "the pack still holds " + snag.Had.Show(),
		})
	}
	return finding
}
