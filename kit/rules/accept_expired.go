package rules

import (
	"time"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var acceptExpired = Rule{
	Name:     "accept-expired",
	Severity: diag.ShouldFix,
	Title:    "A finding was accepted for a time that is over",
	Explanation: `A finding is accepted until a day, that day included, or for the editions up to a number.
When the time is over it comes back, so that nobody lives with it forever by silence.
An entry that tells no end at all counts as over.

Put the cause right, or look at it once more and write a new end.`,
}

func expired(entry *kit.Accepted, k *kit.Kit, today time.Time) diag.Finding {
	edition := whole(max(1, k.Edition.Value)).String()
	finding := diag.Finding{
		Expected: "an end that has not come yet",
		Remedies: diag.Fix("put right what the finding says", "look at it once more and write a later end, with “until:” or “edition:”"),
	}
	switch {
	case isPast(entry, today):
		finding.Found = told(entry) + " was accepted until " + entry.Until.Value + ", which is over"
		finding.Sum = []string{"judged as of " + today.Format(time.DateOnly)}
	case entry.Edition.Given():
		finding.Found = told(entry) + " was accepted until edition " + whole(entry.Edition.Value).String() + ", which is over"
		finding.Sum = []string{"the kit is edition " + edition}
	default:
		finding.Found = told(entry) + " is accepted without an end"
		finding.Expected = "the last day or edition that it is accepted for"
		finding.Remedies = diag.Fix("write “until: 2027-06-30” with the day that suits, or “edition: " + edition + "”")
	}
	return finding
}

// isPast says whether the last day of an entry is over.
func isPast(entry *kit.Accepted, today time.Time) bool {
	return entry.Until.Given() && entry.Until.Value < today.Format(time.DateOnly)
}
