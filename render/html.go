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
// pages maps a section's id to the page it begins on, for the contents; nil
// leaves the numbers out, as on a screen and in the first of two passes to PDF.
func (b *Booklet) HTML(pages map[string]int) ([]byte, error) {
	style, err := b.style()
	if err != nil {
		return nil, err
	}
	data, err := b.data()
	if err != nil {
		return nil, err
	}
	page, err := b.templates.Execute("book.html", nil, shell{
		Language: b.Language, Direction: b.word("direction"), Title: b.Title,
		Style: style, Draft: b.draftMark(), Body: b.body(pages), Data: data,
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

// pageStyle is what print.css fills in: lengths in mm, texts as CSS strings.
type pageStyle struct {
	Width, Height, PageHeight, Foot, Draft string
}

// body gives the Markdown as HTML sections. Of several languages each is set apart
// with its own direction, and all but the first have its tag before their ids.
func (b *Booklet) body(pages map[string]int) string {
	if len(b.Further) == 0 {
		return b.sections(pages, "")
	}
	out := b.inItsLanguage(b.sections(pages, ""))
	for _, further := range b.Further {
		out += further.inItsLanguage(further.sections(pages, strings.ToLower(further.Language)+"-"))
	}
	return out
}

func (b *Booklet) inItsLanguage(sections string) string {
	return fmt.Sprintf("<div class=\"language\" lang=\"%s\" dir=\"%s\">\n%s</div>\n",
		html.EscapeString(b.Language), html.EscapeString(b.word("direction")), sections)
}

// sections gives the Markdown of one language.
func (b *Booklet) sections(pages map[string]int, prefix string) string {
	read := goldmark.New(
		goldmark.WithExtensions(extension.Table, extension.TaskList),
		goldmark.WithParserOptions(parser.WithAttribute()),
	).Parser()
	w := &writer{booklet: b, source: b.Markdown, pages: pages, prefix: prefix, ids: map[string]bool{}}
	w.document(read.Parse(text.NewReader(b.Markdown)))
	return w.out.String()
}

// style gives the style sheets and faces as one text.
func (b *Booklet) style() (string, error) {
	faces, err := b.templates.FaceRules()
	if err != nil {
		return "", err
	}
	screen, err := b.templates.File("book.css")
	if err != nil {
		return "", err
	}
	print, err := b.templates.Execute("print.css", nil, pageStyle{
		Width: millimetres(b.Paper.Width), Height: millimetres(b.Paper.Height),
		PageHeight: millimetres(b.Paper.Height - pageMargins),
		Foot:       cssString(b.Foot), Draft: cssStringOrNone(b.draftMark()),
	})
	if err != nil {
		return "", err
	}
	// A maker's own style sheet must not be able to end the style element.
	return strings.ReplaceAll(faces+string(screen)+print+b.templates.OwnStyles(), "</", `<\/`), nil
}

// pageMargins is what print.css leaves above and below a page, in millimetres,
// with a hair to spare so that a full page never spills onto a second page.
const pageMargins = 13 + 16 + 0.5

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
