package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/hazard"
)

var cautionElsewhere = Rule{
	Name:     "caution-elsewhere",
	Severity: diag.WorthKnowing,
	Title:    "The caution for what is done in a step comes in a later step",
	Explanation: `Whoever opens the dusty bag in step two and reads of the dust in step four, perhaps a page on,
has breathed it in. A caution stands before the action that it guards (ANSI Z535.6, by
topic, from memory).

Told are hazards that have the word CAUTION, where your own words on them come in a later
step; what is graver is told by caution-missing. Words in an earlier step are not told: the
booklet says them again before this one, in the program's words.

Say it in this step, or at the head of the part, before all its steps.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, a := range s.hazards() {
			if a.Place != hazard.Elsewhere || a.Hazard.Signal != kit.CautionWord || a.Caution.Span.Start < a.Where.Start {
				continue
			}
			findings = append(findings, diag.Finding{
				Where: a.Where, About: a.Step.ID,
				Found:    inStep(a.Step) + " brings " + a.Hazard.What + " (" + a.By + "), and your caution on that comes in a later step; the booklet prints its own here",
				Expected: "the caution in the step where it is needed, or at the head of the part",
				Remedies: diag.Fix("say it again before this", "move it to the head of the part"),
				Also:     []diag.Place{{Where: a.Caution.Span, Note: "your caution"}},
			})
		}
		return findings
	},
	NotLookedAt: cautionWordsUnread,
}
