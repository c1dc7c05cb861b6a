package rules

import (
	"slices"

	"tallyfold/kit/diag"
	"tallyfold/kit/handbook"
)

var firstAidMissing = Rule{
	Name:     "first-aid-missing",
	Severity: diag.ShouldFix,
	Title:    "A component can hurt for good, and its first aid is not told",
	Explanation: `Section 4 of a safety data sheet says what to do when some of it gets into an eye, onto skin
or into a mouth. At home nobody has the sheet; the booklet is what lies on the table.

Components that bear H302, H304, H314, H318 or H319, or are lye, want a line “first aid” in
kit.yaml, from the supplier's sheet. It is printed on the page before the first step.
Whether it is right is not looked at.

Copy the line from section 4 of the sheet.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, c := range s.Kit.Components {
			if c.FirstAid.Given() {
				continue
			}
			for _, said := range c.Hazards {
				known, isKnown := handbook.Find(said.Value)
				if !isKnown || !slices.Contains(wantsFirstAid, said.Value) {
					continue
				}
				findings = append(findings, diag.Finding{
					Where: said.Span, About: c.ID,
					Found:    c.String() + " is " + known.What + ": “" + known.Happens + "”; what to do then is not told",
					Expected: "a line “first aid:” under it, from section 4 of the supplier's safety data sheet",
					Remedies: diag.Fix("write “first aid: …” under “" + c.ID + "”"),
				})
				break
			}
		}
		return findings
	},
	NotLookedAt: func(s Subject) []string {
		if len(s.hazards()) == 0 {
			return []string{"no component says under “hazards” what its pack bears"}
		}
		return nil
	},
}

// wantsFirstAid are hazards that call for help at once.
var wantsFirstAid = []string{"H302", "H304", "H314", "H318", "H319", handbook.Lye}
