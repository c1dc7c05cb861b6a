package render

import (
	"fmt"
	"regexp"
	"strings"

	"tallyfold/kit/colour"
)

// coloured gives the style sheet the colours of this booklet: the kit's accent in the
// place of ours.
func (b *Booklet) coloured(style string) string {
	if b.Accent == nil {
		return style
	}
	return withAccent(style, *b.Accent)
}

// A palette is what a style sheet says of its colours, once for paper and once for a
// dark screen.
var palette = regexp.MustCompile(`(?s):root \{.*?\n *\}`)

// withAccent puts a kit's accent into each palette of a style sheet: made readable on
// the ground of that palette, with what stands on it and its pale tone to go with it.
func withAccent(style string, accent colour.Colour) string {
	return palette.ReplaceAllStringFunc(style, func(colours string) string {
		paper, ok := colourNamed(colours, "paper")
		if !ok {
			return colours
		}
		readable := accent.Readable(paper, colour.ForText)
		on := colour.White
		if colour.Contrast(on, readable) < colour.ForText {
			on = colour.Black
		}
		for name, c := range map[string]colour.Colour{"accent": readable, "on-accent": on, "pale": paper.Mixed(readable, paleness)} {
			if old, ok := colourNamed(colours, name); ok {
				colours = strings.Replace(colours, fmt.Sprintf("--%s: %s;", name, old), fmt.Sprintf("--%s: %s;", name, c), 1)
			}
		}
		return colours
	})
}

// paleness is how much of the accent is in its pale tone.
const paleness = 0.13

// colourNamed reads one colour of a palette.
func colourNamed(colours, name string) (colour.Colour, bool) {
	_, after, ok := strings.Cut(colours, "--"+name+": ")
	written, _, closed := strings.Cut(after, ";")
	if !ok || !closed {
		return colour.Colour{}, false
	}
	return colour.Read(strings.TrimSpace(written))
}
