package instructions

import (
	"encoding/json"
	"html"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/util"

	"tallyfold/kit"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// specExample is an example of the CommonMark specification 0.31.2 (John
// MacFarlane, CC BY-SA 4.0): Markdown, and the HTML that it stands for.
type specExample struct {
	Example                 int
	Section, Markdown, HTML string
}

func specExamples(t testing.TB) []specExample {
	t.Helper()
	content, err := os.ReadFile("testdata/commonmark-links.json")
	if err != nil {
		t.Fatal(err)
	}
	var all []specExample
	if err := json.Unmarshal(content, &all); err != nil {
		t.Fatal(err)
	}
	if len(all) < 80 {
		t.Fatalf("only %d examples", len(all))
	}
	return all
}

var specTarget = regexp.MustCompile(`<(?:a href|img src)="([^"]*)"`)

// The specification says in HTML where each link leads. The bytes found here must
// say the same, with any line end and behind a byte order mark.
func TestLinkPlacesOfTheSpecification(t *testing.T) {
	variants := map[string]func(string) string{
		"as it stands":    func(s string) string { return s },
		"CR LF":           func(s string) string { return strings.ReplaceAll(s, "\n", "\r\n") },
		"CR":              func(s string) string { return strings.ReplaceAll(s, "\n", "\r") },
		"byte order mark": func(s string) string { return string(source.ByteOrderMark) + s },
		"in a quotation": func(s string) string {
			return "> " + strings.ReplaceAll(strings.TrimSuffix(s, "\n"), "\n", "\n> ") + "\n"
		},
		"no line end": func(s string) string { return strings.TrimRight(s, "\n") },
	}
	for name, change := range variants {
		for _, example := range specExamples(t) {
			checkPlaces(t, name, example, change(example.Markdown))
		}
	}
}

func checkPlaces(t *testing.T, variant string, example specExample, markdown string) {
	t.Helper()
	file := source.NewFile("method.md", []byte(markdown))
	r := newReader(file, &kit.Kit{}, load.Amounts(&kit.Kit{}))
	var targets []string
	err := ast.Walk(r.document.root, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		switch n := n.(type) {
		case *ast.Link:
			targets = append(targets, placedTarget(t, r, n, n.Destination, "["))
		case *ast.Image:
			targets = append(targets, placedTarget(t, r, n, n.Destination, "!["))
			return ast.WalkSkipChildren, nil // the HTML of a picture shows no links in its words
		case *ast.AutoLink:
			targets = append(targets, string(util.URLEscape(n.URL(r.document.text), false)))
		}
		return ast.WalkContinue, nil
	})
	if err != nil {
		t.Fatal(err)
	}
	var want []string
	for _, m := range specTarget.FindAllStringSubmatch(example.HTML, -1) {
		want = append(want, html.UnescapeString(m[1]))
	}
	if strings.Join(targets, " ") != strings.Join(want, " ") {
		t.Errorf("example %d, %s: destinations %q, want %q\n%s", example.Example, variant, targets, want, markdown)
	}
}

// placedTarget gives the destination as its bytes in the file say it, and checks
// the brackets around the text.
func placedTarget(t *testing.T, r *reader, n ast.Node, destination []byte, opening string) string {
	t.Helper()
	l := r.linkAt(n, destination, opening == "![")
	written := l.span.Text()
	if !strings.HasPrefix(written, opening) || !strings.HasSuffix(written, ")") && !strings.HasSuffix(written, "]") {
		t.Errorf("a link at %q", written)
	}
	if before := l.textSpan.Start - len(opening); before != l.span.Start {
		t.Errorf("text of %q begins at %d", written, l.textSpan.Start)
	}
	if l.span.File.Text[l.textSpan.End] != ']' {
		t.Errorf("text of %q ends before %q", written, l.span.File.Text[l.textSpan.End])
	}
	if len(destination) == 0 {
		return ""
	}
	return string(util.URLEscape(util.ResolveEntityNames(util.ResolveNumericReferences(
		util.UnescapePunctuations([]byte(l.destination.span.Text())))), false))
}
