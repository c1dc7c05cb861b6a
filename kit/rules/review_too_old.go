package rules

import (
	"time"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/market"
)

// reviewHolds is how many years a toxicologist's look at a recipe holds: it is repeated at
// least every five (16 CFR 1500.14(b)(8)(ii), read).
const reviewHolds = 5

var reviewTooOld = Rule{
	Name:     "review-too-old",
	Severity: diag.MustFix,
	Title:    "A toxicologist last looked at an art material more than five years ago",
	Explanation: `In the United States the recipe of an art material is looked at by a toxicologist at least
every five years, and whenever it changes (16 CFR 1500.14(b)(8)). Only then may the pack
say that it conforms to ASTM D-4236.

The day in kit.yaml is held against today. Whether the recipe changed since is not looked at.

Have it looked at again, and write the new day.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, r := range s.rulings() {
			if r.Requirement.ID != "art-review" || r.Answer != market.Asked || r.Component.Review == nil {
				continue
			}
			on := r.Component.Review.On
			day, err := time.Parse(time.DateOnly, on.Value)
			until := day.AddDate(reviewHolds, 0, 0).Format(time.DateOnly)
			if err != nil || s.Today.IsZero() || until >= s.Today.Format(time.DateOnly) {
				continue
			}
			findings = append(findings, diag.Finding{
				Where: on.Span, About: r.Component.ID,
				Found:    "a toxicologist last looked at " + r.Component.String() + " on " + on.Value,
				Expected: "a look within five years (" + r.Requirement.Source + ")",
				Sum:      []string{"it held until " + until, "judged as of " + s.Today.Format(time.DateOnly)},
				Remedies: diag.Fix("have the recipe looked at again, and write the new day under “review”"),
			})
		}
		return findings
	},
	NotLookedAt: func(s Subject) []string {
		if len(s.Kit.Markets) == 0 {
			return noMarket(s)
		}
		return untoldFor("no toxicologist's look is told of ", s, func(c *kit.Component) bool { return c.ArtMaterial.Value && c.Review == nil })
	},
}
