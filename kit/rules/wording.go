package rules

import (
	"strings"
	"unicode/utf8"

	"tallyfold/kit"
	"tallyfold/kit/readability"
	"tallyfold/kit/source"
)

// What the rules on wording share: passages, and the sentences in them.

// A passage is a step or a trouble as the customer reads it.
type passage struct {
	reading
	// about is the key of the step or trouble, where names it in a sentence.
	about, where string
	step         *kit.Step // nil for a trouble
	paragraphs   []source.Span
}

// passages gives all steps, then all troubles, without their cautions.
func passages(k *kit.Kit) []passage {
	var all []passage
	for _, step := range k.Method.Steps() {
		all = append(all, passage{readStep(step), step.ID, inStep(step), step, step.Paragraphs})
	}
	for _, trouble := range k.Troubles {
		all = append(all, passage{readTrouble(trouble), trouble.ID, inTrouble(trouble), nil, trouble.Paragraphs})
	}
	return all
}

// inTrouble names a trouble for a sentence.
func inTrouble(trouble *kit.Trouble) string { return "the help with “" + trouble.Title + "”" }

// A sentence has its bytes in the text of the passage.
type sentence struct {
	readability.Sentence
	paragraph source.Span
	// first: it begins the paragraph.
	first bool
}

// sentences cuts a passage, each paragraph for itself.
func (p passage) sentences(l *readability.Language) []sentence {
	var all []sentence
	for _, paragraph := range p.paragraphs {
		from, to := paragraph.Start-p.at.Start, paragraph.End-p.at.Start
		if from < 0 || to > len(p.text) || from > to {
			continue
		}
		for i, s := range l.Sentences(p.text[from:to]) {
			s.Start, s.End = s.Start+from, s.End+from
			for n := range s.Words {
				s.Words[n].Start, s.Words[n].End = s.Words[n].Start+from, s.Words[n].End+from
			}
			all = append(all, sentence{s, paragraph, i == 0})
		}
	}
	return all
}

// place is where a sentence stands. A link at its end counts whole.
func (p passage) place(s sentence) source.Span {
	at := p.at.Part(s.Start, s.End)
	if link := p.link(p.at.Part(s.Words[0].Start, s.Words[0].End)); link != nil {
		at.Start = link.Span.Start
	}
	last := s.Words[len(s.Words)-1]
	if link := p.link(p.at.Part(last.Start, last.End)); link != nil {
		at.End = max(at.End, link.Span.End)
	}
	return at
}

// said is what a customer reads at bytes of the text, on one line.
func (r reading) said(start, end int) string {
	return strings.NewReplacer(" .", ".", " ,", ",").Replace(strings.Join(strings.Fields(r.text[start:end]), " "))
}

// brief shortens what is quoted in a finding.
func brief(text string) string {
	const longest = 60
	if utf8.RuneCountInString(text) <= longest {
		return text
	}
	short := string([]rune(text)[:longest-1])
	if at := strings.LastIndexByte(short, ' '); at > 0 {
		short = short[:at]
	}
	return short + " …"
}

// isNumbered says whether a paragraph is an item of an ordered list.
func isNumbered(paragraph source.Span) bool {
	mark := itemMark(paragraph)
	return strings.HasSuffix(mark, ".") || strings.HasSuffix(mark, ")")
}

// isItem says whether a paragraph is an item of a list or the cell of a table.
func isItem(paragraph source.Span) bool { return itemMark(paragraph) != "" }

// itemMark is what stands in the line before a paragraph: the mark of a list ("1.",
// "-") or a table ("|"), "" for plain text.
func itemMark(paragraph source.Span) string {
	text := paragraph.File.Text
	line := paragraph.Start
	for line > 0 && text[line-1] != '\n' && text[line-1] != '\r' {
		line--
	}
	return strings.TrimSpace(string(text[line:paragraph.Start]))
}
