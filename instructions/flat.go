package instructions

import (
	"bytes"
	"slices"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/util"

	"tallyfold/kit/source"
)

// A flat is what a customer reads of a piece of Markdown: no emphasis marks, no
// escapes, a space for a line end. Each of its bytes knows where it came from.
type flat struct {
	document   *document
	text       []byte
	start, end []int // of each byte, in the document's text
}

// flatten gives the text inside a block or inline node.
func (d *document) flatten(node ast.Node) *flat {
	f := &flat{document: d}
	f.children(node)
	return f
}

func (f *flat) String() string { return string(f.text) }

// span is the place of bytes start to end of the flat text.
func (f *flat) span(start, end int) source.Span {
	start, end = max(start, 0), min(end, len(f.text))
	if start >= end {
		return source.Span{}
	}
	return f.document.span(f.start[start], f.end[end-1])
}

func (f *flat) children(node ast.Node) {
	for child := node.FirstChild(); child != nil; child = child.NextSibling() {
		f.node(child)
	}
}

func (f *flat) node(node ast.Node) {
	switch n := node.(type) {
	case *ast.Text:
		f.segment(n.Segment.Start, n.Segment.Stop, n.IsRaw() || insideCode(n))
		if n.SoftLineBreak() || n.HardLineBreak() {
			f.add(' ', n.Segment.Stop, n.Segment.Stop)
		}
	case *ast.AutoLink:
		if at, ok := f.document.offset(n.Label(f.document.text)); ok {
			f.segment(at, at+len(n.Label(f.document.text)), true)
		}
	case *ast.RawHTML:
		f.rawHTML(n)
	default:
		if last := len(f.end) - 1; last >= 0 && node.Type() == ast.TypeBlock {
			f.add(' ', f.end[last], f.end[last])
		}
		f.children(node)
	}
}

// rawHTML is shown as text, except a maker's notes.
func (f *flat) rawHTML(n *ast.RawHTML) {
	if isNote(n.Segments.Value(f.document.text)) {
		return
	}
	for i := range n.Segments.Len() {
		segment := n.Segments.At(i)
		f.segment(segment.Start, segment.Stop, true)
	}
}

func insideCode(n ast.Node) bool {
	_, ok := n.Parent().(*ast.CodeSpan)
	return ok
}

// segment adds bytes of the document's text, escapes and entities resolved
// unless they stand raw in code or HTML.
func (f *flat) segment(start, end int, raw bool) {
	f.text, f.start, f.end = slices.Grow(f.text, end-start+1), slices.Grow(f.start, end-start+1), slices.Grow(f.end, end-start+1)
	for at := start; at < end; {
		size := 1
		switch c := f.document.text[at]; {
		case !raw && c == '\\' && at+1 < end && util.IsPunct(f.document.text[at+1]):
			f.add(f.document.text[at+1], at, at+2)
			size = 2
		case !raw && c == '&':
			size = f.entity(at, end)
		case c == '\n':
			f.add(' ', at, at+1)
		default:
			f.add(c, at, at+1)
		}
		at += size
	}
}

// maxEntity is the length of the longest named character with "&" and ";".
const maxEntity = 34

// entity adds the character that "&nbsp;" or "&#189;" stands for, or a plain "&".
// It gives how many bytes were read.
func (f *flat) entity(at, end int) int {
	written := f.document.text[at:min(at+maxEntity, end)]
	if semicolon := bytes.IndexByte(written, ';'); semicolon > 0 {
		written = written[:semicolon+1]
		resolved := util.ResolveEntityNames(util.ResolveNumericReferences(bytes.Clone(written)))
		if !bytes.Equal(resolved, written) {
			for _, c := range resolved {
				f.add(c, at, at+len(written))
			}
			return len(written)
		}
	}
	f.add('&', at, at+1)
	return 1
}

func (f *flat) add(c byte, start, end int) {
	f.text = append(f.text, c)
	f.start = append(f.start, start)
	f.end = append(f.end, end)
}
