package render

import (
	"fmt"
	"slices"
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
// paragraph of Markdown, those that warn first, in a quotation with the alert sign. Packs
// that bear the same are told together. Hazards of packs are not among them, as the cautions
// of the steps tell them.
func (a *assembly) statements() []string {
	var texts []string
	warns, packs := map[string]bool{}, map[string][]string{}
	for _, s := range market.Statements(a.kit, a.ledger, handbook.InBooklet) {
		if s.Hazards {
			continue
		}
		text := a.stating(s)
		if !slices.Contains(texts, text) {
			texts = append(texts, text)
		}
		warns[text] = s.Warns()
		if s.Component != nil {
			packs[text] = append(packs[text], strings.TrimSpace(a.bag(s.Component.ID)+" "+escape(s.Component.String())))
		}
	}
	var told, plain []string
	for _, text := range texts {
		full := text
		if names := strings.Join(packs[text], ", "); names != "" {
			full = names + ": " + text
		}
		if warns[text] {
			told = append(told, "> **"+alertHead+"** "+full)
		} else {
			plain = append(plain, full)
		}
	}
	return append(told, plain...)
}

// stating are the words of a statement. A reader who listens is to hear the law's English as
// English.
func (a *assembly) stating(s market.Statement) string {
	switch {
	case s.Word != "":
		return a.say(s.Word)
	case a.words.Language != templates.SourceLanguage:
		return "[" + escape(s.Text) + "](" + tongue + templates.SourceLanguage + ")"
	}
	return escape(s.Text)
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
