package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var warnedMaterialForChildren = Rule{
	Name:     "warned-material-for-children",
	Severity: diag.MustFix,
	Title:    "A material that is not for children, in a kit for them",
	Explanation: `An art material that a toxicologist warns of bears the statement that it is not for children
(16 CFR 1500.14(b)(8)); in the United States schools may not buy it for pupils up to the
sixth grade (15 U.S.C. 1277(d), from memory). In a box that is made for children it
contradicts the box.

What has a “review” that “warns” is held against “for children”, and where that is not told
against an age of twelve or less.

Take a material that nothing is warned of, or make the kit for grown-ups.`,
	Check: func(s Subject) []diag.Finding {
		audience := s.Kit.Audience
		young := audience.Age.Given() && audience.Age.Value <= 12
		if audience.ForChildren.Given() {
			young = audience.ForChildren.Value
		}
		if !young {
			return nil
		}
		where := diag.Place{Where: audience.Age.Span, Note: "the age"}
		if audience.ForChildren.Given() {
			where = diag.Place{Where: audience.ForChildren.Span, Note: "for whom it is made"}
		}
		var findings []diag.Finding
		for _, c := range s.Kit.Components {
			if c.Review == nil || c.Review.Warns.Value == "" {
				continue
			}
			findings = append(findings, diag.Finding{
				Where: c.Review.Warns.Span, About: c.ID, Also: []diag.Place{where},
				Found:    c.String() + " has a warning of harm by long use, and the kit is for children",
				Expected: "no such material in a kit for children of twelve and younger",
				Remedies: diag.Fix("take a material that nothing is warned of", "if the kit is not made for children, write “for children: no” and the age"),
			})
		}
		return findings
	},
	NotLookedAt: func(s Subject) []string {
		return untoldFor("no toxicologist's look is told of ", s, func(c *kit.Component) bool { return c.ArtMaterial.Value && c.Review == nil })
	},
}
