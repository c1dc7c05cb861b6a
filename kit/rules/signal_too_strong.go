package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/hazard"
)

var signalTooStrong = Rule{
	Name:     "signal-too-strong",
	Severity: diag.WorthKnowing,
	Title:    "A caution is headed DANGER, and what it speaks of hurts lightly at most",
	Explanation: `DANGER is kept for what will kill or maim if it is not avoided, and for the most extreme cases
(ANSI Z535.6). Who meets it over a pair of scissors reads past it over the lye.

A caution headed DANGER is held against all that it speaks of, by words, in its step or in
its part. Where none of that has more than CAUTION this is told. It may speak of something
that the program does not know, so it is no more than a hint. WARNING in the place of
CAUTION is not told.

Head it with WARNING or CAUTION, or leave it if it speaks of more.`,
	Check: func(s Subject) []diag.Finding {
		gravest := map[kit.Caution]hazard.Action{}
		for _, a := range s.hazards() {
			if a.Caution == nil {
				continue
			}
			if known, is := gravest[*a.Caution]; !is || weaker(known.Hazard.Signal, a.Hazard.Signal) {
				gravest[*a.Caution] = a
			}
		}
		var findings []diag.Finding
		for _, caution := range cautionsOfMethod(s.Kit) {
			a, speaks := gravest[caution]
			if !speaks || caution.Signal != kit.Danger || !weaker(a.Hazard.Signal, kit.Warning) {
				continue
			}
			findings = append(findings, diag.Finding{
				Where: caution.Span, About: a.Step.ID,
				Found:    "a caution headed DANGER speaks of " + a.Hazard.What + " (" + a.By + ", " + inStep(a.Step) + "), which has " + string(a.Hazard.Signal),
				Expected: "DANGER over what kills or maims, and nothing less (ANSI Z535.6)",
				Remedies: diag.Fix("head it with "+string(a.Hazard.Signal), "leave it, if it speaks of something graver that the program does not know"),
				Also:     []diag.Place{{Where: a.Where, Note: "what it warns of"}},
			})
		}
		return findings
	},
	NotLookedAt: cautionWordsUnread,
}
