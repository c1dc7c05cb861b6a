// Package render makes the booklet: Markdown first, from the kit, its ledger
// and the templates, and then HTML from that Markdown.
package render

import (
	"slices"

	"tallyfold/kit/colour"
	"tallyfold/render/figure"
	"tallyfold/templates"
)

// A Booklet is the text of one booklet with the figures and pictures in it.
type Booklet struct {
	// Title is the document's title; Foot stands at the bottom of each page.
	Title, Foot string
	// Language is the BCP 47 tag of the text.
	Language string
	// Form is what it is made as.
	Form Form
	// Black prints in black alone.
	Black bool
	// Draft marks every page.
	Draft bool
	// Accent is the kit's colour, if it has one, as the maker chose it.
	Accent *colour.Colour
	// Markdown is the whole text; HTML is made from it alone.
	Markdown []byte
	// Figures are drawn where the Markdown has figure:NAME; Pictures, by file
	// name, stand where it has picture:NAME.
	Figures  map[string]figure.Figure
	Pictures map[string][]byte

	// Further is the same booklet in other languages, bound behind this one.
	Further []*Booklet

	templates templates.Set
	words     templates.Words
	howTo     *howTo
}

// Text is the Markdown of the booklet in all its languages, one behind the other.
func (b *Booklet) Text() []byte {
	text := b.Markdown
	for _, further := range b.Further {
		text = append(append(slices.Clone(text), '\n'), further.Markdown...)
	}
	return text
}

// word gives a fixed word of the booklet's language.
func (b *Booklet) word(name string) string { return b.words.Say(name) }

func (b *Booklet) draftMark() string {
	if !b.Draft {
		return ""
	}
	return b.word("draft")
}
