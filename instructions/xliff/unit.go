// Package xliff hands the texts of a kit to a translator as XLIFF 2.0 (OASIS) and takes
// them back. What a link does and how much it says is locked: it goes out as inline
// codes and comes back from the kit itself, never from the file, so that no translator
// can change it.
package xliff

import (
	"tallyfold/kit"
	"tallyfold/kit/source"
	"tallyfold/templates"
)

// A Unit is one text to translate: a title, a paragraph, a name.
type Unit struct {
	// ID is the same for the same place of the kit: "step-mix-2".
	ID string
	// Note tells the translator what it is.
	Note   string
	pieces []piece
	// head stands before the translation in its file, further before each line after.
	head, further string
}

// A piece is either text to translate or a code.
type piece struct {
	text string
	code *code
}

// A code is locked. Of a link's two codes the first has no end of its own.
type code struct {
	id   int
	kind codeKind
	// shows is what the translator sees; writes is what stands in the translation.
	shows, writes string
}

type codeKind int

const (
	alone  codeKind = iota // an amount, a signal word, a link without a text
	opens                  // the bracket before a link's text
	closes                 // the bracket after it, with what the link does
)

// A Section is what stands under one heading of a file.
type Section struct {
	// Name is the destination of the heading: "step:mix".
	Name string
	// Units are its title and its blocks, in order.
	Units []*Unit
	// parameters stand behind the name in the heading: "?of=1a2b3c4d".
	parameters string
	// level of the heading.
	level int
}

// A File is what becomes one file of the translation.
type File struct {
	// Name is "method", "trouble", "words" or "kit".
	Name     string
	Sections []*Section
}

// Files gives all texts of a kit, for a translation into a language by its BCP 47 tag.
// words are the fixed words of that language, for its signal words.
func Files(k *kit.Kit, words templates.Words) []*File {
	c := &cutter{kit: k, words: words}
	method := &File{Name: "method"}
	for _, part := range k.Method.Parts {
		if part.Title != "" {
			method.Sections = append(method.Sections, c.section("part:"+part.ID, 1, part.Title, part.Body, part.Operations, part.Cautions))
		}
		for _, step := range part.Steps {
			s := c.section("step:"+step.ID, 2, step.Title, step.Body, step.Operations, step.Cautions)
			s.parameters = "?of=" + step.Fingerprint()
			method.Sections = append(method.Sections, s)
		}
	}
	trouble := &File{Name: "trouble"}
	for _, t := range k.Troubles {
		trouble.Sections = append(trouble.Sections, c.section("trouble:"+t.ID, 2, t.Title, t.Body, t.Operations, t.Cautions))
	}
	further := &File{Name: "words"}
	for _, w := range k.Words {
		further.Sections = append(further.Sections, c.section("words:"+w.ID, 2, w.Title, w.Body, w.Operations, nil))
	}
	return []*File{c.texts(), method, trouble, further}
}

// section cuts one passage into its title and blocks.
func (c *cutter) section(name string, level int, title string, body source.Span, operations []*kit.Operation, cautions []kit.Caution) *Section {
	s := &Section{Name: name, level: level}
	c.name, c.count = name, 0
	s.Units = append(s.Units, c.unit("the title", []piece{{text: title}}))
	for _, b := range blocksOf(body) {
		unit := c.unit("a paragraph", c.pieces(b, body.File, operations, cautions))
		unit.head, unit.further = b.head, b.further
		if hasText(unit) {
			s.Units = append(s.Units, unit)
		}
	}
	return s
}

func hasText(u *Unit) bool { return len(u.pieces) > 0 }

// texts are the texts and names of kit.yaml.
func (c *cutter) texts() *File {
	file := &File{Name: "kit"}
	c.name, c.count = "kit", 0
	s := &Section{Name: "kit"}
	for _, text := range c.kit.Texts() {
		s.Units = append(s.Units, c.unit("a text of kit.yaml", []piece{{text: text.Value}}))
	}
	for _, name := range c.kit.Names() {
		unit := c.unit("a name, as lists print it", []piece{{text: name.String()}})
		unit.ID = "name-" + name.ID
		s.Units = append(s.Units, unit)
	}
	file.Sections = []*Section{s}
	return file
}
