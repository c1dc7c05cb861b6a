package picture

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"errors"
	"fmt"
	"html"
	"io"
	"regexp"
	"slices"
	"strings"

	"golang.org/x/image/colornames"

	"tallyfold/kit/colour"
)

// Drawings made of lines (SVG) are taken in as they are drawn: shapes, text, gradients,
// patterns, filters, clips and masks, and the styles of those; a photograph inside is made
// ready like any other. All else goes: scripts and what starts them, animations, pages
// inside, whatever leads out of the file, and the notes that drawing programs leave. A booklet shows them as pictures, in which
// a browser runs and fetches nothing; they are cleaned all the same, as the file may be
// opened by itself.

// svgSpace is the name space of SVG.
const svgSpace = "http://www.w3.org/2000/svg"

// drawingElements are those that draw.
var drawingElements = setOf("svg g defs symbol use title desc path rect circle ellipse line polyline polygon text tspan textPath" +
	" linearGradient radialGradient stop pattern clipPath mask marker style filter feBlend feColorMatrix feComponentTransfer feFuncR feFuncG" +
	" feFuncB feFuncA feComposite feDropShadow feFlood feGaussianBlur feMerge feMergeNode feMorphology feOffset feTile feTurbulence")

// groupingElements hold what draws and mean nothing on paper: links, and what a drawing
// program puts around all of a drawing. What is in them stays, as a group.
var groupingElements = setOf("a switch")

func setOf(names string) map[string]bool {
	set := map[string]bool{}
	for _, name := range strings.Fields(names) {
		set[name] = true
	}
	return set
}

// IsDrawing says whether the file is an SVG drawing by its first element.
func IsDrawing(data []byte) bool {
	decoder := newDecoder(data)
	decoder.Strict = false // short names of its own are not known yet
	for {
		token, err := decoder.RawToken()
		if err != nil {
			return false
		}
		switch token := token.(type) {
		case xml.StartElement:
			return token.Name.Local == "svg"
		case xml.CharData:
			if len(bytes.TrimSpace(bytes.TrimPrefix(token, []byte("\xef\xbb\xbf")))) > 0 {
				return false
			}
		}
	}
}

func newDecoder(data []byte) *xml.Decoder {
	decoder := xml.NewDecoder(bytes.NewReader(data))
	decoder.CharsetReader = func(string, io.Reader) (io.Reader, error) {
		return nil, errors.New("a drawing is read as UTF-8")
	}
	return decoder
}

// prepareDrawing writes a drawing anew with only what draws.
func prepareDrawing(data []byte, grey bool) (Picture, error) {
	c := cleaner{decoder: newDecoder(bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))), grey: grey}
	if err := c.clean(); err != nil {
		return Picture{}, ErrNone
	}
	return Picture{Kind: "image/svg+xml", Data: c.out.Bytes()}, nil
}

type cleaner struct {
	decoder *xml.Decoder
	grey    bool
	out     bytes.Buffer
	open    []string // elements written and not yet closed
	dots    int      // of the photographs so far
}

func (c *cleaner) clean() error {
	for {
		token, err := c.decoder.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return err
		}
		switch token := token.(type) {
		case xml.StartElement:
			if err := c.element(token); err != nil {
				return err
			}
		case xml.EndElement:
			c.out.WriteString("</" + c.open[len(c.open)-1] + ">")
			c.open = c.open[:len(c.open)-1]
		case xml.CharData:
			c.text(string(token))
		case xml.Directive:
			c.entities(string(token))
		}
	}
	if c.out.Len() == 0 {
		return ErrNone
	}
	return nil
}

// entities are short names that some drawing programs give to what they write often.
func (c *cleaner) entities(doctype string) {
	c.decoder.Entity = map[string]string{}
	for _, found := range entity.FindAllStringSubmatch(doctype, -1) {
		c.decoder.Entity[found[1]] = found[2]
	}
}

var entity = regexp.MustCompile(`<!ENTITY\s+(\w+)\s+"([^"&%]*)"\s*>`)

// element writes one that draws and passes over any other with all that is in it.
func (c *cleaner) element(element xml.StartElement) error {
	name := element.Name.Local
	switch ours := element.Name.Space == svgSpace || element.Name.Space == ""; {
	case ours && name == "image":
		c.photograph(element)
		return c.decoder.Skip()
	case ours && groupingElements[name]:
		c.start(xml.StartElement{Name: xml.Name{Local: "g"}, Attr: slices.DeleteFunc(element.Attr, func(a xml.Attr) bool { return a.Name.Local == "href" })})
	case ours && drawingElements[name]:
		c.start(element)
	default:
		return c.decoder.Skip()
	}
	return nil
}

// photograph writes one that is inside the drawing, made ready; one that is elsewhere is
// left out.
func (c *cleaner) photograph(element xml.StartElement) {
	at := slices.IndexFunc(element.Attr, func(a xml.Attr) bool { return a.Name.Local == "href" })
	if at < 0 || len(c.open) == 0 {
		return
	}
	kind, coded, ok := strings.Cut(element.Attr[at].Value, ";base64,")
	data, err := base64.StdEncoding.DecodeString(strings.Join(strings.Fields(coded), ""))
	if !ok || err != nil || !strings.HasPrefix(kind, "data:image/") || IsDrawing(data) {
		return
	}
	wide, tall, err := Measure(data)
	if c.dots += wide * tall; err != nil || c.dots > mostDots {
		return
	}
	ready, err := Prepare(data, InText, c.grey)
	if err != nil {
		return
	}
	c.out.WriteString("<image")
	for i, attribute := range element.Attr {
		if i != at && mayStay(attribute) {
			c.out.WriteString(" " + attribute.Name.Local + `="` + html.EscapeString(attribute.Value) + `"`)
		}
	}
	c.out.WriteString(` href="data:` + ready.Kind + ";base64," + base64.StdEncoding.EncodeToString(ready.Data) + `"/>`)
}

func (c *cleaner) start(element xml.StartElement) {
	c.out.WriteString("<" + element.Name.Local)
	if len(c.open) == 0 {
		c.out.WriteString(` xmlns="` + svgSpace + `"`)
	}
	c.open = append(c.open, element.Name.Local)
	for _, attribute := range element.Attr {
		name, value := attribute.Name.Local, attribute.Value
		if !mayStay(attribute) {
			continue
		}
		c.out.WriteString(" " + name + `="`)
		c.out.WriteString(html.EscapeString(c.coloured(name, value)) + `"`)
	}
	c.out.WriteString(">")
}

// mayStay: an attribute without a name space that starts nothing and leads nowhere
// but to a place in the drawing itself.
func mayStay(attribute xml.Attr) bool {
	name, value := attribute.Name.Local, strings.TrimSpace(attribute.Value)
	switch {
	case name == "xmlns" || attribute.Name.Space == "xmlns" || strings.HasPrefix(strings.ToLower(name), "on"):
		return false
	case name == "href":
		return strings.HasPrefix(value, "#")
	case attribute.Name.Space != "":
		return false
	}
	return !leadsOut(value)
}

var styleLink = regexp.MustCompile(`(?i)url\(\s*["']?\s*([^)]?)`)

// leadsOut: a style that fetches something. A backslash could hide one.
func leadsOut(style string) bool {
	if strings.Contains(style, `\`) || strings.Contains(strings.ToLower(style), "@import") || strings.Contains(strings.ToLower(style), "image-set(") {
		return true
	}
	for _, link := range styleLink.FindAllStringSubmatch(style, -1) {
		if link[1] != "#" {
			return true
		}
	}
	return false
}

func (c *cleaner) text(text string) {
	if len(c.open) == 0 || strings.TrimSpace(text) == "" {
		return
	}
	if c.open[len(c.open)-1] == "style" {
		if leadsOut(text) {
			return
		}
		text = c.coloured("style", text)
	}
	c.out.WriteString(html.EscapeString(text))
}

// coloured gives the value of an attribute with its colours in grey, if asked.
func (c *cleaner) coloured(name, value string) string {
	if !c.grey {
		return value
	}
	switch name {
	case "fill", "stroke", "stop-color", "color":
		return greyOf(value)
	case "style":
		return styledColour.ReplaceAllStringFunc(value, func(rule string) string {
			key, written, _ := strings.Cut(rule, ":")
			return key + ":" + greyOf(written)
		})
	}
	return value
}

// styledColour is a rule that gives a colour: "fill: #a33".
var styledColour = regexp.MustCompile(`(?i)\b(?:fill|stroke|stop-color|color)\s*:\s*(?:#[0-9a-f]+|rgb\([0-9, ]*\)|[a-z]+)`)

// greyOf gives the grey of a colour told by figures or by its name in CSS; whatever
// else may stand there stays.
func greyOf(written string) string {
	written = strings.TrimSpace(written)
	if found, ok := colour.Read(written); ok {
		return found.Grey().String()
	}
	if named, ok := colornames.Map[strings.ToLower(written)]; ok {
		return colour.Colour{R: named.R, G: named.G, B: named.B}.Grey().String()
	}
	var r, g, b uint8
	if _, err := fmt.Sscanf(strings.ReplaceAll(written, " ", ""), "rgb(%d,%d,%d)", &r, &g, &b); err == nil {
		return colour.Colour{R: r, G: g, B: b}.Grey().String()
	}
	return written
}
