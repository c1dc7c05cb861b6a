package render

import (
	"bufio"
	"fmt"
	"html"
	"math"
	"strings"
	"unicode"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	east "github.com/yuin/goldmark/extension/ast"
	mdhtml "github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/text"

	"tallyfold/kit/source"
)

// prose writes a maker's Markdown anew for the booklet. It is written from the
// tree, not copied, so that whatever a maker leaves open (a fence, a comment, a
// bracket) ends where their text ends and can't swallow the pages after it.
type prose struct {
	source []byte
	// start is where the text stands in its file: it leads a link to its operation.
	start int
	// headings are moved down by so many levels.
	deeper int
	// link gives what stands for a link, picture for a picture, signal the
	// signal word of a quotation or "".
	link    func(p *prose, at int, link *ast.Link) string
	picture func(p *prose, image *ast.Image) string
	signal  func(at int, head string) string
	// before gives the cautions that stand before the block that ends at a place, nil where
	// a passage has none.
	before func(end int) []string

	// after collects what a paragraph brings with it: cues, pictures.
	after []string
}

// makersMarkdown is read as the instructions are: CommonMark with tables and task lists.
var makersMarkdown = goldmark.New(goldmark.WithExtensions(extension.Table, extension.TaskList))

// rewrite gives the text of a place in a maker's file as the booklet's Markdown.
func (p *prose) rewrite(place source.Span) string {
	p.source, p.start = []byte(place.Text()), place.Start
	root := makersMarkdown.Parser().Parse(text.NewReader(p.source))
	if p.before == nil {
		return p.blocks(root)
	}
	return p.guarded(root)
}

// guarded joins the blocks of a passage, and puts before each the cautions of what is done
// in it. What is done inside a list is told before the whole list, so that its numbers run on.
func (p *prose) guarded(root ast.Node) string {
	var out []string
	for node := root.FirstChild(); node != nil; node = node.NextSibling() {
		block := p.blockWithAfter(node)
		if len(block) > 0 {
			out = append(out, p.before(p.start+blockEnd(p.source, node))...)
		}
		out = append(out, block...)
	}
	out = append(out, p.before(math.MaxInt)...) // where the passage has no words
	return strings.Join(out, "\n\n")
}

// blockEnds are the places in its file where the blocks of a passage end, in order.
func blockEnds(place source.Span) []int {
	typed := []byte(place.Text())
	root := makersMarkdown.Parser().Parse(text.NewReader(typed))
	var ends []int
	for node := root.FirstChild(); node != nil; node = node.NextSibling() {
		ends = append(ends, place.Start+blockEnd(typed, node))
	}
	return ends
}

// blockEnd is where the next block begins; a line that leads in a list ends with it. The last
// block reaches past its text, to what is done when all of it is read.
func blockEnd(typed []byte, node ast.Node) int {
	next := node.NextSibling()
	if next != nil && next.Kind() == ast.KindList && strings.HasSuffix(strings.TrimSpace(plainText(typed, node)), ":") {
		next = next.NextSibling()
	}
	for ; next != nil; next = next.NextSibling() {
		if next.Pos() >= 0 {
			return next.Pos()
		}
	}
	return len(typed) + 1
}

// blocks joins the blocks of a parent, a blank line between.
func (p *prose) blocks(parent ast.Node) string {
	var out []string
	for node := parent.FirstChild(); node != nil; node = node.NextSibling() {
		out = append(out, p.blockWithAfter(node)...)
	}
	return strings.Join(out, "\n\n")
}

// blockWithAfter is a block with what it brings with it; nothing of a block without words.
func (p *prose) blockWithAfter(node ast.Node) []string {
	var out []string
	if block := strings.Trim(p.block(node), "\n"); block != "" {
		out = append(out, block)
	}
	out = append(out, p.after...)
	p.after = nil
	return out
}

func (p *prose) block(node ast.Node) string {
	switch node := node.(type) {
	case *ast.Paragraph, *ast.TextBlock:
		return p.paragraph(node)
	case *ast.Heading:
		level := min(node.Level+p.deeper, 6)
		return strings.Repeat("#", level) + " " + strings.ReplaceAll(p.inlines(node), "\n", " ")
	case *ast.Blockquote:
		return p.quotation(node)
	case *ast.List:
		return p.list(node)
	case *ast.CodeBlock, *ast.FencedCodeBlock:
		code := strings.TrimRight(p.lines(node), "\n")
		marks := fence(code, 3)
		return marks + "\n" + code + "\n" + marks
	case *ast.HTMLBlock:
		return escape(withoutComments(p.markup(node)))
	case *ast.ThematicBreak:
		return "***"
	case *east.Table:
		return p.table(node)
	case *ast.LinkReferenceDefinition:
		return ""
	}
	return p.blocks(node)
}

// paragraph writes running text; what begins a line must not look like a block.
func (p *prose) paragraph(node ast.Node) string {
	lines := strings.Split(strings.TrimSpace(p.inlines(node)), "\n")
	for i, line := range lines {
		if !strings.HasPrefix(line, `\`) {
			lines[i] = escapeStart(line)
		}
	}
	return strings.Join(lines, "\n")
}

func (p *prose) quotation(node *ast.Blockquote) string {
	word := p.signal(p.start+node.Pos(), plainText(p.source, node))
	inner := p.blocks(node)
	if word != "" {
		inner = "**" + escape(word) + "** " + strings.TrimLeft(withoutSignal(inner), " ")
	}
	return indent(inner, "> ", "> ")
}

// withoutSignal drops the signal word that a maker typed at the head of a
// caution; the booklet's own stands in its place.
func withoutSignal(quoted string) string {
	rest := strings.TrimLeft(quoted, "*")
	if end := strings.IndexFunc(rest, func(r rune) bool { return !unicode.IsLetter(r) }); end > 0 {
		rest = rest[end:]
	}
	return strings.TrimLeft(rest, "*:.!–— -\u00a0")
}

func (p *prose) list(list *ast.List) string {
	var items []string
	number := list.Start
	for item := list.FirstChild(); item != nil; item = item.NextSibling() {
		marker := "- "
		if list.IsOrdered() {
			marker = fmt.Sprintf("%d. ", number)
			number++
		}
		items = append(items, indent(p.blocks(item), marker, strings.Repeat(" ", len(marker))))
	}
	if list.IsTight {
		return strings.Join(items, "\n")
	}
	return strings.Join(items, "\n\n")
}

func (p *prose) table(table *east.Table) string {
	var rows []string
	for row := table.FirstChild(); row != nil; row = row.NextSibling() {
		line := "|"
		for cell := row.FirstChild(); cell != nil; cell = cell.NextSibling() {
			line += " " + strings.ReplaceAll(p.inlines(cell), "\n", " ") + " |"
		}
		rows = append(rows, line)
		if len(rows) == 1 {
			rows = append(rows, tableRule(table.Alignments))
		}
	}
	return strings.Join(rows, "\n")
}

// tableRule is the line under a table's head.
func tableRule(alignments []east.Alignment) string {
	rule := "|"
	for _, alignment := range alignments {
		if alignment == east.AlignRight {
			rule += "--:|"
		} else {
			rule += "---|"
		}
	}
	return rule
}

func (p *prose) lines(node ast.Node) string {
	var out strings.Builder
	for i := 0; i < node.Lines().Len(); i++ {
		line := node.Lines().At(i)
		out.Write(line.Value(p.source))
	}
	return out.String()
}

func (p *prose) markup(node *ast.HTMLBlock) string {
	typed := p.lines(node)
	if node.HasClosure() {
		typed += string(node.ClosureLine.Value(p.source))
	}
	return typed
}

// withoutComments drops a maker's own notes.
func withoutComments(typed string) string {
	return strings.TrimSpace(comments.ReplaceAllString(typed, ""))
}

// inlines writes the running text within a block.
func (p *prose) inlines(parent ast.Node) string {
	var out strings.Builder
	for node := parent.FirstChild(); node != nil; node = node.NextSibling() {
		out.WriteString(p.inline(node))
	}
	return out.String()
}

func (p *prose) inline(node ast.Node) string {
	switch node := node.(type) {
	case *ast.Text:
		words := escaper.Replace(decodeMarkdown(node.Segment.Value(p.source)))
		switch {
		case node.HardLineBreak():
			return words + "\\\n"
		case node.SoftLineBreak():
			return words + " "
		}
		return words
	case *ast.String:
		return escaper.Replace(string(node.Value))
	case *ast.Emphasis:
		marks := strings.Repeat("*", node.Level)
		return marks + p.inlines(node) + marks
	case *ast.CodeSpan:
		code := plainText(p.source, node)
		marks := fence(code, 1)
		return marks + " " + code + " " + marks
	case *ast.Link:
		return p.link(p, p.start+node.Pos(), node)
	case *ast.Image:
		return p.picture(p, node)
	case *ast.AutoLink:
		return escaper.Replace(string(node.Label(p.source)))
	case *ast.RawHTML:
		return escaper.Replace(withoutComments(rawText(p.source, node)))
	case *east.TaskCheckBox:
		return "[ ] "
	}
	return p.inlines(node)
}

// rawText gives HTML typed within a line as it was typed.
func rawText(source []byte, node *ast.RawHTML) string {
	var typed strings.Builder
	for i := 0; i < node.Segments.Len(); i++ {
		segment := node.Segments.At(i)
		typed.Write(segment.Value(source))
	}
	return typed.String()
}

// decodeMarkdown resolves what Markdown escapes and abbreviates, and gives
// plain text.
func decodeMarkdown(raw []byte) string {
	var out strings.Builder
	buffer := bufio.NewWriterSize(&out, len(raw)+64)
	mdhtml.DefaultWriter.Write(buffer, raw)
	if err := buffer.Flush(); err != nil {
		panic("render: a text in memory can't be written: " + err.Error())
	}
	return html.UnescapeString(out.String())
}

// plainText gives the text of a node without any markup.
func plainText(source []byte, parent ast.Node) string {
	var out strings.Builder
	for node := parent.FirstChild(); node != nil; node = node.NextSibling() {
		switch node := node.(type) {
		case *ast.Text:
			if node.IsRaw() || parent.Kind() == ast.KindCodeSpan {
				out.Write(node.Segment.Value(source))
			} else {
				out.WriteString(decodeMarkdown(node.Segment.Value(source)))
			}
			if node.SoftLineBreak() || node.HardLineBreak() {
				out.WriteByte(' ')
			}
		case *ast.String:
			out.Write(node.Value)
		default:
			out.WriteString(plainText(source, node))
		}
	}
	return out.String()
}
