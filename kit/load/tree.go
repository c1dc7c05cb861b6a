package load

import (
	"gopkg.in/yaml.v3"

	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// This file gives kit.yaml as it is written, for those who change it: what stands
// where, and in which spelling. What it means is not asked.

// A Part is one value of kit.yaml with its place: a text, a list, or keys with
// values.
type Part struct {
	Kind PartKind
	// Span is from the first byte of the value to its last, quotation marks and
	// brackets included. Of a block of text it begins at the “|” or “>”.
	Span source.Span
	// Text is the value of a TextPart, without quotation marks, escapes resolved.
	Text     string
	Spelling Spelling
	// InBrackets: a list in [ ], or keys in { }.
	InBrackets bool
	// Entries are those of a list or of keys, in the order of the file.
	Entries []PartEntry
}

// PartKind is what a Part is.
type PartKind int

// The kinds of Part.
const (
	TextPart PartKind = iota + 1
	ListPart
	KeysPart
)

// Spelling is how a text is written.
type Spelling int

// The spellings of a text.
const (
	Plain        Spelling = iota + 1
	SingleQuoted          // 'a'
	DoubleQuoted          // "a"
	Lines                 // | and the lines under it
	Folded                // > and the lines under it
)

// A PartEntry is one entry of a Part.
type PartEntry struct {
	// Key and KeySpan are empty in a list. KeySpan includes quotation marks.
	Key     string
	KeySpan source.Span
	Value   *Part
}

// Nothing says whether nothing at all is written there.
func (p *Part) Nothing() bool {
	return p.Kind == TextPart && p.Spelling == Plain && p.Text == ""
}

// Tree reads kit.yaml as parts. The part is nil only if the file was refused whole;
// the list then says why. A file that says nothing is keys without an entry.
func Tree(file *source.File) (*Part, diag.List) {
	doc, refused := open(file)
	switch {
	case doc == nil:
		return nil, refused.Sorted()
	case doc.root == nil:
		return &Part{Kind: KeysPart, Span: file.Span(len(file.Text), len(file.Text))}, nil
	}
	return doc.part(doc.root), nil
}

func (d *document) part(n *yaml.Node) *Part {
	p := &Part{Span: d.span(n)}
	bracket := byte(0)
	if p.Span.Start < len(d.file.Text) {
		bracket = d.file.Text[p.Span.Start]
	}
	switch n.Kind {
	case yaml.MappingNode:
		p.Kind, p.InBrackets = KeysPart, n.Style&yaml.FlowStyle != 0 && bracket == '{'
		for i := 0; i+1 < len(n.Content); i += 2 {
			p.Entries = append(p.Entries, PartEntry{Key: n.Content[i].Value, KeySpan: d.span(n.Content[i]), Value: d.part(n.Content[i+1])})
		}
	case yaml.SequenceNode:
		p.Kind, p.InBrackets = ListPart, n.Style&yaml.FlowStyle != 0 && bracket == '['
		for _, item := range n.Content {
			p.Entries = append(p.Entries, PartEntry{Value: d.part(item)})
		}
	default:
		p.Kind, p.Text, p.Spelling = TextPart, n.Value, spellingOf(n)
	}
	return p
}

func spellingOf(n *yaml.Node) Spelling {
	switch {
	case n.Style&yaml.DoubleQuotedStyle != 0:
		return DoubleQuoted
	case n.Style&yaml.SingleQuotedStyle != 0:
		return SingleQuoted
	case n.Style&yaml.LiteralStyle != 0:
		return Lines
	case n.Style&yaml.FoldedStyle != 0:
		return Folded
	}
	return Plain
}

// ReadsAsOther says whether a word without quotation marks could be taken for
// something else than a word: yes, no, nothing, or by other programs a number.
func ReadsAsOther(word string) bool {
	_, isWord := plainScalar(word).(string)
	return !isWord || isSwitch(word) || word == "~"
}
