package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var usedBeforeMade = Rule{
	Name:     "used-before-made",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "Something is used before the step that makes it",
	Explanation: `A step pours the gel into the jars, and the gel is only mixed two steps later. Whoever
wrote it knew what was meant; whoever follows it stands before an empty pan.

The steps are followed to the letter, run by run. Told is a vessel that a step pours,
fills or lifts something from while it holds nothing yet, where a later step does put
something in; and what is warmed by name before it is in the vessel. One that no step ever fills is told by taken-from-empty, one that was
emptied before by emptied-twice.

Put the steps into the order in which they are done, or name the vessel that is meant.`,
	Check: func(s Subject) []diag.Finding { return drainedFindings(s, notYet) },
}

func tooEarly(s Subject, p past) diag.Finding {
	makes := p.filledLater[0]
	then := p.stepThen(s.Kit, makes)
	finding := diag.Finding{
		Where: amountSpan(p.operation), About: p.vessel, Cause: vesselCause(p.vessel),
		Found:    inStep(p.step) + " takes from " + p.name + ", and nothing is put into it before " + then,
		Expected: "what makes it before what uses it",
		Also:     []diag.Place{{Where: amountSpan(makes.Operation), Note: "first put in here, " + then}},
		Sum:      []string{then + " puts " + listed(p.putIn(s.Kit)) + " into " + p.name},
	}
	switch {
	case makes.Run != p.run:
		finding.Remedies = diag.Fix("let the run " + runName(s.Kit, makes.Run) + " come before the run " + runName(s.Kit, p.run) + " in kit.yaml")
	case makes.Step == p.step:
		finding.Found = inStep(p.step) + " takes from " + p.name + ", and only further on in the same step is anything put into it"
		finding.Remedies = diag.Fix("write in " + inStep(p.step) + " first what goes into " + p.name + ", then what is taken from it")
	default:
		finding.Remedies = diag.Fix("move "+inStep(makes.Step)+" (“"+makes.Step.Title+"”) before "+inStep(p.step),
			"move what "+inStep(p.step)+" takes from "+p.name+" behind "+inStep(makes.Step))
	}
	finding.Remedies = append(finding.Remedies, diag.Remedy{Do: "name the vessel that is meant with ?from=, if it is another"})
	return finding
}

// putIn tells what the first later action puts in.
func (p past) putIn(k *kit.Kit) []string {
	var things []string
	for _, e := range p.filledLater {
		if e.Amount.Known() {
			things = append(things, e.Amount.Show()+" of "+k.Called(e.Thing))
			continue
		}
		things = append(things, k.Called(e.Thing))
	}
	return things
}

// usedTooEarlyCause is the cause of what a step of the run took from the vessel while
// nothing was in it, "" where none did: that what comes in later stays there in the end
// follows from that.
func usedTooEarlyCause(s Subject, run *kit.Run, vessel string) string {
	for _, one := range drainedInOrder(s) {
		if one.how != ranOut && one.run == run && one.finding.About == vessel {
			return one.finding.Cause
		}
	}
	return ""
}
