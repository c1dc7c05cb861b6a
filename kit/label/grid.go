package label

import (
	"fmt"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// A Grid is a sheet of equal labels. All lengths are in mm, the paper in portrait.
type Grid struct {
	// Name says the paper and the size of a label, "a4-70x37"; inches on US paper.
	Name  string
	Paper Paper
	// Across and Down count the labels of a row and of a column.
	Across, Down int
	Wide, Tall   float64
	// Left and Top are before the first label, GapAcross and GapDown between two.
	Left, Top, GapAcross, GapDown float64
	Round                         bool
}

// A Paper is a sheet in portrait, in mm.
type Paper struct {
	Name       string
	Wide, Tall float64
}

// Inch is an inch in mm, exactly: NIST SP 811, appendix B.8.
const Inch = 25.4

// The papers that labels are sold on: A4 by ISO 216, letter by ANSI/ASME Y14.1, size A.
var (
	A4     = Paper{"a4", 210, 297}
	Letter = Paper{"letter", 8.5 * Inch, 11 * Inch}
)

// Papers lists the papers by the names that a person types.
func Papers() []Paper { return []Paper{A4, Letter} }

// Grids are those known by name, smaller labels first. Sheets of one size differ a little
// in their margins from shop to shop (common practice, no source): the calibration sheet
// shows it.
func Grids() []Grid {
	return []Grid{
		centred("a4-63x38", A4, 3, 7, 63.5, 38.1, 2.5, 0),
		centred("a4-70x37", A4, 3, 8, 70, 37, 0, 0),
		centred("a4-99x57", A4, 2, 5, 99.1, 57, 2.5, 0),
		centred("a4-99x68", A4, 2, 4, 99.1, 67.7, 2.5, 0),
		centred("a4-99x139", A4, 2, 2, 99.1, 139, 2.5, 0),
		round(centred("a4-round-40", A4, 4, 6, 40, 40, 5, 5)),
		round(centred("a4-round-60", A4, 3, 4, 60, 60, 5, 5)),
		centred("letter-2.63x1", Letter, 3, 10, 2.625*Inch, 1*Inch, Inch/8, 0),
		centred("letter-4x2", Letter, 2, 5, 4*Inch, 2*Inch, Inch*3/16, 0),
		centred("letter-4x3.33", Letter, 2, 3, 4*Inch, Inch*10/3, Inch*3/16, 0),
		centred("letter-4x5", Letter, 2, 2, 4*Inch, 5*Inch, Inch*3/16, 0),
		round(centred("letter-round-1.5", Letter, 4, 6, 1.5*Inch, 1.5*Inch, Inch/8, Inch/8)),
		round(centred("letter-round-2", Letter, 3, 4, 2*Inch, 2*Inch, Inch/4, Inch/4)),
	}
}

// centred gives a grid with equal margins left and right, and above and below.
func centred(name string, paper Paper, across, down int, wide, tall, gapAcross, gapDown float64) Grid {
	g := Grid{Name: name, Paper: paper, Across: across, Down: down, Wide: wide, Tall: tall, GapAcross: gapAcross, GapDown: gapDown}
	right, bottom := g.ends()
	g.Left, g.Top = (paper.Wide-right)/2, (paper.Tall-bottom)/2
	return g
}

func round(g Grid) Grid {
	g.Round = true
	return g
}

// ends are the right and the lower edge of the last label.
func (g Grid) ends() (right, bottom float64) {
	right = g.Left + float64(g.Across)*g.Wide + float64(g.Across-1)*g.GapAcross
	bottom = g.Top + float64(g.Down)*g.Tall + float64(g.Down-1)*g.GapDown
	return right, bottom
}

// GridNamed finds a grid by its name.
func GridNamed(name string) (Grid, bool) {
	for _, g := range Grids() {
		if g.Name == name {
			return g, true
		}
	}
	return Grid{}, false
}

// Each is how many labels a sheet has.
func (g Grid) Each() int { return g.Across * g.Down }

// Position is where the label with a number from 0 stands: its left and upper edge, in mm
// from those of the sheet. Labels are counted along the rows.
func (g Grid) Position(number int) (left, top float64) {
	row, column := number/g.Across, number%g.Across
	return g.Left + float64(column)*(g.Wide+g.GapAcross), g.Top + float64(row)*(g.Tall+g.GapDown)
}

// Size says how large a label is and how many lie across and down: "70 × 37 mm, 3 × 8".
func (g Grid) Size() string {
	size := fmt.Sprintf("%.4g × %.4g mm", g.Wide, g.Tall)
	if g.Paper == Letter {
		size = fmt.Sprintf("%.4g × %.4g in", g.Wide/Inch, g.Tall/Inch)
	}
	if g.Round {
		wide, _, _ := strings.Cut(size, " × ")
		size = "⌀ " + wide + size[strings.LastIndex(size, " "):]
	}
	return fmt.Sprintf("%s, %d × %d", size, g.Across, g.Down)
}

// slack is what a measured sheet may stand over its paper before it is a slip, in mm.
const slack = 0.5

// Own makes a grid of a sheet that the maker measured. The error says what does not fit
// the paper, and by how much.
func Own(sheet *kit.LabelSheet) (Grid, error) {
	length := func(said kit.Said[quantity.Amount]) float64 { return said.Value.Nominal.Float() }
	g := Grid{
		Name: kit.OwnSheet, Paper: A4, Across: sheet.Across.Value, Down: sheet.Down.Value, Wide: length(sheet.Wide), Tall: length(sheet.Tall),
		Left: length(sheet.Left), Top: length(sheet.Top), GapAcross: length(sheet.GapAcross), GapDown: length(sheet.GapDown), Round: sheet.Round.Value,
	}
	if sheet.Paper.Value == Letter.Name {
		g.Paper = Letter
	}
	right, bottom := g.ends()
	switch {
	case g.Each() < 1 || g.Wide <= 0 || g.Tall <= 0:
		return g, fmt.Errorf("the sheet under “labels” in kit.yaml lacks a figure: it needs across, down, wide and tall")
	case right > g.Paper.Wide+slack:
		return g, fmt.Errorf("the sheet under “labels” in kit.yaml is wider than its paper: %.4g mm + %d × %.4g mm + %d × %.4g mm = %.4g mm, and %s is %.4g mm wide",
			g.Left, g.Across, g.Wide, g.Across-1, g.GapAcross, right, g.Paper.Name, g.Paper.Wide)
	case bottom > g.Paper.Tall+slack:
		return g, fmt.Errorf("the sheet under “labels” in kit.yaml is higher than its paper: %.4g mm + %d × %.4g mm + %d × %.4g mm = %.4g mm, and %s is %.4g mm high",
			g.Top, g.Down, g.Tall, g.Down-1, g.GapDown, bottom, g.Paper.Name, g.Paper.Tall)
	}
	return g, nil
}
