package render

import (
	"regexp"

	"tallyfold/kit/colour"
)

// coloured gives the style sheet the colours of this booklet.
func (b *Booklet) coloured(style string) string {
	if !b.Grey {
		return style
	}
	return writtenColour.ReplaceAllStringFunc(style, func(written string) string {
		if found, ok := colour.Read(written); ok {
			return found.Grey().String()
		}
		return written
	})
}

// writtenColour is a colour in a style sheet.
var writtenColour = regexp.MustCompile(`#(?:[0-9A-Fa-f]{6}|[0-9A-Fa-f]{3})\b`)
