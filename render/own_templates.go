package render

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"text/template"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"

	"tallyfold/kit/diag"
	"tallyfold/kit/source"
	"tallyfold/templates"
)

// judgeOwn gathers what doesn't fit of a maker's own template for a part, as it is
// filled in: what it asks for, and what it loses of the maker's words.
func (a *assembly) judgeOwn(name string, functions template.FuncMap, values any) bool {
	found := a.set.Misfits(name, functions, values, a.words)
	a.misfits = append(a.misfits, found...)
	return len(found) == 0
}

// judgeLost holds the text that a maker's own template has made against the words that it
// must not lose.
func (a *assembly) judgeLost(name, text string, values any) {
	file := a.set.Own(name)
	if file == nil {
		return
	}
	there := a.saidIn(text)
	for _, must := range mustStand(values) {
		for _, words := range missingFrom(there, a.saidIn(must.markdown)) {
			a.misfits = append(a.misfits, lostWords(file, name, must, words))
		}
	}
}

func lostWords(file *source.File, name string, must mustBeSaid, words said) diag.Finding {
	f := diag.Finding{
		Rule: "words-lost", Severity: diag.MustFix, Where: file.Whole(), About: name, Cause: "words lost by " + name,
		Found:    fmt.Sprintf("%s no longer says: “%s”", must.where, shortTo(words.text, 90)),
		Expected: "the maker's own words, amounts and warnings among them, as the kit has them",
		Remedies: diag.Fix("put {{" + must.field + "}} back; the original (tallyfold templates KIT " + name + ") has it in its place"),
	}
	if words.caution != "" {
		f.Rule, f.Expected = "caution-lost", "every caution of the kit, in its box with its signal word"
	}
	return f
}

// mustBeSaid is a text that a part of the booklet may not lose.
type mustBeSaid struct{ where, field, markdown string }

// mustStand lists them for the values of a part.
func mustStand(values any) []mustBeSaid {
	var all []mustBeSaid
	switch values := values.(type) {
	case beforeView:
		all = append(cautionsStand("the page of cautions", values.Cautions), suppliersStand(values.Supplied)...)
		all = append(all, statementsStand(values.Statements)...)
	case cardView:
		all = append(suppliersStand(values.Supplied), statementsStand(values.Statements)...)
		for _, part := range values.Parts {
			all = append(all, cautionsStand("“"+part.Title+"”", part.Cautions)...)
			for _, step := range part.Steps {
				where := fmt.Sprintf("step %d", step.Number)
				all = append(append(all, cautionsStand(where, step.Cautions)...), mustBeSaid{where, ".Line", step.Line})
			}
		}
		for _, remedy := range values.Remedies {
			all = append(all, cautionsStand("“"+remedy.Title+"”", remedy.Cautions)...)
		}
	case []methodPart:
		for _, part := range values {
			all = append(all, mustBeSaid{"“" + part.Title + "”", ".Intro", part.Intro})
			for _, step := range part.Steps {
				all = append(all, mustBeSaid{fmt.Sprintf("step %d", step.Number), ".Text", step.Text})
			}
		}
	case []troubleView:
		for _, trouble := range values {
			all = append(all, mustBeSaid{"“" + trouble.Title + "”", ".Text", trouble.Text})
		}
	}
	return all
}

func cautionsStand(where string, cautions []gatheredCaution) []mustBeSaid {
	var all []mustBeSaid
	for _, c := range cautions {
		all = append(all, mustBeSaid{where, ".Text", "> **" + c.Word + "** " + c.Text})
	}
	return all
}

func statementsStand(statements []string) []mustBeSaid {
	var all []mustBeSaid
	for _, s := range statements {
		all = append(all, mustBeSaid{"what the law asks to be said", ".Statements", s})
	}
	return all
}

func suppliersStand(supplied []suppliedCaution) []mustBeSaid {
	var all []mustBeSaid
	for _, s := range supplied {
		all = append(all, mustBeSaid{"what the suppliers say", ".Text", s.Text})
	}
	return all
}

// said is a paragraph, point or cell as a reader meets it, and the kind of caution that
// it stands in.
type said struct{ text, caution string }

// saidIn reads Markdown as the booklet does and gives what it says, each as often as it
// stands there.
func (a *assembly) saidIn(markdown string) map[said]int {
	all := map[said]int{}
	gather(a.read(markdown), "", all)
	return all
}

// read gives the tree of some Markdown's HTML, written as the booklet is.
func (a *assembly) read(markdown string) *html.Node {
	read := &Booklet{Language: a.booklet.Language, Form: a.booklet.Form, Markdown: []byte(markdown),
		Figures: a.booklet.Figures, Pictures: a.booklet.Pictures, templates: a.set, words: a.words}
	root, err := html.Parse(strings.NewReader(read.sections("")))
	if err != nil {
		panic("render: a page in memory can't be read: " + err.Error())
	}
	return root
}

func gather(node *html.Node, caution string, all map[said]int) {
	for child := node.FirstChild; child != nil; child = child.NextSibling {
		within := caution
		if class := classOf(child); strings.HasPrefix(class, "signal ") {
			within = class
		}
		switch child.DataAtom {
		case atom.P, atom.Td, atom.Th, atom.Pre, atom.Span:
			if text := strings.Join(strings.Fields(textOf(child)), " "); text != "" {
				all[said{text, within}]++
			}
		case atom.Li:
			if text := strings.Join(strings.Fields(ownText(child)), " "); text != "" {
				all[said{text, within}]++
			}
		}
		gather(child, within, all)
	}
}

func classOf(node *html.Node) string {
	for _, attribute := range node.Attr {
		if attribute.Key == "class" {
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

// ownText is the text of a point without that of blocks in it.
func ownText(node *html.Node) string {
	var out strings.Builder
	for child := node.FirstChild; child != nil; child = child.NextSibling {
		switch child.DataAtom {
		case atom.Ul, atom.Ol, atom.P, atom.Table, atom.Div:
		default:
			out.WriteString(textOf(child))
		}
	}
	return out.String()
}

// missingFrom gives what of wanted is not there as often: the first caution and the first
// other words, which is enough to find the place. It takes the rest away, so that words
// of two steps need to stand twice.
func missingFrom(there, wanted map[said]int) []said {
	var cautions, others []said
	for words, n := range wanted {
		if there[words] < n && words.caution != "" {
			cautions = append(cautions, words)
		} else if there[words] < n {
			others = append(others, words)
		}
		there[words] -= n
	}
	longestFirst := func(x, y said) int {
		return cmp.Or(cmp.Compare(len(y.text), len(x.text)), cmp.Compare(x.text, y.text))
	}
	slices.SortFunc(cautions, longestFirst)
	slices.SortFunc(others, longestFirst)
	return append(cautions[:min(len(cautions), 1)], others[:min(len(others), 1)]...)
}

func shortTo(text string, most int) string {
	if runes := []rune(text); len(runes) > most {
		return string(runes[:most-1]) + "…"
	}
	return text
}

// fits is nil where the maker's own templates fit, those of the whole page among them.
func (a *assembly) fits() error {
	found := append(a.misfits, a.set.Misfits("book.html", nil, shell{}, templates.Words{}, "Body", "Style", "Language", "Direction", "Title", "Draft")...)
	found = append(found, a.set.Misfits("print.css", nil, pageStyle{}, templates.Words{}, "Width", "Height", "Draft")...)
	found = append(found, a.set.Misfits("fold.html", nil, foldTrial{}, templates.Words{}, "Style", "Width", "Height", "Steps", "Pages")...)
	if len(found) == 0 {
		return nil
	}
	return &templates.Misfit{Findings: found}
}
