package load

import (
	"bytes"
	"fmt"
	"io"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// MaxBytes is the largest kit.yaml that is read. A kit of forty components takes
// some ten thousand bytes; a file far beyond that is something else, and the YAML
// reader's worst cases take a quarter of a second at this size.
const MaxBytes = 256 << 10

// maxDepth is how deep things may stand inside each other. The deepest that
// means anything is six: kit, components, one of them, container, inside, a level.
const maxDepth = 16

// maxPlaces is how many places of one kind of refusal are told: the first few
// show what is wrong, a thousand hide everything else.
const maxPlaces = 10

// open reads the text into a tree, or says why the file is refused.
func open(file *source.File) (*document, diag.List) {
	if refused := refuseText(file); len(refused) > 0 {
		return nil, refused
	}
	root, more, stopped, ok := parse(file.Text[file.WithoutMark():])
	if !ok {
		return nil, diag.List{unreadable(file, stopped)}
	}
	d := &document{file: file, plain: plain(file), columns: map[int][]int{}}
	if more != nil {
		return nil, diag.List{refusal(d.secondDocument(more), "a second document in one file",
			"one document: keys and values from the first line to the last",
			"take out the line “---” and what does not belong to this kit")}
	}
	if root == nil {
		return d, nil
	}
	d.root = root.Content[0]
	if refused := d.refuseNodes(); len(refused) > 0 {
		return nil, refused
	}
	return d, nil
}

// parse reads the first document, and the second if there is one; root is nil
// when the text says nothing. When the text cannot be read, stopped is how many
// bytes the reader had taken in when it gave up: never less than the place of
// the trouble.
func parse(text []byte) (root, more *yaml.Node, stopped int, ok bool) {
	feed := &lineFeed{text: text}
	defer func() {
		// The YAML reader is no longer looked after, and its own inner errors are
		// panics. They are a file that cannot be read, nothing worse.
		if recover() != nil {
			root, more, stopped, ok = nil, nil, feed.given, false
		}
	}()
	decoder := yaml.NewDecoder(feed)
	var nodes [2]*yaml.Node
	for i := range nodes {
		var node yaml.Node
		switch err := decoder.Decode(&node); {
		case err == io.EOF:
			return nodes[0], nil, feed.given, true
		case err != nil:
			return nil, nil, feed.given, false
		}
		nodes[i] = &node
	}
	return nodes[0], nodes[1], feed.given, true
}

// A lineFeed hands out a text line by line, so that it is known how far the YAML
// reader came.
type lineFeed struct {
	text  []byte
	given int
}

func (f *lineFeed) Read(into []byte) (int, error) {
	rest := f.text[f.given:]
	if len(rest) == 0 {
		return 0, io.EOF
	}
	if end := bytes.IndexByte(rest, '\n'); end >= 0 {
		rest = rest[:end+1]
	}
	n := copy(into, rest)
	f.given += n
	return n, nil
}

func plain(file *source.File) bool {
	for _, b := range file.Text[file.WithoutMark():] {
		if b >= utf8.RuneSelf {
			return false
		}
	}
	return true
}

// secondDocument is the place of the line that begins the second document.
func (d *document) secondDocument(more *yaml.Node) source.Span {
	for line := more.Line; line > 1; line-- {
		if text := d.file.Line(line); len(text) >= 3 && text[:3] == "---" {
			return d.file.Span(d.file.LineStart(line), d.file.LineStart(line)+3)
		}
	}
	return d.span(more)
}

// refuseText finds what no kit.yaml may hold, before any of it is read.
func refuseText(file *source.File) diag.List {
	if len(file.Text) > MaxBytes {
		return diag.List{refusal(file.Whole(), fmt.Sprintf("a file of %d bytes", len(file.Text)),
			fmt.Sprintf("at most %d bytes; a kit of forty components takes some ten thousand", MaxBytes),
			"look whether this is the right file, and take out what is not part of the kit")}
	}
	return append(oddPlaces(file), tabs(file)...)
}

// oddPlaces tells the first few characters that have no place in a text file.
func oddPlaces(file *source.File) diag.List {
	var refused diag.List
	for rest, from := file, 0; len(refused) < maxPlaces; {
		at, what, ok := rest.OddText()
		if ok {
			break
		}
		refused = append(refused, refusal(file.Span(from+at.Start, from+at.End), what, "plain text in UTF-8",
			"delete it, or save the file again as UTF-8 with your editor"))
		from += at.End
		rest = source.NewFile(file.Name, file.Text[from:])
	}
	return append(refused, nonCharacters(file)...)
}

// nonCharacters finds U+FFFE and U+FFFF, which are valid UTF-8 and still no text.
func nonCharacters(file *source.File) diag.List {
	at := bytes.IndexAny(file.Text, "\ufffe\uffff")
	if at < 0 {
		return nil
	}
	return diag.List{refusal(file.Span(at, at+3), "a code that is no character (U+FFFE or U+FFFF)", "plain text in UTF-8", "delete it")}
}

// tabs finds lines that are set in with a tab, which every editor shows
// differently and YAML does not read.
func tabs(file *source.File) diag.List {
	first, count := source.Span{}, 0
	for line := 1; line <= file.Lines(); line++ {
		text := file.Line(line)
		indent := len(text) - len(bytes.TrimLeft([]byte(text), " \t"))
		tab := bytes.IndexByte([]byte(text[:indent]), '\t')
		if tab < 0 || indent == len(text) || text[indent] == '#' {
			continue
		}
		if count++; count == 1 {
			at := file.LineStart(line) + tab
			first = file.Span(at, at+1)
		}
	}
	switch count {
	case 0:
		return nil
	case 1:
		return diag.List{refusal(first, "a line set in with a tab", "spaces", "put two spaces for the tab")}
	}
	return diag.List{refusal(first, fmt.Sprintf("%d lines set in with a tab, of which this is the first", count), "spaces",
		"put two spaces for each tab")}
}

// refuseNodes finds what YAML can say and kit.yaml may not: all of it makes a
// value stand somewhere else than where it is read.
func (d *document) refuseNodes() diag.List {
	var refused diag.List
	told := map[string]int{}
	tell := func(at source.Span, found, expected, order string) {
		if told[found]++; told[found] <= maxPlaces {
			refused = append(refused, refusal(at, found, expected, order))
		}
	}
	var walk func(n *yaml.Node, depth int)
	walk = func(n *yaml.Node, depth int) {
		start := d.at(n.Line, n.Column)
		mark := d.file.Span(start, start+1)
		switch {
		case depth > maxDepth:
			tell(mark, "things set inside each other more than "+fmt.Sprint(maxDepth)+" deep", "at most six levels",
				"look for a missing closing bracket or a line set in too far")
			return
		case n.Kind == yaml.AliasNode:
			tell(mark, "a value that stands for another one (“*”)", "the value itself, written out, or in quotation marks if it begins with “*”",
				"write the value out")
			return
		case n.Anchor != "":
			tell(mark, "a mark for using a value again (“&”)", "the value alone, or in quotation marks if it begins with “&”",
				"take out the word that begins with “&”")
		case n.Style&yaml.TaggedStyle != 0 || start < len(d.file.Text) && d.file.Text[start] == '!':
			tell(mark, "a type told with “!”", "the value alone, or in quotation marks if it begins with “!”",
				"take out the word that begins with “!”")
		case n.Kind == yaml.ScalarNode && n.Tag == "!!merge":
			tell(d.span(n), "a merge of other keys (“<<”)", "every key written out", "write the keys out here")
		}
		for _, inner := range n.Content {
			walk(inner, depth+1)
		}
	}
	walk(d.root, 1)
	return refused
}

// refusal is the finding that a file is not read at all.
func refusal(where source.Span, found, expected, order string) diag.Finding {
	return diag.Finding{Rule: RefusedFile, Severity: diag.MustFix, Where: where,
		Found: found, Expected: expected, Remedies: diag.Fix(order)}
}
