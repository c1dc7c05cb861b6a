// Package figure draws the booklet's figures as SVG, from numbers and words
// alone: it knows nothing of kits. Each drawing is a pure function of a small
// struct, and gives its text alternative together with the picture, so that the
// two cannot part.
//
// Lengths in a drawing are points (1/72 inch) at the size it is printed in.
// Colours are named by class and set by the booklet's style sheet, with plain
// black and white for a reader that has none, so that a figure follows dark mode
// and black-only printing. A drawing needs no identifier inside, so that many of
// them can stand in one page.
package figure

import (
	"fmt"
	"html"
	"math"
	"strconv"
	"strings"
)

// A Figure is one drawing with its text alternative.
type Figure struct {
	// Kind names the sort of drawing, for the style sheet ("gauge", "timeline").
	Kind string
	// Width and Height are the size in points.
	Width, Height float64
	// Title says in a few words what is drawn; Text tells everything that a
	// reader sees in it, as sentences.
	Title, Text string
	// TrueSize: it is printed at exactly its size, never fitted to the page.
	TrueSize bool

	shapes string
}

// SVG gives the drawing as one svg element. The identifier, unique in the page,
// ties the drawing to its title and description.
func (f Figure) SVG(id string) string {
	var out strings.Builder
	// All the words are its name: of a description a tagged PDF keeps nothing.
	fmt.Fprintf(&out, `<svg class="figure %s" role="img" aria-labelledby="%s-title %s-text"`,
		html.EscapeString(f.Kind), html.EscapeString(id), html.EscapeString(id))
	width, height := num(f.Width), num(f.Height)
	if f.TrueSize {
		width, height = num(f.Width/pointsPerMillimetre)+"mm", num(f.Height/pointsPerMillimetre)+"mm"
	}
	fmt.Fprintf(&out, ` viewBox="0 0 %s %s" width="%s" height="%s" xmlns="http://www.w3.org/2000/svg">`,
		num(f.Width), num(f.Height), width, height)
	fmt.Fprintf(&out, `<title id="%s-title">%s</title>`, html.EscapeString(id), html.EscapeString(f.Title))
	fmt.Fprintf(&out, `<desc id="%s-text">%s</desc>`, html.EscapeString(id), html.EscapeString(f.Text))
	out.WriteString(f.shapes)
	out.WriteString("</svg>")
	return out.String()
}

// pen collects shapes. The class of each says which colour it takes.
type pen struct{ out strings.Builder }

// rect draws a filled rectangle with rounded corners.
func (p *pen) rect(class string, x, y, width, height, round float64) {
	fmt.Fprintf(&p.out, `<rect class="%s" x="%s" y="%s" width="%s" height="%s" rx="%s"/>`,
		class, num(x), num(y), num(width), num(height), num(round))
}

// line draws a straight line.
func (p *pen) line(class string, x1, y1, x2, y2 float64) {
	fmt.Fprintf(&p.out, `<path class="%s" fill="none" stroke="currentColor" d="M%s %sL%s %s"/>`,
		class, num(x1), num(y1), num(x2), num(y2))
}

// stroke draws an open or closed outline from path data.
func (p *pen) stroke(class, data string) {
	fmt.Fprintf(&p.out, `<path class="%s" fill="none" stroke="currentColor" d="%s"/>`, class, data)
}

// area draws a filled shape from path data.
func (p *pen) area(class, data string) {
	fmt.Fprintf(&p.out, `<path class="%s" d="%s"/>`, class, data)
}

// circle draws a filled circle.
func (p *pen) circle(class string, x, y, radius float64) {
	fmt.Fprintf(&p.out, `<circle class="%s" cx="%s" cy="%s" r="%s"/>`, class, num(x), num(y), num(radius))
}

// text writes one line in the size of a label; anchor is "start", "middle" or "end".
func (p *pen) text(class, anchor string, x, y float64, says string) {
	p.sized(class, anchor, x, y, labelSize, says)
}

// labelSize is the type size of what is written in a figure, in points.
const labelSize = 9

// sized writes one line in any size.
func (p *pen) sized(class, anchor string, x, y, size float64, says string) {
	if says == "" {
		return
	}
	fmt.Fprintf(&p.out, `<text class="%s" text-anchor="%s" x="%s" y="%s" font-size="%s">%s</text>`,
		class, anchor, num(x), num(y), num(size), html.EscapeString(says))
}

// path writes path data: letters stand as they are, numbers are rounded.
func path(parts ...any) string {
	var out strings.Builder
	for i, part := range parts {
		switch part := part.(type) {
		case string:
			out.WriteString(part)
		case float64:
			if i > 0 {
				if _, number := parts[i-1].(float64); number {
					out.WriteByte(' ')
				}
			}
			out.WriteString(num(part))
		default:
			panic(fmt.Sprintf("figure: path data of type %T", part))
		}
	}
	return out.String()
}

// num writes a length with two decimals at most: a hundredth of a point is
// finer than any printer. What is no number is drawn at the origin.
func num(length float64) string {
	if math.IsNaN(length) || math.IsInf(length, 0) {
		return "0"
	}
	rounded := math.Round(length*100) / 100
	if rounded == 0 {
		rounded = 0 // no negative zero
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

// sentence joins what there is to say into one sentence.
func sentence(parts ...string) string {
	var said []string
	for _, part := range parts {
		if part != "" {
			said = append(said, part)
		}
	}
	if len(said) == 0 {
		return ""
	}
	return strings.Join(said, "; ") + "."
}
