package rules

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var tooManyActions = Rule{
	Name:     "too-many-actions",
	Severity: diag.WorthKnowing,
	Title:    "A step asks for more than a reader can keep in mind",
	Explanation: `A customer reads, puts the booklet down, does it with both hands, and looks for the place
again. In a sentence of five actions, or a step of a dozen, the place is not found.

An action is a handling that the text orders: a verb such as “press” or “pour” at the head
of a sentence or clause. Told is a sentence with more than three, and a step with more
than nine sentences that order something (common practice, no source, for both). What
stands in a list is told in order already and does not count, nor do cautions.

Make two sentences or two steps of it, or a numbered list inside the step.`,
	Check: func(s Subject) []diag.Finding {
		if actionVerbs[language(s.Kit)] == nil {
			return []diag.Finding{noWords(s.Kit, "actions", actionVerbs)}
		}
		var findings []diag.Finding
		for _, step := range s.Kit.Method.Steps() {
			findings = append(findings, crowded(s.Kit, step)...)
		}
		return findings
	},
}

// How many actions a reader keeps in mind (common practice, no source).
const (
	mostInSentence = 3
	mostInStep     = 9
)

func crowded(k *kit.Kit, step *kit.Step) []diag.Finding {
	text := readStep(step)
	sentences := map[int][]order{}
	var inOrder []int
	for _, one := range orders(k, text) {
		if one.listed {
			continue
		}
		if sentences[one.sentence] == nil {
			inOrder = append(inOrder, one.sentence)
		}
		sentences[one.sentence] = append(sentences[one.sentence], one)
	}
	if len(inOrder) > mostInStep {
		return []diag.Finding{crowdedStep(step, text, inOrder, sentences)}
	}
	var findings []diag.Finding
	for _, sentence := range inOrder {
		if len(sentences[sentence]) > mostInSentence {
			findings = append(findings, crowdedSentence(step, text, sentences[sentence]))
		}
	}
	return findings
}

func crowdedStep(step *kit.Step, text reading, inOrder []int, sentences map[int][]order) diag.Finding {
	finding := diag.Finding{
		Where: step.Span, About: step.ID,
		Found:    inStep(step) + " orders something in " + whole(len(inOrder)).String() + " sentences",
		Expected: "at most " + whole(mostInStep).String() + ", or a numbered list inside the step",
	}
	for i, sentence := range inOrder {
		var told []string
		for _, one := range sentences[sentence] {
			told = append(told, text.words[one.word].text)
		}
		finding.Sum = append(finding.Sum, whole(i+1).String()+": "+listed(told))
	}
	middle := sentences[inOrder[len(inOrder)/2]][0]
	finding.Remedies = diag.Fix(
		"begin a new step where a part of the work is done, such as before “"+text.opening(middle.word)+"”",
		"number what is done in a row as a list: 1. … 2. … 3. …")
	return finding
}

func crowdedSentence(step *kit.Step, text reading, all []order) diag.Finding {
	var told []string
	for _, one := range all {
		told = append(told, text.words[one.word].text)
	}
	last := all[len(all)-1]
	return diag.Finding{
		Where: text.span(all[0].word, last.word), About: step.ID,
		Found:    "one sentence of " + inStep(step) + " orders " + whole(len(all)).String() + " actions",
		Expected: "at most " + whole(mostInSentence).String() + " in a sentence",
		Sum:      []string{listed(told)},
		Remedies: diag.Fix(
			"end the sentence before “"+text.opening(all[mostInSentence].word)+"” and begin another",
			"number what is done in a row as a list: 1. … 2. … 3. …"),
	}
}

// opening is the first few words from a word on, as they are written.
func (r reading) opening(i int) string {
	last := i
	for last+1 < len(r.words) && last < i+2 && r.words[last+1].sentence == r.words[i].sentence {
		last++
	}
	return strings.Join(strings.Fields(r.text[r.words[i].start:r.words[last].end]), " ")
}
