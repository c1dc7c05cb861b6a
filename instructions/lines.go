package instructions

import (
	"github.com/yuin/goldmark/ast"

	"tallyfold/kit/source"
)

// lines is the place of a block from the first byte of its first line to the end
// of its last.
func (r *reader) lines(node ast.Node) source.Span {
	first, last := r.reach(node)
	if first < 0 {
		first = max(node.Pos(), 0)
		last = first
	}
	return r.document.span(r.document.lineStart(first), r.document.lineEnd(max(last-1, first)))
}

// reach gives the first byte of text in a block and the byte after the last, or
// -1 when it holds no text.
func (r *reader) reach(node ast.Node) (first, last int) {
	first, last = -1, -1
	if node.Type() == ast.TypeInline {
		return first, last
	}
	if lines := node.Lines(); lines != nil && lines.Len() > 0 {
		first, last = lines.At(0).Start, lines.At(lines.Len()-1).Stop
	}
	for child := node.FirstChild(); child != nil; child = child.NextSibling() {
		start, end := r.reach(child)
		if start < 0 {
			continue
		}
		if first < 0 {
			first = start
		}
		first, last = min(first, start), max(last, end)
	}
	return first, last
}
