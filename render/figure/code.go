package figure

import (
	"fmt"
	"strings"

	"rsc.io/qr"
)

// A Code is a QR code of a text (ISO/IEC 18004), with error correction at level M.
type Code struct {
	// Title says what the code is; Says is what it holds.
	Title, Says string
}

// quietZone is the light room around the code, in modules (ISO/IEC 18004, 6.3.8, from
// memory).
const quietZone = 4

// module is the side of one square of the code, in points. The style sheet sets how large
// the whole is printed.
const module = 2

// Draw gives the figure, dark on light whatever the colours of the page are, as readers
// want it. ok is false where the text is too long for a code.
func (c Code) Draw() (Figure, bool) {
	code, err := qr.Encode(c.Says, qr.M)
	if err != nil {
		return Figure{}, false
	}
	side := float64((code.Size + 2*quietZone) * module)
	var dark strings.Builder
	for y := range code.Size {
		for x := 0; x < code.Size; x++ {
			begin := x
			for x < code.Size && code.Black(x, y) {
				x++
			}
			if x > begin {
				fmt.Fprintf(&dark, "M%d %dh%dv%dh-%dZ", (begin+quietZone)*module, (y+quietZone)*module, (x-begin)*module, module, (x-begin)*module)
			}
		}
	}
	shapes := fmt.Sprintf(`<rect fill="#fff" width="%s" height="%s"/><path fill="#000" shape-rendering="crispEdges" d="%s"/>`, num(side), num(side), dark.String())
	return Figure{Kind: "code", Width: side, Height: side, Title: c.Title, Text: c.Says, shapes: shapes}, true
}
