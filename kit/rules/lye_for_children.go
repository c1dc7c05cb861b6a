package rules

import (
	"tallyfold/kit/diag"
	"tallyfold/kit/handbook"
)

// lyeAge is the age below which no kit with lye is made up (common practice, no source).
const lyeAge = 18

var lyeForChildren = Rule{
	Name:     "lye-for-children",
	Severity: diag.MustFix,
	Title:    "A kit with lye is not for adults alone",
	Explanation: `Lye burns skin and eyes deeply before it hurts. Soap is made with it by adults who wear
goggles; a child's kit melts soap that somebody else has made.

A component with “hazards: lye” or “hazards: H314” that is taken in a step asks for 18 and
over on the box (common practice, no source; what the law asks of such a kit is not
looked at).

Say “age: 18+”, or take the lye out: melt-and-pour soap needs none.`,
	Check: func(s Subject) []diag.Finding {
		for _, a := range s.hazards() {
			if a.Hazard.ID != handbook.Lye && a.Hazard.ID != "H314" || a.Component == nil {
				continue
			}
			age := s.Kit.Audience.Age
			if age.Given() && age.Value >= lyeAge {
				return nil
			}
			finding := diag.Finding{
				Where: a.Where, About: a.Component.ID,
				Found:    inStep(a.Step) + " takes " + a.Component.String() + ", which burns skin and eyes (" + a.Hazard.ID + "), and no age is told",
				Expected: "“age: 18+”, or no such thing in the box",
				Remedies: diag.Fix("write “age: 18+” under audience in kit.yaml", "take it out of the box"),
			}
			if age.Given() {
				finding.Where = age.Span
				finding.Found = "the kit is for " + whole(age.Value).String() + "+, and " + inStep(a.Step) + " takes " + a.Component.String() + ", which burns skin and eyes (" + a.Hazard.ID + ")"
				finding.Also = []diag.Place{{Where: a.Where, Note: "where it is taken"}}
			}
			return []diag.Finding{finding}
		}
		return nil
	},
}
