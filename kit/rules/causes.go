package rules

import (
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
)

// tellCauses puts sums that come out wrong only by another mistake under the finding
// of that: a maker who mends the one has mended all.
func tellCauses(s Subject, list diag.List) {
	for i := range list {
		if rule, _ := Named(list[i].Rule); !rule.Sums || list[i].Rule == noVessel.Name {
			continue
		}
		if cause := noVesselBefore(s, list[i]); cause != "" {
			list[i].Cause, list[i].Follows = cause, true
		} else if list[i].Cause == "" {
			list[i].Cause = shortFill(list, list[i])
			list[i].Follows = list[i].Cause != ""
		}
	}
}

// noVesselBefore is the cause of what rests on a step that does not say its vessel:
// of all that is told there or further down, or in kit.yaml.
func noVesselBefore(s Subject, f diag.Finding) string {
	for _, snag := range s.Ledger.Snags {
		isBefore := f.Where.File == snag.Step.Span.File && f.Where.Start < snag.Step.Span.Start
		if snag.Trouble == ledger.NoVessel && !isBefore {
			return noVesselCause(s.Ledger, snag.Run)
		}
	}
	return ""
}

// shortFill is the cause of a fill that runs short, or has too few containers, where
// another sum of the same fill comes out wrong: it holds less than it should.
func shortFill(list diag.List, f diag.Finding) string {
	for _, other := range list {
		isShort := other.Rule == takenFromEmpty.Name || other.Rule == countsDisagree.Name
		if isShort && f.Rule != other.Rule && other.Cause != "" && (other.Where.Contains(f.Where) || f.Where.Contains(other.Where)) {
			return other.Cause
		}
	}
	return ""
}
