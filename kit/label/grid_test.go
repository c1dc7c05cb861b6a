package label

import (
	"math"
	"testing"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// Positions reckoned by hand from the margins, sizes and gaps.
func TestPositions(t *testing.T) {
	for _, c := range []struct {
		grid      string
		number    int
		left, top float64
	}{
		{"a4-70x37", 0, 0, 0.5},                                       // (297 − 8 × 37) / 2 = 0.5
		{"a4-70x37", 23, 140, 259.5},                                  // 0.5 + 7 × 37
		{"a4-63x38", 4, 73.25, 53.25},                                 // (210 − 195.5) / 2 + 66, (297 − 266.7) / 2 + 38.1
		{"letter-2.63x1", 0, 4.7625, 12.7},                            // 3/16 in and 1/2 in
		{"letter-2.63x1", 29, 4.7625 + 2*2.75*25.4, 12.7 + 9*25.4},    // 2 5/8 + 1/8 in apart
		{"letter-4x2", 9, 3.96875 + (4+3.0/16)*25.4, 12.7 + 4*2*25.4}, // 5/32 in left
		{"a4-round-60", 5, 140, 86},                                   // (210 − 190) / 2 + 2 × 65, (297 − 255) / 2 + 65
	} {
		grid, known := GridNamed(c.grid)
		if !known {
			t.Fatalf("no grid %s", c.grid)
		}
		left, top := grid.Position(c.number)
		if math.Abs(left-c.left) > 1e-9 || math.Abs(top-c.top) > 1e-9 {
			t.Errorf("%s %d: %.4f, %.4f, want %.4f, %.4f", c.grid, c.number, left, top, c.left, c.top)
		}
	}
}

// Every grid lies on its paper, with the same room left and right, above and below.
func TestGridsLieOnTheirPaper(t *testing.T) {
	for _, g := range Grids() {
		right, bottom := g.ends()
		if g.Left < -1e-9 || g.Top < -1e-9 || math.Abs(g.Paper.Wide-right-g.Left) > 1e-9 || math.Abs(g.Paper.Tall-bottom-g.Top) > 1e-9 {
			t.Errorf("%s: from %.2f, %.2f to %.2f, %.2f", g.Name, g.Left, g.Top, right, bottom)
		}
	}
}

func TestOwnSheetMustFitItsPaper(t *testing.T) {
	mm := func(n int64) kit.Said[quantity.Amount] {
		return kit.Said[quantity.Amount]{Value: quantity.Amount{Nominal: quantity.Whole(n), Dimension: quantity.Length}}
	}
	sheet := &kit.LabelSheet{Across: kit.Said[int]{Value: 2}, Down: kit.Said[int]{Value: 2}, Wide: mm(100), Tall: mm(140), Left: mm(4), GapAcross: mm(2)}
	grid, err := Own(sheet)
	if err != nil || grid.Each() != 4 {
		t.Fatal(grid, err)
	}
	if left, top := grid.Position(3); left != 106 || top != 140 {
		t.Error(left, top)
	}
	sheet.Left = mm(10)
	if _, err := Own(sheet); err == nil {
		t.Error("10 + 100 + 2 + 100 mm on a paper of 210 mm is taken")
	}
}
