package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var acceptMatchesNothing = Rule{
	Name:     "accept-matches-nothing",
	Severity: diag.WorthKnowing,
	Title:    "A finding is accepted that there is not",
	Explanation: `An entry under accept speaks of a finding that the check does not have: it was put right,
or the entry names another rule or another thing than the finding does. Left in, it
would hide the same finding when it comes back for a new reason.

While anything must be fixed it stays unsaid: what was accepted may only be hidden.

Take the entry out, or name rule and thing as the finding prints them.`,
}

func matchesNothing(entry *kit.Accepted) diag.Finding {
	finding := diag.Finding{
		Found:    told(entry) + " is accepted, and there is no such finding",
		Expected: "the rule and the thing of a finding, as check prints them",
		Remedies: diag.Fix("take the entry out"),
	}
	var names []string
	for _, rule := range All {
		names = append(names, rule.Name)
	}
	if _, known := Named(entry.Rule.Value); known {
		finding.Remedies = append(finding.Remedies, diag.Remedy{Do: "look whether “about: " + entry.About.Value + "” names the thing that the finding is about"})
	} else if near := nearest(entry.Rule.Value, names); near != "" {
		finding.Remedies = append(finding.Remedies, diag.Remedy{Do: "write “rule: " + near + "”, if that is meant"})
	}
	return finding
}
