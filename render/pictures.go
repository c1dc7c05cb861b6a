package render

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"html"
	"strings"

	"github.com/yuin/goldmark/ast"
)

// figureBlock writes a picture or drawing that stands alone in a paragraph; its
// title is the caption. It says whether there was anything to show.
func (w *writer) figureBlock(image *ast.Image) bool {
	shown := w.image(image)
	if shown == "" {
		return false
	}
	caption := w.caption(image)
	if caption == "" {
		// A tagged PDF would have a second figure around the drawing, with no words of its own.
		fmt.Fprintf(&w.out, "<figure role=\"group\">%s</figure>\n", shown)
		return true
	}
	w.captions++
	id := fmt.Sprintf("%scaption-%d", w.prefix, w.captions)
	caption = strings.Replace(caption, "<figcaption", `<figcaption id="`+id+`"`, 1)
	fmt.Fprintf(&w.out, "<figure aria-labelledby=\"%s\">%s%s</figure>\n", id, shown, caption)
	return true
}

// caption stands under a picture. Where it says what is read aloud of the picture
// already, it is not read a second time.
func (w *writer) caption(image *ast.Image) string {
	says, attributes := w.decode(image.Title), ""
	if strings.EqualFold(says, w.plain(image)) {
		attributes = ` aria-hidden="true"`
	}
	if words := w.inWords(image); words != "" {
		if says != "" {
			words = strings.TrimRight(says, ".:") + ". " + capital(words)
		}
		says, attributes = words, ` class="in-words"`
	}
	if says == "" {
		return ""
	}
	return "<figcaption" + attributes + ">" + w.typeset(says) + "</figcaption>"
}

// inWords is what the letters of a drawing say: in large print they are too small to be
// read, and cannot grow without running into each other.
func (w *writer) inWords(image *ast.Image) string {
	name, drawn := strings.CutPrefix(string(image.Destination), "figure:")
	if !drawn || !w.booklet.Form.Large || w.class() == "cover" {
		return ""
	}
	return w.booklet.Figures[name].Text
}

// inlineImage shows a picture within a line, or its words where there is none.
func (w *writer) inlineImage(image *ast.Image) string {
	if shown := w.image(image); shown != "" {
		return shown
	}
	return w.typeset(w.plain(image))
}

// image gives the drawing or picture that a destination names, or "". Nothing
// else is ever shown: no address outside the booklet gets through.
func (w *writer) image(image *ast.Image) string {
	kind, name, _ := strings.Cut(string(image.Destination), ":")
	switch kind {
	case "figure":
		drawn, ok := w.booklet.Figures[name]
		if !ok {
			return ""
		}
		w.figures++
		return drawn.SVG(fmt.Sprintf("%sfigure-%d", w.prefix, w.figures))
	case "picture":
		data, ok := w.booklet.Pictures[name]
		if !ok {
			return ""
		}
		return pictureElement(data, w.plain(image))
	}
	return ""
}

// pictureElement puts a picture into the page itself. What isn't one of the
// known kinds of picture, by its bytes, is not shown.
func pictureElement(data []byte, says string) string {
	kind := pictureKind(data)
	if kind == "" {
		return ""
	}
	return fmt.Sprintf(`<img alt="%s" src="data:%s;base64,%s">`,
		html.EscapeString(says), kind, base64.StdEncoding.EncodeToString(data))
}

// pictureStarts are the first bytes of each kind of picture that is shown.
var pictureStarts = []struct{ kind, start string }{
	{"image/png", "\x89PNG\r\n\x1a\n"},
	{"image/jpeg", "\xff\xd8\xff"},
	{"image/gif", "GIF87a"},
	{"image/gif", "GIF89a"},
	{"image/svg+xml", "<svg"},
	{"image/svg+xml", "<?xml"},
}

// pictureKind tells the kind of a picture by its bytes, whatever its name says.
// An SVG is safe as a picture: the browser runs and fetches nothing in it.
func pictureKind(data []byte) string {
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	for _, known := range pictureStarts {
		if bytes.HasPrefix(data, []byte(known.start)) {
			return known.kind
		}
	}
	if len(data) > 12 && string(data[:4]) == "RIFF" && string(data[8:12]) == "WEBP" {
		return "image/webp"
	}
	return ""
}
