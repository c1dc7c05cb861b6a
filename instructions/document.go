package instructions

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"tallyfold/kit/source"
)

// A document is one parsed Markdown file, with what leads every piece of its
// tree back to bytes of the maker's file.
type document struct {
	file *source.File
	// text is what the parser read: the file without its byte order mark and with
	// LF for every kind of line end, so that all three are read alike.
	text []byte
	// places gives for each byte of text, and for its end, the byte of the file;
	// nil when they are the same.
	places []int
	root   ast.Node
	links  map[ast.Node]linkPlace
}

func parse(file *source.File) *document {
	d := &document{file: file, links: map[ast.Node]linkPlace{}}
	d.text, d.places = unifyLineEnds(file.Text, file.WithoutMark())
	context := parser.NewContext()
	context.Set(linkPlacesKey, d.links)
	d.root = markdown.Parser().Parse(text.NewReader(d.text), parser.WithContext(context))
	return d
}

// unifyLineEnds gives the text from byte start on with LF line ends, and where
// each byte of it stands in the original.
func unifyLineEnds(original []byte, start int) (unified []byte, places []int) {
	if start == 0 && bytes.IndexByte(original, '\r') < 0 {
		return original, nil
	}
	unified = make([]byte, 0, len(original))
	places = make([]int, 0, len(original)+1)
	for i := start; i < len(original); i++ {
		c, at := original[i], i
		if c == '\r' {
			c = '\n'
			if i+1 < len(original) && original[i+1] == '\n' {
				i++
			}
		}
		unified = append(unified, c)
		places = append(places, at)
	}
	return unified, append(places, len(original))
}

// span is the place in the maker's file of bytes start to end of the text.
func (d *document) span(start, end int) source.Span {
	if d.places == nil {
		return d.file.Span(start, end)
	}
	start = min(max(start, 0), len(d.text))
	end = min(max(end, start), len(d.text))
	return d.file.Span(d.places[start], d.places[end])
}

// offset finds where in the text a piece stands that the parser cut out of it.
// ok is false for a piece that is no cut but a copy.
func (d *document) offset(piece []byte) (at int, ok bool) {
	if cap(piece) == 0 || cap(piece) > cap(d.text) {
		return 0, false
	}
	at = cap(d.text) - cap(piece)
	if at+len(piece) > len(d.text) || len(piece) == 0 {
		return at, at <= len(d.text) && len(piece) == 0 && len(d.text) > 0
	}
	return at, &d.text[at] == &piece[0]
}

// lineStart is the first byte of the line in which byte at stands.
func (d *document) lineStart(at int) int {
	return bytes.LastIndexByte(d.text[:at], '\n') + 1
}

// lineEnd is the end of the line in which byte at stands, before its line end.
func (d *document) lineEnd(at int) int {
	if end := bytes.IndexByte(d.text[at:], '\n'); end >= 0 {
		return at + end
	}
	return len(d.text)
}

// nextLine is the first byte of the line after the one in which byte at stands.
func (d *document) nextLine(at int) int {
	return min(d.lineEnd(at)+1, len(d.text))
}
