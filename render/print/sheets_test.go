package print

import (
	"math"
	"testing"
)

// pairs gives the two pages of each side from left to right, as a reader who holds the side upright sees them.
func pairs(sides []Side) [][2]int {
	var all [][2]int
	for _, side := range sides {
		left, right := side.Places[0], side.Places[1]
		if left.Left > right.Left {
			left, right = right, left
		}
		if left.Turned { // turned over by the person who holds it
			left, right = right, left
		}
		all = append(all, [2]int{left.Page, right.Page})
	}
	return all
}

// TestStitchedOrder holds the order of pages against the published tables for 8 and 16 pages in saddle stitch, and
// for one sheet of 4: front and back of each sheet, the outermost first.
func TestStitchedOrder(t *testing.T) {
	published := map[int][][2]int{
		4:  {{4, 1}, {2, 3}},
		8:  {{8, 1}, {2, 7}, {6, 3}, {4, 5}},
		16: {{16, 1}, {2, 15}, {14, 3}, {4, 13}, {12, 5}, {6, 11}, {10, 7}, {8, 9}},
	}
	for pages, order := range published {
		for _, folding := range []Folding{{Sheet: A4}, {Sheet: A4, LongEdge: true}, {Bleed: 3}} {
			got := pairs(Stitched(pages, pageA5, folding))
			if len(got) != len(order) {
				t.Fatalf("%d pages: %v", pages, got)
			}
			for i := range order {
				if got[i] != order[i] {
					t.Errorf("%d pages, %+v, side %d: %v, published %v", pages, folding, i+1, got[i], order[i])
				}
			}
		}
	}
}

var pageA5 = Paper{Name: "page", Width: 148, Height: 210}

// TestStitchedProperties holds for any number of pages what the trade knows of a saddle stitch: a multiple of four,
// odd pages on the right, the two side by side add up to one more than all, every page once.
func TestStitchedProperties(t *testing.T) {
	for pages := 1; pages <= 64; pages++ {
		sides := Stitched(pages, pageA5, Folding{Sheet: A4})
		last := 2 * len(sides)
		if last%4 != 0 || last < pages || last >= pages+4 {
			t.Errorf("%d pages on %d", pages, last)
		}
		seen := map[int]bool{}
		for _, pair := range pairs(sides) {
			if pair[0]+pair[1] != last+1 || pair[1]%2 != 1 || seen[pair[0]] || seen[pair[1]] {
				t.Errorf("%d pages: %v", pages, pair)
			}
			seen[pair[0]], seen[pair[1]] = true, true
		}
		if len(seen) != last {
			t.Errorf("%d pages: %d of them lie on sheets", pages, len(seen))
		}
	}
}

// TestCreep: each sheet further in is pushed out by the thickness of the paper, so the fourth of 80 g/m² by 3 × 0.10 =
// 0.3 mm (common practice, from memory), and its pages are moved towards the fold by as much.
func TestCreep(t *testing.T) {
	sides := Stitched(16, pageA5, Folding{Sheet: A4, Thickness: 0.1})
	middle := sides[0].Width / 2
	for sheet := range 4 {
		for _, side := range sides[2*sheet : 2*sheet+2] {
			left, right := side.Places[0], side.Places[1]
			want := 0.1 * float64(sheet)
			if got := left.Left + left.Width - middle; math.Abs(got-want) > 1e-9 {
				t.Errorf("sheet %d: the left page lies %g mm over the fold, not %g", sheet+1, got, want)
			}
			if got := middle - right.Left; math.Abs(got-want) > 1e-9 {
				t.Errorf("sheet %d: the right page lies %g mm over the fold, not %g", sheet+1, got, want)
			}
			if left.To != middle || right.From != middle {
				t.Errorf("sheet %d: a page shows beyond the fold", sheet+1)
			}
		}
	}
}

// TestTurning: a printer that turns the sheet at its long edge wants the back on its head, one that turns it at the
// short edge does not (the fold runs along the short side of a sheet that lies across).
func TestTurning(t *testing.T) {
	for _, long := range []bool{false, true} {
		for i, side := range Stitched(8, pageA5, Folding{Sheet: A4, LongEdge: long}) {
			for _, place := range side.Places {
				if want := long && i%2 == 1; place.Turned != want {
					t.Errorf("long edge %v, side %d: turned %v", long, i+1, place.Turned)
				}
			}
		}
	}
}

// TestPanels: the letter fold has 5, 6, 1 outside and 2, 3, 4 inside, and the panel that is folded in, number 5 with 4
// on its back, is 2 mm narrower than the others.
func TestPanels(t *testing.T) {
	page := Paper{Width: 99, Height: 210}
	sides := Panels(3, page, Folding{Sheet: A4})
	for i, want := range [][]int{{5, 6, 1}, {2, 3, 4}} {
		for j, place := range sides[i].Places {
			width := place.To - place.From
			narrow := place.Page == 5 || place.Page == 4
			if place.Page != want[j] || narrow && math.Abs(width-(99-4.0/3)) > 1e-9 || !narrow && math.Abs(width-(99+2.0/3)) > 1e-9 {
				t.Errorf("side %d, panel %d: page %d, %g mm wide", i+1, j+1, place.Page, width)
			}
			if middle := place.Left + place.Width/2; math.Abs(middle-(place.From+place.To)/2) > 1e-9 {
				t.Errorf("page %d is not in the middle of its panel", place.Page)
			}
		}
		if len(sides[i].Marks) != 4 {
			t.Errorf("side %d has %d marks, not two at each of two folds", i+1, len(sides[i].Marks))
		}
	}
	// The two sides of a panel lie back to back: the folds of the back are those of the front seen from behind.
	for i, place := range sides[0].Places {
		behind := sides[1].Places[2-i]
		if math.Abs(place.From-(297-behind.To)) > 1e-9 {
			t.Errorf("pages %d and %d are not back to back", place.Page, behind.Page)
		}
	}
	for i, want := range [][]int{{1, 2, 3, 4}, {5, 6, 7, 8}} {
		for j, place := range Panels(4, Paper{Width: 105, Height: 297}, Folding{Sheet: A3})[i].Places {
			if place.Page != want[j] || place.From != 105*float64(j) {
				t.Errorf("to and fro, side %d, panel %d: page %d from %g", i+1, j+1, place.Page, place.From)
			}
		}
	}
}

// TestShop: the cut, 3 mm beyond it, and marks that keep clear of both (common practice, from memory).
func TestShop(t *testing.T) {
	side := Stitched(4, pageA5, Folding{Bleed: 3})[0]
	trim, bleed := *side.Trim, *side.Bleed
	if width, height := trim[2]-trim[0], trim[3]-trim[1]; width != 296 || height != 210 {
		t.Errorf("cut to %g × %g mm, not to two A5 pages", width, height)
	}
	if trim[0]-bleed[0] != 3 || bleed[3]-trim[3] != 3 {
		t.Errorf("the bleed is %v around %v", bleed, trim)
	}
	cuts := 0
	for _, mark := range side.Marks {
		inside := func(x, y float64) bool { return x > bleed[0] && x < bleed[2] && y > bleed[1] && y < bleed[3] }
		if inside(mark.X1, mark.Y1) || inside(mark.X2, mark.Y2) {
			t.Errorf("the mark %+v would be printed on the page", mark)
		}
		if mark.X1 < 0 || mark.Y1 < 0 || mark.X2 > side.Width || mark.Y2 > side.Height {
			t.Errorf("the mark %+v is beyond the sheet of %g × %g", mark, side.Width, side.Height)
		}
		if !mark.Dashed {
			cuts++
		}
	}
	if cuts != 8 {
		t.Errorf("%d cutting marks, not two at each of four corners", cuts)
	}
}

// TestSheetFor: two pages of ISO 216 make the next size up, which may be a millimetre wider as halves are rounded down.
func TestSheetFor(t *testing.T) {
	for _, test := range []struct {
		width, height float64
		name          string
	}{
		{2 * 148, 210, "a4"}, {2 * 210, 297, "a3"}, {2 * 105, 148, "a5"}, {2 * 139.7, 215.9, "letter"},
		{2 * 215.9, 279.4, "tabloid"}, {3 * 99, 210, "a4"}, {279.4, 215.9, "letter"}, {420, 297, "a3"}, {300, 100, "sheet"},
	} {
		if got := SheetFor(test.width, test.height); got.Name != test.name || got.Height < test.width-slack {
			t.Errorf("%g × %g mm: %+v, not %s", test.width, test.height, got, test.name)
		}
	}
}
