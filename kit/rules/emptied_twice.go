package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var emptiedTwice = Rule{
	Name:     "emptied-twice",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "A vessel is emptied a second time and nothing was put in between",
	Explanation: `“Pour all of it into the pan”, and a step further “scrape the rest into the jar”: there is
no rest. One of the two is left over from an earlier version of the method, or the first
should have said how much.

A vessel is emptied by pouring all or the rest of it, by sharing it out over containers,
by saying what is done with what is left, and by cleaning. What clings to it does not
count as something in it. Cleaning a vessel that is empty, or throwing away what may be
left, is no finding. “Keep what is left” of nothing should be fixed; pouring or filling
from nothing must.

Say the first time how much is poured, put something in between, or take the second out.`,
	Check: func(s Subject) []diag.Finding { return drainedFindings(s, onceMore) },
}

func emptiedAgain(s Subject, p past) diag.Finding {
	first := p.stepThen(s.Kit, *p.emptied)
	finding := diag.Finding{
		Where: amountSpan(p.operation), About: p.vessel, Cause: vesselCause(p.vessel),
		Found:    inStep(p.step) + " takes from " + p.name + ", which was emptied in " + first + ", and nothing was put in since",
		Expected: "something put into " + p.name + " between the two",
		Sum:      []string{"last filled in " + p.stepThen(s.Kit, *p.filled) + ", emptied in " + first + ", wanted again in " + inStep(p.step)},
		Also:     []diag.Place{{Where: amountSpan(p.emptied.Operation), Note: "emptied here, " + first}},
		Remedies: p.sayHowMuch(),
	}
	if len(p.filledLater) > 0 && p.filledLater[0].Run == p.run {
		later := p.filledLater[0]
		finding.Also = append(finding.Also, diag.Place{Where: amountSpan(later.Operation), Note: "filled again only here, " + inStep(later.Step)})
		if later.Step != p.step {
			finding.Remedies = append(diag.Fix("move "+inStep(later.Step)+" (“"+later.Step.Title+"”), which fills it again, before "+inStep(p.step)), finding.Remedies...)
		}
	}
	return finding
}

func (p past) sayHowMuch() []diag.Remedy {
	o, some := p.emptied.Operation, "half of it"
	if o.Kind == kit.Fill {
		some = "each to 100 g"
	}
	first := "say the first time how much is poured, such as [" + some + "](" + string(o.Kind) + ":" + o.Target + "), so that something is left"
	if o.Kind == kit.Clean || o.Kind == kit.Left {
		first = "move “" + o.Text + "” behind what " + inStep(p.step) + " takes"
	}
	return diag.Fix(first,
		"put something into "+p.name+" before, or name the vessel that is meant with ?from=",
		"take it out of "+inStep(p.step)+", if nothing is meant")
}
