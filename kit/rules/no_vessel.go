package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
)

var noVessel = Rule{
	Name:     "no-vessel",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "A step does not say from or into which vessel",
	Explanation: `A step pours or fills, and neither its heading nor the link says from where or into what.
The reader has to guess, and the sums of everything that follows are lost.

Name the vessel of the step in its heading, “(step:pour?in=pan)”, or in the link with
“?from=” or “?into=”.`,
	Check: func(s Subject) []diag.Finding {
		var all []perRun
		for _, snag := range s.Ledger.Snags {
			if snag.Trouble == ledger.NoVessel {
				all = append(all, perRun{snag.Run, unsaidVessel(s, snag)})
			}
		}
		return overRuns(s.Kit, all)
	},
}

func unsaidVessel(s Subject, snag ledger.Snag) diag.Finding {
	o := snag.Operation
	return diag.Finding{
		Where: amountSpan(o), About: snag.Thing, Cause: noVesselCause(s.Ledger, snag.Run),
		Found:    inStep(snag.Step) + ": " + snag.Why + " (" + s.Kit.Called(snag.Thing) + ")",
		Expected: "a vessel that it comes from and one that it goes into, not the same",
		Remedies: diag.Fix(
			"name the vessel in the heading of "+inStep(snag.Step)+", as in (step:"+snag.Step.ID+"?in=pan)",
			"name it in the link, as in ("+string(o.Kind)+":"+o.Target+"?from=pan) or ?into=pan"),
	}
}

// noVesselCause groups what a run brings about in which some step does not say its
// vessel; empty for any other run.
func noVesselCause(l *ledger.Ledger, run *kit.Run) string {
	for _, snag := range l.Snags {
		if snag.Trouble == ledger.NoVessel && snag.Run == run {
			return "no vessel in " + snag.Step.ID
		}
	}
	return ""
}
