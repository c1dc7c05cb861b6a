package print

// A Side is one side of a sheet on which several pages lie. Lengths are in millimetres from its lower left corner.
type Side struct {
	Width, Height float64
	Places        []Place
	Marks         []Mark
	// Trim is what is left when the sheet has been cut, Bleed what is printed beyond it: left, bottom, right, top. Nil
	// where nothing is cut.
	Trim, Bleed *[4]float64
}

// A Place is where one page lies on a side.
type Place struct {
	// Page counts from 1. A number beyond the last page is a blank.
	Page int
	// Left and Bottom are the page's lower left corner as it lies, Width and Height its size.
	Left, Bottom, Width, Height float64
	// From and To are as far as the page is shown, from left to right.
	From, To float64
	// Turned pages stand on their heads.
	Turned bool
}

// A Mark is a thin line: where to fold, dashed, or where to cut.
type Mark struct {
	X1, Y1, X2, Y2 float64
	Dashed         bool
}

// Folding says how the sheets are printed and bound.
type Folding struct {
	// Sheet is the paper in the printer, in portrait; the zero value is as large as the pages, bleed and marks need.
	Sheet Paper
	// LongEdge says that the printer turns the sheet over at its long edge; else at the short one, which keeps the
	// heads of both sides up.
	LongEdge bool
	// Thickness of the paper in millimetres: inner sheets are pushed out by as much at their fold, and their pages
	// moved in. Common practice, no source; a printer measures a dummy. 80 g/m² has about 0.1 mm.
	Thickness float64
	// Bleed and cutting marks are for a print shop that cuts the sheet, in millimetres; 0 for a printer at home.
	Bleed float64
}

// markRoom is what cutting marks need around a sheet, markLength how long they are, markGap what they keep off the
// bleed, all in millimetres. Common practice, no source.
const (
	markRoom   = 10
	markLength = 5
	markGap    = 2
	foldLength = 4
)

// Stitched lays out a booklet that is folded in the middle and stapled through the fold, the outermost sheet first,
// front and back in turn. Pages are counted up to a multiple of four; what is added are blanks at the end.
//
// On sheet k of n the front has the pages 4n − 2k + 2 and 2k − 1, the back 2k and 4n − 2k + 1, from left to right: so
// side by side they always add up to the number of pages and one. Common practice of saddle stitching.
func Stitched(pages int, page Paper, folding Folding) []Side {
	sheets := (pages + 3) / 4
	last := 4 * sheets
	var sides []Side
	for k := 1; k <= sheets; k++ {
		creep := float64(k-1) * folding.Thickness
		sides = append(sides,
			spread(last-2*k+2, 2*k-1, page, creep, folding),
			over(spread(2*k, last-2*k+1, page, creep, folding), folding))
	}
	return sides
}

// spread lays two pages side by side at the fold; creep moves both towards it.
func spread(left, right int, page Paper, creep float64, folding Folding) Side {
	side := folding.side(2*page.Width, page.Height)
	middle, bottom := side.Width/2, (side.Height-page.Height)/2
	side.Places = []Place{
		{Page: left, Left: middle - page.Width + creep, Bottom: bottom, Width: page.Width, Height: page.Height, From: middle - page.Width - folding.Bleed, To: middle},
		{Page: right, Left: middle - creep, Bottom: bottom, Width: page.Width, Height: page.Height, From: middle, To: middle + page.Width + folding.Bleed},
	}
	side.mark([]float64{middle}, 2*page.Width, page.Height, folding.Bleed)
	return side
}

// Panels lays out one sheet of so many panels on each side, folded along lines from top to bottom.
//
// Three are folded one into the other like a letter: the one folded in is 2 mm narrower. Outside lie, from left to
// right, the panels 5, 6 (the back) and 1 (the front), inside 2, 3 and 4. Four are folded to and fro: 1 to 4 on one
// side, 5 to 8 on the other. Common practice, no source.
func Panels(panels int, page Paper, folding Folding) []Side {
	if panels == 3 {
		third := page.Width
		return []Side{
			row([]int{5, 6, 1}, []float64{third - 2*tuck, third + tuck, third + tuck}, page, folding),
			over(row([]int{2, 3, 4}, []float64{third + tuck, third + tuck, third - 2*tuck}, page, folding), folding),
		}
	}
	var front, back []int
	var widths []float64
	for i := range panels {
		front, back = append(front, i+1), append(back, panels+i+1)
		widths = append(widths, page.Width)
	}
	return []Side{row(front, widths, page, folding), over(row(back, widths, page, folding), folding)}
}

// tuck is what the two outer panels of a letter fold gain from the one that is folded in, in millimetres.
const tuck = 2.0 / 3

// row lays pages side by side, each in the middle of its panel.
func row(pages []int, widths []float64, page Paper, folding Folding) Side {
	whole := 0.0
	for _, width := range widths {
		whole += width
	}
	side := folding.side(whole, page.Height)
	left, bottom := (side.Width-whole)/2, (side.Height-page.Height)/2
	var folds []float64
	for i, number := range pages {
		place := Place{
			Page: number, Left: left + (widths[i]-page.Width)/2, Bottom: bottom, Width: page.Width, Height: page.Height,
			From: left, To: left + widths[i],
		}
		if i == 0 {
			place.From -= folding.Bleed
		} else {
			folds = append(folds, left)
		}
		if i == len(pages)-1 {
			place.To += folding.Bleed
		}
		side.Places = append(side.Places, place)
		left += widths[i]
	}
	side.mark(folds, whole, page.Height, folding.Bleed)
	return side
}

// side is a blank side, in landscape, on which the trimmed size has its place.
func (f Folding) side(width, height float64) Side {
	side := Side{Width: width, Height: height}
	if f.Bleed > 0 {
		around := f.Bleed + markRoom
		side.Width, side.Height = width+2*around, height+2*around
	}
	if f.Sheet != (Paper{}) {
		side.Width, side.Height = max(f.Sheet.Width, f.Sheet.Height), min(f.Sheet.Width, f.Sheet.Height)
	}
	return side
}

// mark draws where to fold, and for a shop where to cut.
func (s *Side) mark(folds []float64, width, height, bleed float64) {
	left, bottom := (s.Width-width)/2, (s.Height-height)/2
	right, top := left+width, bottom+height
	for _, x := range folds {
		low, high := bottom, top
		if bleed > 0 {
			low, high = bottom-bleed-markGap-markLength, top+bleed+markGap+markLength
		}
		s.Marks = append(s.Marks, Mark{x, low, x, low + foldLength, true}, Mark{x, high - foldLength, x, high, true})
	}
	if bleed == 0 {
		return
	}
	s.Trim = &[4]float64{left, bottom, right, top}
	s.Bleed = &[4]float64{left - bleed, bottom - bleed, right + bleed, top + bleed}
	off, end := bleed+markGap, bleed+markGap+markLength
	for _, x := range []float64{left, right} {
		s.Marks = append(s.Marks, Mark{x, bottom - end, x, bottom - off, false}, Mark{x, top + off, x, top + end, false})
	}
	for _, y := range []float64{bottom, top} {
		s.Marks = append(s.Marks, Mark{left - end, y, left - off, y, false}, Mark{right + off, y, right + end, y, false})
	}
}

// over is the back of a sheet: one that is turned at its long edge has it upside down.
func over(side Side, folding Folding) Side {
	if !folding.LongEdge {
		return side
	}
	for i, p := range side.Places {
		p.Left, p.Bottom = side.Width-p.Left-p.Width, side.Height-p.Bottom-p.Height
		p.From, p.To = side.Width-p.To, side.Width-p.From
		p.Turned = true
		side.Places[i] = p
	}
	for i, m := range side.Marks {
		side.Marks[i] = Mark{side.Width - m.X1, side.Height - m.Y1, side.Width - m.X2, side.Height - m.Y2, m.Dashed}
	}
	return side
}
