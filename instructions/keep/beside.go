package keep

import "strings"

// A Row is a line of one text beside the line of another that it is, or that took its
// place. Lines count from 1; 0 is none.
type Row struct {
	Left, Right         string
	LeftLine, RightLine int
	Same                bool
}

// Beside lays two texts beside each other, line by line.
func Beside(left, right []byte) []Row {
	a, b := linesOf(left), linesOf(right)
	var rows []Row
	i, j := 0, 0
	same := func(to int) {
		for ; i < to; i, j = i+1, j+1 {
			rows = append(rows, Row{bare(a[i]), bare(b[j]), i + 1, j + 1, true})
		}
	}
	for _, h := range changes(a, b) {
		same(h.from)
		for i < h.to || j < h.otherTo {
			var row Row
			if i < h.to {
				row.Left, row.LeftLine = bare(a[i]), i+1
				i++
			}
			if j < h.otherTo {
				row.Right, row.RightLine = bare(b[j]), j+1
				j++
			}
			rows = append(rows, row)
		}
	}
	same(len(a))
	return rows
}

// bare is a line without its line end.
func bare(line []byte) string { return strings.TrimRight(string(line), "\r\n") }
