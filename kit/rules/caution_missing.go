package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/hazard"
)

var cautionMissing = Rule{
	Name:     "caution-missing",
	Severity: diag.WorthKnowing,
	Sums:     true, // a link that is lost may have answered it
	Title:    "The booklet warns of a grave hazard in its own words, as the method does not",
	Explanation: `Lye, a flame, a pack that bears H318: what can hurt someone for good wants a caution before
the action, in the words of the person who knows the kit. Where the method has none, the
booklet prints one of the program's, in general words.

The actions of each step are held against the handbook (tallyfold hazards --known): what
kit.yaml says under “hazards” of a component, the names of tools, temperatures. Those
whose caution would be headed WARNING or DANGER are told here; all are listed by
tallyfold hazards.

Write a caution of your own before the action. Who accepts this finding about the step
leaves the wording to the program: its caution is printed all the same.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, a := range s.hazards() {
			if a.Answered() || a.Place == hazard.After || a.Hazard.Signal != kit.Danger && a.Hazard.Signal != kit.Warning {
				continue
			}
			findings = append(findings, diag.Finding{
				Where: a.Where, About: a.Step.ID,
				Found:    inStep(a.Step) + " brings " + a.Hazard.What + " (" + a.By + "), and no caution of yours stands before it; the booklet prints its own: “" + a.Hazard.Happens + "”",
				Expected: "a caution headed " + string(a.Hazard.Signal) + " in your own words, before the action",
				Remedies: diag.Fix("write “> " + string(a.Hazard.Signal) + ": …” before it: what happens, and how to avoid it"),
			})
		}
		return findings
	},
	NotLookedAt: cautionWordsUnread,
}

// cautionWordsUnread says that tools and cautions cannot be known in a language.
func cautionWordsUnread(s Subject) []string {
	if hazard.Readable(s.Kit) {
		return nil
	}
	return []string{"tools and cautions are not known by their words in the language " + s.Kit.Language.Value}
}
