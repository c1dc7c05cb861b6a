package print

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/ledongthuc/pdf"
	"golang.org/x/net/html"
)

// tagged is an element of a PDF's structure (ISO 32000-2, 14.7).
type tagged struct {
	kind, alt, language, scope string
	below                      []*tagged
}

// structure reads the tree of a PDF's tags.
func structure(t *testing.T, reader *pdf.Reader) *tagged {
	t.Helper()
	root := &tagged{kind: "root"}
	var read func(into *tagged, value pdf.Value, depth int)
	read = func(into *tagged, value pdf.Value, depth int) {
		if depth > 60 {
			t.Fatal("the tags are nested too deep")
		}
		switch value.Kind() {
		case pdf.Array:
			for i := range value.Len() {
				read(into, value.Index(i), depth)
			}
		case pdf.Dict:
			kind := value.Key("S").Name()
			if kind == "" {
				return // marked content or an annotation
			}
			element := &tagged{kind: kind, alt: value.Key("Alt").Text(), language: value.Key("Lang").Text(), scope: scopeOf(value.Key("A"))}
			into.below = append(into.below, element)
			read(element, value.Key("K"), depth+1)
		}
	}
	read(root, reader.Trailer().Key("Root").Key("StructTreeRoot").Key("K"), 0)
	return root
}

// scopeOf finds which cells a table's head is for among its attributes.
func scopeOf(attributes pdf.Value) string {
	if attributes.Kind() == pdf.Array {
		for i := range attributes.Len() {
			if scope := scopeOf(attributes.Index(i)); scope != "" {
				return scope
			}
		}
	}
	return attributes.Key("Scope").Name()
}

// flat lists the tags that a reader is told of, in reading order: level and words are
// added to what must have them.
func (e *tagged) flat() []string {
	var all []string
	switch e.kind {
	case "H1", "H2", "H3", "H4", "H5", "H6", "L", "LI", "Table", "TR", "TD", "Link", "Caption":
		all = append(all, e.kind)
	case "TH":
		all = append(all, "TH "+e.scope)
	case "Figure":
		all = append(all, "Figure "+strings.Join(strings.Fields(e.alt), " "))
	}
	for _, below := range e.below {
		all = append(all, below.flat()...)
	}
	return all
}

// asTagged lists what the tags of a page must be, from its HTML.
func asTagged(page []byte) ([]string, error) {
	root, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		return nil, err
	}
	words := map[string]string{}
	visit(root, func(n *html.Node) bool {
		if id := attributeOf(n, "id"); id != "" {
			words[id] = textOf(n)
		}
		return true
	})
	named := func(n *html.Node) string {
		var said []string
		for _, id := range strings.Fields(attributeOf(n, "aria-labelledby")) {
			said = append(said, words[id])
		}
		return "Figure " + strings.Join(strings.Fields(strings.Join(said, " ")), " ")
	}
	kinds := map[string]string{"ul": "L", "ol": "L", "li": "LI", "table": "Table", "tr": "TR", "td": "TD", "a": "Link", "figcaption": "Caption"}
	var all []string
	visit(root, func(n *html.Node) bool {
		switch n.Data {
		case "h1", "h2", "h3", "h4", "h5", "h6":
			all = append(all, strings.ToUpper(n.Data))
		case "th":
			all = append(all, "TH "+map[string]string{"col": "Column", "row": "Row"}[attributeOf(n, "scope")])
		case "img":
			all = append(all, "Figure "+attributeOf(n, "alt"))
		case "figure":
			if attributeOf(n, "role") == "" {
				all = append(all, named(n))
			}
		case "svg":
			if attributeOf(n, "role") == "img" {
				all = append(all, named(n))
			}
			return false
		default:
			hidden := attributeOf(n, "aria-hidden") == "true"
			if kind, told := kinds[n.Data]; told && !hidden {
				all = append(all, kind)
			}
			return !hidden
		}
		return true
	})
	return all, nil
}

// visit goes through a tree in its order, below an element only where visit says so.
func visit(node *html.Node, each func(*html.Node) bool) {
	if node.Type == html.ElementNode && !each(node) {
		return
	}
	for child := node.FirstChild; child != nil; child = child.NextSibling {
		visit(child, each)
	}
}

func attributeOf(node *html.Node, name string) string {
	for _, attribute := range node.Attr {
		if attribute.Key == name {
			return attribute.Val
		}
	}
	return ""
}

func textOf(node *html.Node) string {
	if node.Type == html.TextNode {
		return node.Data
	}
	var out strings.Builder
	for child := node.FirstChild; child != nil; child = child.NextSibling {
		out.WriteString(textOf(child))
	}
	return out.String()
}

// TestBookletsAreTagged reads the tags of every example's PDF back (ISO 32000-2, 14.7 and
// 14.8; that drawings have words and tables heads is asked by PDF/UA-1, 7.3 and 7.5): they
// are those of the page, in its order, with the same words for what is drawn.
func TestBookletsAreTagged(t *testing.T) {
	for _, page := range examplePages(t) {
		file := printed(t, string(page.html), Options{Paper: A5, Title: page.booklet.Title, Language: page.language, Outline: true})
		reader := read(t, file)
		root := reader.Trailer().Key("Root")
		if !root.Key("MarkInfo").Key("Marked").Bool() || root.Key("Lang").Text() != page.language ||
			!root.Key("ViewerPreferences").Key("DisplayDocTitle").Bool() ||
			reader.Trailer().Key("Info").Key("Title").Text() != page.booklet.Title {
			t.Errorf("%s does not say that it is tagged, what it is called, or its language", page.name)
		}
		want, err := asTagged(page.html)
		if err != nil {
			t.Fatal(err)
		}
		tags := structure(t, reader)
		if diff := cmp.Diff(want, tags.flat()); diff != "" {
			t.Errorf("%s: the tags are not those of the page:\n%s", page.name, diff)
		}
		for _, tag := range tags.flat() {
			if tag == "Figure " || tag == "TH " {
				t.Errorf("%s: a drawing without words, or a head that is one of nothing", page.name)
			}
		}
		got, headings := outlined(reader.Outline()), headingsOf(page.html)
		if page.language == "ar" {
			// The browser lists the words of a line as they stand on paper, where a space comes from another font
			// than the word: an order that we can't mend.
			got, headings = inAnyOrder(got), inAnyOrder(headings)
		}
		if !slices.Equal(got, headings) {
			t.Errorf("%s: the outline differs from the headings:\n%s", page.name, cmp.Diff(headings, got))
		}
		for _, further := range page.booklet.Further {
			if !tags.has(further.Language) {
				t.Errorf("%s: nothing is told to be in %s", page.name, further.Language)
			}
		}
	}
}

func (e *tagged) has(language string) bool {
	return e.language == language || slices.ContainsFunc(e.below, func(b *tagged) bool { return b.has(language) })
}

func inAnyOrder(titles []string) []string {
	var all []string
	for _, title := range titles {
		words := strings.Fields(title)
		slices.Sort(words)
		all = append(all, strings.Join(words, " "))
	}
	return all
}

// outlined lists an outline's entries in order, and headingsOf a page's headings.
func outlined(o pdf.Outline) []string {
	var all []string
	for _, entry := range o.Child {
		all = append(append(all, strings.Join(strings.Fields(entry.Title), " ")), outlined(entry)...)
	}
	return all
}

func headingsOf(page []byte) []string {
	root, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		return nil
	}
	var all []string
	visit(root, func(n *html.Node) bool {
		if len(n.Data) == 2 && n.Data[0] == 'h' && n.Data[1] >= '1' && n.Data[1] <= '6' {
			all = append(all, strings.Join(strings.Fields(textOf(n)), " "))
		}
		return true
	})
	return all
}
