package instructions

import (
	"bytes"

	"tallyfold/kit"
)

// addProse adds bytes of the document's text to the piece of prose being
// gathered, or begins another when more than blanks and line ends stand between.
func (p *passage) addProse(start, end int) {
	if start >= end {
		return
	}
	if p.run.end == 0 || start < p.run.end || !isBlank(p.document.text[p.run.end:start]) {
		p.endProse()
		p.run.start = start
	}
	p.run.end = end
}

// endProse keeps the piece of prose gathered so far.
func (p *passage) endProse() {
	run := p.run
	p.run = extent{}
	if run.end == 0 || isBlank(p.document.text[run.start:run.end]) {
		return
	}
	span := p.document.span(run.start, run.end)
	p.prose = append(p.prose, kit.Prose{Text: span.Text(), Span: span})
	// A caution counts too: "wear oven gloves" is what the gloves are for.
	p.mention(span.Text(), "", span.Part)
}

func isBlank(text []byte) bool { return len(bytes.TrimSpace(text)) == 0 }
