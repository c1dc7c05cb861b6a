package rules

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// A perRun is a finding as one run brings it about. Its words do not name the run.
type perRun struct {
	run     *kit.Run
	finding diag.Finding
}

// overRuns tells a finding once where several runs bring it about at the same
// place, and says which runs.
func overRuns(k *kit.Kit, all []perRun) []diag.Finding {
	type place struct {
		where source.Span
		about string
	}
	var order []place
	groups := map[place][]perRun{}
	for _, one := range all {
		at := place{one.finding.Where, one.finding.About}
		if len(groups[at]) == 0 {
			order = append(order, at)
		}
		groups[at] = append(groups[at], one)
	}
	var findings []diag.Finding
	for _, at := range order {
		findings = append(findings, once(k, groups[at]))
	}
	return findings
}

// once joins findings of one place. Runs that find the same are named together;
// what another run finds instead is told in a line of the sum.
func once(k *kit.Kit, group []perRun) diag.Finding {
	told := group[0].finding
	var same []*kit.Run
	var others []string
	for _, one := range group {
		switch {
		case one.finding.Found == told.Found:
			same = appendRun(same, one.run)
		default:
			others = append(others, one.finding.Found+inRuns(k, []*kit.Run{one.run})+"; expected: "+one.finding.Expected)
		}
	}
	told.Found += inRuns(k, same)
	told.Sum = append(told.Sum[:len(told.Sum):len(told.Sum)], withoutDoubles(others)...)
	return told
}

func appendRun(runs []*kit.Run, run *kit.Run) []*kit.Run {
	for _, known := range runs {
		if known == run {
			return runs
		}
	}
	return append(runs, run)
}

// inRuns names runs behind a sentence: ", in run Pine", or nothing where the kit
// has one run only.
func inRuns(k *kit.Kit, runs []*kit.Run) string {
	if len(k.Runs) < 2 {
		return ""
	}
	if len(runs) == len(k.Runs) {
		return ", in every run"
	}
	names := make([]string, len(runs))
	for i, run := range runs {
		names[i] = runName(k, run)
	}
	if len(names) == 1 {
		return ", in run " + names[0]
	}
	return ", in runs " + listed(names)
}

// runName is the maker's name of a run, or its number.
func runName(k *kit.Kit, run *kit.Run) string {
	if run.Name.Value != "" {
		return run.Name.Value
	}
	for i, known := range k.Runs {
		if known == run {
			return quantity.Whole(int64(i + 1)).String()
		}
	}
	return ""
}

// listed joins words for a sentence: a, b and c.
func listed(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

func withoutDoubles(lines []string) []string {
	var kept []string
	seen := map[string]bool{}
	for _, line := range lines {
		if !seen[line] {
			kept = append(kept, line)
		}
		seen[line] = true
	}
	return kept
}
