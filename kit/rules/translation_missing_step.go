package rules

import (
	"maps"
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

var translationMissingStep = Rule{
	Name:     "translation-missing-step",
	Severity: diag.MustFix,
	Title:    "A translation has not the same steps as the method",
	Explanation: `Whoever reads the translation does what stands in it and nothing else. A step that is
missing is not done; one that the method no longer has is done all the same.

A step is known by the name in its heading, “## [Faire fondre la cire](step:melt)”, which
is the same in every language. Held against the method are: that each step is there, that
there is no other, that they come in the same order, and that the level-one headings,
which the runs go by, stand before the same steps.

Translate the step, or take it out.`,
	NotLookedAt: untranslated,
	Check: func(s Subject) []diag.Finding {
		return eachTranslation(s.Kit, func(t *kit.Translation) []diag.Finding {
			meant := likelySteps(s.Kit, t)
			return slices.Concat(missingSteps(s.Kit, t, meant), furtherSteps(s.Kit, t, meant), stepsMoved(s.Kit, t), partsMoved(s.Kit, t))
		})
	},
}

// likelySteps gives for steps of a translation that are none of the method the one
// that is likely meant: the one whose fingerprint it has, or the only one without a
// translation at its place. A slip in a name is then told once.
func likelySteps(k *kit.Kit, t *kit.Translation) map[*kit.Step]*kit.Step {
	meant := map[*kit.Step]*kit.Step{}
	taken := map[*kit.Step]bool{}
	all := t.Method.Steps()
	for i, other := range all {
		if k.Step(other.ID) != nil {
			continue
		}
		for _, own := range k.Method.Steps() {
			if t.Method.Step(own.ID) != nil || taken[own] {
				continue
			}
			if other.Of.Value == own.Fingerprint() || !other.Of.Given() && isBehind(k, own, all, i) {
				meant[other] = own
				taken[own] = true
				break
			}
		}
	}
	return meant
}

// isBehind says whether a step of the method comes right behind the one that step i of
// the translation comes behind.
func isBehind(k *kit.Kit, own *kit.Step, all []*kit.Step, i int) bool {
	if i == 0 {
		return own.Number == 1
	}
	before := k.Step(all[i-1].ID)
	return before != nil && own.Number == before.Number+1
}

func missingSteps(k *kit.Kit, t *kit.Translation, meant map[*kit.Step]*kit.Step) []diag.Finding {
	var findings []diag.Finding
	misnamed := slices.Collect(maps.Values(meant))
	var before *kit.Step // the step that it should stand behind
	for _, own := range k.Method.Steps() {
		if other := t.Method.Step(own.ID); other != nil {
			before = other
			continue
		}
		if slices.Contains(misnamed, own) {
			continue
		}
		where, place := t.Method.Steps()[0].Span, "before its first step"
		if before != nil {
			where, place = before.Span, "behind its "+inStep(before)
		}
		findings = append(findings, diag.Finding{
			Where: where, About: own.ID,
			Found:    fileOf(t.Method) + " has no step “" + own.ID + "”, which is " + inStep(own) + " of the method: " + own.Title,
			Expected: "every step of the method in every translation",
			Remedies: diag.Fix("translate it and put it " + place + ", under the heading " + headingOf(own, "…")),
			Also:     besideMethod(own.Span, "the step of the method"),
		})
	}
	return findings
}

// headingOf is how the heading of a translated step is written.
func headingOf(own *kit.Step, title string) string {
	return "## [" + title + "](step:" + own.ID + "?of=" + own.Fingerprint() + ")"
}

func furtherSteps(k *kit.Kit, t *kit.Translation, meant map[*kit.Step]*kit.Step) []diag.Finding {
	var findings []diag.Finding
	for _, other := range t.Method.Steps() {
		if k.Step(other.ID) != nil {
			continue
		}
		finding := diag.Finding{
			Where: other.Span, About: other.ID,
			Found:    inStep(other) + " of " + fileOf(t.Method) + ", “" + other.Title + "”, is no step of the method",
			Expected: "no other steps than those of the method, called by the same names",
			Remedies: diag.Fix("take it out, or write the step into the method too"),
			Also:     besideMethod(k.Method.Steps()[0].Span, "the steps of the method begin here"),
		}
		if likely := meant[other]; likely != nil {
			finding.Remedies = slices.Concat(diag.Fix("if it is the translation of “"+likely.Title+"”, write its heading as "+headingOf(likely, other.Title)), finding.Remedies)
			finding.Also = besideMethod(likely.Span, "a step of the method without a translation")
		}
		findings = append(findings, finding)
	}
	return findings
}

// stepsMoved finds the first step that stands elsewhere than in the method.
func stepsMoved(k *kit.Kit, t *kit.Translation) []diag.Finding {
	last := (*kit.Step)(nil)
	for _, pair := range stepPairs(k, t) {
		if last != nil && pair.own.Number < last.Number {
			return []diag.Finding{{
				Where: pair.other.Span, About: pair.own.ID,
				Found:    "“" + pair.other.Title + "” comes behind “" + last.Title + "” in " + fileOf(t.Method) + ", and before it in the method",
				Expected: "the steps in the order of the method",
				Remedies: diag.Fix("put it before the translation of " + inStep(last) + " of the method"),
				Also:     []diag.Place{{Where: pair.own.Span, Note: "here in the method"}, {Where: last.Span, Note: "what comes later in the method"}},
			}}
		}
		last = pair.own
	}
	return nil
}

// partsMoved finds the first step that stands under another level-one heading.
func partsMoved(k *kit.Kit, t *kit.Translation) []diag.Finding {
	own, other := partsOfSteps(k.Method), partsOfSteps(t.Method)
	for _, pair := range stepPairs(k, t) {
		mine, its := own[pair.own.ID], other[pair.other.ID]
		if mine == its {
			continue
		}
		where := pair.other.Span
		if part := t.Method.Parts[its]; part.Span.Known() {
			where = part.Span
		}
		also := source.Span{}
		heading := "without a level-one heading before it"
		if part := k.Method.Parts[mine]; part.Span.Known() {
			also, heading = part.Span, "under the level-one heading “"+strings.TrimSpace(part.Title)+"”"
		} else {
			also = pair.own.Span
		}
		return []diag.Finding{{
			Where: where, About: pair.own.ID,
			Found:    "“" + pair.other.Title + "” stands under level-one heading " + whole(its+1).String() + " of " + fileOf(t.Method) + ", and under " + whole(mine+1).String() + " of the method",
			Expected: "the step " + heading + ", as in the method",
			Remedies: diag.Fix("give the translation the same level-one headings, each before the same step"),
			Also:     besideMethod(also, "here in the method"),
		}}
	}
	return nil
}

// partsOfSteps gives the number of the part of each step, from 0.
func partsOfSteps(m kit.Method) map[string]int {
	parts := map[string]int{}
	for i, part := range m.Parts {
		for _, step := range part.Steps {
			parts[step.ID] = i
		}
	}
	return parts
}
