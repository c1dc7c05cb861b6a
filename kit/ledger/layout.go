package ledger

import (
	"cmp"
	"math/rand/v2"
	"slices"

	"tallyfold/kit/quantity"
)

// This file looks for a way to lay pieces out on sheets, so that areas do not only
// add up. What it finds can be cut; where it finds no way, there may still be one:
// the question is too hard to be settled for every set of pieces, so findings say
// "no way was found".

// A rectangle in thousandths of a millimetre.
type rectangle struct{ across, along int64 }

func rectangleOf(across, along quantity.Number) rectangle {
	thousandths := func(n quantity.Number) int64 { return n.Times(quantity.Whole(1000)).Int() }
	return rectangle{thousandths(across), thousandths(along)}
}

// mostLaidOut is how many pieces are laid out at most: the work grows with its square.
const mostLaidOut = 2000

// layOut gives how many of the pieces find a place.
func layOut(c *Cutting) int {
	var pieces []rectangle
	alike := true
	for _, p := range c.Pieces {
		for range p.Count {
			pieces = append(pieces, rectangleOf(p.Across, p.Along))
			alike = alike && pieces[0] == pieces[len(pieces)-1]
		}
	}
	sheet := rectangleOf(c.Across, c.Along)
	if alike && len(pieces) > 0 {
		blocks := blockCounter{piece: pieces[0], known: map[rectangle]int{}}
		return min(len(pieces), c.Sheets*blocks.most(sheet))
	}
	return bestOf(pieces, sheet, c.Sheets)
}

// shuffles is how many further orders are tried, turned by chance, where the plain
// ones leave a piece over; the chance has a fixed seed.
const shuffles = 400

func bestOf(pieces []rectangle, sheet rectangle, sheets int) int {
	best := 0
	try := func(order []rectangle, longFirst bool) bool {
		best = max(best, placeAll(order, sheet, sheets, longFirst))
		return best == len(pieces)
	}
	for _, order := range orders {
		sorted := slices.Clone(pieces)
		slices.SortStableFunc(sorted, order)
		if try(sorted, true) || try(sorted, false) {
			return best
		}
	}
	chance := rand.New(rand.NewPCG(seed, seed))
	mixed := slices.Clone(pieces)
	for range shuffles / (1 + len(pieces)/100) {
		chance.Shuffle(len(mixed), func(i, j int) { mixed[i], mixed[j] = mixed[j], mixed[i] })
		for i, p := range mixed {
			if chance.IntN(2) == 0 {
				mixed[i] = rectangle{p.along, p.across}
			}
		}
		if try(mixed, chance.IntN(2) == 0) {
			return best
		}
	}
	return best
}

// orders are the ways in which pieces are tried, the greatest first.
var orders = []func(a, b rectangle) int{
	func(a, b rectangle) int { return cmp.Compare(b.across*b.along, a.across*a.along) },
	func(a, b rectangle) int { return cmp.Compare(max(b.across, b.along), max(a.across, a.along)) },
	func(a, b rectangle) int { return cmp.Compare(min(b.across, b.along), min(a.across, a.along)) },
	func(a, b rectangle) int { return cmp.Compare(b.across+b.along, a.across+a.along) },
}

// placeAll puts each piece into the free rectangle that it fits most closely, and
// cuts what is left of that in two.
func placeAll(pieces []rectangle, sheet rectangle, sheets int, longFirst bool) int {
	free := slices.Repeat([]rectangle{sheet}, min(sheets, len(pieces)))
	placed := 0
	for _, piece := range pieces {
		at, laid, ok := closest(free, piece)
		if !ok {
			continue
		}
		placed++
		left := rest(free[at], laid, longFirst)
		free = append(slices.Delete(free, at, at+1), left...)
	}
	return placed
}

// closest finds the free rectangle with the least to spare on its nearer side. A
// piece is turned only where it does not fit as it is.
func closest(free []rectangle, piece rectangle) (at int, laid rectangle, ok bool) {
	least := int64(-1)
	for _, way := range []rectangle{piece, {piece.along, piece.across}} {
		for i, f := range free {
			if way.across > f.across || way.along > f.along {
				continue
			}
			if spare := min(f.across-way.across, f.along-way.along); least < 0 || spare < least {
				at, laid, least, ok = i, way, spare, true
			}
		}
		if ok {
			break
		}
	}
	return at, laid, ok
}

// rest is what one piece leaves of a rectangle, cut from edge to edge.
func rest(f, laid rectangle, longFirst bool) []rectangle {
	right, above := f.across-laid.across, f.along-laid.along
	if (right > above) == longFirst {
		return []rectangle{{right, f.along}, {laid.across, above}}
	}
	return []rectangle{{right, laid.along}, {f.across, above}}
}

// A blockCounter counts how many equal pieces a rectangle gives when it is cut from
// edge to edge, each cut a whole number of pieces from the side.
type blockCounter struct {
	piece rectangle
	known map[rectangle]int
}

// mostAcross and mostKnown bound the work; beyond them rows of one direction are counted,
// which for so many pieces is the best there is or very near it.
const (
	mostAcross = 60
	mostKnown  = 20_000
)

func (b *blockCounter) most(r rectangle) int {
	p := b.piece
	if p.across <= 0 || p.along <= 0 {
		return 0
	}
	rows := func(a, l int64) int { return int(r.across/a) * int(r.along/l) }
	best := max(rows(p.across, p.along), rows(p.along, p.across))
	if n, ok := b.known[r]; ok {
		return n
	}
	many := r.across/min(p.across, p.along) > mostAcross || r.along/min(p.across, p.along) > mostAcross
	if best == 0 || many || len(b.known) > mostKnown {
		return best
	}
	b.known[r] = best
	for _, step := range []int64{p.across, p.along} {
		for cut := step; cut <= r.across/2; cut += step {
			best = max(best, b.most(rectangle{cut, r.along})+b.most(rectangle{r.across - cut, r.along}))
		}
		for cut := step; cut <= r.along/2; cut += step {
			best = max(best, b.most(rectangle{r.across, cut})+b.most(rectangle{r.across, r.along - cut}))
		}
	}
	b.known[r] = best
	return best
}
