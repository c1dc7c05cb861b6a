package render

import (
	"fmt"
	"html"
	"strings"

	"github.com/yuin/goldmark/ast"
)

// paragraph writes a paragraph. Three kinds look different: a picture alone is
// a figure, the line under a step's title tells its facts, and the cover has its
// own lines.
func (w *writer) paragraph(node *ast.Paragraph) {
	if image, ok := onlyChild(node).(*ast.Image); ok {
		if w.figureBlock(image) {
			return
		}
	}
	switch class := w.class(); {
	case (class == "step" && !w.onCard() || class == "glance") && isFacts(node):
		w.facts(node)
	case class == "cover":
		w.coverParagraph(node)
	default:
		inner := w.inlines(node)
		if strings.TrimSpace(inner) != "" {
			fmt.Fprintf(&w.out, "<p>%s</p>\n", inner)
		}
	}
}

// onCard says whether this is a line of the card, where a step has no facts of its own.
func (w *writer) onCard() bool { return len(w.sections) > 1 && w.sections[0].class == "card" }

func onlyChild(node ast.Node) ast.Node {
	if node.ChildCount() != 1 {
		return nil
	}
	return node.FirstChild()
}

// isFacts: the paragraph under a heading that is bold at its head.
func isFacts(node ast.Node) bool {
	_, afterHeading := node.PreviousSibling().(*ast.Heading)
	return afterHeading && isBold(node.FirstChild())
}

func isBold(node ast.Node) bool {
	emphasis, ok := node.(*ast.Emphasis)
	return ok && emphasis.Level == 2
}

// facts keeps each fact on one line where it can.
func (w *writer) facts(node ast.Node) {
	facts := strings.Split(w.inlines(node), " · ")
	for i, fact := range facts {
		facts[i] = w.fact(fact)
	}
	fmt.Fprintf(&w.out, "<p class=\"facts\">%s</p>\n", strings.Join(facts, " "))
}

// fact writes one fact with its pictogram. The arrow of a temperature is that of its
// thermometer.
func (w *writer) fact(fact string) string {
	drawn, kind := "", ""
	for name, pictogram := range factPictograms {
		after, ok := strings.CutPrefix(fact, "<b>"+html.EscapeString(w.booklet.word(name))+"</b> ")
		if !ok {
			continue
		}
		for arrow, other := range map[string]string{rising: "warm", falling: "cool"} {
			if strings.HasPrefix(after, arrow) {
				fact, pictogram = strings.Replace(fact, arrow, "", 1), other
			}
		}
		drawn, kind = w.pictogram(pictogram), " "+pictogram
	}
	return `<span class="fact` + kind + `">` + drawn + fact + `</span>`
}

// coverParagraph tells the cover's lines apart: in italics the sentence about
// the kit, bold the head of what one must have, and at the end maker and edition.
func (w *writer) coverParagraph(node ast.Node) {
	inner := w.inlines(node)
	first := node.FirstChild()
	switch {
	case isBold(first) && onlyChild(node) == first:
		fmt.Fprintf(&w.out, "<div class=\"must\"><p>%s</p>\n", inner)
		w.coverOpen = true
	case isItalic(first) && onlyChild(node) == first:
		fmt.Fprintf(&w.out, "<p class=\"lead\">%s</p>\n", inner)
	default:
		w.endCover()
		fmt.Fprintf(&w.out, "<p class=\"edition\">%s</p>\n", inner)
	}
}

// endCover closes the box of what one must have.
func (w *writer) endCover() {
	if w.coverOpen {
		w.out.WriteString("</div>\n")
		w.coverOpen = false
	}
}

func isItalic(node ast.Node) bool {
	emphasis, ok := node.(*ast.Emphasis)
	return ok && emphasis.Level == 1
}

// quotation writes a caution, a cue or a plain quotation, told apart by the
// word at its head.
func (w *writer) quotation(node *ast.Blockquote) {
	head := w.headWord(node)
	for _, signal := range signals {
		if strings.EqualFold(strings.TrimRight(head, ": "), w.booklet.word(signal)) {
			w.signal(node, signal)
			return
		}
	}
	if head == alertHead {
		w.statement(node)
		return
	}
	if head == w.booklet.word("look-for") {
		w.out.WriteString("<div class=\"cue\">\n" + w.pictogram("cue"))
		w.blocks(node)
		w.out.WriteString("</div>\n")
		return
	}
	w.out.WriteString("<blockquote>\n")
	w.blocks(node)
	w.out.WriteString("</blockquote>\n")
}

// The signal words by their weight, as names in the word lists and the style
// sheet (ANSI Z535.6, ISO 3864-2).
var signals = []string{"danger", "warning", "caution", "notice"}

// headWord gives the bold words that a quotation begins with.
func (w *writer) headWord(quotation ast.Node) string {
	paragraph, ok := quotation.FirstChild().(*ast.Paragraph)
	if !ok || !isBold(paragraph.FirstChild()) {
		return ""
	}
	return strings.TrimSpace(w.plain(paragraph.FirstChild()))
}

// alertSymbol is the general warning sign: a triangle with an exclamation mark, which is
// cut out of it, so that it is seen whatever the colours of word and ground.
const alertSymbol = `<svg viewBox="0 0 24 21" aria-hidden="true"><path fill="currentColor" fill-rule="evenodd" ` +
	`d="M12 0 24 21H0ZM10.6 6.8h2.8l-.5 7.4h-1.8zM10.6 15.4h2.8v2.8h-2.8z"/></svg>`

// signal writes a caution: its word on a bar, the message below. NOTICE, which
// is about things and not people, has no alert symbol.
func (w *writer) signal(node *ast.Blockquote, signal string) {
	paragraph := node.FirstChild()
	word := paragraph.FirstChild()
	paragraph.RemoveChild(paragraph, word)
	symbol := alertSymbol
	if signal == "notice" {
		symbol = ""
	}
	fmt.Fprintf(&w.out, "<div class=\"signal %s\" role=\"note\">\n<p class=\"word\">%s<b>%s</b></p>\n<div class=\"says\">\n",
		signal, symbol, html.EscapeString(w.booklet.word(signal)))
	if inner := strings.TrimLeft(w.inlines(paragraph), ": \u00a0\n"); inner != "" {
		fmt.Fprintf(&w.out, "<p>%s</p>\n", inner)
	}
	for next := paragraph.NextSibling(); next != nil; next = next.NextSibling() {
		w.block(next)
	}
	w.out.WriteString("</div>\n")
	if drawn := w.signsOf(w.plain(node), cautionSigns, 3); drawn != "" {
		fmt.Fprintf(&w.out, "<div class=\"signs\">%s</div>\n", drawn)
	}
	w.out.WriteString("</div>\n")
}
