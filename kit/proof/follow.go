package proof

import (
	"fmt"
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/rules"
)

// follow tells what was judged of a thing that could not be read under the finding
// of that: a link without an amount, a component without a pack. So it does with
// sums that come out wrong only because a link in their way means nothing.
func follow(k *kit.Kit, judged, reading diag.List) {
	for i := range judged {
		for j := range reading {
			if reading[j].Severity == diag.MustFix && (sameMistake(judged[i], reading[j]) || restsOn(k, judged[i], reading[j])) {
				moveUnder(judged, judged[i].Cause, &reading[j], j)
				under(&judged[i], &reading[j], j)
				break
			}
		}
	}
	for i := range reading {
		for j := range reading {
			if i != j && reading[i].Rule == "missing-reference" && slices.Contains(endOfMethod, reading[j].Rule) {
				under(&reading[i], &reading[j], j)
			}
		}
	}
}

// under tells a finding under another, number n of the findings of reading.
func under(follower, cause *diag.Finding, n int) {
	if cause.Cause == "" {
		cause.Cause = fmt.Sprintf("read:%d", n)
	}
	follower.Cause, follower.Follows = cause.Cause, true
}

// moveUnder takes along what was told under a finding that is now told under another.
func moveUnder(judged diag.List, old string, cause *diag.Finding, n int) {
	for i := range judged {
		if old != "" && judged[i].Cause == old {
			under(&judged[i], cause, n)
		}
	}
}

// sameMistake says whether a judgement is about what could not be read: at that
// place, or of the same thing in the same file, or about a thing whose pack is
// missing because it could not be read.
func sameMistake(judged, read diag.Finding) bool {
	if judged.Where.Contains(read.Where) || read.Where.Contains(judged.Where) {
		return true
	}
	isSameThing := read.About != "" && read.About == judged.About
	return isSameThing && (judged.Rule == "used-but-not-packed" || judged.Rule == "no-amount" || read.Where.File == judged.Where.File)
}

// lostLinks are findings after which a link of the method does nothing or not what
// was meant, endOfMethod those after which no step further down does.
var (
	lostLinks   = []string{"unreadable-link", "refused-link", "unknown-target", "unreadable-amount", "role-without-component"}
	endOfMethod = []string{"unclosed-note", "no-steps", "missing-file"}
)

// addsUp says whether a finding is of a rule that adds up over steps.
func addsUp(f diag.Finding) bool {
	rule, _ := rules.Named(f.Rule)
	return rule.Sums
}

// restsOn says whether a sum may well come out wrong because of a link that could
// not be read: told in its step or further down, or about what its step speaks of.
func restsOn(k *kit.Kit, judged, read diag.Finding) bool {
	if slices.Contains(endOfMethod, read.Rule) {
		return addsUp(judged) || judged.Rule == "missing-step" || judged.Rule == "missing-trouble"
	}
	if !addsUp(judged) {
		return false
	}
	if read.Rule == "missing-reference" {
		return isInRun(k, read) // what the run was to take is in none of its sums
	}
	step := stepOf(k, read)
	switch {
	case step == nil || !slices.Contains(lostLinks, read.Rule):
		return false
	case step.Vessel != "" && judged.About == step.Vessel:
		return true
	case judged.Where.File == step.Body.File:
		return judged.Where.Start >= step.Span.Start
	case speaksOf(step, k, judged.About):
		return true
	}
	return step.Vessel != "" && slices.Contains([]string{"share-outside-limits", "ratio-outside-limits", "counts-disagree"}, judged.Rule)
}

// isInRun says whether a finding stands in what kit.yaml says of a run.
func isInRun(k *kit.Kit, f diag.Finding) bool {
	return slices.ContainsFunc(k.Runs, func(run *kit.Run) bool { return run.Span.Contains(f.Where) })
}

// stepOf is the step that a finding stands in, nil for none.
func stepOf(k *kit.Kit, f diag.Finding) *kit.Step {
	for _, step := range k.Method.Steps() {
		if step.Body.Contains(f.Where) || step.Span.Contains(f.Where) {
			return step
		}
	}
	return nil
}

// speaksOf says whether the text of a step has the key of a thing or the last word
// of its name.
func speaksOf(step *kit.Step, k *kit.Kit, key string) bool {
	text := strings.ToLower(step.Body.Text())
	words := strings.Fields(strings.ToLower(k.Called(key)))
	if len(words) == 0 {
		return false
	}
	return strings.Contains(text, key) || strings.Contains(text, words[len(words)-1])
}
