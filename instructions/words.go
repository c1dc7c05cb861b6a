package instructions

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// wordsHeading names a section in the heading of a translation, as its words make
// another name: "## [Bienvenue](words:welcome)".
const wordsHeading = "words"

// ReadWords reads words.md: each heading of level one or two is a section for
// the booklet. "welcome", "storing", "about-the-maker" and "before-you-start"
// have their places; any other is printed behind them. Links may point at steps,
// troubles and pictures or tell a figure again; nothing is done here.
func ReadWords(file *source.File, k *kit.Kit, amounts quantity.Reader) ([]*kit.Words, diag.List) {
	if refused := refuse(file); refused != nil {
		return nil, refused
	}
	r := newReader(file, k, amounts)
	waits, steps := waitNames(k.Method), stepNames(k.Method)
	var all []*kit.Words
	for _, s := range r.document.sections() {
		if s.level == 0 || s.level == 1 && len(s.blocks) == 0 {
			r.outsideHeadings(s) // the second is the title of the file
			continue
		}
		words := r.words(s)
		r.headingTwice(words.ID, words.Span, "section", "give it another heading, or join the two")
		all = append(all, words)
		r.checkLater(words.Operations, waits, steps, nil)
	}
	return all, r.finish()
}

func (r *reader) words(s *section) *kit.Words {
	title := r.heading(s, wordsHeading)
	p := &passage{reader: r, onlyTold: true}
	if !title.named {
		p.within(s.heading)
		p.run, p.prose = extent{}, nil
	}
	for _, block := range s.blocks {
		p.block(block)
	}
	for _, operation := range p.operations {
		if isDoing(operation.Kind) {
			r.say(outsideAStep, operation.Span, operation.Target, quoted(operation.Text)+" ("+string(operation.Kind)+":) in words.md",
				"what is done in method.md, in a step", "move it into a step", "to tell a figure again, write same: and its name")
		}
	}
	return &kit.Words{
		ID: title.id, Title: title.text,
		Span: title.span, Body: r.document.span(s.body, s.bodyEnd),
		Operations: p.operations, Prose: p.prose,
	}
}
