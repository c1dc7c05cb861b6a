package render

import (
	"fmt"
	"slices"

	"tallyfold/kit/picture"
)

// A Paper is a page size in millimetres.
type Paper struct {
	Name          string
	Width, Height float64
}

// A Way is how a booklet is read: bound page after page, folded from one sheet, or
// at one glance.
type Way string

const (
	Bound  Way = "bound"  // pages, each section on its own
	Leaf   Way = "leaf"   // the panels of one folded sheet; what follows follows on
	Single Way = "single" // everything on one page, in columns
)

// Margins of a page in millimetres. Inner is at the binding edge: left pages mirror
// right ones.
type Margins struct{ Top, Outer, Bottom, Inner float64 }

// A Form is what a booklet can be made as.
type Form struct {
	// Name is what a person types, as in "a5".
	Name string
	// Paper is one page, or one panelMargins of a leaflet.
	Paper   Paper
	Margins Margins
	Way     Way
	// Type is the size of running text in points, or the largest that is tried; with
	// Smallest given, the largest that fits Pages pages is used.
	Type, Smallest float64
	// Pages is how many there are at most; 0 is as many as it takes.
	Pages int
	// Columns of a single page.
	Columns int
	// Panels of the sheet that the leaflet is folded from, on each side.
	Panels int
	// Large prints no letter under 16 points.
	Large bool
	// Short leaves out the parts that are declared droppable.
	Short bool
	// Card tells the method in a line a step: for one who has made the kit before.
	Card bool
}

// Narrow pages give the rail up, as narrow screens do.
func (f Form) Narrow() bool {
	return f.Paper.Width/float64(max(f.Columns, 1)) < 115
}

// Area is what the margins leave of a page, width and height in millimetres.
func (f Form) Area() (width, height float64) {
	return f.Paper.Width - f.Margins.Inner - f.Margins.Outer, f.Paper.Height - f.Margins.Top - f.Margins.Bottom
}

// textRoom is what a page has for running text, beside the rail where there is one, in
// millimetres.
func (f Form) textRoom() (width, height float64) {
	width, height = f.Area()
	if f.Columns > 1 {
		width /= float64(f.Columns)
	}
	if f.Narrow() {
		return width, height
	}
	return width - rail*f.Type*inch/72, height
}

// roomFor gives the place of a picture on a page of the form: larger pages than A5 show it
// larger, smaller ones keep the dots for the screen.
func (f Form) roomFor(place picture.Place) picture.Place {
	width, _ := f.Area()
	usual, _ := A5.Area()
	larger := max(1, width/float64(max(f.Columns, 1))/usual)
	return picture.Place{Width: place.Width * larger, Height: place.Height * larger}
}

// rail is the width of the rail in sizes of the type, as book.css has it.
const rail = 4.6

// Room of the form in square millimetres; 0 where it takes as many pages as it needs.
func (f Form) Room() float64 {
	width, height := f.Area()
	return float64(f.Pages) * width * height
}

// Across is how wide the sheet is that the form is folded from, in millimetres; it is as
// high as the form.
func (f Form) Across() float64 {
	if f.Way == Leaf {
		return float64(f.Panels) * f.Paper.Width
	}
	return 2 * f.Paper.Width
}

// Tells says in a few words what the form is.
func (f Form) Tells() string {
	page := fmt.Sprintf("%.4g × %.4g mm", f.Paper.Width, f.Paper.Height)
	switch {
	case f.Way == Leaf:
		return fmt.Sprintf("one sheet of %.4g × %.4g mm, folded in %d", f.Across(), f.Paper.Height, f.Panels)
	case f.Card:
		return "one page of " + page + ", the method in short"
	case f.Way == Single:
		return "one page of " + page + ", everything in columns"
	case f.Large:
		return "pages of " + page + ", large print of 16 points and more"
	}
	return "pages of " + page
}

// Page sizes: ISO 216; Letter, Tabloid, C and D of ANSI/ASME Y14.1, and half of Letter.
const inch = 25.4

var (
	usualMargins  = Margins{Top: 13, Outer: 13, Bottom: 16, Inner: 15}
	smallMargins  = Margins{Top: 8.5, Outer: 8.5, Bottom: 12.5, Inner: 10.5}
	wideMargins   = Margins{Top: 18, Outer: 20, Bottom: 22, Inner: 24}
	panelMargins  = Margins{Top: 7, Outer: 6, Bottom: 9.5, Inner: 6}
	aroundMargins = Margins{Top: 8, Outer: 8, Bottom: 12, Inner: 8}
	posterMargins = Margins{Top: 14, Outer: 14, Bottom: 18, Inner: 14}
)

// smallestType of short forms, in points. The letter x of the text face is 0.507 of the
// size high, so 1.29 mm here; Regulation (EU) 1169/2011, article 13, asks 1.2 mm of the
// print on food. It is taken as a yardstick: nothing asks it of a leaflet.
const smallestType = 7.2

// A5 is the form that is made unless another is asked for.
var A5 = Form{Name: "a5", Paper: Paper{"A5", 148, 210}, Margins: usualMargins, Way: Bound, Type: 9.6}

// HalfLetter is half a sheet of US Letter.
var HalfLetter = Form{Name: "half-letter", Paper: Paper{"half letter", 5.5 * inch, 8.5 * inch}, Margins: usualMargins, Way: Bound, Type: 9.6}

// Forms gives every form, the most usualMargins first. To add one, add a line.
func Forms() []Form {
	bound := func(name string, paper Paper, margins Margins, points float64) Form {
		return Form{Name: name, Paper: paper, Margins: margins, Way: Bound, Type: points}
	}
	folded := func(name string, panels int, width, height float64) Form {
		return Form{
			Name: name, Paper: Paper{"a panelMargins of " + name, width, height}, Margins: panelMargins, Way: Leaf, Type: 9.2,
			Smallest: smallestType, Pages: 2 * panels, Panels: panels, Short: true,
		}
	}
	single := func(name string, paper Paper, margins Margins, columns int, points float64) Form {
		return Form{
			Name: name, Paper: paper, Margins: margins, Way: Single, Type: points,
			Smallest: smallestType, Pages: 1, Columns: columns, Short: true,
		}
	}
	large := func(f Form) Form { f.Large = true; return f }
	card := func(f Form) Form { f.Card = true; return f }
	return []Form{
		A5, HalfLetter,
		bound("a6", Paper{"A6", 105, 148}, smallMargins, 8.4),
		bound("a4", Paper{"A4", 210, 297}, wideMargins, 11.4),
		bound("letter", Paper{"US Letter", 8.5 * inch, 11 * inch}, wideMargins, 11.4),
		large(bound("a4-large", Paper{"A4", 210, 297}, wideMargins, largeType)),
		large(bound("letter-large", Paper{"US Letter", 8.5 * inch, 11 * inch}, wideMargins, largeType)),
		folded("a4-in-three", 3, 99, 210),
		folded("letter-in-three", 3, 11*inch/3, 8.5*inch),
		folded("a4-in-four", 4, 297.0/4, 210),
		folded("letter-in-four", 4, 11*inch/4, 8.5*inch),
		folded("a3-in-three", 3, 140, 297),
		folded("tabloid-in-three", 3, 17*inch/3, 11*inch),
		folded("a3-in-four", 4, 105, 297),
		folded("tabloid-in-four", 4, 17*inch/4, 11*inch),
		card(single("a5-card", Paper{"A5", 148, 210}, aroundMargins, 1, 10.5)),
		card(single("half-letter-card", Paper{"half letter", 5.5 * inch, 8.5 * inch}, aroundMargins, 1, 10.5)),
		card(single("a4-card", Paper{"A4", 210, 297}, posterMargins, 2, 13)),
		card(single("letter-card", Paper{"US Letter", 8.5 * inch, 11 * inch}, posterMargins, 2, 13)),
		card(single("a3-card", Paper{"A3", 297, 420}, posterMargins, 2, 18)),
		card(single("tabloid-card", Paper{"US Tabloid", 11 * inch, 17 * inch}, posterMargins, 2, 18)),
		single("a2-poster", Paper{"A2", 420, 594}, posterMargins, 3, 20),
		single("ansi-c-poster", Paper{"ANSI C", 17 * inch, 22 * inch}, posterMargins, 3, 20),
		single("a1-poster", Paper{"A1", 594, 841}, posterMargins, 3, 28),
		single("ansi-d-poster", Paper{"ANSI D", 22 * inch, 34 * inch}, posterMargins, 3, 28),
	}
}

// largeType is the running text of large print, in points: the smallest letters, 0.86 of
// it, are then 16 points, where large print begins (common practice, from memory).
const largeType = 18.8

// FormNamed finds a form by its name.
func FormNamed(name string) (Form, bool) {
	at := slices.IndexFunc(Forms(), func(f Form) bool { return f.Name == name })
	if at < 0 {
		return Form{}, false
	}
	return Forms()[at], true
}
