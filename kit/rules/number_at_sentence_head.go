package rules

import (
	"strconv"
	"strings"

	"tallyfold/kit/diag"
	"tallyfold/kit/readability"
)

var numberAtSentenceHead = Rule{
	Name:     "number-at-sentence-head",
	Severity: diag.WorthKnowing,
	Title:    "A sentence begins with a figure",
	Explanation: `“Let it cool to 60. 3 jars stand ready.” Read quickly that is 60.3. And in a numbered list
“2. 3 sheets” looks like two and three tenths. A capital letter shows where a sentence
begins; a figure does not.

Looked at are the sentences of the steps and of trouble.md. Silent are lists of things
with bullets, cells of tables, short notes of less than four words, and figures that
belong to a word (“2-ply wool”, “1920s style”). Common practice of printed instructions,
no source.

Begin with what is to be done, or write a small number in words.`,
	Check: func(s Subject) []diag.Finding {
		l, known := readability.In(language(s.Kit))
		if !known {
			return []diag.Finding{noWords(s.Kit, "where sentences begin", readable)}
		}
		var findings []diag.Finding
		for _, p := range passages(s.Kit) {
			for _, sentence := range p.sentences(l) {
				if p.beginsWithFigure(sentence) {
					findings = append(findings, p.figureFirst(sentence))
				}
			}
		}
		return findings
	},
}

// beginsWithFigure says whether a sentence begins with a figure where a reader may
// stumble over it.
func (p passage) beginsWithFigure(s sentence) bool {
	const note = 4 // words: what has less is no sentence
	first := s.Words[0]
	if !isFigureWord(first.Of(p.text)) {
		return false
	}
	if s.first && isItem(s.paragraph) {
		return isNumbered(s.paragraph)
	}
	return len(s.Words) >= note && strings.ContainsAny(p.text[s.Words[len(s.Words)-1].End:s.End], ".!?")
}

func (p passage) figureFirst(s sentence) diag.Finding {
	first := s.Words[0]
	figure := first.Of(p.text)
	finding := diag.Finding{
		Where: p.at.Part(first.Start, first.End), About: p.about,
		Found:    p.where + ": “" + brief(p.said(s.Start, s.End)) + "” begins with a figure",
		Expected: "a word at the head of a sentence",
		Remedies: diag.Fix("begin with what is to be done, and let the " + figure + " follow"),
	}
	if s.first && isNumbered(s.paragraph) {
		finding.Found += ", behind the “" + itemMark(s.paragraph) + "” of its list"
	}
	if n, err := strconv.Atoi(figure); err == nil && smallNumbers[n] != "" {
		word := capital(smallNumbers[n])
		finding.Remedies = append(finding.Remedies, diag.Remedy{
			Do: "write “" + word + "” instead of “" + figure + "”", Changes: []diag.Change{{Where: finding.Where, New: word}},
		})
	}
	return finding
}
