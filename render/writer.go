package render

import (
	"fmt"
	"html"
	"regexp"
	"strings"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"
)

// writer turns the tree of a booklet's Markdown into HTML. It knows every kind
// of node that may come, escapes all text itself, and writes no attribute that
// it didn't make itself: what it doesn't know comes out as its text.
type writer struct {
	booklet *Booklet
	source  []byte
	prefix  string // of all ids, where another language has the plain ones
	out     strings.Builder

	sections []section       // those open, outermost first
	ids      map[string]bool // given out so far
	ticks    int             // tick boxes so far
	figures  int             // figures so far
	captions int             // captions so far

	pictograms map[string]string // those drawn so far

	coverOpen bool // the box of what one must have is open
}

// section is an open section element.
type section struct {
	level int
	class string
	title string // without any markup
}

// The classes that a heading may ask for; anything else is dropped.
var sectionClasses = map[string]bool{
	"cover": true, "contents": true, "glance": true, "box": true, "kitchen": true, "before": true,
	"method": true, "part": true, "step": true, "trouble": true, "storing": true, "batch": true,
	"colophon": true, "card": true, "flows": true, "gauges": true, "maker": true,
}

func (w *writer) document(root ast.Node) {
	for node := root.FirstChild(); node != nil; node = node.NextSibling() {
		if heading, ok := node.(*ast.Heading); ok {
			w.closeSections(heading.Level)
			w.openSection(heading)
			w.heading(heading)
			continue
		}
		w.block(node)
	}
	w.closeSections(1)
}

// closeSections ends the sections that a heading of this level doesn't belong
// to. The cover, of level one, ends at any heading: it is no chapter of all.
func (w *writer) closeSections(level int) {
	for len(w.sections) > 0 {
		last := w.sections[len(w.sections)-1]
		if last.level < level && last.class != "cover" {
			return
		}
		switch last.class {
		case "cover":
			w.endCover()
		case "batch":
			w.out.WriteString(writingLines)
		}
		w.out.WriteString("</section>\n")
		w.sections = w.sections[:len(w.sections)-1]
	}
}

// writingLines fill what the page for notes has left; those that don't fit are
// cut off by the style sheet.
var writingLines = `<div class="lines" aria-hidden="true" data-clips>` + strings.Repeat("<i></i>", 24) + "</div>\n"

func (w *writer) openSection(heading *ast.Heading) {
	class := w.headingClass(heading)
	w.out.WriteString("<section")
	if id := w.headingID(heading); id != "" {
		fmt.Fprintf(&w.out, ` id="%s"`, w.prefix+id)
	}
	if class != "" {
		fmt.Fprintf(&w.out, ` class="%s"`, class)
	}
	if class == "step" {
		// A step stays in one piece unless that would leave much of a page empty.
		w.out.WriteString(` data-keep="0.3"`)
	}
	w.out.WriteString(">\n")
	w.sections = append(w.sections, section{level: heading.Level, class: class, title: w.plain(heading)})
}

// class of the innermost open section.
func (w *writer) class() string {
	if len(w.sections) == 0 {
		return ""
	}
	return strings.Fields(w.sections[len(w.sections)-1].class + " plain")[0]
}

func (w *writer) headingClass(heading *ast.Heading) string {
	var kept []string
	for _, class := range strings.Fields(attribute(heading, "class")) {
		if sectionClasses[class] {
			kept = append(kept, class)
		}
	}
	return strings.Join(kept, " ")
}

var plainID = regexp.MustCompile(`^[a-z][a-z0-9-]*$`)

// headingID gives the heading's own id, if it is plain and not yet taken.
func (w *writer) headingID(heading *ast.Heading) string {
	id := attribute(heading, "id")
	if !plainID.MatchString(id) || w.ids[id] {
		return ""
	}
	w.ids[id] = true
	return id
}

func attribute(node ast.Node, name string) string {
	value, ok := node.AttributeString(name)
	if !ok {
		return ""
	}
	text, ok := value.([]byte)
	if !ok {
		return ""
	}
	return string(text)
}

var stepNumber = regexp.MustCompile(`^([0-9]+)\. `)

// heading writes a heading; the number of a step is set apart from its title.
func (w *writer) heading(heading *ast.Heading) {
	inner := w.inlines(heading)
	if w.class() == "step" {
		inner = stepNumber.ReplaceAllString(inner, `<span class="number">$1<span class="hush">. </span></span>`)
	}
	fmt.Fprintf(&w.out, "<h%d>%s</h%d>\n", heading.Level, inner, heading.Level)
}

// blocks writes what a block holds.
func (w *writer) blocks(parent ast.Node) {
	for node := parent.FirstChild(); node != nil; node = node.NextSibling() {
		w.block(node)
	}
}

func (w *writer) block(node ast.Node) {
	switch node := node.(type) {
	case *ast.Paragraph:
		w.paragraph(node)
	case *ast.TextBlock:
		w.out.WriteString(w.inlines(node))
	case *ast.Heading: // inside a quotation or list: no section of its own
		level := min(max(node.Level, 3), 6)
		fmt.Fprintf(&w.out, "<h%d>%s</h%d>\n", level, w.inlines(node), level)
	case *ast.Blockquote:
		w.quotation(node)
	case *ast.List:
		if w.class() == "contents" && node.Parent().Kind() == ast.KindDocument {
			w.contents(node)
			return
		}
		w.list(node)
	case *ast.ThematicBreak:
		w.out.WriteString("<hr>\n")
	case *ast.CodeBlock, *ast.FencedCodeBlock:
		fmt.Fprintf(&w.out, "<pre>%s</pre>\n", html.EscapeString(w.lines(node)))
	case *ast.HTMLBlock:
		w.markup(node)
	case *east.Table:
		w.table(node)
	case *ast.LinkReferenceDefinition:
	default:
		w.blocks(node)
	}
}

// lines gives the raw text of a block.
func (w *writer) lines(node ast.Node) string {
	var out strings.Builder
	for i := 0; i < node.Lines().Len(); i++ {
		line := node.Lines().At(i)
		out.Write(line.Value(w.source))
	}
	return out.String()
}

var comments = regexp.MustCompile(`(?s)<!--.*?(-->|$)`)

// markup shows HTML that a maker typed as the text that it is. Comments are the
// maker's own notes and go.
func (w *writer) markup(node *ast.HTMLBlock) {
	typed := w.lines(node)
	if node.HasClosure() {
		typed += string(node.ClosureLine.Value(w.source))
	}
	typed = strings.TrimSpace(comments.ReplaceAllString(typed, ""))
	if typed != "" {
		fmt.Fprintf(&w.out, "<p>%s</p>\n", html.EscapeString(typed))
	}
}

// contents sets the list of contents apart as what one goes about the booklet by, so that
// a reader who listens finds it among the landmarks and can pass over it.
func (w *writer) contents(list *ast.List) {
	fmt.Fprintf(&w.out, "<nav aria-label=\"%s\">\n", html.EscapeString(w.sections[len(w.sections)-1].title))
	w.list(list)
	w.out.WriteString("</nav>\n")
}

func (w *writer) list(list *ast.List) {
	tag := "ul"
	if list.IsOrdered() {
		tag = "ol"
	}
	w.out.WriteString("<" + tag)
	if list.IsOrdered() && list.Start > 1 {
		fmt.Fprintf(&w.out, ` start="%d"`, list.Start)
	}
	if isTickList(list) {
		w.out.WriteString(` class="ticks"`)
	}
	w.out.WriteString(">\n")
	for item := list.FirstChild(); item != nil; item = item.NextSibling() {
		w.item(item)
	}
	w.out.WriteString("</" + tag + ">\n")
}

// item writes one point of a list. The words beside a tick box are its label.
func (w *writer) item(item ast.Node) {
	first := item.FirstChild()
	if box := tickBox(item); box != nil {
		first.RemoveChild(first, box)
		fmt.Fprintf(&w.out, "<li><label>%s<span>%s</span>%s</label>", w.tick(""), w.inlines(first), w.readyPictogram(w.plain(first)))
		for node := first.NextSibling(); node != nil; node = node.NextSibling() {
			w.block(node)
		}
		w.out.WriteString("</li>\n")
		return
	}
	w.out.WriteString("<li>")
	w.blocks(item)
	w.out.WriteString("</li>\n")
}

// tickBox gives the task box at the head of a point, or nil.
func tickBox(item ast.Node) ast.Node {
	if item.FirstChild() == nil {
		return nil
	}
	if box, ok := item.FirstChild().FirstChild().(*east.TaskCheckBox); ok {
		return box
	}
	return nil
}

func isTickList(list *ast.List) bool {
	for item := list.FirstChild(); item != nil; item = item.NextSibling() {
		if tickBox(item) == nil {
			return false
		}
	}
	return list.ChildCount() > 0
}

// tick writes an empty box to tick, on paper or on a screen. Where no words
// stand beside it as its label, says names it.
func (w *writer) tick(says string) string {
	w.ticks++
	label := ""
	if says != "" {
		label = fmt.Sprintf(` aria-label="%s"`, html.EscapeString(says))
	}
	return fmt.Sprintf(`<span class="tick"><input type="checkbox" id="%stick-%d"%s></span>`, w.prefix, w.ticks, label)
}
