package render

import (
	"fmt"
	"html"
	"strings"

	"github.com/yuin/goldmark/ast"
)

// inlines gives the HTML of the running text in a block.
func (w *writer) inlines(parent ast.Node) string {
	var out strings.Builder
	for node := parent.FirstChild(); node != nil; node = node.NextSibling() {
		out.WriteString(w.inline(node))
	}
	return out.String()
}

func (w *writer) inline(node ast.Node) string {
	switch node := node.(type) {
	case *ast.Text:
		return w.text(node)
	case *ast.String:
		return w.typeset(string(node.Value))
	case *ast.Emphasis:
		// <b> and <i> rather than <strong> and <em>: in a tagged PDF those
		// become roles that some readers refuse.
		if node.Level == 2 {
			return "<b>" + w.inlines(node) + "</b>"
		}
		return "<i>" + w.inlines(node) + "</i>"
	case *ast.CodeSpan:
		return "<code>" + html.EscapeString(w.plain(node)) + "</code>"
	case *ast.Link:
		return w.link(node)
	case *ast.AutoLink:
		return html.EscapeString(string(node.Label(w.source)))
	case *ast.Image:
		return w.inlineImage(node)
	case *ast.RawHTML:
		return w.rawMarkup(node)
	}
	return w.inlines(node)
}

func (w *writer) text(node *ast.Text) string {
	out := w.typeset(w.decode(node.Segment.Value(w.source)))
	switch {
	case node.HardLineBreak():
		out += "<br>\n"
	case node.SoftLineBreak():
		out += "\n"
	}
	return out
}

func (w *writer) decode(raw []byte) string { return decodeMarkdown(raw) }

// plain gives the text of a node without any markup.
func (w *writer) plain(parent ast.Node) string { return plainText(w.source, parent) }

// rawMarkup shows inline HTML as text; a comment is the maker's own note.
func (w *writer) rawMarkup(node *ast.RawHTML) string {
	typed := rawText(w.source, node)
	if strings.HasPrefix(typed, "<!--") {
		return ""
	}
	return html.EscapeString(typed)
}

// link keeps links that stay within the booklet. Of any other only the text
// remains: a page on paper leads nowhere, and a file from a box opens nothing.
func (w *writer) link(node *ast.Link) string {
	inner := w.inlines(node)
	if tag, is := strings.CutPrefix(string(node.Destination), tongue); is && plainID.MatchString(tag) {
		return fmt.Sprintf(`<span lang="%s" dir="ltr">%s</span>`, tag, inner)
	}
	id, inside := strings.CutPrefix(string(node.Destination), "#")
	if !inside || !plainID.MatchString(id) || inner == "" {
		return inner
	}
	if w.class() == "contents" {
		return w.contentsLink(id, inner)
	}
	return fmt.Sprintf(`<a href="#%s">%s</a>`, w.prefix+id, inner)
}

// contentsLink is a line of the contents, with room for the number of its page.
func (w *writer) contentsLink(id, inner string) string {
	return fmt.Sprintf(`<a href="#%[1]s"><span>%[2]s</span><span class="leader"></span><span class="page" data-page-of="%[1]s"></span></a>`,
		w.prefix+id, inner)
}
