package instructions

import (
	"strings"

	"github.com/yuin/goldmark/ast"

	"tallyfold/kit"
	"tallyfold/kit/source"
)

// A LinkName is a name in the destination of a link: “wax” in take:wax, “jug” in
// take:wax?into=jug.
type LinkName struct {
	Kind kit.Kind // of the link
	// Param is the word before the name behind the question mark, "" for the name
	// behind the colon.
	Param string
	Name  string
	// Span is where the name stands; of a name written with escapes, its whole
	// destination.
	Span source.Span
}

// LinkNames lists all names in the destinations of one Markdown file, in the order of
// the file, whatever they mean; none of a file that is refused whole.
func LinkNames(file *source.File) []LinkName {
	if len(refuse(file)) > 0 {
		return nil
	}
	r := &reader{document: parse(file)}
	var all []LinkName
	var walk func(ast.Node)
	walk = func(n ast.Node) {
		switch link := n.(type) {
		case *ast.Link:
			all = append(all, namesIn(r.linkAt(link, link.Destination, false).destination)...)
		case *ast.Image:
			all = append(all, namesIn(r.linkAt(link, link.Destination, true).destination)...)
		}
		for child := n.FirstChild(); child != nil; child = child.NextSibling() {
			walk(child)
		}
	}
	walk(r.document.root)
	return all
}

func namesIn(d destination) []LinkName {
	if meaningOf(d.scheme.text) == nil {
		return nil
	}
	kind := kit.Kind(d.scheme.text)
	all := []LinkName{{Kind: kind, Name: d.target.text, Span: d.target.span}}
	for _, one := range d.params {
		at := 0
		for name := range strings.SplitSeq(one.value.text, ",") {
			span := one.value.span
			if span.Text() == one.value.text {
				span = span.Part(at, at+len(name))
			}
			all = append(all, LinkName{Kind: kind, Param: one.name.text, Name: name, Span: span})
			at += len(name) + 1
		}
	}
	return all
}
