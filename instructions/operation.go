package instructions

import (
	"strings"

	"github.com/yuin/goldmark/ast"

	"tallyfold/kit"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// A link is one link or picture of the text, before it is known what it means.
type link struct {
	node        ast.Node
	start, end  int // of the whole link
	text        *flat
	textSpan    source.Span
	span        source.Span
	destination destination
	isPicture   bool
}

// linkAt gathers what is known of a link.
func (r *reader) linkAt(node ast.Node, destination []byte, isPicture bool) link {
	d := r.document
	place := d.links[node]
	l := link{node: node, start: max(node.Pos(), 0), end: place.end, text: d.flatten(node), isPicture: isPicture}
	opening := l.start + len("[")
	if isPicture {
		opening = l.start + len("![")
	}
	l.span = d.span(l.start, l.end)
	l.textSpan = d.span(opening, place.bracket)
	l.destination = takeApart(string(destination), r.destinationSpan(l, destination, place))
	return l
}

// destinationSpan is where a destination stands: in the brackets behind the text,
// or for a link by reference where the reference is defined.
func (r *reader) destinationSpan(l link, destination []byte, place linkPlace) source.Span {
	d := r.document
	if at, ok := d.offset(destination); ok && len(destination) > 0 {
		if at < l.start || at >= l.end {
			r.understood(at, at+len(destination))
		}
		return d.span(at, at+len(destination))
	}
	behind := string(d.text[place.bracket:max(place.end, place.bracket)])
	if at := strings.Index(behind, string(destination)); at >= 0 && len(destination) > 0 {
		return d.span(place.bracket+at, place.bracket+at+len(destination))
	}
	return l.span
}

// link reads a link of the text and does with it what its destination says.
func (p *passage) link(n *ast.Link) {
	l := p.linkAt(n, n.Destination, false)
	p.understood(l.start, l.end)
	switch p.judge(l) {
	case plainLink:
		p.within(n)
		p.endProse()
	case ours:
		p.operation(l)
	}
}

// image reads a picture: "![what it shows](picture:pan.jpg)", or with the path
// that other programs understand, "![what it shows](pictures/pan.jpg)".
func (p *passage) image(n *ast.Image) {
	l := p.linkAt(n, n.Destination, true)
	p.understood(l.start, l.end)
	if inner := firstLink(n); inner != nil {
		p.unreadable(l, "a link inside the words of a picture", "words only in the square brackets", "put the link behind the picture")
		return
	}
	if p.judge(l) == ours {
		p.operation(l)
	}
}

func firstLink(node ast.Node) ast.Node {
	for child := node.FirstChild(); child != nil; child = child.NextSibling() {
		if child.Kind() == ast.KindLink {
			return child
		}
		if inner := firstLink(child); inner != nil {
			return inner
		}
	}
	return nil
}

// autoLink reads "<https://…>": the address is what the customer reads. One of
// ours can't be written so, as it has no text.
func (p *passage) autoLink(n *ast.AutoLink) {
	label := n.Label(p.document.text)
	at, ok := p.document.offset(label)
	if !ok {
		return
	}
	written := string(label)
	d := takeApart(written, p.document.span(at, at+len(written)))
	p.understood(at-1, at+len(written)+1)
	l := link{span: p.document.span(at-1, at+len(written)+1), destination: d, text: &flat{document: p.document}}
	switch {
	case n.AutoLinkType == ast.AutoLinkEmail || isWeb(d.scheme.text):
		p.addProse(at, at+len(written))
	case isDangerous(d.scheme.text):
		p.refuse(l)
	default:
		p.unreadable(l, quoted("<"+written+">")+", a destination without a text", "a text in square brackets, then the destination in round ones",
			"write [what the customer reads]("+written+")")
	}
}

// operation turns one of our links into what happens.
func (p *passage) operation(l link) {
	m := meaningOf(l.destination.scheme.text)
	if l.destination.scheme.text == "" {
		m = meaningOf(string(kit.ShowPicture)) // a path into pictures/
	}
	operation := &kit.Operation{
		Kind: m.kind, Target: l.destination.target.text, Text: strings.TrimSpace(l.text.String()),
		Span: l.span, TextSpan: l.textSpan, TargetSpan: l.destination.span,
		Aside: p.onlyTold || p.quotes > 0,
	}
	if m.kind == kit.ShowPicture {
		operation.Target = strings.TrimPrefix(operation.Target, "pictures/")
	}
	if operation.Text == "" && !l.isPicture && saysNothing(m.kind) {
		p.unreadable(l, quoted("[]("+l.destination.written+")")+", a link without words", "words for the customer, as nothing else can tell them",
			"write them into the square brackets")
	}
	p.operationTarget(operation, m, l)
	p.operationParams(operation, m, l)
	p.operationPhrase(operation, m, l)
	p.operations = append(p.operations, operation)
	if !operation.Aside {
		p.mention(l.text.String(), operation.Target, l.text.span)
	}
}

// saysNothing: a link of this kind without words leaves the customer nothing to
// read; others are filled in with an amount, the name of a thing or a title.
func saysNothing(kind kit.Kind) bool {
	return kind == kit.Cue || kind == kit.Hazard || kind == kit.After
}

// operationTarget judges the name after the colon. A vessel that is cleaned, or
// whose remainder is spoken of, is the step's own unless another is named.
func (p *passage) operationTarget(operation *kit.Operation, m *meaning, l link) {
	target := l.destination.target
	switch {
	case target.text == "":
		p.missingTarget(operation, m, l)
	case m.target == refused:
		p.say(unreadableLink, target.span, target.text, quoted(target.text)+" after "+string(m.kind)+":",
			"nothing, as "+string(m.kind)+": takes no name", "write "+string(m.kind)+":")
	case m.kind == kit.After || m.kind == kit.Same:
		// Judged when all waits and steps are known.
	case m.sorts != 0:
		p.checkTarget(string(m.kind)+":", target, m.sorts, p.part)
	case m.kind != kit.ShowPicture && !isName(target.text):
		p.say(unreadableLink, target.span, target.text, quoted(target.text)+" as a name",
			"lower-case letters, digits and hyphens", "write "+string(m.kind)+":"+load.Slug(target.text))
	}
}

func (p *passage) missingTarget(operation *kit.Operation, m *meaning, l link) {
	switch {
	case (m.kind == kit.Clean || m.kind == kit.Left) && p.vessel != "":
		operation.Target = p.vessel
		return
	case m.kind == kit.Move && l.param("from") != "":
		return
	case m.target != needed && m.kind != kit.Clean && m.kind != kit.Left && m.kind != kit.Move:
		return
	}
	what := "a name"
	if m.sorts != 0 {
		what = "the key of " + article(m.sorts.String())
	}
	p.unreadable(l, quoted(string(m.kind)+":")+" with no name after it", what+" after the colon",
		"write "+string(m.kind)+": and "+what+", without a space")
}

func (l link) param(name string) string {
	for _, one := range l.destination.params {
		if one.name.text == name {
			return one.value.text
		}
	}
	return ""
}
