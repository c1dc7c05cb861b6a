package render

import (
	"fmt"
	"regexp"
	"strings"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"
)

// table writes a table. Its first row heads the columns; where the corner is
// empty, the first column heads the rows.
func (w *writer) table(table *east.Table) {
	header := table.FirstChild()
	if header == nil {
		return
	}
	rowHeads := header.FirstChild() != nil && strings.TrimSpace(w.plain(header.FirstChild())) == ""
	fmt.Fprintf(&w.out, "<table%s>\n<thead>\n", w.tableClass(header))
	w.row(table, header, "", true, false)
	w.out.WriteString("</thead>\n")
	if header.NextSibling() != nil {
		w.out.WriteString("<tbody>\n")
		for row := header.NextSibling(); row != nil; row = row.NextSibling() {
			w.row(table, row, w.rowName(row), false, rowHeads)
		}
		w.out.WriteString("</tbody>\n")
	}
	w.out.WriteString("</table>\n")
}

// tableClass says what hangs in the rail: tick boxes, and bag letters after them.
func (w *writer) tableClass(header ast.Node) string {
	if strings.TrimSpace(w.plain(header.FirstChild())) != "☐" {
		return ""
	}
	second := header.FirstChild().NextSibling()
	if second != nil && w.plain(second) == w.booklet.word("bag") {
		return ` class="ticked lettered"`
	}
	return ` class="ticked"`
}

// rowName is what a tick box at the head of the row ticks off.
func (w *writer) rowName(row ast.Node) string {
	var parts []string
	for cell := row.FirstChild(); cell != nil; cell = cell.NextSibling() {
		if text := strings.TrimSpace(strings.ReplaceAll(w.plain(cell), "☐", "")); text != "" {
			parts = append(parts, text)
		}
	}
	return strings.Join(parts, ", ")
}

// row writes one row; name is for a tick box in it.
func (w *writer) row(table *east.Table, row ast.Node, name string, head, rowHeads bool) {
	w.out.WriteString("<tr>")
	column := 0
	for cell := row.FirstChild(); cell != nil; cell = cell.NextSibling() {
		w.cell(cell, cellKind{
			head: head, rowHead: rowHeads && column == 0, tick: name,
			thing: !head && name != "" && column == 1 && (w.class() == "kitchen" || w.class() == "box"),
			right: column < len(table.Alignments) && table.Alignments[column] == east.AlignRight,
		})
		column++
	}
	w.out.WriteString("</tr>\n")
}

// cellKind says what a cell is.
type cellKind struct {
	head, rowHead, right bool
	thing                bool // names what to lay out
	tick                 string
}

func (w *writer) cell(cell ast.Node, kind cellKind) {
	inner := w.cellText(cell, kind)
	if kind.thing {
		inner += w.signsOf(w.plain(cell), toolSigns, 1)
	}
	tag, scope := "td", ""
	switch {
	case inner == "":
		// An empty head would be read out as a heading of nothing; an empty cell would be
		// left out of a tagged PDF, and the cells behind it move up.
		inner = noBreakSpace
	case kind.head:
		tag, scope = "th", ` scope="col"`
	case kind.rowHead:
		tag, scope = "th", ` scope="row"`
	}
	class := ""
	if kind.right {
		class = ` class="right"`
	}
	fmt.Fprintf(&w.out, "<%s%s%s>%s</%s>", tag, scope, class, inner, tag)
}

const noBreakSpace = "\u00a0"

// cellText writes a cell. In the head a ballot box is only the sign of a
// column to tick and is left empty; a lone bold letter is a bag.
func (w *writer) cellText(cell ast.Node, kind cellKind) string {
	plain := strings.TrimSpace(w.plain(cell))
	switch {
	case plain == "☐" && kind.head:
		return ""
	case plain == "☐":
		return w.tick(kind.tick)
	}
	return bagLetters.ReplaceAllString(w.inlines(cell), `<b class="bag">$1</b>`)
}

// bagLetters: one to three bold capitals alone are the letters of a bag.
var bagLetters = regexp.MustCompile(`<b>([A-Z]{1,3})</b>`)
