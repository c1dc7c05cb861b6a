package render

import (
	"errors"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit/ledger"
	"tallyfold/templates"
)

// own puts a kit together with templates of a maker's.
func own(t *testing.T, files map[string]string) (*Booklet, []string) {
	t.Helper()
	k, _ := instructions.Open(os.DirFS("../examples/harbour-candles"), "harbour-candles")
	folder := fstest.MapFS{}
	for name, text := range files {
		folder[name] = &fstest.MapFile{Data: []byte(text)}
	}
	booklet, err := Assemble(k, ledger.Follow(k), templates.Shipped().Over(folder), Options{})
	var misfit *templates.Misfit
	if err != nil && !errors.As(err, &misfit) {
		t.Fatal(err)
	}
	var found []string
	if misfit != nil {
		for _, f := range misfit.Findings {
			found = append(found, f.Rule+": "+f.Found)
		}
	}
	return booklet, found
}

// shippedText is a template as shipped, with some of it replaced.
func shippedText(t *testing.T, name string, replace ...string) string {
	t.Helper()
	text, err := templates.Shipped().File(name)
	if err != nil {
		t.Fatal(err)
	}
	changed := strings.NewReplacer(replace...).Replace(string(text))
	if len(replace) > 0 && changed == string(text) {
		t.Fatalf("%s has none of %q", name, replace)
	}
	return changed
}

// A maker's template may put things elsewhere and leave tables out, but loses neither a
// caution nor an amount of the steps.
func TestOwnTemplatesLoseNothing(t *testing.T) {
	const method, before, trouble = "booklet/method.md", "booklet/before.md", "booklet/trouble.md"
	for _, test := range []struct {
		why, name, text string
		want            string // begins a finding; "" for none
	}{
		{"as shipped", method, shippedText(t, method), ""},
		{"the words first, no table", method, "{{range .}}\n## {{.Title}} {#{{.Anchor}} .method}\n\n{{.Intro}}\n{{range .Steps}}\n### {{.Number}}. {{.Title}} {#{{.Anchor}} .step}\n\n{{.Text}}\n{{end}}{{end}}", ""},
		{"no words of a step", method, shippedText(t, method, "{{.Text}}", ""), "caution-lost: step 3 no longer says"},
		{"no words of one step alone", method, shippedText(t, method, "{{.Text}}", "{{if ne .Number 2}}{{.Text}}{{end}}"), "words-lost: step 2 no longer says: “With a measuring cup"},
		{"no words of a part", method, shippedText(t, method, "{{with .Intro}}\n{{.}}\n{{end}}", ""), "caution-lost: “Pour three candles” no longer says"},
		{"cautions as plain words", before, shippedText(t, before, "> **{{.Word}}** {{.Text}}", "{{.Text}}"), "caution-lost: the page of cautions"},
		{"no word of the supplier", before, shippedText(t, before, "{{.Text}} |", " |"), "words-lost: what the suppliers say"},
		{"no remedies", trouble, shippedText(t, trouble, "{{.Text}}", ""), "words-lost: “"},
		{"a template that ends in the middle", method, shippedText(t, method, "{{.Text}}", "{{slice .Text 0 20}}"), "caution-lost: step 3"},
		{"a part of nothing", method, shippedText(t, method, "{{.Text}}", "{{index .Gauges 9}}"), "template-does-not-fit: index .Gauges 9 cannot be filled in here"},
		{"a trial of the fold without its pages", "fold.html", shippedText(t, "fold.html", "{{range $i, $page := .Pages}}", "{{range $i, $page := .Page}}"), "template-does-not-fit: there is no .Page here"},
		{"a page without its text", "book.html", shippedText(t, "book.html", "{{.Body}}", ""), "template-does-not-fit: {{.Body}} is missing"},
	} {
		booklet, found := own(t, map[string]string{test.name: test.text})
		switch {
		case test.want == "" && (len(found) > 0 || booklet == nil):
			t.Errorf("%s: %q", test.why, found)
		case test.want != "" && (booklet != nil || !beginsOne(found, test.want)):
			t.Errorf("%s: %q, want %q", test.why, found, test.want)
		}
	}
}

// The card, which tells the method short, keeps its cautions as well.
func TestOwnCardLosesNoCaution(t *testing.T) {
	k, _ := instructions.Open(os.DirFS("../examples/harbour-candles"), "harbour-candles")
	form, known := FormNamed("a4-card")
	if !known {
		t.Fatal("there is no card")
	}
	for text, want := range map[string]bool{
		shippedText(t, "booklet/card.md"):                                                     true,
		shippedText(t, "booklet/card.md", "> **{{.Word}}** {{.Text}}", "{{.Word}}"):           false,
		shippedText(t, "booklet/card.md", "{{.Line}}", "{{if eq .Number 1}}{{.Line}}{{end}}"): false,
	} {
		set := templates.Shipped().Over(fstest.MapFS{"booklet/card.md": {Data: []byte(text)}})
		if _, err := Assemble(k, ledger.Follow(k), set, Options{Form: form}); (err == nil) != want {
			t.Errorf("a card of %q gives %v", text, err)
		}
	}
}

func beginsOne(all []string, begin string) bool {
	for _, one := range all {
		if strings.HasPrefix(one, begin) {
			return true
		}
	}
	return false
}

// Several templates that don't fit are told together.
func TestOwnTemplatesAreToldTogether(t *testing.T) {
	_, found := own(t, map[string]string{
		"booklet/cover.md": "{{.Nme}}", "booklet/colophon.md": "{{if .Maker}}", "print.css": "@page { size: {{.Widht}}mm }", "words/en.txt": "bag",
	})
	for _, want := range []string{"template-does-not-fit: there is no .Nme here", "template-does-not-fit: a {{range}}, {{with}} or {{if}} has no end",
		"template-does-not-fit: there is no .Widht here", "word-does-not-fit: this line has no colon"} {
		if !beginsOne(found, want) {
			t.Errorf("%q is not among %q", want, found)
		}
	}
}

func TestOwnStyleComesLast(t *testing.T) {
	booklet, _ := own(t, map[string]string{"own.css": "h1 { color: plum } </style><script>"})
	page, err := booklet.HTML()
	if err != nil {
		t.Fatal(err)
	}
	text := string(page)
	if strings.Index(text, "color: plum") < strings.Index(text, "@page cover") || strings.Count(text, "</style>") != 1 {
		t.Error("own.css does not stand behind the other styles, or breaks out of them")
	}
}
