package instructions

import (
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// A linkPlace is where a link or picture ends: the parser tells only where it
// begins. Bytes in the text the parser reads.
type linkPlace struct {
	bracket int // the "]" after its text
	end     int // the first byte after it
}

// linkPlacesKey holds the places of one parse in the parser's context.
var linkPlacesKey = parser.NewContextKey()

// placingLinks is the parser's own reader of links, with a note of where each ends.
type placingLinks struct{ parser.InlineParser }

func (p placingLinks) Parse(parent ast.Node, block text.Reader, context parser.Context) ast.Node {
	_, before := block.Position()
	node := p.InlineParser.Parse(parent, block, context)
	switch node.(type) {
	case *ast.Link, *ast.Image:
		_, after := block.Position()
		places := context.Get(linkPlacesKey).(map[ast.Node]linkPlace)
		places[node] = linkPlace{bracket: before.Start, end: after.Start}
	}
	return node
}

// CloseBlock turns brackets that became no link back into text.
func (p placingLinks) CloseBlock(parent ast.Node, block text.Reader, context parser.Context) {
	if closer, ok := p.InlineParser.(parser.CloseBlocker); ok {
		closer.CloseBlock(parent, block, context)
	}
}

// markdown is CommonMark with tables and task lists. Bare web addresses stay
// text and "~" stays a tilde: makers write "~30 g".
var markdown = goldmark.New(
	goldmark.WithParser(parser.NewParser(
		parser.WithBlockParsers(parser.DefaultBlockParsers()...),
		parser.WithInlineParsers(inlineParsers()...),
		parser.WithParagraphTransformers(parser.DefaultParagraphTransformers()...),
	)),
	goldmark.WithExtensions(extension.Table, extension.TaskList),
)

func inlineParsers() []util.PrioritizedValue {
	ours := placingLinks{parser.NewLinkParser()}
	all := parser.DefaultInlineParsers()
	for i, one := range all {
		if one.Value == ours.InlineParser {
			all[i].Value = ours
		}
	}
	return all
}
