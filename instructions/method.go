package instructions

import (
	"strings"

	"github.com/yuin/goldmark/ast"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/load"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// ReadMethod reads the steps of a method over the names of k. amounts reads
// amounts the way k writes them. A file that is refused gives no parts.
func ReadMethod(file *source.File, k *kit.Kit, amounts quantity.Reader) (kit.Method, diag.List) {
	method := kit.Method{File: file}
	if refused := refuse(file); refused != nil {
		return method, refused
	}
	m := methodReader{reader: newReader(file, k, amounts), method: &method}
	m.checkLanguage(k.Language.Value, k.Language.Span)
	for _, s := range m.document.sections() {
		m.section(s)
	}
	m.judge()
	return method, m.finish()
}

// A methodReader reads one method, section by section.
type methodReader struct {
	*reader
	method *kit.Method
	part   *kit.Part // the one being read
	number int       // of the last step
}

func (m *methodReader) section(s *section) {
	switch s.level {
	case 1:
		m.beginPart(s)
	case 2:
		m.step(s)
	default:
		if len(s.blocks) > 0 {
			m.begin(&kit.Part{})
			m.introduction(s)
		}
	}
}

// begin opens a part. One without a name is opened by whatever stands before the
// first level-one heading.
func (m *methodReader) begin(part *kit.Part) {
	m.inSource(part)
	m.part = part
	m.method.Parts = append(m.method.Parts, part)
}

func (m *methodReader) beginPart(s *section) {
	title := m.heading(s, "")
	part := &kit.Part{ID: title.id, Title: title.text, Span: title.span}
	m.headingTwice(part.ID, part.Span, "part", "give it another heading")
	m.begin(part)
	m.headingLinks(s, m.passage("", true))
	m.introduction(s)
}

// introduction reads what stands in a part before its first step: told, not done.
func (m *methodReader) introduction(s *section) {
	p := m.passage("", true)
	for _, block := range s.blocks {
		p.block(block)
	}
	m.part.Body = m.document.span(s.body, s.bodyEnd)
	m.part.Prose, m.part.Operations, m.part.Cautions = p.prose, p.operations, p.cautions
	for _, operation := range p.operations {
		m.refuseDoing(operation)
	}
}

// refuseDoing tells that something would happen where no step is.
func (m *methodReader) refuseDoing(operation *kit.Operation) {
	if isDoing(operation.Kind) {
		m.say(outsideAStep, operation.Span, operation.Target, quoted(operation.Text)+" ("+string(operation.Kind)+":) outside any step",
			"a level-two heading before it, which begins a step", "put a heading “## …” before it", "move it into a step")
	}
}

func isDoing(kind kit.Kind) bool {
	for _, one := range doing {
		if kind == one {
			return true
		}
	}
	return false
}

func (m *methodReader) step(s *section) {
	if m.part == nil {
		m.begin(&kit.Part{})
	}
	title := m.heading(s, string(kit.ToStep))
	m.number++
	step := &kit.Step{
		ID: title.id, Named: title.named, Number: m.number, Title: title.text,
		Span: title.span, Body: m.document.span(s.body, s.bodyEnd),
		Vessel: title.vessel.text, VesselSpan: title.vessel.span,
	}
	if step.ID == "" {
		step.ID = "step-" + quantity.Whole(int64(step.Number)).String()
	}
	m.reader.step = step
	defer func() { m.reader.step = nil }()
	if step.Vessel != "" {
		m.checkTarget("?in=", title.vessel, vessels, m.part)
	}
	step.Of = kit.Said[string]{Value: title.of.text, Span: title.of.span}
	m.vesselOfSource(step)
	p := m.passage(step.Vessel, false)
	if !title.named {
		m.headingLinks(s, p)
	}
	for _, block := range s.blocks {
		p.block(block)
	}
	p.mention(step.Title, step.Vessel, func(start, end int) source.Span { return title.flat.span(start, end) })
	step.Operations, step.Cautions, step.Prose, step.Mentions = p.operations, p.cautions, p.prose, p.mentions
	step.Paragraphs = p.paragraphs
	m.part.Steps = append(m.part.Steps, step)
	m.judgeStep(step)
}

func (m *methodReader) passage(vessel string, onlyTold bool) *passage {
	return &passage{reader: m.reader, part: m.part, vessel: vessel, onlyTold: onlyTold}
}

// headingLinks reads the links of a heading that is not itself one link: what
// they say happens.
func (m *methodReader) headingLinks(s *section, p *passage) {
	p.within(s.heading)
	p.run, p.prose, p.mentions, p.paragraphs = extent{}, nil, nil, nil
	for _, operation := range p.operations {
		if operation.Kind == kit.ToStep {
			m.say(unreadableLink, operation.Span, operation.Target, "a link to a step beside other words of a heading",
				"a heading that is one link, which names the step", "put the whole heading into the square brackets")
		}
		if p.onlyTold {
			m.refuseDoing(operation)
		}
	}
}

func (m *methodReader) judgeStep(step *kit.Step) {
	if m.translates != nil {
		return // it says what its source says, and that is judged
	}
	if step.Title == "" {
		m.say(stepWithoutTitle, step.Span, step.ID, "a heading without words", "a few words that say what the step does", "write them behind “##”")
	}
	for _, operation := range step.Operations {
		if isDoing(operation.Kind) && !operation.Aside {
			return
		}
	}
	m.say(stepWithoutAction, step.Span, step.ID, "nothing in step "+quantity.Whole(int64(step.Number)).String()+" is taken, moved, heated or waited for",
		"at least the time it takes", "say how long it takes: [5 minutes](work:)", "make it part of the step before or after")
}

// judge looks at the method as a whole.
func (m *methodReader) judge() {
	if len(m.method.Steps()) == 0 {
		m.say(noSteps, m.document.file.Whole(), "", "a method without a step", "a level-two heading for each step",
			"put “## ” and a title before each step")
	}
	waits, steps := waitNames(*m.method), stepNames(*m.method)
	for _, part := range m.method.Parts {
		m.checkLater(part.Operations, waits, steps, part)
		for _, step := range part.Steps {
			m.checkLater(step.Operations, waits, steps, part)
		}
	}
	m.checkTwice(*m.method)
	if m.translates == nil {
		m.checkParts(*m.method)
	}
	m.checkChoices(*m.method)
}

// A title is what a heading says: its words, the name it gives, the vessel.
type title struct {
	text   string
	flat   *flat
	id     string
	named  bool
	vessel word
	of     word // fingerprint of the step that it translates
	span   source.Span
}

// heading reads a heading. One that is one link of the kind gives its own name;
// otherwise the name is made from the words. kind is "" where no link names it.
func (m *reader) heading(s *section, kind string) title {
	t := title{flat: m.document.flatten(s.heading), span: m.document.span(s.start, s.end)}
	t.text = strings.TrimSpace(t.flat.String())
	t.id = load.Slug(t.text)
	only := onlyLink(s.heading)
	if kind == "" || only == nil || !strings.HasPrefix(string(only.Destination), kind+":") {
		return t
	}
	l := m.linkAt(only, only.Destination, false)
	m.understood(l.start, l.end)
	t.named = true
	p := passage{reader: m}
	for _, one := range p.params(l, m.paramsOfHeading(kind), kind+": in a heading") {
		switch one.name.text {
		case "in":
			t.vessel = one.value
		case "of":
			t.of = one.value
		}
	}
	switch name := l.destination.target; {
	case isName(name.text):
		t.id = name.text
	case name.text == "":
		p.unreadable(l, quoted(kind+":")+" with no name after it", "a name in small letters after the colon", "write "+kind+":"+t.id)
	default:
		m.say(unreadableLink, name.span, name.text, quoted(name.text)+" as a name", "lower-case letters, digits and hyphens",
			"write "+kind+":"+load.Slug(name.text))
	}
	return t
}

// paramsOfHeading: only a step works in a vessel, and only a translated one is of
// another.
func (m *reader) paramsOfHeading(kind string) []string {
	switch {
	case kind != string(kit.ToStep):
		return nil
	case m.translates != nil:
		return []string{"in", "of"}
	}
	return []string{"in"}
}

// onlyLink gives the link that a heading consists of, or nil. A maker's note may
// stand beside it.
func onlyLink(heading *ast.Heading) *ast.Link {
	var only *ast.Link
	for child := heading.FirstChild(); child != nil; child = child.NextSibling() {
		switch n := child.(type) {
		case *ast.RawHTML:
			continue
		case *ast.Link:
			if only == nil {
				only = n
				continue
			}
		}
		return nil
	}
	return only
}
