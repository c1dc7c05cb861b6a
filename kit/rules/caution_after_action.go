package rules

import (
	"strings"

	"tallyfold/kit/diag"
	"tallyfold/kit/hazard"
)

var cautionAfterAction = Rule{
	Name:     "caution-after-action",
	Severity: diag.ShouldFix,
	Title:    "A caution stands after what it warns of",
	Explanation: `Whoever reads “pour in the lye”, does it, and then reads “wear goggles” has read the caution
too late. A caution stands before the action that it guards (ANSI Z535.6; IEC/IEEE
82079-1; both by topic, from memory).

The actions of each step are held against the handbook, and the cautions of the step are
known by their words: one that speaks of heat answers heat. Where only one behind the
action does, that is told.

Move the caution up, before the sentence that it guards.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, a := range s.hazards() {
			if a.Place != hazard.After {
				continue
			}
			findings = append(findings, diag.Finding{
				Where: a.Caution.Span, About: a.Step.ID,
				Found:    "the caution “" + firstWords(a.Caution.Text) + "” stands after what it warns of: " + a.Hazard.What + " (" + a.By + ")",
				Expected: "the caution before the action",
				Remedies: diag.Fix("move it up, before “" + firstWords(a.Where.Text()) + "”"),
				Also:     []diag.Place{{Where: a.Where, Note: "what it warns of"}},
			})
		}
		return findings
	},
	NotLookedAt: cautionWordsUnread,
}

// firstWords of a text, enough to find it again.
func firstWords(text string) string {
	words := strings.Fields(text)
	if len(words) <= 8 {
		return strings.Join(words, " ")
	}
	return strings.Join(words[:8], " ") + " …"
}
