package render

import (
	"fmt"
	"html"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
)

// HTML gives the booklet as one file that needs nothing else: styles, faces,
// figures and pictures are inside. It is made from the booklet's Markdown and
// nothing more, so that the two can't disagree.
//
// Where the number of a page belongs stands an empty element with data-page-of, the id
// of what begins there: whoever makes the pages fills it in.
func (b *Booklet) HTML() ([]byte, error) {
	body := b.body()
	style, err := b.style(body + b.Foot + b.Title)
	if err != nil {
		return nil, err
	}
	data, err := b.data()
	if err != nil {
		return nil, err
	}
	page, err := b.templates.Execute("book.html", nil, shell{
		Language: b.Language, Direction: b.word("direction"), Title: b.Title,
		Style: style, Draft: b.draftMark(), Body: body, Data: data,
	})
	if err != nil {
		return nil, err
	}
	return []byte(page), nil
}

// shell is what book.html fills in. Data is JSON-LD; all but that, the style and the body
// is plain text.
type shell struct {
	Language, Direction, Title, Style, Draft, Body, Data string
}

// body gives the Markdown as HTML sections. Of several languages each is set apart
// with its own direction, and all but the first have its tag before their ids.
func (b *Booklet) body() string {
	if len(b.Further) == 0 {
		return b.sections("")
	}
	out := b.inItsLanguage(b.sections(""))
	for _, further := range b.Further {
		out += further.inItsLanguage(further.sections(strings.ToLower(further.Language) + "-"))
	}
	return out
}

func (b *Booklet) inItsLanguage(sections string) string {
	// An article rather than a div: of a div a tagged PDF keeps neither tag nor language.
	return fmt.Sprintf("<article class=\"language\" lang=\"%s\" dir=\"%s\">\n%s</article>\n",
		html.EscapeString(b.Language), html.EscapeString(b.word("direction")), sections)
}

// sections gives the Markdown of one language.
func (b *Booklet) sections(prefix string) string {
	read := goldmark.New(
		goldmark.WithExtensions(extension.Table, extension.TaskList),
		goldmark.WithParserOptions(parser.WithAttribute()),
	).Parser()
	w := &writer{booklet: b, source: b.Markdown, prefix: prefix, ids: map[string]bool{}}
	w.document(read.Parse(text.NewReader(b.Markdown)))
	return w.out.String()
}

// style gives the style sheets and faces as one text.
func (b *Booklet) style(text string) (string, error) {
	faces, err := b.templates.FaceRules(text)
	if err != nil {
		return "", err
	}
	screen, err := b.templates.File("book.css")
	if err != nil {
		return "", err
	}
	narrow, err := b.templates.File("narrow.css")
	if err != nil {
		return "", err
	}
	print, err := b.templates.Execute("print.css", nil, b.pageStyle())
	if err != nil {
		return "", err
	}
	where := "screen and (max-width: 30rem)"
	if b.Form.Narrow() {
		where += ", print"
	}
	sheets := faces + string(screen) + "@media " + where + " {\n" + string(narrow) + "}\n" + print
	// A maker's own style sheet must not be able to end the style element.
	return strings.ReplaceAll(b.coloured(sheets)+b.templates.OwnStyles(), "</", `<\/`), nil
}

// pageStyle is what print.css fills in; lengths are in millimetres, the type in points.
type pageStyle struct {
	Width, Height, AreaHeight  string
	Top, Outer, Bottom, Inner  string
	Type, Foot, Folio          string
	FootText, Draft            string
	Further                    []furtherFoot // of the other languages
	Columns                    int
	Bound, Leaf, Single, Large bool
	Black                      bool
}

// furtherFoot is the line at the foot of the pages in another language, by its tag and as
// a CSS string.
type furtherFoot struct{ Tag, Text string }

func (b *Booklet) furtherFeet() []furtherFoot {
	var feet []furtherFoot
	for _, further := range b.Further {
		feet = append(feet, furtherFoot{html.EscapeString(further.Language), cssString(further.Foot)})
	}
	return feet
}

func (b *Booklet) pageStyle() pageStyle {
	form := b.Form
	_, high := form.Area()
	foot := form.footSize()
	return pageStyle{
		Width: millimetres(form.Paper.Width), Height: millimetres(form.Paper.Height),
		// With a hair to spare, so that a full page never spills onto a second page.
		AreaHeight: millimetres(high - 0.5),
		Top:        millimetres(form.Margins.Top), Outer: millimetres(form.Margins.Outer),
		Bottom: millimetres(form.Margins.Bottom), Inner: millimetres(form.Margins.Inner),
		Type: fmt.Sprintf("%.4g", form.Type), Foot: fmt.Sprintf("%.4g", foot), Folio: fmt.Sprintf("%.4g", foot+1),
		FootText: cssString(b.Foot), Further: b.furtherFeet(), Draft: cssStringOrNone(b.draftMark()), Columns: form.Columns,
		Bound: form.Way == Bound, Leaf: form.Way == Leaf, Single: form.Way == Single, Large: form.Large, Black: b.Black,
	}
}

// footType is the size of the line at the foot of a page, in points; smallestLarge that
// of large print.
const (
	footType      = 7.4
	smallestLarge = 16
)

// footSize is that of the line at the foot of a form's pages, in points.
func (f Form) footSize() float64 {
	if f.Large {
		return smallestLarge
	}
	return footType
}

func millimetres(length float64) string { return fmt.Sprintf("%.4g", length) }

// cssString writes text as a CSS string, whatever it holds.
func cssString(text string) string {
	var out strings.Builder
	out.WriteByte('"')
	for _, r := range text {
		switch {
		case r < ' ' || r == '"' || r == '\\' || r == '<' || r == '>' || r == '&':
			fmt.Fprintf(&out, `\%x `, r)
		default:
			out.WriteRune(r)
		}
	}
	out.WriteByte('"')
	return out.String()
}

// cssStringOrNone leaves an empty text empty, for a template to test.
func cssStringOrNone(text string) string {
	if text == "" {
		return ""
	}
	return cssString(text)
}
