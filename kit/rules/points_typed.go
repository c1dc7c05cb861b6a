package rules

import (
	"slices"
	"strconv"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

// typed looks at step numbers that stand in running text without a link. about is
// the step or trouble whose text it is; from is nil for a trouble.
func (p *pointing) typed(text reading, from *kit.Step, about string) {
	steps := p.Kit.Method.Steps()
	for i, w := range text.words {
		if !slices.Contains(p.words.step, w.text) || text.link(text.span(i, i)) != nil {
			continue
		}
		number, err := strconv.Atoi(text.neighbour(i, 1))
		switch {
		case err != nil || number < 1 || slices.Contains(p.words.ofOther, text.neighbour(i, 2)):
		case number > len(steps):
			p.noSuchNumber(text, i, number, about)
		case from == nil || steps[number-1] != from:
			p.namesAnother(text, i, steps[number-1], from, about)
		}
	}
}

func (p *pointing) noSuchNumber(text reading, i, number int, about string) {
	steps := p.Kit.Method.Steps()
	last := steps[len(steps)-1]
	p.findings = append(p.findings, diag.Finding{
		Where: text.span(i, i+1), About: about,
		Found:    "“step " + whole(number).String() + "”, and the method has " + plural(len(steps), "step"),
		Expected: "a step that is there",
		Remedies: diag.Fix("make a link of it, which cannot come apart: [](step:" + last.ID + ")"),
	})
}

// namesAnother tells a typed number where nothing that its sentence names occurs in
// that step, and something of it does in exactly one other.
func (p *pointing) namesAnother(text reading, i int, meant, from *kit.Step, about string) {
	named := p.thingsIn(text, text.words[i].sentence)
	var other *kit.Step
	var thing string
	for _, name := range named {
		steps := p.stepsNaming(name, from)
		if slices.Contains(steps, meant) || p.isAtHand(name, meant) {
			return
		}
		if len(steps) == 1 && other == nil {
			other, thing = steps[0], name
		}
	}
	if other == nil {
		return
	}
	p.findings = append(p.findings, diag.Finding{
		Severity: diag.ShouldFix, Where: text.span(i, i+1), About: about,
		Found:    "“" + inStep(meant) + "” is typed beside “" + thing + "”, which occurs in " + inStep(other) + " (“" + other.Title + "”) and not in " + inStep(meant) + " (“" + meant.Title + "”)",
		Expected: "the number of the step that is meant",
		Remedies: []diag.Remedy{
			{Do: "make a link of it, whose number the tool writes: [](step:" + other.ID + ")", Changes: rewrite(p.Kit, text.span(i, i+1), "[](step:"+other.ID+")")},
			{Do: "if " + inStep(meant) + " is meant: [](step:" + meant.ID + ")", Changes: rewrite(p.Kit, text.span(i, i+1), "[](step:"+meant.ID+")")},
		},
		Also: []diag.Place{{Where: other.Span, Note: inStep(other)}},
	})
}

// thingsIn are the names of things of the kit that a sentence holds, as kit.yaml
// calls them or by the last word of that, in lower case.
func (p *pointing) thingsIn(text reading, sentence int) []string {
	var named []string
	for _, name := range p.thingNames() {
		for i, w := range text.words {
			if w.sentence == sentence && text.phrase(i, name) > 0 {
				named = append(named, strings.Join(name, " "))
				break
			}
		}
	}
	return named
}

func (p *pointing) thingNames() [][]string {
	var names [][]string
	add := func(called string) {
		words := wordsOf(called)
		names = append(names, words, words[max(0, len(words)-1):])
	}
	for _, c := range p.Kit.Components {
		add(c.String())
	}
	for _, m := range p.Kit.Mixtures {
		add(m.String())
	}
	for _, tool := range p.Kit.Tools {
		add(tool.String())
	}
	return names
}

// stepsNaming are the steps, save one, whose text or title has a name.
func (p *pointing) stepsNaming(name string, but *kit.Step) []*kit.Step {
	var steps []*kit.Step
	for _, step := range p.Kit.Method.Steps() {
		_, there := readStep(step).find(name)
		if step != but && (there || holdsPhrase(wordsOf(step.Title), wordsOf(name))) {
			steps = append(steps, step)
		}
	}
	return steps
}

// isAtHand says whether a thing is in a vessel during a step, so that its text may
// well speak of it as "it".
func (p *pointing) isAtHand(name string, step *kit.Step) bool {
	for _, stage := range p.Ledger.Stages {
		if stage.Step != step {
			continue
		}
		for i := range stage.Vessels {
			v := &stage.Vessels[i]
			if isCalled(p.Kit.Called(v.Vessel), name) || v.Mixture != nil && isCalled(v.Mixture.String(), name) {
				return true
			}
			for _, part := range append(v.Parts(), v.Objects()...) {
				if isCalled(p.Kit.Called(part.Thing), name) {
					return true
				}
			}
		}
	}
	return isCalled(p.Kit.Called(step.Vessel), name)
}

// nowhere tells "the next step" in the last step and "the step before" in the first.
func (p *pointing) nowhere(text reading, from *kit.Step) {
	steps := p.Kit.Method.Steps()
	for _, d := range p.words.directions {
		if !d.nextTo || d.later && from != steps[len(steps)-1] || !d.later && from != steps[0] {
			continue
		}
		for i := range text.words {
			n := text.phrase(i, d.words)
			if n == 0 || text.link(text.span(i, i)) != nil || slices.Contains(p.words.own, text.neighbour(i, -1)) {
				continue
			}
			p.findings = append(p.findings, diag.Finding{
				Where: text.span(i, i+n-1), About: from.ID,
				Found:    "“" + strings.Join(d.words, " ") + "” in " + inStep(from) + ", and there is none",
				Expected: d.means,
				Remedies: diag.Fix("point at the step that is meant by its name: [](step:"+steps[0].ID+")", "take it out"),
			})
		}
	}
}
