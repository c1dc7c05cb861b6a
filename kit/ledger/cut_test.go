package ledger_test

import (
	"strings"
	"testing"
	"time"

	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// stitching is a box of thread and felt.
const stitching = `name: Harbour pins
maker: Brindle Quay Workroom
makes: 6 pins
components:
  floss: {name: Embroidery thread, packed: 1 skein of 8 m, strands: 6}
  cord: {name: Cord, packed: 2 m, allowance per end: 2 cm}
  felt: {name: Felt, packed: 2 sheets of 20 × 15 cm, cut margin: 5 mm}
  scrap: {name: Scrap felt, packed: 900 cm²}
tools:
  board: {name: Board, from: customer, essential: true}
`

func onBoard(text string) string { return "## [Stitch](step:stitch)\n\n" + text + "\n" }

// A skein of 8 m laid of six strands gives 24 m of two strands (arithmetic: 6 ÷ 2 = 3
// lots of 8 m).
func TestEightMetresOfSixStrandsAreTwentyFourOfTwo(t *testing.T) {
	l := ledger.Follow(read(t, stitching, onBoard("Use [24 m of the thread](use:floss?strands=2) for all six.")))
	holdsTrue(t, l, "floss used 8000; floss left 0")
}

var cuttings = []meant{
	// Two lengths give three lots each.
	{"strands are used in whole lots", stitching, onBoard("Cut [6 lengths of 50 cm](use:floss?strands=2)."), "floss used 1000"},
	{"what is begun counts whole", stitching, onBoard("Cut [4 lengths of 50 cm](use:floss?strands=2)."), "floss used 1000"},
	{"one length, whatever becomes of its other strands", stitching, onBoard("Cut [50 cm](use:floss?strands=2)."), "floss used 500"},
	{"four of six strands give one lot in each length", stitching, onBoard("Cut [2 lengths of 50 cm](use:floss?strands=4)."), "floss used 1000"},
	{"without a word of strands all six are used", stitching, onBoard("Cut [6 lengths of 50 cm](use:floss)."), "floss used 3000"},
	{"every length loses its allowance at both ends", stitching, onBoard("Cut [4 lengths of 30 cm](use:cord)."), "cord used 1360"}, // 4 × (300 + 2 × 20)
	{"one length too", stitching, onBoard("Cut [30 cm](use:cord)."), "cord used 340"},
	{"pieces lose their margin on every side", stitching, onBoard("Cut out [6 squares of 5 × 4 cm](use:felt)."), "felt used 18000"}, // 6 × 60 × 50 mm²
	{"one of the packs inside the pack", stitching, onBoard("Lay out [one sheet of felt](use:felt)."), "felt used 30000"},
	{"both of them", stitching, onBoard("Lay out [both sheets](use:felt)."), "felt used 60000"},
	{"a number of them", stitching, onBoard("Lay out [2 sheets of the felt](use:felt)."), "felt used 60000"},
	{"a part of one of them", stitching, onBoard("Lay out [half of a sheet](use:felt)."), "felt used 15000"},
	{"half a skein", stitching, onBoard("Cut [half a skein](use:floss)."), "floss used 4000"},
	{"half of one skein", stitching, onBoard("Cut [half of one skein](use:floss)."), "floss used 4000"},
	{"of one skein, the thread is all of it", stitching, onBoard("Wind up [the thread](use:floss)."), "floss used 8000; floss left 0"},
	{"all of them", stitching, onBoard("Lay out [all of the felt](use:felt)."), "felt used 60000"},
	{"the amount of one told again is compared", stitching, onBoard("Wind up [1 skein (9 m)](use:floss)."), "floss used 8000; snags not the same floss"},
	{"an area told as one has no sides", stitching, onBoard("Cut out [100 cm²](use:felt)."), "felt used 10000"},
}

func TestWhatIsMeantOfCutting(t *testing.T) {
	for _, c := range cuttings {
		t.Run(c.why, func(t *testing.T) { holdsTrue(t, ledger.Follow(read(t, c.kit, c.method)), c.want) })
	}
}

// A skein too light is too light in the pack as well: two of two leave exactly nothing,
// however far each may be off.
func TestLotsErrWithTheirPack(t *testing.T) {
	kit := strings.Replace(stitching, "1 skein of 8 m", "2 skeins of 8 m ± 50 cm", 1)
	l := ledger.Follow(read(t, kit, onBoard("Cut up [one skein](use:floss). Then cut up [one skein](use:floss).")))
	if low, high := l.Balance("floss").Left.Worst(); !low.IsZero() || !high.IsZero() {
		t.Errorf("%s to %s mm are left, want nothing", low, high)
	}
}

// Pieces must be laid out, not only add up in area. By hand, with 5 mm on every side:
// 5 × 4 cm become 6 × 5 cm, of which a sheet of 20 × 15 cm takes nine (three rows of
// three, 18 × 15); 9 × 9 cm become 10 × 10, of which it takes two, though three and
// a half would be its area.
func TestPiecesAreLaidOut(t *testing.T) {
	for _, c := range []struct {
		text           string
		wanted, placed int
	}{
		{"Cut out [18 squares of 5 × 4 cm](use:felt).", 18, 18},
		{"Cut out [22 squares of 5 × 4 cm](use:felt).", 22, 18},
		{"Cut out [6 squares of 9 × 9 cm](use:felt).", 6, 4},
		{"Cut out [2 squares of 19 × 14 cm](use:felt).", 2, 2},
		{"Cut out [2 squares of 14 × 19 cm](use:felt).", 2, 2}, // they may be turned
		{"Cut out [2 squares of 20 × 14 cm](use:felt).", 2, 0},
		{"Cut out [2 squares of 9 × 14 cm](use:felt) and [2 squares of 9 × 6.5 cm](use:felt).", 4, 4},
		{"Cut out [2 squares of 9 × 14 cm](use:felt) and [4 squares of 9 × 6.5 cm](use:felt).", 6, 6},
		{"Cut out [1 square of 19 × 6.5 cm](use:felt), [1 square of 9 × 6.5 cm](use:felt) and [1 square of 19 × 14 cm](use:felt).", 3, 3},
	} {
		l := ledger.Follow(read(t, stitching, onBoard(c.text)))
		if len(l.Cuttings) != 1 {
			t.Fatalf("%s: %d cuttings", c.text, len(l.Cuttings))
		}
		if cut := l.Cuttings[0]; cut.Wanted() != c.wanted || cut.Placed != c.placed || cut.Unknown != "" {
			t.Errorf("%s: %d of %d placed %s, want %d of %d", c.text, cut.Placed, cut.Wanted(), cut.Unknown, c.placed, c.wanted)
		}
	}
}

// A sheet without end and small pieces are laid out in no time.
func TestHugeSheet(t *testing.T) {
	huge := strings.Replace(stitching, "2 sheets of 20 × 15 cm, cut margin: 5 mm", "1 sheet of 1000 × 999999 mm", 1)
	began := time.Now()
	cut := ledger.Follow(read(t, huge, onBoard("Cut out [5 squares of 0.01 × 9 cm](use:felt)."))).Cuttings[0]
	if cut.Placed != 5 || time.Since(began) > time.Second {
		t.Errorf("%d placed in %v", cut.Placed, time.Since(began))
	}
}

// Of a sheet without sides nothing can be told.
func TestPiecesOfASheetWithoutSides(t *testing.T) {
	l := ledger.Follow(read(t, stitching, onBoard("Cut out [2 squares of 5 × 4 cm](use:scrap).")))
	if l.Cuttings[0].Unknown == "" {
		t.Error("pieces were laid out on a sheet of unknown sides")
	}
}

// Never more is placed than the area holds, whatever the sizes.
func TestPlacedPiecesNeverExceedTheSheet(t *testing.T) {
	for across := int64(1); across < 12; across++ {
		for along := int64(1); along < 12; along++ {
			text := "Cut out [40 squares of " + quantity.Whole(across).String() + " × " + quantity.Whole(along).String() + " cm](use:felt)."
			cut := ledger.Follow(read(t, stitching, onBoard(text))).Cuttings[0]
			area := int64(cut.Placed) * (across + 1) * (along + 1)
			if area > 2*20*15 {
				t.Errorf("%s: %d placed, %d cm² of 600", text, cut.Placed, area)
			}
			rows := max(20/(across+1)*(15/(along+1)), 20/(along+1)*(15/(across+1)))
			if int64(cut.Placed) < min(40, 2*rows) {
				t.Errorf("%s: %d placed, and plain rows take %d", text, cut.Placed, 2*rows)
			}
		}
	}
}
