package print

import "strings"

// millimetresPerInch is exact: NIST SP 811, appendix B.8.
const millimetresPerInch = 25.4

// Paper is a sheet in portrait. Name is what a person types, in lower case; Width and Height are in millimetres.
type Paper struct {
	Name          string
	Width, Height float64
}

// The A sizes are those of ISO 216. Letter is 8.5 by 11 inches (ANSI/ASME Y14.1, size A), half letter is half of it.
var (
	A4         = Paper{Name: "a4", Width: 210, Height: 297}
	A5         = Paper{Name: "a5", Width: 148, Height: 210}
	A6         = Paper{Name: "a6", Width: 105, Height: 148}
	Letter     = Paper{Name: "letter", Width: 8.5 * millimetresPerInch, Height: 11 * millimetresPerInch}
	HalfLetter = Paper{Name: "half-letter", Width: 5.5 * millimetresPerInch, Height: 8.5 * millimetresPerInch}
)

// Papers gives every known paper, the most usual for a booklet first.
func Papers() []Paper {
	return []Paper{A5, HalfLetter, A4, Letter, A6}
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
