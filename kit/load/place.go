package load

import (
	"bytes"
	"strings"
	"unicode"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"tallyfold/kit/source"
)

// This file finds the exact bytes of everything the YAML reader read. Its nodes
// know only where they begin, as a line and a column counted in characters, and
// never where they end; the end is worked out from the text.

// A document is kit.yaml as read: its tree and its text.
type document struct {
	file *source.File
	root *yaml.Node // nil for a file that says nothing
	// plain: the text has only one-byte characters, so that columns are bytes.
	plain bool
	// columns has, for lines looked at, the byte of each character.
	columns map[int][]int
}

// at gives the byte of a line and column of the YAML reader, both from 1.
func (d *document) at(line, column int) int {
	start := d.file.LineStart(line)
	if line == 1 {
		start = d.file.WithoutMark()
	}
	if d.plain {
		return min(start+column-1, len(d.file.Text))
	}
	places, ok := d.columns[line]
	if !ok {
		places = characters(d.file.Text[start:d.file.LineStart(line+1)], start)
		d.columns[line] = places
	}
	return places[min(max(column-1, 0), len(places)-1)]
}

// characters gives the byte of each character of a line that begins at byte
// start, and of its end.
func characters(line []byte, start int) []int {
	places := make([]int, 0, len(line)+1)
	for i := range string(line) {
		places = append(places, start+i)
	}
	return append(places, start+len(line))
}

// span gives the place of a node, from its first byte to its last.
func (d *document) span(n *yaml.Node) source.Span {
	start := d.at(n.Line, n.Column)
	return d.file.Span(start, max(start, d.end(n, start)))
}

func (d *document) end(n *yaml.Node, start int) int {
	switch {
	case n.Kind == yaml.ScalarNode:
		return d.scalarEnd(n, start)
	case n.Style&yaml.FlowStyle != 0 && start < len(d.file.Text) && strings.IndexByte("{[", d.file.Text[start]) >= 0:
		return d.closing(n, start)
	case len(n.Content) > 0:
		return d.lastEnd(n)
	}
	return start
}

// lastEnd is where the last thing inside a mapping or list ends.
func (d *document) lastEnd(n *yaml.Node) int {
	last := n.Content[len(n.Content)-1]
	return d.end(last, d.at(last.Line, last.Column))
}

// closing is the byte after the bracket that closes a mapping or list written in
// brackets. Between its last thing and the bracket stand only spaces, line ends,
// a comma and comments.
func (d *document) closing(n *yaml.Node, start int) int {
	text, at := d.file.Text, start+1
	if len(n.Content) > 0 {
		at = d.lastEnd(n)
	}
	for ; at < len(text); at++ {
		switch text[at] {
		case '}', ']':
			return at + 1
		case '#':
			for at+1 < len(text) && text[at+1] != '\n' && text[at+1] != '\r' {
				at++
			}
		}
	}
	return len(text)
}

func (d *document) scalarEnd(n *yaml.Node, start int) int {
	text := d.file.Text
	switch {
	case n.Style&yaml.DoubleQuotedStyle != 0:
		return quoteEnd(text, start, '"')
	case n.Style&yaml.SingleQuotedStyle != 0:
		return quoteEnd(text, start, '\'')
	case spellingOf(n) == Plain && bytes.HasPrefix(text[start:], []byte(n.Value)):
		return start + len(n.Value) // what a block of text says may begin like its sign
	}
	_, end := align(text, d.scalarStart(n, start), n)
	return end
}

// scalarStart is the byte where the content of a text begins: after its quotation
// mark, or on the line after the “|” or “>” of a block of text.
func (d *document) scalarStart(n *yaml.Node, start int) int {
	switch {
	case n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0:
		return min(start+1, len(d.file.Text))
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		for start < len(d.file.Text) && d.file.Text[start] != '\n' && d.file.Text[start] != '\r' {
			start++
		}
	}
	return start
}

// quoteEnd is the byte after the mark that closes a quoted text.
func quoteEnd(text []byte, start int, mark byte) int {
	for at := start + 1; at < len(text); at++ {
		switch {
		case mark == '"' && text[at] == '\\':
			at++
		case text[at] != mark:
		case mark == '\'' && at+1 < len(text) && text[at+1] == mark:
			at++
		default:
			return at + 1
		}
	}
	return len(text)
}

// align walks the value of a text and the bytes it was written with side by
// side, and gives the byte of the file for each byte of the value, and the byte
// after the last. Line ends and indentation that YAML folds away are stepped over.
func align(text []byte, at int, n *yaml.Node) (places []int, end int) {
	double := n.Style&yaml.DoubleQuotedStyle != 0
	single := n.Style&yaml.SingleQuotedStyle != 0
	places = make([]int, 0, len(n.Value)+1)
	end = at
	for _, r := range n.Value {
		blank := r == ' ' || r == '\n' || r == '\t'
		at = stepOver(text, at, double, blank)
		for range utf8.RuneLen(r) {
			places = append(places, min(at, len(text)))
		}
		switch {
		case double && at < len(text) && text[at] == '\\':
			at += escapeLength(text[at:])
		case single && r == '\'':
			at += 2
		case !blank:
			at += utf8.RuneLen(r)
		case at < len(text) && text[at] == byte(r):
			at++
		}
		if at = min(at, len(text)); !blank {
			end = at
		}
	}
	return append(places, at), end
}

// stepOver skips line ends that a backslash hides, and before a visible
// character all blank ones.
func stepOver(text []byte, at int, double, blank bool) int {
	for at < len(text) {
		switch {
		case double && text[at] == '\\' && at+1 < len(text) && (text[at+1] == '\n' || text[at+1] == '\r'):
			at += 2
			for at < len(text) && unicode.IsSpace(rune(text[at])) {
				at++
			}
		case !blank && strings.IndexByte(" \t\r\n", text[at]) >= 0:
			at++
		default:
			return at
		}
	}
	return at
}

// escapeLength is how many bytes an escape such as \n or \u00e9 takes.
func escapeLength(text []byte) int {
	if len(text) < 2 {
		return len(text)
	}
	switch text[1] {
	case 'x':
		return 4
	case 'u':
		return 6
	case 'U':
		return 10
	}
	return 2
}
