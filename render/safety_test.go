package render

import (
	"fmt"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/source"
	"tallyfold/templates"
)

// checkPage fails where a page holds anything that could run, fetch or lead out,
// or is put together wrongly.
func checkPage(t *testing.T, page string) {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	ids := map[string]bool{}
	var walk func(*html.Node)
	walk = func(node *html.Node) {
		if node.Type == html.ElementNode {
			checkElement(t, node, ids)
		}
		for child := node.FirstChild; child != nil; child = child.NextSibling {
			walk(child)
		}
	}
	walk(root)
}

// Elements that run, fetch, frame or send; none of them belongs in a booklet.
var forbiddenElements = map[string]bool{
	"script": true, "iframe": true, "frame": true, "object": true, "embed": true, "link": true, "base": true, "form": true,
	"audio": true, "video": true, "source": true, "track": true, "use": true, "image": true, "foreignobject": true, "template": true,
}

func checkElement(t *testing.T, node *html.Node, ids map[string]bool) {
	t.Helper()
	// A script of another kind than a program is data, and never run (HTML Living
	// Standard, 4.12.1).
	isData := node.Data == "script" && len(node.Attr) == 1 && node.Attr[0].Key == "type" && node.Attr[0].Val == "application/ld+json"
	if forbiddenElements[strings.ToLower(node.Data)] && !isData {
		t.Errorf("the page holds <%s>", node.Data)
	}
	alt := false
	for _, attribute := range node.Attr {
		name, value := strings.ToLower(attribute.Key), attribute.Val
		switch {
		case strings.HasPrefix(name, "on"), name == "style", name == "srcset", name == "action", name == "formaction", name == "data":
			t.Errorf("<%s> has the attribute %s", node.Data, name)
		case name == "href" && !strings.HasPrefix(value, "#"):
			t.Errorf("<%s> leads to %q", node.Data, value)
		case name == "src" && !strings.HasPrefix(value, "data:image/"):
			t.Errorf("<%s> fetches %q", node.Data, value)
		case name == "http-equiv" && value != "Content-Security-Policy":
			t.Errorf("<meta http-equiv=%q>", value)
		case name == "id":
			if ids[value] {
				t.Errorf("the id %q is given twice", value)
			}
			ids[value] = true
		case name == "alt":
			alt = true
		}
	}
	if node.Data == "img" && !alt {
		t.Error("a picture has no text alternative")
	}
}

// kitOfText is a kit with one step of the given text.
func kitOfText(text string) *kit.Kit {
	file := source.NewFile("method.md", []byte(text))
	step := &kit.Step{ID: "only", Number: 1, Title: text[:min(len(text), 20)], Body: file.Span(0, len(text))}
	name := kit.Said[string]{Value: text[:min(len(text), 40)]}
	return &kit.Kit{
		Name: name, Maker: name, About: name,
		Components: []*kit.Component{{Name: kit.Name{ID: "wax", Called: name, AlsoCalled: []kit.Said[string]{name, name}}, Letter: "A", Note: name, Cautions: []kit.Said[string]{name}}},
		Household:  []*kit.Household{{Name: kit.Name{ID: "water", Called: name}, Note: name}},
		Tools:      []*kit.Tool{{Name: kit.Name{ID: "jug", Called: name}, Note: name, From: kit.Said[kit.Supply]{Value: kit.FromBox}}},
		Method:     kit.Method{File: file, Parts: []*kit.Part{{Title: text[:min(len(text), 30)], Steps: []*kit.Step{step}}}},
		Troubles:   []*kit.Trouble{{ID: "t", Title: step.Title, Body: step.Body}},
		Words:      []*kit.Words{{ID: "storing", Title: step.Title, Body: step.Body}},
	}
}

// hostileTexts are what a careless or hostile maker may type: some of it is
// also the seed of the fuzz target.
var hostileTexts = []string{
	"Stir [720 g of wax](take:wax) well.",
	"```\nnever closed",
	"<!-- never closed",
	"<script>alert(1)</script>",
	"<svg onload=alert(1)><style>@import 'http://example.com'</style>",
	"[x](javascript:alert(1)) ![y](http://example.com/y.png) <http://example.com>",
	"[x]: http://example.com \"t\"\n\n[x] ![x]",
	"# Forged {#colophon .cover}\n\n## Forged {#step-1 .step onclick=x}",
	"> **WARNING** > > deep\n>> **Look for:** x",
	"| a | b |\n|---|---|\n| ``|`` | <b> |",
	"1. one\n   - two\n\n     ***\n2) three\n- [ ] task\n- [x] done",
	"Text\n===\n\nText\n---\n\n***bold*it*** _a_ __b__ `co``de` \\* &lt;b&gt; &#60;i&#62;",
	"**What to do.** | a | {#x} ☐ ⅓ don't 5 g\u00a0— [](step:only) [](trouble:t) [](take:wax)",
	"\x00\r\n\t\u2028 {{.Evil}} {{/* */}} ]]> --> &amp;amp;",
}

func TestNoTextBreaksOut(t *testing.T) {
	for _, text := range hostileTexts {
		t.Run(fmt.Sprintf("%.30q", text), func(t *testing.T) { checkText(t, text) })
	}
}

// checkText makes the whole booklet of a kit that says the same text everywhere.
func checkText(t *testing.T, text string) {
	t.Helper()
	k := kitOfText(text)
	booklet, err := Assemble(k, ledger.Follow(k), templates.Shipped(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	body := booklet.body()
	checkPage(t, body)
	// Whatever the maker left open, the parts after it are still there, once each.
	for _, id := range []string{"cover", "in-the-box", "step-1", "trouble-1", "batch", "storing", "colophon"} {
		if strings.Count(body, `id="`+id+`"`) != 1 {
			t.Errorf("the section %s was swallowed or forged", id)
		}
	}
	if !strings.Contains(body, booklet.word("keep-this")) {
		t.Error("the last line is gone")
	}
	if strings.Count(body, "<section") != strings.Count(body, "</section>") {
		t.Error("a section is left open")
	}
}

func FuzzNoTextBreaksOut(f *testing.F) {
	for _, text := range hostileTexts {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 4096 {
			return // the reader of the files has a limit too, and the parser is slow on some long texts
		}
		checkText(t, text)
	})
}
