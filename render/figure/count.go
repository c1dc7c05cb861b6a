package figure

import "math"

// A Count sets one number large: how many pieces a kit makes, where their form
// isn't known.
type Count struct {
	Title string
	// Number is printed as it stands; Noun goes under it ("notebooks").
	Number, Noun string
}

// The number fills the text width with up to two figures; longer ones are set
// smaller. A figure of the text face is about 0.56 of its size wide and 0.7 high.
const (
	largestType = 250.0
	digitWide   = 0.56
	digitTall   = 0.7
)

// Draw gives the figure.
func (c Count) Draw() Figure {
	size := largestType
	if digits := float64(len([]rune(c.Number))); digits > 0 {
		size = math.Min(size, shelfWidth/(digits*digitWide))
	}
	var p pen
	baseline := size*digitTall + 4
	p.sized("numeral", "start", 0, baseline, size, c.Number)
	p.line("shelf", 0, baseline+16, shelfWidth, baseline+16)
	p.sized("noun", "start", 0, baseline+44, 24, c.Noun)
	return Figure{
		Kind: "count", Width: shelfWidth, Height: baseline + 54,
		Title: c.Title, Text: sentence(c.Number + " " + c.Noun), shapes: p.out.String(),
	}
}
