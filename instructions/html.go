package instructions

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
)

// Raw HTML is shown to the customer as text, so it is prose. Only comments are
// left out: they are the maker's own notes.

var (
	noteOpens  = []byte("<!--")
	noteCloses = []byte("-->")
)

// isNote says whether a piece of inline HTML is a comment.
func isNote(html []byte) bool { return bytes.HasPrefix(html, noteOpens) }

func (p *passage) inlineHTML(n *ast.RawHTML) {
	html := n.Segments.Value(p.document.text)
	first, last := n.Segments.At(0), n.Segments.At(n.Segments.Len()-1)
	if isNote(html) {
		p.endProse()
		p.understood(first.Start, last.Stop)
		return
	}
	for i := range n.Segments.Len() {
		segment := n.Segments.At(i)
		p.addProse(segment.Start, segment.Stop)
	}
	if !bytes.HasPrefix(html, []byte("</")) {
		p.shownAsText(first.Start, last.Stop)
	}
}

func (p *passage) shownAsText(start, end int) {
	p.say(rawHTML, p.document.span(start, end), "", "HTML, which is printed as it stands, tags and all",
		"text, emphasis, lists, tables or pictures", "take the tags out", "write what should not be printed as a note: <!-- like this -->")
}

// htmlBlock reads the lines of an HTML block. A note in it may run over several.
func (p *passage) htmlBlock(n *ast.HTMLBlock) {
	h := htmlLines{passage: p, noteStart: -1, shownStart: -1}
	lines := n.Lines()
	for i := range lines.Len() {
		h.line(lines.At(i).Start, lines.At(i).Stop)
	}
	if n.HasClosure() {
		h.line(n.ClosureLine.Start, n.ClosureLine.Stop)
	}
	p.endProse()
	if h.noteStart >= 0 {
		p.say(unclosedNote, p.document.span(h.noteStart, h.noteStart+len(noteOpens)), "",
			"a note that begins with <!-- and never ends, so what follows is left out",
			"--> at its end", "write --> where the note ends")
	}
	if h.shownStart >= 0 {
		p.code = append(p.code, extent{h.shownStart, h.shownEnd})
		p.shownAsText(h.shownStart, h.shownEnd)
	}
}

// htmlLines follows an HTML block line by line.
type htmlLines struct {
	*passage
	noteStart            int // of the open note, -1 when none is
	shownStart, shownEnd int // from the first to the last thing shown, -1 when none
}

func (h *htmlLines) line(start, end int) {
	for start < end {
		rest := h.document.text[start:end]
		if h.noteStart < 0 {
			opens := bytes.Index(rest, noteOpens)
			if opens < 0 {
				opens = len(rest)
			} else {
				h.noteStart = start + opens
			}
			h.shown(start, start+opens)
			start += opens
			continue
		}
		from := min(max(h.noteStart+2-start, 0), len(rest)) // "<!-->" is a whole note
		closes := bytes.Index(rest[from:], noteCloses)
		if closes < 0 {
			h.understood(start, end)
			return
		}
		stop := start + from + closes + len(noteCloses)
		h.understood(start, stop)
		start, h.noteStart = stop, -1
	}
}

func (h *htmlLines) shown(start, end int) {
	if isBlank(h.document.text[start:end]) {
		return
	}
	h.addProse(start, end)
	if h.shownStart < 0 {
		h.shownStart = start
	}
	h.shownEnd = end
}
