package templates

import (
	"io/fs"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"text/template"

	"tallyfold/kit/diag"
)

// told writes findings as rule, place and what was found.
func told(list diag.List) []string {
	var all []string
	for _, f := range list.Sorted() {
		all = append(all, f.Rule+" "+strings.TrimPrefix(f.Where.File.Name, OwnFolder+"/")+" "+f.Where.Text()+": "+f.Found)
	}
	return all
}

func TestOwnFiles(t *testing.T) {
	copied, err := Copy("print.css")
	if err != nil {
		t.Fatal(err)
	}
	outdated := strings.Replace(string(copied), "fingerprint ", "fingerprint 0000", 1)
	outdated = outdated[:strings.Index(outdated, "0000")+8] + outdated[strings.Index(outdated, ". */"):]
	for _, test := range []struct {
		why, name, text string
		want            []string
	}{
		{"a copy as it was made", "print.css", string(copied), nil},
		{"a copy of an earlier edition", "print.css", outdated, []string{"template-changed-since print.css"}},
		{"a slip of the name", "booklet/covr.md", "", []string{"template-not-known booklet/covr.md"}},
		{"notes of the maker's", "ideas.txt", "", []string{"template-not-known ideas.txt"}},
		{"files that systems leave behind", ".DS_Store", "", nil},
		{"a word and a note", "words/en.txt", "# mine\nbag: Pouch\n", nil},
		{"a further language", "words/pt.txt", "bag: Saco\ndirection: ltr\nage-and-over.other: a partir dos {number} anos\nage-and-over.one: a partir de um ano\n", nil},
		{"a word that nobody asks for", "words/en.txt", "bagg: Pouch\n", []string{"word-does-not-fit words/en.txt bagg: Pouch"}},
		{"a place that is missing", "words/en.txt", "edition: issue\n", []string{"word-does-not-fit words/en.txt edition: issue"}},
		{"a place that nobody fills in", "words/en.txt", "bag: Bag {letter}\n", []string{"word-does-not-fit words/en.txt bag: Bag {letter}"}},
		{"a form that the language does not have", "words/en.txt", "age-and-over.few: {number}\n", []string{"word-does-not-fit words/en.txt age-and-over.few"}},
		{"no colon, no words, no direction", "words/en.txt", "bag\nwhat:\ndirection: up\n",
			[]string{"word-does-not-fit words/en.txt bag", "word-does-not-fit words/en.txt what:", "word-does-not-fit words/en.txt direction: up"}},
		{"a style of one's own", "own.css", "/* url(https://example.com) */ h2 { color: plum; background: url(data:image/gif;base64,R0) } .cover { opacity: 0.9 }", nil},
		{"addresses outside", "own.css", `@import "more.css"; a { background: URL( 'http://example.com/a' ) } b { background: image-set("//example.com/b" 1x) }`,
			[]string{"style-reaches-out own.css more.css", "style-reaches-out own.css http://example.com/a", "style-reaches-out own.css //example.com/b"}},
		{"small cautions", "own.css", ".signal { font-size: 0.9rem; opacity: 0.95 }", nil},
		{"cautions hidden", "own.css", ".step .signal { display : none }\n* { visibility:hidden }\n.signal > .word::before { display: none }",
			[]string{"style-hides-caution own.css display : none", "style-hides-caution own.css visibility:hidden"}},
		{"a page that fetches", "book.html", `<script src="https://example.com/x.js"></script><a href="#cover">x</a>`, []string{"style-reaches-out book.html https://example.com/x.js"}},
		{"no font", "fonts/text-bold-latin.woff2", "OTTO", []string{"template-does-not-fit fonts/text-bold-latin.woff2"}},
	} {
		got := told(Check(fstest.MapFS{test.name: {Data: []byte(test.text)}}))
		if len(got) != len(test.want) {
			t.Errorf("%s: got %q, want %q", test.why, got, test.want)
			continue
		}
		for i, want := range test.want {
			if !strings.HasPrefix(got[i], want) {
				t.Errorf("%s: got %q, want %q", test.why, got[i], want)
			}
		}
	}
}

// Each shipped text can be copied, checks clean as the copy it is, and as that gives the
// same as the original.
func TestCopies(t *testing.T) {
	folder := fstest.MapFS{}
	for _, name := range Replaceable() {
		if strings.HasPrefix(name, "fonts/") {
			continue
		}
		if About(name) == "" {
			t.Errorf("nothing says what %s is for", name)
		}
		text, err := Copy(name)
		if err != nil {
			t.Fatal(err)
		}
		folder[name] = &fstest.MapFile{Data: text}
	}
	if found := Check(folder); len(found) > 0 {
		t.Error(told(found))
	}
	set := Shipped().Over(folder)
	for _, language := range Shipped().Languages() {
		words, err := set.Words(language)
		if err != nil {
			t.Fatal(err)
		}
		shipped, err := Shipped().Words(language)
		if err != nil || !slices.Equal(words.Names(), shipped.Names()) || words.Say("bag") != shipped.Say("bag") {
			t.Errorf("the copied words of %s are others: %v", language, err)
		}
	}
	for _, name := range []string{"report.md", "booklet/none.md", "fonts/text-bold-latin.woff2", "../go.mod"} {
		if _, err := Copy(name); err == nil {
			t.Errorf("%s can be copied", name)
		}
	}
}

// What a template asks for is held against what there is, in branches too that are not
// taken, and with the place of it.
func TestMisfits(t *testing.T) {
	type row struct{ Name, Amount string }
	values := struct {
		Title string
		Rows  []row
	}{}
	words, err := Shipped().Words("en")
	if err != nil {
		t.Fatal(err)
	}
	functions := template.FuncMap{"say": words.Say, "count": words.Count}
	for _, test := range []struct{ text, at, remedy string }{
		{"{{.Title}} {{range $i, $row := .Rows}}{{$i}} {{.Name}} {{$row.Amount}} {{$.Title}}{{end}}{{say \"bag\"}}", "", ""},
		{"{{with .Rows}}{{range .}}{{.Nam}}{{end}}{{end}}", ".Nam", "write .Name"},
		{"{{range .Rows}}{{.Title}}{{end}}", ".Title", "take it out"},
		{"{{range $row := .Rows}}{{$row.Nmae}}{{end}}", ".Nmae", "write .Name"},
		{"{{if .Rows}}{{else}}{{.Titel}}{{end}}", ".Titel", "write .Title"},
		{`{{define "rows"}}{{range .}}{{.Nam}}{{end}}{{end}}{{template "rows" .Rows}}`, ".Nam", "write .Name"},
		{`{{define "all"}}{{.Title}}{{template "all" .}}{{end}}{{template "all" .}}`, "", ""},
		{"{{.Title.Length}}", ".Length", "take it out"},
		{"{{say \"bagg\"}}", `"bagg"`, "write bag"},
		{"{{count \"age-and-ovr\" 3}}", `"age-and-ovr"`, "write age-and-over"},
		{"x\n{{sya \"bag\"}}", "sya", "write say"},
		{"x\n{{.Title", "{{.Title", "put }} where it ends"},
		{"{{range .Rows}}", "", "put {{end}} where it ends"},
		{"{{.Title}}{{end}}", "", "take it out"},
	} {
		set := Shipped().Over(fstest.MapFS{"booklet/box.md": {Data: []byte(test.text)}})
		found := set.Misfits("booklet/box.md", functions, values, words)
		if test.remedy == "" {
			if len(found) > 0 {
				t.Errorf("%s: %v", test.text, told(found))
			}
			continue
		}
		if len(found) != 1 || found[0].Remedies[0].Do != test.remedy || test.at != "" && found[0].Where.Text() != test.at {
			t.Errorf("%s: %v", test.text, told(found))
		}
	}
	set := Shipped().Over(fstest.MapFS{"book.html": {Data: []byte("<p>{{.Title}}")}})
	if found := set.Misfits("book.html", nil, values, Words{}, "Title", "Rows"); len(found) != 1 || found[0].Found != "{{.Rows}} is missing" {
		t.Error(told(found))
	}
	if found := Shipped().Misfits("book.html", nil, struct{}{}, Words{}, "Body"); found != nil {
		t.Error("a shipped template was judged")
	}
}

// FuzzOwnFiles: whatever a maker has in the folder, the check ends and points into the file.
func FuzzOwnFiles(f *testing.F) {
	f.Add("words/en.txt", "bag: Pouch {x}")
	f.Add("own.css", ".signal{display:none}@import url(")
	f.Add("booklet/cover.md", "{{range $i, $x := .A.B}}{{$x.C}}{{end}}")
	f.Fuzz(func(t *testing.T, name, text string) {
		if !fs.ValidPath(name) {
			return // no folder has such a file
		}
		folder := fstest.MapFS{name: {Data: []byte(text)}}
		found := Check(folder)
		found = append(found, Shipped().Over(folder).Misfits(name, nil, struct{ A []struct{ B string } }{}, Words{})...)
		for _, one := range found {
			if one.Found == "" || one.Expected == "" || len(one.Remedies) == 0 || !one.Where.Known() {
				t.Errorf("%+v", one)
			}
		}
	})
}
