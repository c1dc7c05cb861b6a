package render

import (
	"fmt"
	"strings"

	"github.com/yuin/goldmark/ast"

	"tallyfold/kit/handbook"
	"tallyfold/kit/market"
	"tallyfold/templates"
)

// alertHead is at the head of a quotation that bears a statement in the words of a law: the
// writer puts the alert sign in its place.
const alertHead = "⚠"

// statements are what markets ask to be read in the booklet as well as on labels, each as a
// paragraph of Markdown: a quotation with the alert sign where it warns. Hazards of packs
// are not among them, as the cautions of the steps tell them.
func (a *assembly) statements() []string {
	var all []string
	for _, s := range market.Statements(a.kit, a.ledger, handbook.InBooklet) {
		if s.Hazards {
			continue
		}
		text := escape(s.Text)
		switch {
		case s.Word != "":
			text = a.say(s.Word)
		case a.words.Language != templates.SourceLanguage:
			// A reader who listens is to hear the law's English as English.
			text = "[" + text + "](" + tongue + templates.SourceLanguage + ")"
		}
		if s.Component != nil {
			text = a.bagged(s.Component.ID, escape(s.Component.String())) + ": " + text
		}
		if s.Warns() {
			text = "> **" + alertHead + "** " + text
		}
		all = appendOnce(all, text)
	}
	return all
}

// tongue begins the destination of words that are in another language.
const tongue = "lang:"

// statement writes what a law asks to be said: the alert sign on its ground, the words as
// they are behind it.
func (w *writer) statement(node *ast.Blockquote) {
	paragraph := node.FirstChild()
	paragraph.RemoveChild(paragraph, paragraph.FirstChild())
	fmt.Fprintf(&w.out, "<div class=\"signal statement\" role=\"note\">\n<p class=\"word\">%s</p>\n<div class=\"says\">\n<p>%s</p>\n</div>\n</div>\n",
		alertSymbol, strings.TrimLeft(w.inlines(paragraph), " \u00a0\n"))
}

func (a *assembly) bagged(id, name string) string {
	if bag := a.bag(id); bag != "" {
		return bag + " " + name
	}
	return name
}

func appendOnce(all []string, one string) []string {
	for _, known := range all {
		if known == one {
			return all
		}
	}
	return append(all, one)
}
