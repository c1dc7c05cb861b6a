package rules

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var hardToCount = Rule{
	Name:     "hard-to-count",
	Severity: diag.ShouldFix,
	Title:    "A packed amount cannot be counted, weighed or cut off when the box is packed",
	Explanation: `Whoever packs the box needs an amount that can be measured there and checked afterwards.
An area of cloth can have any shape, and no ruler shows it: “30 × 20 cm” can be cut, 600
cm² cannot.

What is packed by the spoon or cup, or by a measure of the kit's own, is worth knowing: a
spoon of powder varies by a tenth and more (common practice, no source), and a scale
shows it better. That a packed amount has no “about” in it is seen to when kit.yaml is
read.

Write cloth with its sides, and a powder by weight, with how far it may be off.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, c := range s.Kit.Components {
			cut := slices.ContainsFunc(s.Ledger.Cuttings, func(one *ledger.Cutting) bool { return one.Component == c })
			if c.Packed.Given() && !cut { // what is cut is told by pieces-do-not-fit
				findings = append(findings, uncountable(c)...)
			}
		}
		return findings
	},
}

func uncountable(c *kit.Component) []diag.Finding {
	packed := c.Packed.Value
	if c.Lots.Told() {
		packed = c.Lots.Each
	}
	finding := diag.Finding{Where: c.Packed.Span, About: c.ID, Found: c.String() + " is packed as “" + c.Packed.Value.Written + "”"}
	switch {
	case packed.Dimension == quantity.Area && packed.Across.IsZero():
		finding.Expected = "the two sides, so that it can be cut and checked"
		finding.Remedies = diag.Fix("write both sides, such as “packed: 2 sheets of 30 × 20 cm”")
	case packed.Household:
		finding.Severity = diag.WorthKnowing
		finding.Expected = "a weight or a volume that a scale or a measuring jug shows"
		finding.Remedies = diag.Fix("weigh what that comes to and write it, such as “packed: 30 g ± 1 g”; the steps may go on with spoons")
	default:
		return nil
	}
	return []diag.Finding{finding}
}
