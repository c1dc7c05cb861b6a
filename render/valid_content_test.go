package render

import (
	"slices"
	"strings"

	"golang.org/x/net/html"
	bcp47 "golang.org/x/text/language"
)

// What an element may have in it, after the HTML Living Standard: names of the elements
// allowed, "phrasing" for the text within a line, "flow" for that and blocks.
var contentModels = map[string]string{
	"html": "head body", "head": "meta title style script", "body": "header main", "header": "p", "main": "flow", // 4.1 to 4.3
	"article": "flow", "section": "flow", "nav": "ul ol", "div": "flow", "blockquote": "flow", "figure": "flow figcaption", "figcaption": "flow", // 4.3.3, 4.4
	"h1": "phrasing", "h2": "phrasing", "h3": "phrasing", "h4": "phrasing", "h5": "phrasing", "h6": "phrasing", "p": "phrasing", "pre": "phrasing",
	"ul": "li", "ol": "li", "li": "flow", // 4.4.5 to 4.4.8
	"a": "phrasing", "b": "phrasing", "i": "phrasing", "span": "phrasing", "code": "phrasing", "label": "phrasing", // 4.5, 4.10.4
	"table": "thead tbody", "thead": "tr", "tbody": "tr", "tr": "th td", "th": "phrasing", "td": "flow", // 4.9
	"title": "text", "style": "text", "script": "text", "br": "", "hr": "", "img": "", "input": "", "meta": "",
}

var phrasing = []string{"a", "b", "i", "span", "code", "label", "br", "img", "input", "svg"}

var flow = append([]string{"article", "section", "nav", "div", "blockquote", "figure", "h1", "h2", "h3", "h4", "h5", "h6", "p", "pre", "ul", "ol", "table", "hr"}, phrasing...)

// attributes that may stand on an element; those of every element come first.
var globalAttributes = []string{"id", "class", "lang", "dir", "role", "aria-label", "aria-labelledby", "aria-describedby", "aria-hidden"}

var ownAttributes = map[string][]string{
	"a": {"href"}, "img": {"alt", "src", "width", "height"}, "input": {"type"}, "ol": {"start"}, "th": {"scope"},
	"meta": {"charset", "name", "content", "http-equiv"}, "script": {"type"},
}

func (v *validity) walk(node *html.Node) {
	if node.Type == html.ElementNode && node.Namespace == "" {
		v.element(node)
	}
	if node.Type == html.ElementNode && node.Data == "svg" {
		v.drawing(node)
		return
	}
	for child := node.FirstChild; child != nil; child = child.NextSibling {
		v.walk(child)
	}
}

func (v *validity) element(node *html.Node) {
	model, known := contentModels[node.Data]
	if !known {
		v.tell("<%s> is not one of the elements that a booklet has", node.Data)
		return
	}
	v.content(node, model)
	v.attributes(node)
	switch node.Data {
	case "h1", "h2", "h3", "h4", "h5", "h6":
		v.heading(node)
	case "title":
		v.title = strings.TrimSpace(textOf(node)) != ""
	case "html":
		v.language = attr(node, "lang") != ""
	case "nav":
		if attr(node, "aria-label") == "" {
			v.tell("<nav> has no name")
		}
	case "img":
		if attr(node, "alt") == "" {
			v.tell("a picture has no words")
		}
	case "table":
		v.table(node)
	case "a", "label":
		v.within(node)
	case "input":
		v.input(node)
	}
}

func (v *validity) content(node *html.Node, model string) {
	allowed := strings.Fields(model)
	switch {
	case strings.HasPrefix(model, "flow"):
		allowed = append(allowed[1:], flow...)
	case model == "phrasing":
		allowed = phrasing
	}
	for child := node.FirstChild; child != nil; child = child.NextSibling {
		text := child.Type == html.TextNode && strings.TrimSpace(child.Data) != ""
		switch {
		case text && !strings.HasPrefix(model, "flow") && model != "phrasing" && model != "text":
			v.tell("<%s> has text of its own: %q", node.Data, shortTo(strings.TrimSpace(child.Data), 40))
		case child.Type == html.ElementNode && !slices.Contains(allowed, child.Data):
			v.tell("<%s> stands in <%s>", child.Data, node.Data)
		}
	}
}

func (v *validity) attributes(node *html.Node) {
	for _, attribute := range node.Attr {
		own := slices.Contains(ownAttributes[node.Data], attribute.Key) || strings.HasPrefix(attribute.Key, "data-")
		if !own && !slices.Contains(globalAttributes, attribute.Key) {
			v.tell("<%s> has the attribute %s", node.Data, attribute.Key)
		}
		v.attribute(node, attribute.Key, attribute.Val)
	}
}

func (v *validity) attribute(node *html.Node, name, value string) {
	switch name {
	case "id":
		if v.ids[value] || value == "" || strings.ContainsAny(value, " \t\n") {
			v.tell("the id %q is none, or stands twice", value)
		}
		v.ids[value] = true
	case "aria-labelledby", "aria-describedby":
		v.pointed = append(v.pointed, strings.Fields(value)...)
	case "href":
		v.pointed = append(v.pointed, strings.TrimPrefix(value, "#"))
	case "lang":
		if _, err := bcp47.Parse(value); err != nil {
			v.tell("%q is no language", value)
		}
		if node.Data == "article" {
			v.languages++
		}
	case "dir":
		if value != "ltr" && value != "rtl" {
			v.tell("%q is no direction", value)
		}
	}
}

// heading: levels go down one at a time, and there is one title, or one a language
// (4.3.11; WCAG 2.2, technique G141).
func (v *validity) heading(node *html.Node) {
	level := int(node.Data[1] - '0')
	if level > v.level+1 {
		v.tell("<%s> follows on level %d", node.Data, v.level)
	}
	v.level = level
	if level == 1 {
		v.firsts++
	}
	if v.firsts > max(v.languages, 1) {
		v.tell("there are %d titles", v.firsts)
	}
	if strings.TrimSpace(textOf(node)) == "" {
		v.tell("<%s> is empty", node.Data)
	}
}

// table: as many cells in each row (4.9.12), and a head says of what it is one.
func (v *validity) table(node *html.Node) {
	width := 0
	each(node, "tr", func(row *html.Node) {
		cells := 0
		for cell := row.FirstChild; cell != nil; cell = cell.NextSibling {
			if cell.Type == html.ElementNode {
				cells++
			}
			if cell.Data == "th" && attr(cell, "scope") != "col" && attr(cell, "scope") != "row" {
				v.tell("a head does not say of what it is one")
			}
		}
		if width == 0 {
			width = cells
		}
		if cells != width || cells == 0 {
			v.tell("a row of %d cells in a table of %d", cells, width)
		}
	})
}

// within: no link in a link, and one thing to tick in a label (4.5.1, 4.10.4).
func (v *validity) within(node *html.Node) {
	same, boxes := 0, 0
	each(node, node.Data, func(*html.Node) { same++ })
	each(node, "input", func(*html.Node) { boxes++ })
	if same > 1 || node.Data == "a" && boxes > 0 || node.Data == "label" && boxes != 1 {
		v.tell("<%s> has %d of its kind and %d boxes in it", node.Data, same-1, boxes)
	}
}

// input: a box to tick has a name.
func (v *validity) input(node *html.Node) {
	named := attr(node, "aria-label") != ""
	for above := node.Parent; above != nil; above = above.Parent {
		named = named || above.Data == "label" && strings.TrimSpace(textOf(above)) != ""
	}
	if !named || attr(node, "type") != "checkbox" {
		v.tell("a box to tick has no name")
	}
}

// drawing: it says what it shows, or is hidden from who listens.
func (v *validity) drawing(node *html.Node) {
	for _, id := range strings.Fields(attr(node, "aria-labelledby") + " " + attr(node, "aria-describedby")) {
		v.pointed = append(v.pointed, id)
	}
	each(node, "", func(inside *html.Node) {
		if id := attr(inside, "id"); id != "" {
			v.attribute(inside, "id", id)
		}
	})
	if attr(node, "aria-hidden") != "true" && (attr(node, "role") != "img" || attr(node, "aria-labelledby") == "") {
		v.tell("a drawing does not say what it shows")
	}
}

// each visits a node and all below it of one name, "" for every name.
func each(node *html.Node, name string, visit func(*html.Node)) {
	if node.Type == html.ElementNode && (name == "" || node.Data == name) {
		visit(node)
	}
	for child := node.FirstChild; child != nil; child = child.NextSibling {
		each(child, name, visit)
	}
}

func attr(node *html.Node, name string) string {
	for _, attribute := range node.Attr {
		if strings.EqualFold(attribute.Key, name) {
			return attribute.Val
		}
	}
	return ""
}
