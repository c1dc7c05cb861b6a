package rules

import (
	"slices"

	"tallyfold/kit/diag"
	"tallyfold/kit/market"
)

var marketFactMissing = Rule{
	Name:     "market-fact-missing",
	Severity: diag.ShouldFix,
	Title:    "A market asks for something on a label that kit.yaml does not tell",
	Explanation: `Who made it and where, who answers for it, how long it keeps, what is in it: a label has to
tell some of this in most markets, and the program can only print what it is told.

Only that a fact is there is looked at, not whether it is true. An address in the United
States is looked at for a state and a ZIP code.

Write the line that is missing, or take the market out.`,
	Check: func(s Subject) []diag.Finding {
		var all []*missingFact
		for _, r := range s.rulings() {
			for _, missing := range r.Missing {
				at := slices.IndexFunc(all, func(m *missingFact) bool { return m.Found == missing.Found })
				if at < 0 {
					all = append(all, &missingFact{Missing: missing})
					at = len(all) - 1
				}
				if line := askedBy(r); !slices.Contains(all[at].asks, line) {
					all[at].asks = append(all[at].asks, line)
				}
			}
		}
		var findings []diag.Finding
		for _, m := range all {
			finding := diag.Finding{
				Where: s.Kit.Markets[0].Span, About: "labels",
				Found: m.Found, Expected: "what has to be told where the kit is sold",
				Sum: m.asks, Remedies: diag.Fix(m.Write),
			}
			if m.Of != nil {
				finding.Where, finding.About = m.Of.IDSpan, m.Of.ID
			}
			findings = append(findings, finding)
		}
		return findings
	},
	NotLookedAt: noMarket,
}

// A missingFact is one with all that ask for it.
type missingFact struct {
	market.Missing
	asks []string
}
