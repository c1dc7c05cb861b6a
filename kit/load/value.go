package load

import (
	"bytes"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"

	"tallyfold/kit/source"
)

// A value is a piece of kit.yaml with its place: a text, a list, or lines of keys.
type value struct {
	doc  *document
	node *yaml.Node
	span source.Span
	// whole and from tell of what, and from which byte on, a value is a piece.
	whole *value
	from  int
}

func (d *document) value(n *yaml.Node) value { return value{doc: d, node: n, span: d.span(n)} }

// isText says whether it is a single text, which may be an amount, a name, a date.
func (v value) isText() bool { return v.node.Kind == yaml.ScalarNode }

func (v value) isList() bool { return v.node.Kind == yaml.SequenceNode }

func (v value) isKeys() bool { return v.node.Kind == yaml.MappingNode }

// nothing says whether nothing stands there.
func (v value) nothing() bool { return v.isText() && strings.TrimSpace(v.node.Value) == "" }

// isNull says whether a word without quotation marks is YAML's word for nothing.
func (v value) isNull() bool { return v.isText() && v.node.Tag == "!!null" && !v.quoted() }

// text is the text as the maker wrote it, without quotation marks. What YAML
// makes of it (a number, a date, yes) is not asked.
func (v value) text() string { return v.node.Value }

// quoted says whether the text stands between quotation marks or as a block.
func (v value) quoted() bool { return v.node.Style&^yaml.FlowStyle != 0 }

// oneLine is the text with line ends and runs of spaces as one space.
func (v value) oneLine() string { return strings.Join(strings.Fields(v.node.Value), " ") }

// inBrackets says whether a mapping or list is written in { } or [ ].
func (v value) inBrackets() bool { return v.node.Style&yaml.FlowStyle != 0 }

// head is the place to point at for lines of keys as a whole: the first key.
func (v value) head() source.Span {
	if len(v.node.Content) == 0 {
		return v.span
	}
	return v.doc.span(v.node.Content[0])
}

// items are the entries of a list.
func (v value) items() []value {
	items := make([]value, len(v.node.Content))
	for i, n := range v.node.Content {
		items[i] = v.doc.value(n)
	}
	return items
}

// piece is bytes start to end of the text, as a value of its own.
func (v value) piece(start, end int) value {
	node := &yaml.Node{Kind: yaml.ScalarNode, Value: v.node.Value[start:end]}
	return value{doc: v.doc, node: node, span: v.part(start, end), whole: &v, from: start}
}

// part is the place of bytes start to end of the text.
func (v value) part(start, end int) source.Span {
	if v.whole != nil {
		return v.whole.part(v.from+start, v.from+end)
	}
	start, end = min(max(start, 0), len(v.node.Value)), min(max(end, start, 0), len(v.node.Value))
	text := v.doc.file.Text
	at := v.doc.scalarStart(v.node, v.span.Start)
	if bytes.HasPrefix(text[at:], []byte(v.node.Value)) && !bytes.ContainsRune([]byte(v.node.Value), '\\') {
		return v.doc.file.Span(at+start, at+end)
	}
	places, last := align(text, at, v.node)
	if end < len(v.node.Value) {
		last = places[end]
	}
	return v.doc.file.Span(places[start], max(places[start], last))
}

// mostShown is how many characters of what was found are shown.
const mostShown = 60

// told says what stands there, short enough for a line.
func (v value) told() string {
	switch {
	case v.nothing():
		return "nothing"
	case v.isList():
		return "a list"
	case v.isKeys():
		return "lines of keys and values"
	}
	return quote(v.oneLine())
}

// quote puts a text between quotation marks, cut short where it is long.
func quote(text string) string {
	if runes := []rune(text); len(runes) > mostShown {
		text = string(runes[:mostShown]) + "…"
	}
	return "“" + text + "”"
}

// hasLetter says whether there is any letter in the text.
func hasLetter(text string) bool { return strings.IndexFunc(text, unicode.IsLetter) >= 0 }

// smuggled says whether the text holds a character that no text file of a kit may
// hold, which an escape (“\u0000”) has brought in.
func (v value) smuggled() bool {
	_, _, ok := source.NewFile("", []byte(v.node.Value)).OddText()
	return !ok || strings.ContainsAny(v.node.Value, "\ufeff\ufffe\uffff")
}
