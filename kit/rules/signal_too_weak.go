package rules

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/handbook"
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
or at the head of the part. The “signal word” of a component is held against its H-statements,
and where it is graver the caution has to be as well.

Head the caution with the word of its gravest hazard.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, a := range s.hazards() {
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
		return append(findings, weakSuppliers(s.Kit)...)
	},
	NotLookedAt: cautionWordsUnread,
}

// weakSuppliers are packs whose signal word, as kit.yaml has it, is weaker than that of their
// H-statements.
func weakSuppliers(k *kit.Kit) []diag.Finding {
	var findings []diag.Finding
	for _, c := range k.Components {
		for _, said := range c.Hazards {
			h, known := handbook.Find(said.Value)
			if !known || !h.IsStatement() || !c.SignalWord.Given() || !weaker(c.SignalWord.Value, h.Signal) {
				continue
			}
			findings = append(findings, diag.Finding{
				Where: c.SignalWord.Span, About: c.ID,
				Found:    "the signal word of " + c.String() + " is " + string(c.SignalWord.Value) + ", and " + h.ID + " (“" + h.Happens + "”) has " + string(h.Signal),
				Expected: "the word " + string(h.Signal) + ", by " + h.Source,
				Remedies: diag.Fix("look at the pack again, and write the word that it bears"),
				Also:     []diag.Place{{Where: said.Span, Note: h.ID}},
			})
			break
		}
	}
	return findings
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
