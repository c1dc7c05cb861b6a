package rules

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/hazard"
)

var signalTooWeak = Rule{
	Name:     "signal-too-weak",
	Severity: diag.ShouldFix,
	Title:    "A caution is headed by a weaker word than its hazard has",
	Explanation: `DANGER, WARNING, CAUTION and NOTICE are no decoration: DANGER will kill or maim if not
avoided, WARNING could, CAUTION could hurt lightly, NOTICE is about things (ANSI Z535.6,
ISO 3864-2). A pack that bears H314 has the signal word Danger (UN GHS); a method that
tells it under CAUTION makes little of it.

Each hazard of a step is held against the caution that speaks of it, before it in the step
or at the head of the part. A stronger word than needed is not told: one caution may speak
of several things.

Head the caution with the word of its gravest hazard.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, a := range hazard.In(s.Kit, s.Ledger) {
			if !a.Answered() || !weaker(a.Caution.Signal, a.Hazard.Signal) {
				continue
			}
			findings = append(findings, diag.Finding{
				Where: a.Caution.Span, About: a.Step.ID,
				Found:    "a caution headed " + string(a.Caution.Signal) + " speaks of " + a.Hazard.What + " (" + a.By + ", " + inStep(a.Step) + ")",
				Expected: "the word " + string(a.Hazard.Signal) + ", by " + hazardSource(a),
				Remedies: diag.Fix("head it with " + string(a.Hazard.Signal)),
				Also:     []diag.Place{{Where: a.Where, Note: "what it warns of"}},
			})
		}
		return findings
	},
	NotLookedAt: cautionWordsUnread,
}

// weights are the signal words, the gravest first.
var weights = []kit.Signal{kit.Danger, kit.Warning, kit.CautionWord, kit.Notice}

func weaker(one, than kit.Signal) bool {
	return slices.Index(weights, one) > slices.Index(weights, than)
}

func hazardSource(a hazard.Action) string {
	if a.Hazard.Source == "" {
		return "the program's table (" + a.Hazard.Known + ")"
	}
	return a.Hazard.Source
}
