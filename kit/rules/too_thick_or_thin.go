package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var tooThickOrThin = Rule{
	Name:     "too-thick-or-thin",
	Severity: diag.ShouldFix,
	Title:    "What is filled in does not come out of the container",
	Explanation: `A balm in a squeeze bottle stays there; a thin oil in an open jar runs over fingers and
furniture; a pump draws nothing that holds a peak.

Where kit.yaml says how a mixture flows (“flows: thin”, creamy, thick or set) and what the
container opens with (“opening: pump”, jar, bottle, squeeze or spray), the two are held
against each other. What goes with what is common practice, no source; only clear
mismatches are told.

Use another container, or make the mixture thicker or thinner.`,
	Check: func(s Subject) []diag.Finding {
		var all []perRun
		for _, f := range s.Ledger.Fillings {
			if f.Mixture == nil || !f.Mixture.Flows.Given() || !f.Container.Container.Opening.Given() {
				continue
			}
			flow, opening := f.Mixture.Flows, f.Container.Container.Opening
			why := mismatches[opening.Value][flow.Value]
			if why == "" {
				continue
			}
			all = append(all, perRun{f.Run, diag.Finding{
				Where: amountSpan(f.Operation), About: f.Container.ID,
				Found:    f.Mixture.String() + " is " + flow.Span.Text() + ", and " + f.Container.String() + " opens with a " + opening.Span.Text() + ": " + why,
				Expected: "a container that it comes out of",
				Remedies: diag.Fix("use "+better[flow.Value], "make it thicker or thinner, and say so under mixtures"),
				Also: []diag.Place{
					{Where: flow.Span, Note: "flows: " + flow.Span.Text()},
					{Where: opening.Span, Note: "opening: " + opening.Span.Text()},
				},
			}})
		}
		return overRuns(s.Kit, all)
	},
	NotLookedAt: func(s Subject) []string {
		for _, f := range s.Ledger.Fillings {
			if f.Mixture != nil && f.Mixture.Flows.Given() && f.Container.Container.Opening.Given() {
				return nil
			}
		}
		return []string{"no mixture that tells how it flows is filled into a container that tells how it opens"}
	},
}

// mismatches say why something that flows so does not come out of such an opening;
// what is not there goes together (common practice, no source).
var mismatches = map[kit.Opening]map[kit.Flow]string{
	kit.OpenJar: {kit.Thin: "too thin for a jar, it runs out and off the fingers"},
	kit.Bottle:  {kit.Thick: "too thick to pour", kit.Solid: "what has set does not pour"},
	kit.Pump:    {kit.Thick: "too thick for a pump to draw", kit.Solid: "a pump draws nothing that has set"},
	kit.Squeeze: {kit.Thick: "too thick to be pressed out", kit.Solid: "what has set cannot be pressed out"},
	kit.Spray:   {kit.Creamy: "too thick for a spray head", kit.Thick: "too thick for a spray head", kit.Solid: "what has set cannot be sprayed"},
}

// better are the containers that go with each.
var better = map[kit.Flow]string{
	kit.Thin:   "a bottle, a pump or a spray",
	kit.Creamy: "a bottle, a pump, a squeeze bottle or a jar",
	kit.Thick:  "a jar",
	kit.Solid:  "a jar",
}
