package rules

import (
	"strings"

	"tallyfold/kit/diag"
	"tallyfold/kit/handbook"
	"tallyfold/kit/market"
)

var marketWithoutPack = Rule{
	Name:     "market-without-pack",
	Severity: diag.ShouldFix,
	Title:    "A market that there are no requirements for",
	Explanation: `The program has the requirements of a few markets, each in a file that names its sources. Of
any other market nothing is looked at: neither what a label has to say nor in which words.

Ask somebody who knows that market, and accept the finding with a word on who looked.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, said := range market.Unpacked(s.Kit) {
			findings = append(findings, diag.Finding{
				Where: said.Span, About: "markets",
				Found:    "cannot check what " + said.Value + " asks of labels and leaflets: there are no requirements for it here",
				Expected: "one of " + listed(packed()) + ", or somebody's look at the law of " + said.Value,
				Remedies: diag.Fix("ask somebody who knows that market, and accept the finding with who looked and until when", "take it out, if the kit is not sold there"),
			})
		}
		return findings
	},
	NotLookedAt: func(s Subject) []string {
		if len(s.Kit.Markets) == 0 {
			return []string{"no market is told, so no law of labels was looked at"}
		}
		return nil
	},
}

// packed are the markets that there are requirements for.
func packed() []string {
	var names []string
	for _, pack := range handbook.Packs() {
		names = append(names, strings.TrimSpace(pack.Market))
	}
	return names
}
