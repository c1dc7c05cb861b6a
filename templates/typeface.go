package templates

import (
	"fmt"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// A Typeface measures text as a browser sets it in one cut of a family, without kerning
// and ligatures. Letters that join, as those of Arabic, have a width only in their word:
// they count as lacking.
type Typeface struct {
	cuts   []cut
	buffer sfnt.Buffer
	// XHeight is that of a lower-case letter, CapHeight that of a capital, as parts of the
	// size of the type.
	XHeight, CapHeight float64
}

// A cut is one file of a typeface, with some of the letters.
type cut struct {
	font  *sfnt.Font
	reach reaches       // the letters it is used for
	em    fixed.Int26_6 // a size at which lengths come in units of the font
}

// Typeface gives the upright cut of a family ("Booklet Label") in a weight ("400", "700").
// The error says which file can't be read.
func (s Set) Typeface(family, weight string) (*Typeface, error) {
	t := &Typeface{}
	all := faces()
	for i := len(all) - 1; i >= 0; i-- { // plain Latin letters are asked for first
		f := all[i]
		if f.family != family || f.weight != weight || f.style != "normal" || f.letters == arabic {
			continue
		}
		name := "fonts/" + f.file + ".woff2"
		data, err := s.File(name)
		if err != nil {
			return nil, err
		}
		plain, err := measurable(data)
		if err != nil {
			return nil, fmt.Errorf("%s can't be measured: %w", name, err)
		}
		parsed, err := sfnt.Parse(plain)
		if err != nil {
			return nil, fmt.Errorf("%s can't be measured: %w", name, err)
		}
		t.cuts = append(t.cuts, cut{parsed, reachesOf(f.letters), fixed.Int26_6(parsed.UnitsPerEm())})
	}
	if len(t.cuts) == 0 {
		return nil, fmt.Errorf("there is no face %s of weight %s", family, weight)
	}
	first := t.cuts[0]
	metrics, err := first.font.Metrics(&t.buffer, first.em, font.HintingNone)
	if err != nil {
		return nil, fmt.Errorf("the face %s can't be measured: %w", family, err)
	}
	t.XHeight, t.CapHeight = float64(metrics.XHeight)/float64(first.em), float64(metrics.CapHeight)/float64(first.em)
	return t, nil
}

// Width is how long a line of text is, as a multiple of the size of its type. Letters that
// the typeface lacks are given: a browser takes them from a face of its own, whose widths
// are not known here.
func (t *Typeface) Width(text string) (ems float64, lacking []rune) {
	for _, letter := range text {
		if wide, ok := t.advance(letter); ok {
			ems += wide
		} else {
			lacking = append(lacking, letter)
		}
	}
	return ems, lacking
}

func (t *Typeface) advance(letter rune) (float64, bool) {
	for _, c := range t.cuts {
		if !c.reach.hold(letter) {
			continue
		}
		glyph, err := c.font.GlyphIndex(&t.buffer, letter)
		if err != nil || glyph == 0 {
			continue
		}
		wide, err := c.font.GlyphAdvance(&t.buffer, glyph, c.em, font.HintingNone)
		if err == nil {
			return float64(wide) / float64(c.em), true
		}
	}
	return 0, false
}
