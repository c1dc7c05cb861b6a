package instructions

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// A reader reads one Markdown file of a kit and collects what it has to say.
type reader struct {
	document *document
	kit      *kit.Kit
	language *language
	names    *names
	// translates is the method that this one says in another language, or nil.
	translates *kit.Method
	amounts    quantity.Reader
	found      diag.List
	// read are the parts of the text that were understood as links or are a
	// maker's notes; code the parts in which nothing is read. In order.
	read, code []extent
	// step is the one being read, nil outside steps.
	step *kit.Step
	// asked are the roles whose components were looked for in all runs.
	asked map[roleIn]bool
	// counts are the words that were asked whether they are numbers.
	counts map[string]count
	// headings are those of parts, troubles or sections by the name they make.
	headings map[string]source.Span
}

// An extent is a part of the document's text, in bytes.
type extent struct{ start, end int }

func newReader(file *source.File, k *kit.Kit, amounts quantity.Reader) *reader {
	l, _ := languageFor(amounts.Language)
	return &reader{
		document: parse(file), kit: k, language: l, names: namesOf(k, amounts.Language, l), amounts: amounts,
		asked: map[roleIn]bool{}, counts: map[string]count{}, headings: map[string]source.Span{},
	}
}

func (r *reader) say(rule string, where source.Span, about, found, expected string, remedies ...string) {
	r.found = append(r.found, finding(rule, where, about, found, expected, remedies...))
}

// understood notes a part of the text that need not be looked at for links
// that cannot be read.
func (r *reader) understood(start, end int) {
	r.read = append(r.read, extent{start, end})
}

// finish looks for what only looks like a link and gives all findings.
func (r *reader) finish() diag.List {
	r.findStrays()
	return r.found
}
