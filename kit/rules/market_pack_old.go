package rules

import (
	"time"

	"tallyfold/kit/diag"
	"tallyfold/kit/handbook"
)

var marketPackOld = Rule{
	Name:     "market-pack-old",
	Severity: diag.ShouldFix,
	Title:    "The requirements of a market were last looked at more than a year ago",
	Explanation: `Law changes: thresholds move, words are added, an act takes the place of another. The
requirements of each market say when somebody last went through them. After a year they
are still held against the kit, and this says that they may be out of date.

Take a newer tallyfold, or look the sources up (tallyfold markets --known names them) and
accept the finding with who looked and until when.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, said := range s.Kit.Markets {
			pack, known := handbook.PackFor(said.Value)
			if !known || s.Today.IsZero() || !pack.Old(s.Today) {
				continue
			}
			findings = append(findings, diag.Finding{
				Where: said.Span, About: "markets",
				Found:    "the requirements of " + pack.Name + " were last looked at on " + pack.LookedAt.Format(time.DateOnly),
				Expected: "requirements looked at within the last year",
				Sum:      []string{"judged as of " + s.Today.Format(time.DateOnly)},
				Remedies: diag.Fix("take a newer tallyfold", "look the sources up (tallyfold markets --known), and accept the finding with who looked and until when"),
			})
		}
		return findings
	},
	NotLookedAt: noMarket,
}
