package print

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
)

// errOrder says that a file has no table that tells where its objects stand.
var errOrder = errors.New("the sheets can't be read back: their table of objects is missing")

var (
	tableAt   = regexp.MustCompile(`startxref\s+(\d+)\s+%%EOF\s*$`)
	tableLine = regexp.MustCompile(`(?m)^(\d{10}) \d{5} ([nf])\s?$|^(\d+) (\d+)$`)
)

// placed is an object of a file: its number, where it stands, and where that is told.
type placed struct{ number, from, to, told int }

// inOrder puts the objects of a PDF with a cross-reference table (ISO 32000-1, 7.5.4) into
// the order of their numbers: the library writes them as they come out of its maps. The
// length of the file and the place of its table stay.
func inOrder(pdf []byte) ([]byte, error) {
	at := tableAt.FindSubmatch(pdf)
	if at == nil {
		return nil, errOrder
	}
	table, err := strconv.Atoi(string(at[1]))
	if err != nil || table >= len(pdf) || !bytes.HasPrefix(pdf[table:], []byte("xref")) {
		return nil, errOrder
	}
	objects := objectsIn(pdf, table)
	if len(objects) == 0 {
		return nil, errOrder
	}
	slices.SortFunc(objects, func(a, b placed) int { return cmp.Compare(a.from, b.from) })
	for i := range objects {
		objects[i].to = table
		if i+1 < len(objects) {
			objects[i].to = objects[i+1].from
		}
	}
	if objects[len(objects)-1].from >= table {
		return nil, errOrder
	}
	out := append(make([]byte, 0, len(pdf)), pdf[:objects[0].from]...)
	slices.SortFunc(objects, func(a, b placed) int { return cmp.Compare(a.number, b.number) })
	tail := slices.Clone(pdf[table:])
	for _, o := range objects {
		copy(tail[o.told-table:], fmt.Sprintf("%010d", len(out)))
		out = append(out, pdf[o.from:o.to]...)
	}
	return append(out, tail...), nil
}

// objectsIn reads the table; objects that are not in use are left out.
func objectsIn(pdf []byte, table int) []placed {
	end := bytes.Index(pdf[table:], []byte("trailer"))
	if end < 0 {
		return nil
	}
	var objects []placed
	number := 0
	for _, m := range tableLine.FindAllSubmatchIndex(pdf[table:table+end], -1) {
		told := func(group int) string { return string(pdf[table+m[2*group] : table+m[2*group+1]]) }
		if m[6] >= 0 { // a run of entries begins
			number, _ = strconv.Atoi(told(3))
			continue
		}
		if told(2) == "n" {
			from, _ := strconv.Atoi(told(1))
			objects = append(objects, placed{number: number, from: from, told: table + m[2]})
		}
		number++
	}
	return objects
}
