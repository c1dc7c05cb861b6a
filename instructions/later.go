package instructions

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/handbook"
	"tallyfold/kit/source"
)

// What can be judged only when the whole method is read: named waits, what a
// figure is told again of, names used twice, parts that runs name.

// checkLater judges the targets of `after:` and `same:`.
func (r *reader) checkLater(operations []*kit.Operation, waits, steps map[string]source.Span, part *kit.Part) {
	for _, operation := range operations {
		target := takeApart(operation.TargetSpan.Text(), operation.TargetSpan).target
		target.text = operation.Target
		_, isWait := waits[target.text]
		_, isStep := steps[target.text]
		switch {
		case operation.Kind == kit.Hazard:
			r.checkHazard(target)
		case target.text == "" || isWait:
		case operation.Kind == kit.After:
			r.unknownWait(target, waits)
		case operation.Kind == kit.Same && !isStep:
			r.checkTarget("same:", target, anything, part)
		}
	}
}

// checkHazard judges the target of `hazard:`: one of the handbook, in small letters, or
// of the kit.
func (r *reader) checkHazard(name word) {
	var known []string
	for _, hazard := range handbook.Hazards() {
		known = append(known, strings.ToLower(hazard.ID))
	}
	for _, own := range r.kit.OwnHazards {
		known = append(known, own.ID)
	}
	if name.text == "" || slices.Contains(known, name.text) {
		return
	}
	var remedies []string
	if near := diag.Nearest(name.text, known); near != "" {
		remedies = append(remedies, "write hazard:"+near+", if that is meant")
	}
	r.say(unknownTarget, name.span, name.text, "no hazard is called "+quoted(name.text),
		"after hazard: one that the program has (see: tallyfold hazards --known), or one under “hazards” in kit.yaml",
		append(remedies, "add "+quoted(name.text)+" under “hazards” in kit.yaml")...)
}

func (r *reader) unknownWait(name word, waits map[string]source.Span) {
	known := make([]string, 0, len(waits))
	for wait := range waits {
		known = append(known, wait)
	}
	slices.Sort(known)
	var remedies []string
	if near := diag.Nearest(name.text, known); near != "" {
		remedies = append(remedies, "write after:"+near+", if that is meant")
	}
	r.say(unknownTarget, name.span, name.text, "no wait is called "+quoted(name.text), "after after: the name of a wait",
		append(remedies, "name the wait: write wait:"+name.text+" where it begins")...)
}

// waitNames gives the named waits of a method and where each is named first.
func waitNames(method kit.Method) map[string]source.Span {
	waits := map[string]source.Span{}
	for _, step := range method.Steps() {
		for _, operation := range step.Operations {
			if _, there := waits[operation.Target]; !there && operation.Kind == kit.Wait && operation.Target != "" && !operation.Aside {
				waits[operation.Target] = operation.TargetSpan
			}
		}
	}
	return waits
}

// stepNames gives the steps of a method and the heading of each.
func stepNames(method kit.Method) map[string]source.Span {
	steps := map[string]source.Span{}
	for _, step := range method.Steps() {
		steps[step.ID] = step.Span
	}
	return steps
}

// checkParts finds parts that a run names and the method doesn't have.
func (r *reader) checkParts(method kit.Method) {
	var known []string
	for _, part := range method.Parts {
		if part.ID != "" {
			known = append(known, part.ID)
		}
	}
	for _, run := range r.kit.Runs {
		for _, named := range run.Parts {
			if !slices.Contains(known, named.Value) {
				r.unknownPart(named, known)
			}
		}
	}
}

func (r *reader) unknownPart(named kit.Said[string], known []string) {
	var remedies []string
	if near := diag.Nearest(named.Value, known); near != "" {
		remedies = append(remedies, "write "+near+", if that is meant")
	}
	expected := "the name of a part: its level-one heading in small letters, with hyphens for spaces"
	if len(known) > 0 {
		expected += " (" + some(known) + ")"
	}
	r.say(unknownTarget, named.Span, named.Value, "the method has no part "+quoted(named.Value), expected,
		append(remedies, "give method.md a heading “# …” of that name")...)
}

// checkChoices finds choices that leave nothing to choose.
func (r *reader) checkChoices(method kit.Method) {
	for _, choice := range method.Choices() {
		if len(choice.Options) < 2 {
			r.say(unreadableLink, choice.First.TargetSpan, choice.Name, quoted("?either="+choice.Name)+", with one thing to choose from",
				"two or more links of one part with ?either="+choice.Name+", each of another thing",
				"write ?either="+choice.Name+" behind the other links too", "take it out, if there is nothing to choose")
		}
	}
}
