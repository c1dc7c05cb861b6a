package instructions

import (
	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"

	"tallyfold/kit"
	"tallyfold/kit/source"
)

// A passage is what stands under one heading, while it is being read.
type passage struct {
	*reader
	part   *kit.Part // nil in trouble.md and words.md
	vessel string    // the vessel that the step works in, or ""
	// onlyTold: nothing here is done, as in trouble.md.
	onlyTold bool
	quotes   int // how many quotations are open

	operations []*kit.Operation
	cautions   []kit.Caution
	prose      []kit.Prose
	mentions   []kit.Mention
	paragraphs []source.Span

	run extent // the piece of prose being gathered
}

// block reads a block and all blocks in it.
func (p *passage) block(node ast.Node) {
	switch n := node.(type) {
	case *ast.Blockquote:
		p.quotation(n)
	case *ast.HTMLBlock:
		p.htmlBlock(n)
	case *ast.CodeBlock, *ast.FencedCodeBlock:
		p.codeBlock(n)
	case *ast.Paragraph:
		p.signalWord(n)
		p.inlines(n)
	case *ast.TextBlock, *ast.Heading, *east.TableCell:
		p.inlines(n)
	default:
		for child := node.FirstChild(); child != nil; child = child.NextSibling() {
			p.block(child)
		}
	}
}

// inlines reads the text, links and pictures of a block.
func (p *passage) inlines(node ast.Node) {
	if lines := node.Lines(); lines.Len() > 0 {
		p.paragraphs = append(p.paragraphs, p.document.span(lines.At(0).Start, lines.At(lines.Len()-1).Stop))
	}
	p.within(node)
	p.endProse()
}

func (p *passage) within(node ast.Node) {
	for child := node.FirstChild(); child != nil; child = child.NextSibling() {
		p.inline(child)
	}
}

func (p *passage) inline(node ast.Node) {
	switch n := node.(type) {
	case *ast.Text:
		p.addProse(n.Segment.Start, n.Segment.Stop)
	case *ast.CodeSpan:
		p.codeSpan(n)
	case *ast.Link:
		p.endProse()
		p.link(n)
	case *ast.Image:
		p.endProse()
		p.image(n)
	case *ast.AutoLink:
		p.autoLink(n)
	case *ast.RawHTML:
		p.inlineHTML(n)
	default:
		p.within(n)
	}
}

// codeBlock is shown to the customer as it stands, so it is prose; nothing in it
// is read.
func (p *passage) codeBlock(node ast.Node) {
	lines := node.Lines()
	for i := range lines.Len() {
		line := lines.At(i)
		p.addProse(line.Start, line.Stop)
	}
	p.endProse()
	if lines.Len() > 0 {
		p.code = append(p.code, extent{lines.At(0).Start, lines.At(lines.Len() - 1).Stop})
	}
}

func (p *passage) codeSpan(n *ast.CodeSpan) {
	p.endProse()
	for child := n.FirstChild(); child != nil; child = child.NextSibling() {
		if text, ok := child.(*ast.Text); ok {
			p.addProse(text.Segment.Start, text.Segment.Stop)
			p.code = append(p.code, extent{text.Segment.Start, text.Segment.Stop})
		}
	}
	p.endProse()
}
