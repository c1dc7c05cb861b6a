package render

import (
	"cmp"
	"os"
	"regexp"
	"strings"
	"testing"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/source"
	"tallyfold/templates"
)

// assemblyOf is an assembly of a kit for testing its parts.
func assemblyOf(t *testing.T, k *kit.Kit) *assembly {
	t.Helper()
	words, err := templates.Shipped().Words(templates.SourceLanguage)
	if err != nil {
		t.Fatal(err)
	}
	return &assembly{
		kit: k, ledger: ledger.Follow(k), set: templates.Shipped(), words: words,
		booklet: &Booklet{Pictures: map[string][]byte{}, words: words},
	}
}

// linkIn makes an operation of the link in a text that begins with "[words]".
func linkIn(file *source.File, words string, o kit.Operation) *kit.Operation {
	at := strings.Index(string(file.Text), "["+words+"](")
	end := at + strings.Index(string(file.Text[at:]), ")") + 1
	o.Text, o.Span = words, file.Span(at, end)
	return &o
}

func TestProseOfAStep(t *testing.T) {
	const text = "Stir [20 g of wax](take:wax) in [the jug](vessel:jug), until [no lump\nis left](cue:).\n" +
		"Then see [pouring](step:pour), [step 2](step:pour), [a lump](trouble:lump) and [the jar](picture:jar.svg).\n\n" +
		"Take [](tool:scale) too.\n\n" +
		"> CAUTION: Hot *wax* burns.\n> Wear [gloves](tool:gloves).\n\n" +
		"### Below\n\n1. one\n2. two & `a|b`\n\n```\ncode ``` here"
	file := source.NewFile("method.md", []byte(text))
	exactly := kit.Phrase{Portion: kit.Exactly}
	quote := strings.Index(text, "> CAUTION")
	operations := []*kit.Operation{
		linkIn(file, "20 g of wax", kit.Operation{Kind: kit.Take, Target: "wax", Phrase: exactly}),
		linkIn(file, "the jug", kit.Operation{Kind: kit.WithVessel, Target: "jug"}),
		linkIn(file, "no lump\nis left", kit.Operation{Kind: kit.Cue}),
		linkIn(file, "pouring", kit.Operation{Kind: kit.ToStep, Target: "pour"}),
		linkIn(file, "step 2", kit.Operation{Kind: kit.ToStep, Target: "pour"}),
		linkIn(file, "a lump", kit.Operation{Kind: kit.ToHelp, Target: "lump"}),
		linkIn(file, "the jar", kit.Operation{Kind: kit.ShowPicture, Target: "jar.svg"}),
		linkIn(file, "", kit.Operation{Kind: kit.WithTool, Target: "scale"}),
		linkIn(file, "gloves", kit.Operation{Kind: kit.WithTool, Target: "gloves", Aside: true}),
	}
	a := assemblyOf(t, &kit.Kit{
		Tools:    []*kit.Tool{{Name: kit.Name{ID: "scale", Called: kit.Said[string]{Value: "Kitchen scale"}}}},
		Method:   kit.Method{Parts: []*kit.Part{{Steps: []*kit.Step{{ID: "pour", Number: 2}}}}},
		Troubles: []*kit.Trouble{{ID: "other"}, {ID: "lump"}},
		Pictures: []*kit.Picture{{Name: "jar.svg", Data: []byte("<svg/>")}},
	})
	got := a.prose(passage{
		body: file.Span(0, len(text)), operations: operations, deeper: 1,
		cautions: []kit.Caution{{Signal: kit.CautionWord, Span: file.Span(quote, quote+30)}},
	})
	const want = "Stir **20 g of wax** in the jug, until no lump is left. " +
		"Then see [pouring (step 2)](#step-2), [step 2](#step-2), [a lump](#trouble-2) and the jar.\n\n" +
		"> **Look for:** no lump is left\n\n" +
		"![the jar](picture:picture-1 \"The jar\")\n\n" +
		"Take the kitchen scale too.\n\n" +
		"> **CAUTION** Hot *wax* burns. Wear gloves.\n\n" +
		"#### Below\n\n1. one\n2. two \\& ` a|b `\n\n````\ncode ``` here\n````"
	if got != want {
		t.Errorf("got\n%s\n\nwant\n%s", got, want)
	}
	if len(a.booklet.Pictures) != 1 {
		t.Errorf("%d pictures in the booklet", len(a.booklet.Pictures))
	}
}

// What is written as plain text is read as that text, wherever it stands.
func TestEscapedTextReadsAsItself(t *testing.T) {
	for _, text := range []string{
		"1. Melt", "12) x", "1.12 kg", "12)", "- dash", "+ plus", "# hash", "= line", ": colon", "a | b", "*a* _b_ `c`", "[a](b)", "<b>", "&amp;", `back\slash`,
		"{#id .class}", "~~x~~", "Wax & wick", "> quote", "720 g ± 5 g", "",
	} {
		body := bookletOf(t, "Text.\n\n"+escape(text)+"\n\nText.").body()
		inside := strings.TrimSuffix(strings.TrimPrefix(body, "<p>Text.</p>\n"), "<p>Text.</p>\n")
		want := ""
		if text != "" {
			want = "<p>" + plainHTML(text) + "</p>\n"
		}
		if inside != want {
			t.Errorf("%q becomes %q, want %q", text, inside, want)
		}
		row := bookletOf(t, "| h |\n|---|\n| "+escape(text)+" |").body()
		if !strings.Contains(row, "<td>"+cmp.Or(plainHTML(text), noBreakSpace)+"</td>") {
			t.Errorf("%q in a cell becomes %s", text, row)
		}
	}
}

func plainHTML(text string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", "720 g ±", "720\u00a0g ±", "5 g", "5\u00a0g", "1.12 kg", "1.12\u00a0kg").Replace(text)
}

// Every word that the code asks for is in the list of words.
func TestCodeFindsItsWords(t *testing.T) {
	words, err := templates.Shipped().Words(templates.SourceLanguage)
	if err != nil {
		t.Fatal(err)
	}
	asked := regexp.MustCompile(`(?:[.]say|[.]word|add)\("([a-z-]+)"`)
	files, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	found := 0
	for _, file := range files {
		if file.IsDir() || strings.HasSuffix(file.Name(), "_test.go") {
			continue
		}
		text, err := os.ReadFile(file.Name())
		if err != nil {
			t.Fatal(err)
		}
		for _, word := range asked.FindAllStringSubmatch(string(text), -1) {
			found++
			if strings.HasPrefix(words.Say(word[1]), "[") {
				t.Errorf("%s asks for the word %q", file.Name(), word[1])
			}
		}
	}
	if found < 20 {
		t.Errorf("only %d words are asked for: the pattern no longer fits the code", found)
	}
}

// Every template fits its values, with everything there and with nothing.
func TestTemplatesFitTheirValues(t *testing.T) {
	item := packedItem{"A", "Wax", "soft", "720 g", "![](picture:wax)"}
	row := needsView{
		Rows: []needRow{{"**A**", "Wax", "720 g", "3 cups"}}, Bags: true, Others: true,
		Runs: []string{"Pine"}, Differs: []differRow{{"Tint", []string{"**B** Green"}}},
	}
	step := stepView{1, "Melt", "step-1", []fact{{"Time", "5 min"}, {"In", "the jug"}}, "", row, "Text.", []string{"![g](figure:g)"}, []string{"Pine", "Orange"}}
	for name, values := range map[string][2]any{
		"cover":    {coverView{"Kit", "About.", "![x](figure:x)", []fact{{"Age", "12"}}, []string{"scale"}, "Maker"}, coverView{}},
		"contents": {contentsView{[]contentsEntry{{"A", "a", []contentsEntry{{"B", "b", nil}}}}, "Welcome."}, contentsView{}},
		"glance":   {glanceView{"Intro.", "![x](figure:x)"}, glanceView{}},
		"box":      {boxView{"![x](figure:x)", []packedItem{item}, []packedItem{item}}, boxView{}},
		"kitchen":  {kitchenView{[]packedItem{item}, []kitchenTool{{"Scale", "note", "helpful", "![](picture:scale)"}}}, kitchenView{}},
		"before": {beforeView{
			Intro: "Intro.", Cautions: []gatheredCaution{{"CAUTION", "Hot.", "step 1"}}, Supplied: []suppliedCaution{{"**A**", "Wax: hot."}},
			Statements: []string{"Conforms to ASTM D-4236"}, Gathered: []fact{{"Wear", "gloves"}}, Aid: []string{"A burn: cool it."}, Emergency: "112", Guarded: true, Age: 12,
		}, beforeView{}},
		"method":   {[]methodPart{{"Pour", "part-1", "Intro.", []stepView{step}}}, []methodPart{}},
		"trouble":  {[]troubleView{{"Lump", "trouble-1", "Why."}}, []troubleView{}},
		"batch":    {batchView{[]string{"Pine"}, []batchRow{{"Wax", "720 g"}}}, batchView{}},
		"storing":  {wordsView{"Storing", "", "Dry."}, wordsView{}},
		"more":     {[]wordsView{{"Burning", "more-1", "Slowly."}}, []wordsView{}},
		"colophon": {colophonView{"Kit, edition 1", "Maker", "About.", []string{"The wax."}, "![x](figure:x)", "Page."}, colophonView{}},
	} {
		a := assemblyOf(t, &kit.Kit{})
		for _, value := range values {
			text, err := a.execute(name, value)
			if err != nil {
				t.Error(err)
			}
			if strings.Contains(text, "<no value>") || strings.Contains(text, "{{") || strings.Contains(text, "\n\n\n") {
				t.Errorf("%s gives\n%s", name, text)
			}
		}
	}
	for _, part := range bookletParts {
		if _, err := templates.Shipped().File("booklet/" + part.name + ".md"); err != nil {
			t.Error(err)
		}
	}
}
