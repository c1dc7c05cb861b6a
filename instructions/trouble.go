package instructions

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// ReadTrouble reads trouble.md: each level-two heading is a problem. Its links
// are told, not done. k has the method already, whose waits and steps may be
// named here.
func ReadTrouble(file *source.File, k *kit.Kit, amounts quantity.Reader) ([]*kit.Trouble, diag.List) {
	if refused := refuse(file); refused != nil {
		return nil, refused
	}
	r := newReader(file, k, amounts)
	waits, steps := waitNames(k.Method), stepNames(k.Method)
	var all []*kit.Trouble
	for _, s := range r.document.sections() {
		if s.level < 2 {
			r.outsideHeadings(s)
			continue
		}
		trouble := r.trouble(s)
		r.headingTwice(trouble.ID, trouble.Span, "trouble",
			"give this one a name of its own: ## ["+trouble.Title+"](trouble:"+trouble.ID+"-2)")
		all = append(all, trouble)
		r.checkLater(trouble.Operations, waits, steps, nil)
	}
	return all, r.finish()
}

func (r *reader) trouble(s *section) *kit.Trouble {
	title := r.heading(s, string(kit.ToHelp))
	p := &passage{reader: r, onlyTold: true}
	if !title.named {
		p.within(s.heading)
		p.run, p.prose, p.paragraphs = extent{}, nil, nil
	}
	for _, block := range s.blocks {
		p.block(block)
	}
	return &kit.Trouble{
		ID: title.id, Named: title.named, Title: title.text,
		Span: title.span, Body: r.document.span(s.body, s.bodyEnd),
		Operations: p.operations, Cautions: p.cautions, Prose: p.prose, Paragraphs: p.paragraphs,
	}
}

// outsideHeadings tells that text under no heading of a section goes nowhere. A
// level-one heading alone is the title of the file.
func (r *reader) outsideHeadings(s *section) {
	p := &passage{reader: r, onlyTold: true}
	for _, block := range s.blocks {
		p.block(block)
	}
	if s.heading != nil {
		r.heading(s, "")
		p.within(s.heading)
		p.run = extent{}
	}
	if len(s.blocks) == 0 || len(p.prose) == 0 && len(p.operations) == 0 {
		return
	}
	first := r.lines(s.blocks[0])
	r.say(outsideAHeading, first, "", "text before the first level-two heading, which is not printed",
		"a heading “## …” above it", "put a heading before it", "make it a note: <!-- like this -->")
}
