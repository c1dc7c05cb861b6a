package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/label"
)

// SmallPartsStatement is that of 16 CFR 1500.19(b)(1), to the letter.
const SmallPartsStatement = "CHOKING HAZARD—Small parts. Not for children under 3 yrs."

var smallPartsForTheYoung = Rule{
	Name:     "small-parts-for-the-young",
	Severity: diag.MustFix,
	Title:    "A part that a small child can choke on, in a kit for the young",
	Explanation: `A part that goes into the cylinder of 16 CFR 1501.4, 1.25 inches wide and up to 2.25 inches
deep, in any way it is turned, is a small part. In the United States a toy for children
under three must have none, and one for those from three to under six bears a statement,
on its pack and on its leaflet (16 CFR 1500.18 and 1500.19).

Each component with a “size” is turned in the cylinder by steps of two degrees: a model of
the test, not the test, and nothing is said of parts that come off in use. Kits from six
years on, and components without a size, are not looked at. With US among “markets” and
“toy: yes” or “toy: no” under audience the statement is printed of itself where it is asked,
and this rule looks at no more than children under three.

Leave the part out, or for three to five write the statement as a caution.`,
	Check: func(s Subject) []diag.Finding {
		age := s.Kit.Audience.Age
		if !age.Given() || age.Value >= 6 {
			return nil
		}
		var findings []diag.Finding
		for _, c := range s.Kit.Components {
			if fits, ok := label.FitsSmallParts(c.Size.Value); !ok || !fits || age.Value >= 3 && (statesSmallParts(s.Kit) || isLeftToTheMarket(s.Kit)) {
				continue
			}
			finding := diag.Finding{
				Where: c.Size.Span, About: c.ID,
				Found: c.String() + " (" + c.Size.Span.Text() + ") goes into the cylinder for small parts, and the kit is for " + whole(age.Value).String() + "+",
				Also:  []diag.Place{{Where: age.Span, Note: "the age"}},
			}
			if age.Value < 3 {
				finding.Expected = "no small part in a kit for children under three (16 CFR 1501)"
				finding.Remedies = diag.Fix("leave it out, or make it too large for the cylinder", "write “age: 3+” or more, if that is for whom the kit is")
			} else {
				finding.Expected = "the statement “WARNING: " + SmallPartsStatement + "” (16 CFR 1500.19) in the booklet"
				finding.Remedies = diag.Fix("write “> WARNING: "+SmallPartsStatement+"” at the head of the method, and print it on the box", "write “age: 6+”, if that is for whom the kit is")
			}
			findings = append(findings, finding)
		}
		return findings
	},
	NotLookedAt: func(s Subject) []string {
		if age := s.Kit.Audience.Age; age.Given() && age.Value >= 6 {
			return []string{"the kit is for six years and over"}
		}
		return untoldFor("no size is told of ", s, func(c *kit.Component) bool {
			return !c.IsMaterial() && !label.HoldsMoreThanSmallParts(c) && !c.Size.Given()
		})
	},
}

// isLeftToTheMarket: it is told whether the kit is a toy, so that the requirements of the
// United States say whether the statement is asked, and it is printed.
func isLeftToTheMarket(k *kit.Kit) bool {
	return k.Audience.Toy.Given() && slices.ContainsFunc(k.Markets, func(said kit.Said[string]) bool { return said.Value == "US" })
}

// statesSmallParts says whether a caution of the method bears the statement, to the letter.
func statesSmallParts(k *kit.Kit) bool {
	for _, part := range k.Method.Parts {
		for _, step := range part.Steps {
			for _, caution := range step.Cautions {
				if strings.Contains(caution.Text, SmallPartsStatement) {
					return true
				}
			}
		}
		for _, caution := range part.Cautions {
			if strings.Contains(caution.Text, SmallPartsStatement) {
				return true
			}
		}
	}
	return false
}
