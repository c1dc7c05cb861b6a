package instructions

import (
	"github.com/yuin/goldmark/ast"
)

// A section is a heading of level one or two and what stands under it, up to
// the next such heading. Bytes in the document's text.
type section struct {
	heading *ast.Heading // nil for what stands before the first heading
	level   int          // 0, 1 or 2
	// start and end of the heading's lines, without the last line end; body is
	// from the line after them up to bodyEnd.
	start, end    int
	body, bodyEnd int
	blocks        []ast.Node
}

// sections cuts a document at its headings of level one and two. The first has
// no heading and may be empty. Headings in quotations and lists cut nothing.
func (d *document) sections() []*section {
	current := &section{}
	all := []*section{current}
	for block := d.root.FirstChild(); block != nil; block = block.NextSibling() {
		heading, ok := block.(*ast.Heading)
		if !ok || heading.Level > 2 {
			current.blocks = append(current.blocks, block)
			continue
		}
		start, end := d.headingLines(heading)
		current.bodyEnd = start
		current = &section{heading: heading, level: heading.Level, start: start, end: end, body: d.nextLine(end)}
		all = append(all, current)
	}
	current.bodyEnd = len(d.text)
	return all
}

// headingLines gives the whole lines of a heading: one that begins with "#", or
// several with the line of "=" or "-" under them.
func (d *document) headingLines(heading *ast.Heading) (start, end int) {
	start = d.lineStart(min(max(heading.Pos(), 0), len(d.text)))
	lines := heading.Lines()
	if lines.Len() == 0 || d.beginsWithMarks(heading) {
		return start, d.lineEnd(start)
	}
	start = d.lineStart(lines.At(0).Start)
	last := lines.At(lines.Len() - 1)
	return start, d.lineEnd(d.nextLine(last.Start))
}

// beginsWithMarks says whether the heading is written with "#" rather than
// underlined. The text of an underlined one may begin with "#" too, but not with
// "#" and a space.
func (d *document) beginsWithMarks(heading *ast.Heading) bool {
	line := d.text[min(max(heading.Pos(), 0), len(d.text)):]
	marks := 0
	for marks < len(line) && line[marks] == '#' {
		marks++
	}
	return marks > 0 && marks <= 6 && (marks == len(line) || line[marks] == ' ' || line[marks] == '\t' || line[marks] == '\n')
}
