package load

import (
	"errors"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
)

// shapeExpected says how an inside shape is told.
const shapeExpected = "a shape such as “cylinder 68 mm wide, 70 mm tall”, “cone 60 mm wide at the base, 72 mm wide at the rim, 80 mm tall”, " +
	"“box 60 mm by 40 mm, 30 mm tall”, “sphere 50 mm wide”, or a list of levels such as “10 mm: 30 mL”"

// A measure is one length of a shape: the words behind it, and which width it
// is; tall is the height.
type measure struct {
	words    string
	width    int
	optional bool
}

const tall = -1

// A form is one kind of shape and the lengths it is told with.
type form struct {
	word     string
	form     kit.Form
	widths   int
	measures []measure
}

// forms are all shapes but the list of levels.
var forms = []form{
	{"cylinder", kit.Cylinder, 1, []measure{{"wide", 0, false}, {"tall", tall, true}}},
	{"cone", kit.Cone, 2, []measure{{"wide at the base", 0, false}, {"wide at the rim", 1, false}, {"tall", tall, true}}},
	{"box", kit.Box, 2, []measure{{"by", 0, false}, {"", 1, false}, {"tall", tall, true}}},
	{"sphere", kit.Sphere, 1, []measure{{"wide", 0, false}}},
}

// A shapeError is what is wrong with a shape, and at which bytes of its text.
type shapeError struct {
	start, end            int
	found, expected, hint string
	// like is a shape that is told well.
	like string
}

// parseShape reads a shape other than a list of levels. Lengths are exact, in mm.
func parseShape(text string, amounts quantity.Reader) (kit.Shape, *shapeError) {
	p := &shapeText{text: text, amounts: amounts}
	word := p.word()
	for _, f := range forms {
		if f.word == strings.ToLower(word) {
			shape, err := p.lengths(f)
			if err != nil {
				err.like = like(f)
			}
			return shape, err
		}
	}
	err := &shapeError{end: len(text), found: quote(word) + " for a shape", expected: shapeExpected, like: like(forms[0])}
	if near := diag.Nearest(word, []string{"cylinder", "cone", "box", "sphere"}); near != "" {
		err.end, err.hint = len(word), "did you mean “"+near+"”?"
	}
	return kit.Shape{}, err
}

// A shapeText is a shape being read from left to right.
type shapeText struct {
	text    string
	at      int
	amounts quantity.Reader
}

// word reads up to the next space or comma.
func (p *shapeText) word() string {
	p.spaces()
	start := p.at
	for p.at < len(p.text) && !strings.ContainsRune(" \t\n,", rune(p.text[p.at])) {
		p.at++
	}
	return p.text[start:p.at]
}

func (p *shapeText) spaces() {
	for p.at < len(p.text) && strings.ContainsRune(" \t\n", rune(p.text[p.at])) {
		p.at++
	}
}

// lengths reads the lengths of a form in their order.
func (p *shapeText) lengths(f form) (kit.Shape, *shapeError) {
	shape := kit.Shape{Form: f.form, Widths: make([]quantity.Number, f.widths)}
	for _, m := range f.measures {
		p.spaces()
		if p.at == len(p.text) && m.optional {
			break
		}
		n, err := p.length(m, f)
		if err != nil {
			return kit.Shape{}, err
		}
		if m.width == tall {
			shape.Tall = n
		} else {
			shape.Widths[m.width] = n
		}
	}
	if p.spaces(); p.at < len(p.text) {
		return kit.Shape{}, &shapeError{start: p.at, end: len(p.text), found: quote(p.text[p.at:]) + " after the " + f.word, expected: "nothing more"}
	}
	return shape, nil
}

// length reads one length and the words behind it, up to the comma.
func (p *shapeText) length(m measure, f form) (quantity.Number, *shapeError) {
	start, end, next := p.piece(m)
	piece := strings.TrimRight(p.text[start:end], " \t\n")
	if end = start + len(piece); piece == "" {
		return quantity.Number{}, &shapeError{start: start, end: len(p.text), found: "no length “" + strings.TrimSpace("… "+m.words) + "” for the " + f.word, expected: "“" + like(f) + "”"}
	}
	figure, ok := strings.CutSuffix(piece, m.words)
	if !ok {
		return quantity.Number{}, &shapeError{start: start, end: end, found: quote(piece), expected: "a length and behind it “" + m.words + "”"}
	}
	figure = strings.TrimRight(figure, " \t\n")
	p.at = next
	return p.exact(figure, start)
}

// piece is the next part of the text: up to the next comma followed by a space
// (which is no decimal comma), or for the first side of a box up to “by”.
func (p *shapeText) piece(m measure) (start, end, next int) {
	p.spaces()
	start = p.at
	if m.words == "by" {
		if at := strings.Index(p.text[start:], " by "); at >= 0 {
			return start, start + at + len(" by"), start + at + len(" by ")
		}
	}
	if at := strings.Index(p.text[start:], ", "); at >= 0 {
		return start, start + at, start + at + 2
	}
	return start, len(p.text), len(p.text)
}

// exact reads one length without tolerance, in mm.
func (p *shapeText) exact(figure string, start int) (quantity.Number, *shapeError) {
	a, err := p.amounts.Amount(figure)
	end := start + len(figure)
	var trouble *quantity.Error
	switch {
	case errors.As(err, &trouble):
		return quantity.Number{}, &shapeError{start: start + trouble.Start, end: start + trouble.End, found: trouble.Found, expected: trouble.Expected, hint: trouble.Hint}
	case err != nil || a.Dimension != quantity.Length:
		return quantity.Number{}, &shapeError{start: start, end: end, found: quote(figure) + ", " + kindNames[a.Dimension], expected: "a length, such as 68 mm"}
	case a.HasTolerance() || a.Bound != quantity.Exactly:
		return quantity.Number{}, &shapeError{start: start, end: end, found: quote(figure), expected: "one length without “±” or limits, such as 68 mm"}
	case a.Nominal.Sign() <= 0:
		return quantity.Number{}, &shapeError{start: start, end: end, found: quote(figure) + ", which is nothing", expected: "a length, such as 68 mm"}
	}
	return a.Nominal, nil
}

// like tells a form with figures of no kit in particular.
func like(f form) string {
	switch f.form {
	case kit.Cylinder:
		return "cylinder 68 mm wide, 70 mm tall"
	case kit.Cone:
		return "cone 60 mm wide at the base, 72 mm wide at the rim, 80 mm tall"
	case kit.Box:
		return "box 60 mm by 40 mm, 30 mm tall"
	}
	return "sphere 50 mm wide"
}
