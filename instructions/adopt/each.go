package adopt

import (
	"strings"

	"tallyfold/kit/rules"
)

// eachOf finds the things of "benzoin, annotta, and gamboge, of each 1 lb.", of "wax and
// spermaceti, each, 1 oz." and of "1 oz. each white wax and spermaceti".
func (r *reading) eachOf(m measured, from, to int) (names [][2]int, each bool) {
	i := r.wordAt(m.start) - 1
	if i >= 0 && r.words[i].Text == "each" && r.words[i].Start >= from && len(strings.Trim(r.text[r.words[i].End:m.start], ", \t")) == 0 {
		end := r.words[i].Start
		if i > 0 && r.words[i-1].Text == "of" {
			end = r.words[i-1].Start
		}
		return r.listBefore(end, from), true
	}
	i = r.wordAt(m.end)
	if i < len(r.words) && r.words[i].Text == "each" && r.joins(m.end, r.words[i].Start) {
		return r.listBehind(r.words[i].End, to), true
	}
	return nil, false
}

// listBefore reads "A, B, and C," back to the end of a sentence or another amount.
func (r *reading) listBefore(end, from int) [][2]int {
	at := from
	if cut := strings.LastIndexAny(r.text[from:end], ";:.\n)"); cut >= 0 {
		at = from + cut + 1
	}
	return r.listIn(at, end)
}

func (r *reading) listBehind(at, to int) [][2]int {
	end := to
	if cut := strings.IndexAny(r.text[at:to], ";.\n("); cut >= 0 {
		end = at + cut
	}
	return r.listIn(at, end)
}

// listIn reads the names between commas and "and".
func (r *reading) listIn(at, end int) [][2]int {
	var names [][2]int
	start := at
	piece := func(stop int) {
		first, last := r.wordAt(start), r.wordAt(stop)-1
		name, ok := r.nameIn(start, stop)
		switch {
		case first <= last && r.doing(first) != rules.NoOrder && (first == last || !ok):
			names = nil // "digest 24 hours, strain, and add of A and B"
		case ok && first < last && r.words[first].Text == "add":
			names = [][2]int{name}
		case ok:
			names = append(names, name)
		}
		start = stop
	}
	for i := r.wordAt(at); i < len(r.words) && r.words[i].End <= end; i++ {
		w := r.words[i]
		if comma := strings.LastIndexByte(r.text[start:w.Start], ','); comma >= 0 {
			if strings.TrimSpace(r.text[start:start+comma]) != "" {
				piece(start + comma)
			}
			start = w.Start
		}
		if w.Text == "and" {
			if strings.TrimSpace(r.text[start:w.Start]) != "" {
				piece(w.Start)
			}
			start = w.End
		}
	}
	if start < end && strings.Trim(r.text[start:end], ", \t\n") != "" {
		stop := start + len(strings.TrimRight(r.text[start:end], ", \t\n"))
		piece(stop)
	}
	return names
}
