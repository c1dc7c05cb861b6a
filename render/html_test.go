package render

import (
	"strings"
	"testing"

	"tallyfold/render/figure"
	"tallyfold/templates"
)

// bookletOf is a booklet of some Markdown alone.
func bookletOf(t testing.TB, markdown string) *Booklet {
	t.Helper()
	words, err := templates.Shipped().Words(templates.SourceLanguage)
	if err != nil {
		t.Fatal(err)
	}
	return &Booklet{
		Title: "Harbour candles", Foot: "Harbour candles, edition 1", Language: "en", Form: A5, Markdown: []byte(markdown),
		Figures: map[string]figure.Figure{"jar": figure.Gauge{Title: "A jar", Level: 0.5, LevelSays: "190 g"}.Draw()},
		Pictures: map[string][]byte{
			"dot": []byte("GIF89a\x01\x00\x01\x00\x80\x00\x00\x00\x00\x00\xff\xff\xff,\x00\x00\x00\x00\x01\x00\x01\x00\x00\x02\x02D\x01\x00;"),
			"bad": []byte("<script>alert(1)</script>"),
		},
		templates: templates.Shipped(), words: words,
	}
}

func TestMarkdownToHTML(t *testing.T) {
	for _, test := range []struct {
		why, markdown string
		want          []string
		not           []string
	}{
		{
			why:      "a heading opens a section with its id and class",
			markdown: "## In the box {#in-the-box .box}\n\nText.",
			want:     []string{`<section id="in-the-box" class="box">`, "<h2>In the box</h2>", "<p>Text.</p>\n</section>"},
		},
		{
			why:      "sections nest by level, and the cover ends at the next heading",
			markdown: "# Kit {#cover .cover}\n\n## A {#a .method}\n\n### 1. B {#b .step}\n\n## C {#c .method}",
			want:     []string{"</section>\n<section id=\"a\"", "<h3><span class=\"number\">1<span class=\"hush\">. </span></span>B</h3>\n</section>\n</section>\n<section id=\"c\""},
		},
		{
			why:      "only known classes and plain, unused ids get through",
			markdown: "## A {#a .method .evil onclick=\"x()\" style=\"color:red\"}\n\n## B {#a}\n\n## C {#\"x}",
			want:     []string{`<section id="a" class="method">`, "<section>\n<h2>B</h2>"},
			not:      []string{"evil", "onclick=\"", "style=\""},
		},
		{
			why:      "a signal word makes a caution, with its word and symbol",
			markdown: "> **WARNING** Hot wax burns.\n>\n> Stay there.",
			want:     []string{`<div class="signal warning" role="note">`, "<b>WARNING</b>", "<svg", "<p>Hot wax burns.</p>\n<p>Stay there.</p>"},
		},
		{
			why:      "NOTICE is about things, not people: no alert symbol (ANSI Z535.6)",
			markdown: "> **NOTICE:** Wax blocks drains.",
			want:     []string{`<div class="signal notice"`, "<p>Wax blocks drains.</p>"},
			not:      []string{"<svg"},
		},
		{
			why:      "a cue is set apart",
			markdown: "> **Look for:** no specks",
			want:     []string{`<div class="cue">`, "<b>Look for:</b> no specks"},
		},
		{
			why:      "another quotation stays one",
			markdown: "> *Slowly*, she said.",
			want:     []string{"<blockquote>"},
		},
		{
			why:      "a table heads its columns; an empty corner makes the first column head the rows",
			markdown: "| | Pine |\n|---|--:|\n| Tint | 2 g |",
			want:     []string{"<td>&nbsp;</td>", `<th scope="col" class="right">Pine</th>`, `<th scope="row">Tint</th>`, `<td class="right">2&nbsp;g</td>`},
		},
		{
			why:      "a ballot box can be ticked and says what it is for",
			markdown: "| ☐ | Bag | What |\n|---|---|---|\n| ☐ | **A** | Wax |",
			want:     []string{`<table class="ticked lettered">`, `type="checkbox"`, `aria-label="A, Wax"`, `<b class="bag">A</b>`},
			not:      []string{"☐"},
		},
		{
			why:      "a task is a box with its words as label",
			markdown: "- [ ] Done",
			want:     []string{`<ul class="ticks">`, "<li><label>", "<span>Done</span></label></li>"},
		},
		{
			why:      "facts stay on one line each",
			markdown: "### 1. Melt {#step-1 .step}\n\n**Time** 20 min · **In** the jug",
			want:     []string{`<p class="facts"><span class="fact work"><svg class="pictogram" aria-hidden="true"`, `<b>Time</b> 20&nbsp;min</span> <span class="fact vessel">`},
		},
		{
			why:      "a temperature has the thermometer of its arrow",
			markdown: "### 1. Melt {#step-1 .step}\n\n**Temperature** ↑ to 75 °C · **Temperature** ↓ to 60 °C",
			want:     []string{`<span class="fact warm"><svg`, `<b>Temperature</b> to 75&nbsp;°C</span>`, `<span class="fact cool">`},
			not:      []string{"↑", "↓", "<title"},
		},
		{
			why:      "what a caution speaks of is drawn beside it; other cautions have nothing",
			markdown: "> **CAUTION** Wear oven gloves.\n\n> **CAUTION** Clover gloveless.",
			want:     []string{"<p>Wear oven gloves.</p>\n</div>\n<div class=\"signs\"><svg class=\"pictogram\"", "<p>Clover gloveless.</p>\n</div>\n</div>"},
		},
		{
			why:      "links inside the booklet work, all others leave their text",
			markdown: "[a](#step-1) [b](https://example.com) [c](javascript:alert(1)) [d](file:///etc/passwd) <https://example.com/x>",
			want:     []string{`<a href="#step-1">a</a> b c d https://example.com/x`},
			not:      []string{"javascript", "file:", `href="http`},
		},
		{
			why:      "the contents have room for page numbers",
			markdown: "## Contents {#contents .contents}\n\n- [A](#step-1)\n- [B](#step-2)",
			want:     []string{`<a href="#step-1"><span>A</span><span class="leader"></span><span class="page" data-page-of="step-1"></span></a>`},
		},
		{
			why:      "figures are drawn in the page with their text alternative",
			markdown: "![190 g](figure:jar)",
			want:     []string{"<figure role=\"group\"><svg", `role="img"`, "<desc id=\"figure-1-text\">190 g.</desc>"},
		},
		{
			why:      "pictures are inside the page; what is none by its bytes, or isn't there, leaves its words",
			markdown: "![a dot](picture:dot \"A dot\")\n\n![a dot](picture:dot \"So small\")\n\n![bad](picture:bad)\n\n![gone](picture:gone)\n\n![far](https://example.com/x.png)",
			want:     []string{`<figure aria-labelledby="caption-1"><img alt="a dot" src="data:image/gif;base64,`, `<figcaption id="caption-1" aria-hidden="true">A dot</figcaption>`, `<figcaption id="caption-2">So small</figcaption>`, "<p>bad</p>", "<p>gone</p>", "<p>far</p>"},
			not:      []string{"script", `src="http`},
		},
		{
			why:      "typed HTML is shown as text, comments are the maker's own",
			markdown: "<b onclick=x>hi</b> there <!-- note to self -->\n\n<script>alert(1)</script>\n\n<!-- a\nlong note -->\n\nEnd.",
			want:     []string{"&lt;b onclick=x&gt;hi&lt;/b&gt; there", "&lt;script&gt;alert(1)&lt;/script&gt;", "<p>End.</p>"},
			not:      []string{"<script", "note"},
		},
		{
			why:      "numbers stay with their units, apostrophes are curved, fractions set",
			markdown: "Don't use 720 g or 4 ½ cups or 1 ⅓ cups or 2 1/2 cups at 60 °C in 5 minutes' time.",
			want:     []string{"Don’t", "720&nbsp;g", "4&nbsp;½&nbsp;cups", "2&nbsp;½&nbsp;cups", `<span class="fraction">1⁄3</span>`, "60&nbsp;°C"},
		},
	} {
		t.Run(test.why, func(t *testing.T) {
			body := strings.ReplaceAll(bookletOf(t, test.markdown).body(), "\u00a0", "&nbsp;")
			for _, want := range test.want {
				if !strings.Contains(body, want) {
					t.Errorf("lacks %s\n%s", want, body)
				}
			}
			for _, not := range test.not {
				if strings.Contains(body, not) {
					t.Errorf("holds %s\n%s", not, body)
				}
			}
		})
	}
}

func TestThePageNeedsNothingElse(t *testing.T) {
	booklet := bookletOf(t, "# Kit {#cover .cover}\n\nText.")
	booklet.Foot = `Bags "A" </style><script>`
	page, err := booklet.HTML()
	if err != nil {
		t.Fatal(err)
	}
	text := string(page)
	for _, want := range []string{
		`<html lang="en" dir="ltr">`, "default-src 'none'", `<title>Harbour candles</title>`, "size: 148mm 210mm",
		`content: "Bags \22 A\22  \3c /style\3e \3c script\3e "`,
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the page lacks %s", want)
		}
	}
	if strings.Count(text, "</style>") != 1 || strings.Contains(text, "<script") {
		t.Error("the foot broke out of the style sheet")
	}
	if strings.Contains(text, "DRAFT") {
		t.Error("a finished booklet is marked as a draft")
	}
	again, err := booklet.HTML()
	if err != nil || string(again) != text {
		t.Error("the same booklet gave another page")
	}
	booklet.Draft, booklet.Form = true, HalfLetter
	draft, err := booklet.HTML()
	if err != nil || !strings.Contains(string(draft), `@top-center { content: "DRAFT`) || !strings.Contains(string(draft), "size: 139.7mm 215.9mm") {
		t.Errorf("the draft is not marked, or of another size: %v", err)
	}
}
