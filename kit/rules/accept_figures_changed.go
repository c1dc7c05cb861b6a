package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var acceptFiguresChanged = Rule{
	Name:     "accept-figures-changed",
	Severity: diag.ShouldFix,
	Title:    "A finding was accepted, and its figures are no longer the same",
	Explanation: `A maker accepts a finding as it stood: a spoonful left in the pan. When something it rests
on changes, it may be half a pan. What stands under “seen” in the entry must still be
among the words of the finding; if it is not, the finding comes back.

Put the cause right, or look at it once more and write under “seen” what it says now.`,
}

func figuresChanged(entry *kit.Accepted, finding diag.Finding) diag.Finding {
	return diag.Finding{
		Found:    told(entry) + " was accepted as “" + entry.Seen.Value + "”, and now says: " + finding.Found,
		Expected: "the figures that it was accepted on",
		Remedies: []diag.Remedy{
			{Do: "put right what the finding says"},
			{Do: "look at it once more and write “seen: " + figureIn(finding.Found) + "”", Changes: seenInstead(entry, finding)},
		},
		Also: []diag.Place{{Where: finding.Where, Note: "the finding"}},
	}
}

func seenInstead(entry *kit.Accepted, finding diag.Finding) []diag.Change {
	return []diag.Change{{Where: entry.Seen.Span, New: "\"" + figureIn(finding.Found) + "\""}}
}
