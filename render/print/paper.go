package print

import "strings"

// millimetresPerInch is exact: NIST SP 811, appendix B.8.
const millimetresPerInch = 25.4

// Paper is a sheet in portrait. Name is what a person types, in lower case; Width and Height are in millimetres.
type Paper struct {
	Name          string
	Width, Height float64
}

// The A sizes are those of ISO 216. Letter is 8.5 by 11 inches and tabloid 11 by 17
// (ANSI/ASME Y14.1, sizes A and B), half letter is half of the first.
var (
	A3         = Paper{Name: "a3", Width: 297, Height: 420}
	A4         = Paper{Name: "a4", Width: 210, Height: 297}
	A5         = Paper{Name: "a5", Width: 148, Height: 210}
	A6         = Paper{Name: "a6", Width: 105, Height: 148}
	Letter     = Paper{Name: "letter", Width: 8.5 * millimetresPerInch, Height: 11 * millimetresPerInch}
	Tabloid    = Paper{Name: "tabloid", Width: 11 * millimetresPerInch, Height: 17 * millimetresPerInch}
	HalfLetter = Paper{Name: "half-letter", Width: 5.5 * millimetresPerInch, Height: 8.5 * millimetresPerInch}
)

// Papers gives every known paper, the most usual for a booklet first.
func Papers() []Paper {
	return []Paper{A5, HalfLetter, A4, Letter, A6, A3, Tabloid}
}

// PaperNamed finds a paper by its name; capitals and surrounding spaces don't matter.
func PaperNamed(name string) (Paper, bool) {
	wanted := strings.ToLower(strings.TrimSpace(name))
	for _, paper := range Papers() {
		if paper.Name == wanted {
			return paper, true
		}
	}
	return Paper{}, false
}

// halved is by how much two halves may be narrower than the sheet, in millimetres: ISO 216 rounds a half down.
const halved = 1.0

// SheetFor gives the sheet that is so wide and high, lying across. Where there is none of that size the sheet is made
// to measure.
func SheetFor(width, height float64) Paper {
	for _, paper := range Papers() {
		if near(paper.Width, height) && paper.Height > width-slack && paper.Height < width+halved+slack {
			return paper
		}
	}
	return Paper{Name: "sheet", Width: height, Height: width}
}
