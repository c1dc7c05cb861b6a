package rules

import (
	"tallyfold/kit/diag"
	"tallyfold/kit/market"
	"tallyfold/kit/quantity"
)

var packToleranceTooWide = Rule{
	Name:     "pack-tolerance-too-wide",
	Severity: diag.ShouldFix,
	Title:    "A pack may be filled shorter than its market lets it be",
	Explanation: `The label of a bag says what is packed, without the tolerance. A buyer or an inspector weighs
it: in most markets packs have to be right on average, and none may be short by more than
its size allows (the maximum allowable variation of NIST Handbook 133, the tolerable
negative error of Directive 76/211/EEC and of the regulations that follow it).

The tolerance in kit.yaml is held against that table. The average cannot be looked at before
packing day; a pack without a tolerance is taken as exact. The lowest amount may not lie
further below the label than the table says.

Fill more closely, or pack more and claim less.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, r := range s.rulings() {
			if r.Answer != market.Asked || len(r.Requirement.Least) == 0 {
				continue
			}
			packed := r.Component.Packed
			low, _, hasLow, _ := packed.Value.Ends()
			if !hasLow {
				low = packed.Value.Nominal
			}
			most, known := r.Requirement.ShortfallOf(packed.Value.Nominal)
			show := func(n quantity.Number) string { return quantity.Show(n, packed.Value.Dimension) }
			short := packed.Value.Nominal.Minus(low)
			finding := diag.Finding{
				Where: packed.Span, About: r.Component.ID,
				Expected: "within what " + r.Pack.Name + " lets a pack be short (" + r.Requirement.Source + "; " + r.Requirement.Known + ")",
				Remedies: diag.Fix("fill it more closely, and write the smaller tolerance", "pack more than the label says"),
			}
			switch {
			case !known:
				finding.Found = "cannot check how short " + r.Component.String() + " may be: the table of " + r.Pack.Name + " does not go so far"
				finding.Remedies = diag.Fix("look the table up at its source")
			case most.Less(short):
				finding.Found = "packed as " + packed.Value.Written + ", it may be " + show(short) + " short; " + r.Pack.Name + " lets " + show(packed.Value.Nominal) + " be " + show(most) + " short"
				finding.Sum = []string{show(packed.Value.Nominal) + " − " + show(low) + " = " + show(short) + ", more than " + show(most)}
			default:
				continue
			}
			findings = append(findings, finding)
		}
		return findings
	},
	NotLookedAt: noMarket,
}
