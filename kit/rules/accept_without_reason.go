package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var acceptWithoutReason = Rule{
	Name:     "accept-without-reason",
	Severity: diag.MustFix,
	Title:    "A finding is accepted and nobody says why",
	Explanation: `Whoever looks at the kit in a year needs to know why a finding was let stand. An entry
under accept without a reason does not count: the finding stays open.

Write the reason after “because:”.`,
}

func withoutReason(entry *kit.Accepted) diag.Finding {
	return diag.Finding{
		Found:    told(entry) + " is accepted without a reason",
		Expected: "a reason after “because:”",
		Remedies: diag.Fix("write why it may stand, as in “because: a spoonful to test the set on a cold plate”", "take the entry out and put right what the finding says"),
	}
}
