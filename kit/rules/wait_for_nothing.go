package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var waitForNothing = Rule{
	Name:     "wait-for-nothing",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "A wait is taken up before it begins, or nobody can tell what is waited for",
	Explanation: `“When the glue has dried …” stands in step 3, and the glue is put on in step 5: the reader
looks back for a wait that there was not yet. The runs are followed in their order; “after:”
needs its “wait:” before it, in this run or an earlier one. That must be fixed.

A wait that only says “Wait 10 minutes” is worth knowing: the customer does not see what
ought to happen meanwhile, and cannot judge whether it has. Silent are waits whose sentence
says what is left or what happens (“leave the jars”, “to set”, “until”), those that an
“after:” takes up, and those before something to look for in the same step.

Put the wait before what takes it up; say what is waited for.`,
	Check: func(s Subject) []diag.Finding {
		return append(neverBegun(s), wordless(s)...)
	},
}

// neverBegun finds where a named wait is taken up and has not begun yet.
func neverBegun(s Subject) []diag.Finding {
	begun := map[string]bool{}
	begins := map[string]moment{}
	var early []moment
	for _, run := range s.Kit.Passes() {
		for _, step := range followed(s.Kit, run) {
			for _, o := range step.Operations {
				switch {
				case o.Aside || o.Target == "":
				case o.Kind == kit.Wait:
					begun[o.Target] = true
					if _, known := begins[o.Target]; !known {
						begins[o.Target] = moment{run, step, o}
					}
				case o.Kind == kit.After && !begun[o.Target]:
					early = append(early, moment{run, step, o})
				}
			}
		}
	}
	var all []perRun
	for _, at := range early {
		if begin, ok := begins[at.operation.Target]; ok {
			all = append(all, perRun{at.run, takenUpEarly(s.Kit, at, begin)})
		} else if begin, ok := inMethod(s.Kit, at.operation.Target); ok {
			all = append(all, perRun{at.run, takenUpNever(s.Kit, at, begin)})
		}
	}
	return overRuns(s.Kit, all)
}

// inMethod finds a named wait in any step. A name that no wait has is told when the
// method is read.
func inMethod(k *kit.Kit, name string) (moment, bool) {
	for _, step := range k.Method.Steps() {
		for _, o := range step.Operations {
			if o.Kind == kit.Wait && o.Target == name && !o.Aside {
				return moment{nil, step, o}, true
			}
		}
	}
	return moment{}, false
}

func takenUpEarly(k *kit.Kit, at, begin moment) diag.Finding {
	when := inStep(begin.step)
	if begin.run != at.run {
		when += " of the run " + runName(k, begin.run)
	}
	return diag.Finding{
		Where: at.operation.Span, About: at.step.ID,
		Found:    inStep(at.step) + " goes on when the wait “" + at.operation.Target + "” is over, and that begins only in " + when,
		Expected: "the wait before what takes it up",
		Remedies: diag.Fix(
			"move what begins it (“"+begin.operation.Text+"”) before "+inStep(at.step),
			"name the wait that is meant, or take the link out"),
		Also: []diag.Place{{Where: begin.operation.Span, Note: "begins here, " + when}},
	}
}

func takenUpNever(k *kit.Kit, at, begin moment) diag.Finding {
	return diag.Finding{
		Where: at.operation.Span, About: at.step.ID,
		Found:    inStep(at.step) + " goes on when the wait “" + at.operation.Target + "” is over, and no run up to it goes through " + inStep(begin.step) + ", where it begins",
		Expected: "the wait in a step that the run goes through",
		Remedies: diag.Fix("add the part of "+inStep(begin.step)+" to the run in kit.yaml", "let a run that goes through it come before"),
		Also:     []diag.Place{{Where: begin.operation.Span, Note: "begins here, " + inStep(begin.step)}},
	}
}

// bareWords of a language may stand beside a time and still not say what it is for.
var bareWords = map[string][]string{
	"en": {"wait", "now", "then", "for", "about", "another", "more", "again", "and", "pause", "here", "a", "further", "please", "just", "this", "takes",
		"it", "is", "there", "of", "waiting", "time"},
}

// wordless finds waits whose sentence says nothing but how long.
func wordless(s Subject) []diag.Finding {
	bare, known := bareWords[language(s.Kit)]
	if !known {
		return []diag.Finding{noWords(s.Kit, "waits that say nothing", bareWords)}
	}
	taken := map[string]bool{}
	operations(s.Kit, func(o *kit.Operation, _ *kit.Step) {
		if o.Kind == kit.After {
			taken[o.Target] = true
		}
	})
	var findings []diag.Finding
	for _, step := range s.Kit.Method.Steps() {
		text := readStep(step)
		for i, o := range step.Operations {
			if o.Kind == kit.Wait && !o.Aside && !taken[o.Target] && text.saysOnly(o, bare) &&
				!looksFor(step.Operations[i+1:]) && !text.explains(o, ends[language(s.Kit)]) && !takenUp(s.Kit, step, ends[language(s.Kit)]) {
				findings = append(findings, nothingSaid(step, o))
			}
		}
	}
	return findings
}

// looksFor says whether what follows in the step tells what the wait was for.
func looksFor(later []*kit.Operation) bool {
	return slices.ContainsFunc(later, func(o *kit.Operation) bool { return o.Kind == kit.Cue || o.Kind == kit.Cool })
}

// explains says whether the sentence behind that of a link tells when it is over:
// “They are hard when they ring.”
func (r reading) explains(o *kit.Operation, e endWords) bool {
	next := r.sentenceOf(o) + 1
	for i, w := range r.words {
		if w.sentence == next && r.isUntil(i, e) {
			return true
		}
	}
	return false
}

// sentenceOf is the number of the sentence that a link stands in, −1 for none.
func (r reading) sentenceOf(o *kit.Operation) int {
	for i, w := range r.words {
		if o.Span.Contains(r.span(i, i)) {
			return w.sentence
		}
	}
	return -1
}

// saysOnly says whether the sentence of a link has no word outside it but those.
func (r reading) saysOnly(o *kit.Operation, bare []string) bool {
	sentence := r.sentenceOf(o)
	for i, w := range r.words {
		if w.sentence == sentence && !o.Span.Contains(r.span(i, i)) && !slices.Contains(bare, w.text) {
			return false
		}
	}
	return sentence >= 0
}

func nothingSaid(step *kit.Step, o *kit.Operation) diag.Finding {
	return diag.Finding{
		Severity: diag.WorthKnowing, Where: amountSpan(o), About: step.ID,
		Found:    inStep(step) + " has the customer wait " + strings.TrimSpace(o.Text) + ", and does not say what for",
		Expected: "what is left alone, and what happens to it meanwhile",
		Remedies: diag.Fix("say what happens: “Leave the gel 15 minutes, until it no longer steams”",
			"take the wait out, if nothing happens in it"),
	}
}
