package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var pointsTheWrongWay = Rule{
	Name:     "points-the-wrong-way",
	Severity: diag.MustFix,
	Title:    "A reference leads to another step than its words say",
	Explanation: `“See step 5”, and what is meant moved to step 6 when a step was put in: numbers that are
typed do not move along. A customer follows the number.

A link to a step is compared with its own words: a number or an ordinal (“step 5”, “the
third step”), a direction (“above”, “the next step”, “back to”), and the titles of all
steps, where its words name another step and nothing of the one it leads to. The last goes
by words, so it should be fixed, not must. A step number typed without a link must exist,
and should be a step in which something of what its sentence names occurs, where exactly
one other step has it. “The next step” in the last one, and “the previous step” in the first,
lead nowhere.

Make a link of the reference and leave its words to the tool, “[](step:fill)”: it then
prints the number and title as they are.`,
	Check: func(s Subject) []diag.Finding {
		words, known := pointers[language(s.Kit)]
		if !known {
			return []diag.Finding{noWords(s.Kit, "references", pointers)}
		}
		p := pointing{Subject: s, words: words}
		for _, step := range s.Kit.Method.Steps() {
			p.links(step.Operations, readStep(step), step)
			p.typed(readStep(step), step, step.ID)
			p.nowhere(readStep(step), step)
		}
		for _, trouble := range s.Kit.Troubles {
			p.links(trouble.Operations, readTrouble(trouble), nil)
			p.typed(readTrouble(trouble), nil, trouble.ID)
		}
		return p.findings
	},
}

type pointing struct {
	Subject
	words    pointerWords
	findings []diag.Finding
}

// links holds the words of each link to a step against the step it leads to.
func (p *pointing) links(operations []*kit.Operation, text reading, from *kit.Step) {
	for _, o := range operations {
		target := p.Kit.Step(o.Target)
		if o.Kind != kit.ToStep || target == nil || o.Text == "" {
			continue
		}
		words := wordsOf(o.Text)
		if said, ok := p.words.number(words); ok && said != target.Number && said != p.inPart(target) {
			p.wrongNumber(o, target, said)
			continue
		}
		if from != nil && p.wrongDirection(o, words, text, from, target) {
			continue
		}
		if other := p.otherTitle(words, target); other != nil && other != from {
			p.wrongTitle(o, target, other)
		}
	}
}

// inPart is the number of a step within its part, for "the second step" of a part.
func (p *pointing) inPart(step *kit.Step) int {
	for _, part := range p.Kit.Method.Parts {
		if at := slices.Index(part.Steps, step); at >= 0 {
			return at + 1
		}
	}
	return 0
}

func (p *pointing) wrongNumber(o *kit.Operation, target *kit.Step, said int) {
	finding := diag.Finding{
		Where: o.TextSpan, About: o.Target,
		Found:    "“" + o.Text + "” leads to " + inStep(target) + " (“" + target.Title + "”)",
		Expected: "step " + whole(said).String() + ", as its words say, or words that say " + inStep(target),
		Remedies: []diag.Remedy{leaveToTool(o), {Do: "write “" + inStep(target) + "”"}},
		Also:     []diag.Place{{Where: target.Span, Note: inStep(target)}},
	}
	if steps := p.Kit.Method.Steps(); said <= len(steps) {
		meant := steps[said-1]
		finding.Remedies = append(finding.Remedies, pointAt(p.Kit, o, meant, "if "+inStep(meant)+" (“"+meant.Title+"”) is meant"))
	}
	p.findings = append(p.findings, finding)
}

// wrongDirection holds "above", "the next step" and "back to" against where the
// target stands.
func (p *pointing) wrongDirection(o *kit.Operation, words []string, text reading, from, target *kit.Step) bool {
	before := text.wordsBefore(o, 2)
	said, expected := "", ""
	for _, d := range p.words.directions {
		inLink, behind := holdsPhrase(words, d.words), d.before && holdsPhrase(before, d.words)
		if !inLink && !behind || d.right(from.Number, target.Number) {
			continue
		}
		said, expected = strings.Join(d.words, " "), d.means
	}
	if said == "" {
		return false
	}
	p.findings = append(p.findings, diag.Finding{
		Where: o.Span, About: o.Target,
		Found:    "“" + said + "” in " + inStep(from) + ", and the link leads to " + inStep(target) + " (“" + target.Title + "”)",
		Expected: expected,
		Remedies: []diag.Remedy{leaveToTool(o), {Do: "point at the step that is meant"}},
		Also:     []diag.Place{{Where: target.Span, Note: inStep(target)}},
	})
	return true
}

// wordsBefore are the last words before a link in its sentence.
func (r reading) wordsBefore(o *kit.Operation, most int) []string {
	for i := range r.words {
		if !o.Span.Contains(r.span(i, i)) {
			continue
		}
		var words []string
		for back := most; back > 0; back-- {
			if word := r.neighbour(i, -back); word != "" {
				words = append(words, word)
			}
		}
		return words
	}
	return nil
}

// otherTitle is the one step whose title or name the words of a link speak of,
// where nothing they say occurs in the step that it leads to.
func (p *pointing) otherTitle(words []string, target *kit.Step) *kit.Step {
	told := p.words.stems(words)
	if len(told) == 0 || sharesAny(told, p.stemsOf(target, true)) {
		return nil
	}
	var other *kit.Step
	for _, step := range p.Kit.Method.Steps() {
		if step == target || !sharesAny(told, p.stemsOf(step, false)) {
			continue
		}
		if other != nil {
			return nil
		}
		other = step
	}
	return other
}

// stemsOf are the stems of a step's title and name, with its text where asked.
func (p *pointing) stemsOf(step *kit.Step, text bool) []string {
	stems := p.words.stems(append(wordsOf(step.Title), wordsOf(strings.ReplaceAll(step.ID, "-", " "))...))
	if text {
		for _, w := range readStep(step).words {
			stems = append(stems, stem(w.text))
		}
	}
	return stems
}

func sharesAny(a, b []string) bool {
	return slices.ContainsFunc(a, func(one string) bool { return slices.Contains(b, one) })
}

func (p *pointing) wrongTitle(o *kit.Operation, target, other *kit.Step) {
	p.findings = append(p.findings, diag.Finding{
		Severity: diag.ShouldFix, Where: o.TextSpan, About: o.Target,
		Found:    "“" + o.Text + "” leads to " + inStep(target) + " (“" + target.Title + "”), and sounds like " + inStep(other) + " (“" + other.Title + "”)",
		Expected: "words that name the step they lead to",
		Remedies: []diag.Remedy{pointAt(p.Kit, o, other, "if that step is meant"), leaveToTool(o)},
		Also:     []diag.Place{{Where: target.Span, Note: inStep(target)}, {Where: other.Span, Note: inStep(other)}},
	})
}

// leaveToTool takes the words out of a link, so that number and title are printed as
// they are.
func leaveToTool(o *kit.Operation) diag.Remedy {
	remedy := diag.Remedy{Do: "leave the words to the tool: [](step:" + o.Target + ")"}
	if o.TextSpan.Known() {
		remedy.Changes = []diag.Change{{Where: o.TextSpan}}
	}
	return remedy
}

// pointAt leads a link to another step.
func pointAt(k *kit.Kit, o *kit.Operation, step *kit.Step, condition string) diag.Remedy {
	return diag.Remedy{Do: "write step:" + step.ID + ", " + condition, Changes: rewrite(k, o.TargetSpan, "step:"+step.ID)}
}
