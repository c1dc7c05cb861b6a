package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/kit/schedule"
)

var usedTooLate = Rule{
	Name:     "used-too-late",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "The steps take longer than something stays workable",
	Explanation: `Plaster stiffens, a hardener sets the resin in its cup, a sourdough wash goes over. The time
under “use within” in kit.yaml starts when the component is first taken in a run. It is
held against the work and the waits that the steps tell, up to the last pour of what it
is in and the work of that pour.

Where a step in between tells no time, the steps take at least as long as is told; if
that alone is not too long, it is told as something that cannot be checked.

Mix less at a time, pour sooner, or put what can be done before in front of it.`,
	Check: func(s Subject) []diag.Finding {
		var all []perRun
		for _, c := range s.Kit.Components {
			if !c.UseWithin.Given() {
				continue
			}
			for _, run := range s.Kit.Passes() {
				if finding, ok := tooLate(s, c, run); ok {
					all = append(all, perRun{run, finding})
				}
			}
		}
		return overRuns(s.Kit, all)
	},
}

func tooLate(s Subject, c *kit.Component, run *kit.Run) (diag.Finding, bool) {
	first, last := workedBetween(s.Ledger, c, run)
	if first == nil || last == nil {
		return diag.Finding{}, false
	}
	took, untimed := schedule.Between(s.Kit, run, first.Operation, last.Operation)
	within := c.UseWithin.Value
	_, longest := took.Worst()
	finding := diag.Finding{
		Where: amountSpan(first.Operation), About: c.ID,
		Expected: "poured within " + within.Written + ", which “use within” gives it",
		Sum:      lines("from " + inStep(first.Step) + " to the last pour in " + inStep(last.Step) + ": " + took.Sum()),
		Also: []diag.Place{
			{Where: c.UseWithin.Span, Note: "it stays workable for " + within.Written},
			{Where: amountSpan(last.Operation), Note: "poured last, " + inStep(last.Step)},
		},
	}
	switch {
	case within.Nominal.Less(longest):
		finding.Found = c.String() + " is poured last " + show(longest, quantity.Duration) + " after it is taken"
		finding.Sum = append(finding.Sum, show(longest, quantity.Duration)+" − "+within.Written+" = "+show(longest.Minus(within.Nominal), quantity.Duration)+" too late")
		finding.Remedies = diag.Fix("mix less at a time, and go through these steps more than once", "move what can be done before in front of "+inStep(first.Step))
	case len(untimed) > 0:
		finding.Severity = diag.WorthKnowing
		finding.Found = "cannot check whether " + c.String() + " is poured in time: " + inStep(untimed[0]) + " tells no time"
		finding.Remedies = diag.Fix("write into it about how long it takes: [5 minutes](work:)")
	default:
		return diag.Finding{}, false
	}
	return finding, true
}

// workedBetween are the entries of a run that first take a component and last pour it.
func workedBetween(l *ledger.Ledger, c *kit.Component, run *kit.Run) (first, last *ledger.Entry) {
	for i, e := range l.Entries {
		if e.Run != run || e.Thing != c.ID {
			continue
		}
		switch e.Move {
		case ledger.Taken:
			if first == nil {
				first = &l.Entries[i]
			}
		case ledger.Moved, ledger.Filled:
			last = &l.Entries[i]
		}
	}
	return first, last
}
