package render

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"tallyfold/instructions"
	"tallyfold/kit/ledger"
	"tallyfold/templates"
)

// This file holds each page against the HTML Living Standard (WHATWG), as far as a booklet
// uses it: that nothing needs a reader's error recovery (13.2), and the content models of
// the elements that are written (4.3 to 4.10). A validator may be run besides.

// pagesToValidate are all examples in all their languages, with a page to scan and as a draft.
func pagesToValidate(t *testing.T) map[string]string {
	t.Helper()
	pages := map[string]string{}
	for _, folder := range exampleFolders(t) {
		k, _ := instructions.Open(os.DirFS(folder), filepath.Base(folder))
		k.Page.Value = "https://brindle-quay.example/kits?a=1&b=2"
		for _, form := range []string{"a5", "a4-large", "a4-in-three", "a4-card"} {
			of, known := FormNamed(form)
			if !known {
				t.Fatalf("there is no form %s", form)
			}
			booklet, err := InLanguages(k, ledger.Follow(k), templates.Shipped(), Options{Form: of, Draft: of.Large}, Languages(k))
			if err != nil {
				t.Fatal(err)
			}
			page, err := booklet.HTML()
			if err != nil {
				t.Fatal(err)
			}
			pages[k.Folder+"-"+form] = string(page)
		}
	}
	return pages
}

func TestPagesAreValidHTML(t *testing.T) {
	for name, page := range pagesToValidate(t) {
		for _, fault := range htmlFaults(page) {
			t.Errorf("%s: %s", name, fault)
		}
	}
}

// Each thing that is looked for is found where it is wrong.
func TestHTMLFaultsAreFound(t *testing.T) {
	const head = `<!DOCTYPE html><html lang="en" dir="ltr"><head><meta charset="utf-8"><title>T</title></head><body><main>`
	const foot = `</main></body></html>`
	if faults := htmlFaults(head + `<section id="a"><h1>A</h1><p>x <b>y</b><br>z</p><svg viewBox="0 0 1 1" aria-hidden="true"><path d="M0 0"/></svg></section>` + foot); len(faults) > 0 {
		t.Fatal(faults)
	}
	for _, wrong := range []string{
		"<p>a<p>b</p>", "<p>a</div></p>", "<b><i>a</b></i>", "<table><tr><td>a</td></tr></table>", "<p><ul><li>a</li></ul></p>", "<div/>a",
		"<ul><p>a</p></ul>", "<ul>a</ul>", "<h1>A</h1><h3>B</h3>", "<h1>A</h1><h1>B</h1>", `<img src="data:,">`, `<p id="a">x</p><p id="a">y</p>`,
		`<a href="#b">x</a>`, `<p aria-labelledby="b">x</p>`, `<span><p>a</p></span>`, `<a href="#a" id="a"><a href="#a">x</a></a>`,
		`<table><thead><tr><th scope="col">a</th></tr></thead><tbody><tr><td>b</td><td>c</td></tr></tbody></table>`,
		`<table><thead><tr><th>a</th></tr></thead></table>`, `<p align="left">x</p>`, `<font>x</font>`, `<p lang="english!">x</p>`, `<p dir="up">x</p>`,
		`<input type="checkbox">`, `<label><input type="checkbox"> a <input type="checkbox"></label>`, `<svg viewBox="0 0 1 1" role="img"></svg>`,
		`<nav><ul><li>x</li></ul></nav>`, `<p>a & b &unknown; c</p><p>&#0;</p>`, `<p a="1" a="2">x</p>`,
	} {
		if len(htmlFaults(head+wrong+foot)) == 0 {
			t.Errorf("nothing is found in %s", wrong)
		}
	}
	if len(htmlFaults(strings.Replace(head+foot, ` lang="en"`, "", 1))) == 0 || len(htmlFaults(strings.Replace(head+foot, "<title>T</title>", "", 1))) == 0 {
		t.Error("a page without a language or title passes")
	}
}

// TestPagesInTheValidator runs the Nu Html Checker where TALLYFOLD_VNU names its vnu.jar.
func TestPagesInTheValidator(t *testing.T) {
	jar := os.Getenv("TALLYFOLD_VNU")
	if jar == "" {
		t.Log("TALLYFOLD_VNU names no vnu.jar; the checks of this file are made without it")
		return
	}
	folder := t.TempDir()
	var files []string
	for name, page := range pagesToValidate(t) {
		file := filepath.Join(folder, name+".html")
		if err := os.WriteFile(file, []byte(page), 0o644); err != nil {
			t.Fatal(err)
		}
		files = append(files, file)
	}
	slices.Sort(files)
	if told, err := exec.Command("java", append([]string{"-jar", jar, "--errors-only"}, files...)...).CombinedOutput(); err != nil {
		t.Errorf("%v\n%s", err, told)
	}
}

// htmlFaults tells what is wrong with a page.
func htmlFaults(page string) []string {
	v := &validity{ids: map[string]bool{}}
	v.recovery(page)
	root, err := html.Parse(strings.NewReader(page))
	if err != nil {
		return append(v.faults, err.Error())
	}
	v.walk(root)
	for _, id := range v.pointed {
		if !v.ids[id] {
			v.tell("something points at %q, which is not there", id)
		}
	}
	for name, found := range map[string]bool{"a title": v.title, "a language": v.language} {
		if !found {
			v.tell("the page lacks %s", name)
		}
	}
	return v.faults
}

type validity struct {
	faults          []string
	ids             map[string]bool
	pointed         []string
	level, firsts   int // of the last heading; headings of level one
	languages       int // parts set apart by language
	title, language bool
}

func (v *validity) tell(format string, values ...any) {
	v.faults = append(v.faults, fmt.Sprintf(format, values...))
}

// tag is a tag or text as written or as read, in one form.
type tag struct{ kind, name, rest string }

var voidElements = []string{"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"}

// tags gives the tags and texts of a page. Blank text between tags is left out.
func (v *validity) tags(page string, written bool) []tag {
	var all []tag
	reader := html.NewTokenizer(strings.NewReader(page))
	foreign := 0
	for {
		switch kind := reader.Next(); kind {
		case html.ErrorToken:
			return all
		case html.TextToken:
			if raw := string(reader.Raw()); strings.TrimSpace(raw) != "" {
				text := string(reader.Text())
				if written {
					v.references(raw)
				}
				all = append(all, tag{"text", "", strings.TrimSpace(text)})
			}
		case html.StartTagToken, html.SelfClosingTagToken:
			token := reader.Token()
			names := map[string]bool{}
			rest := ""
			for _, attribute := range token.Attr {
				if names[attribute.Key] {
					v.tell("<%s> has %s twice", token.Data, attribute.Key)
				}
				names[attribute.Key] = true
				rest += " " + attribute.Key + "=" + attribute.Val
			}
			if token.Data == "svg" {
				foreign++
			}
			void := slices.Contains(voidElements, token.Data) && foreign == 0
			all = append(all, tag{"start", token.Data, rest})
			if kind == html.SelfClosingTagToken && !void {
				if foreign == 0 {
					v.tell("<%s/> does not end itself", token.Data)
				}
				all = append(all, tag{"end", token.Data, ""})
			}
		case html.EndTagToken:
			token := reader.Token()
			if token.Data == "svg" {
				foreign--
			}
			all = append(all, tag{"end", token.Data, ""})
		}
	}
}

// references looks for & that begins nothing known (13.5).
func (v *validity) references(raw string) {
	for _, after := range strings.Split(raw, "&")[1:] {
		name, _, ended := strings.Cut(after, ";")
		if !ended || html.UnescapeString("&"+name+";") == "&"+name+";" || name == "#0" {
			v.tell("& begins no known name in %q", shortTo(raw, 60))
		}
	}
}

// recovery compares what is written with the tree that a reader makes of it, written out:
// where they differ the reader had to put something right.
func (v *validity) recovery(page string) {
	root, err := html.Parse(strings.NewReader(page))
	if err != nil {
		v.tell("%v", err)
		return
	}
	var out strings.Builder
	if err := html.Render(&out, root); err != nil {
		v.tell("%v", err)
		return
	}
	written, read := v.tags(withoutData(page), true), v.tags(withoutData(out.String()), false)
	for i := range min(len(written), len(read)) {
		if written[i] != read[i] {
			v.tell("written %v, read %v", written[i], read[i])
			return
		}
	}
	if len(written) != len(read) {
		v.tell("%d tags written, %d read", len(written), len(read))
	}
}

// withoutData leaves out the style and the data, which are no markup.
func withoutData(page string) string {
	for _, name := range []string{"style", "script"} {
		if begin := strings.Index(page, "<"+name); begin >= 0 {
			if end := strings.Index(page, "</"+name); end > begin {
				page = page[:begin] + page[end+len("</"+name+">"):]
			}
		}
	}
	return page
}
