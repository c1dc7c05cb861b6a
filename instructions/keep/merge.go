package keep

import (
	"bytes"
	"slices"
)

// Merge brings together two texts that both came of base, line by line. clean is false
// where both have changed the same lines, or lines that touch, in different ways; there
// is no text then. Lines that neither has changed keep their bytes.
func Merge(base, mine, theirs []byte) (merged []byte, clean bool) {
	b, m, t := linesOf(base), linesOf(mine), linesOf(theirs)
	ours, others := changes(b, m), changes(b, t)
	var out bytes.Buffer
	at := 0
	for len(ours) > 0 || len(others) > 0 {
		from, to := first(ours, others), 0
		to = from
		// All changes that overlap or touch are looked at together.
		var here, there []hunk
		for grown := true; grown; {
			grown = false
			for len(ours) > 0 && ours[0].from <= to {
				here, to, ours, grown = append(here, ours[0]), max(to, ours[0].to), ours[1:], true
			}
			for len(others) > 0 && others[0].from <= to {
				there, to, others, grown = append(there, others[0]), max(to, others[0].to), others[1:], true
			}
		}
		write(&out, b[at:from])
		at = to
		one, other := changed(b, m, here, from, to), changed(b, t, there, from, to)
		switch {
		case len(there) == 0, slices.EqualFunc(one, other, bytes.Equal):
			write(&out, one)
		case len(here) == 0:
			write(&out, other)
		default:
			return nil, false
		}
	}
	write(&out, b[at:])
	return out.Bytes(), true
}

func first(ours, others []hunk) int {
	switch {
	case len(ours) == 0:
		return others[0].from
	case len(others) == 0:
		return ours[0].from
	}
	return min(ours[0].from, others[0].from)
}

func write(out *bytes.Buffer, lines [][]byte) {
	for _, line := range lines {
		out.Write(line)
	}
}

// changed are lines from to to of base with the hunks in them made.
func changed(base, other [][]byte, hunks []hunk, from, to int) [][]byte {
	var lines [][]byte
	for _, h := range hunks {
		lines = append(lines, base[from:h.from]...)
		lines = append(lines, other[h.otherFrom:h.otherTo]...)
		from = h.to
	}
	return append(lines, base[from:to]...)
}

// linesOf cuts a text into lines, each with its line end.
func linesOf(text []byte) [][]byte { return slices.Collect(bytes.Lines(text)) }

// A hunk is lines from to to of one text that are lines otherFrom to otherTo of another.
type hunk struct{ from, to, otherFrom, otherTo int }

// mostDifferent is how many lines may be taken out and put in before two texts count
// as different altogether: the work grows with its square.
const mostDifferent = 1500

// changes are the hunks in which two texts differ, as few lines as can be (E. W. Myers,
// “An O(ND) Difference Algorithm and Its Variations”, Algorithmica 1, 1986).
func changes(a, b [][]byte) []hunk {
	from := 0
	for from < min(len(a), len(b)) && bytes.Equal(a[from], b[from]) {
		from++
	}
	behind := 0
	for behind < min(len(a), len(b))-from && bytes.Equal(a[len(a)-1-behind], b[len(b)-1-behind]) {
		behind++
	}
	hunks := shortest(a[from:len(a)-behind], b[from:len(b)-behind])
	for i := range hunks {
		h := &hunks[i]
		h.from, h.to, h.otherFrom, h.otherTo = h.from+from, h.to+from, h.otherFrom+from, h.otherTo+from
	}
	return hunks
}

// shortest walks the diagonals of the table of both texts. ends[d][k] is how far down a
// the furthest way with d changes on diagonal k comes.
func shortest(a, b [][]byte) []hunk {
	if len(a) == 0 && len(b) == 0 {
		return nil
	}
	var ends []map[int]int
	furthest := map[int]int{1: 0}
	for d := 0; d <= min(len(a)+len(b), mostDifferent); d++ {
		for k := -d; k <= d; k += 2 {
			x := furthest[k-1] + 1
			if k == -d || k != d && furthest[k-1] < furthest[k+1] {
				x = furthest[k+1]
			}
			for x < len(a) && x-k < len(b) && bytes.Equal(a[x], b[x-k]) {
				x++
			}
			if furthest[k] = x; x >= len(a) && x-k >= len(b) {
				return backwards(ends, len(a), len(b))
			}
		}
		copied := map[int]int{}
		for k := -d; k <= d; k += 2 {
			copied[k] = furthest[k]
		}
		ends = append(ends, copied)
	}
	return []hunk{{0, len(a), 0, len(b)}}
}

// backwards follows the way from the end of both texts to their beginning.
func backwards(ends []map[int]int, x, y int) []hunk {
	var hunks []hunk
	for d := len(ends) - 1; d >= 0; d-- {
		k := x - y
		down, isDown := ends[d][k+1]
		right, isRight := ends[d][k-1]
		previous := k - 1
		if !isRight || isDown && right < down {
			previous = k + 1
		}
		px := right
		if previous == k+1 {
			px = down
		}
		py := px - previous
		// From there one line was taken out or put in, then equal lines followed.
		h := hunk{px, px + 1, py, py}
		if previous == k+1 {
			h = hunk{px, px, py, py + 1}
		}
		if n := len(hunks); n > 0 && hunks[n-1].from == h.to && hunks[n-1].otherFrom == h.otherTo {
			hunks[n-1].from, hunks[n-1].otherFrom = h.from, h.otherFrom
		} else {
			hunks = append(hunks, h)
		}
		x, y = px, py
	}
	slices.Reverse(hunks)
	return hunks
}
