package ledger

import (
	"math"

	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// Worst gives the lowest and the highest value the figure can have when every
// written figure it rests on is at its bad end at once. Each written figure is
// at one end only, however often it was used: the same scale errs the same way.
//
// Which end is the bad one is read from how the figure changes at the nominal
// values (its slope), which is right for every sum, difference, product and
// quotient of positive figures that a ledger reckons with.
func (f *Figure) Worst() (low, high quantity.Number) {
	if !f.Known() {
		return quantity.Number{}, quantity.Number{}
	}
	program := compile(f)
	slopes := program.slopes()
	return program.exactAt(slopes, false), program.exactAt(slopes, true)
}

// Uncertain says whether any written figure behind it has a tolerance.
func (f *Figure) Uncertain() bool {
	low, high := f.Worst()
	return low.Cmp(high) != 0
}

// Likely gives the standard uncertainty of the figure by the law of propagation
// (JCGM 100:2008, 5.1.2): each written figure with ends ±a counts as rectangular,
// a/√3, independent of the others. A skewed pair of ends counts with half its width.
func (f *Figure) Likely() (standard float64) {
	if !f.Known() {
		return 0
	}
	program := compile(f)
	var squares float64
	for i, slope := range program.slopes() {
		if program.nodes[i].how == written {
			u := program.nodes[i].halfWidth() / math.Sqrt(3)
			squares += slope * slope * u * u
		}
	}
	return math.Sqrt(squares)
}

func (f *Figure) halfWidth() float64 { return f.high.Minus(f.low).Float() / 2 }

// A program is a figure laid out flat: every figure it rests on comes before it,
// once. It can be evaluated again at other values of what was written.
type program struct {
	nodes []*Figure
	args  [][]int
}

func compile(last *Figure) *program {
	p := &program{}
	p.add(last, newSeen())
	return p
}

// seen remembers which figures have been laid down, and where. What a maker wrote at
// one place is one quantity wherever it is used: the same scale, spoon or pack errs
// the same way each time.
type seen struct {
	figures map[*Figure]int
	places  map[source.Span]*Figure
}

func newSeen() *seen {
	return &seen{map[*Figure]int{}, map[source.Span]*Figure{}}
}

// the gives the one figure that stands for f.
func (s *seen) the(f *Figure) *Figure {
	if f.how != written || !f.Where.Known() {
		return f
	}
	first, ok := s.places[f.Where]
	if !ok {
		s.places[f.Where] = f
		return f
	}
	if first.value.Equal(f.value) && first.low.Equal(f.low) && first.high.Equal(f.high) {
		return first
	}
	return f
}

func (p *program) add(f *Figure, seen *seen) int {
	f = seen.the(f)
	if at, ok := seen.figures[f]; ok {
		return at
	}
	args := make([]int, len(f.from))
	for i, from := range f.from {
		args[i] = p.add(from, seen)
	}
	p.nodes = append(p.nodes, f)
	p.args = append(p.args, args)
	seen.figures[f] = len(p.nodes) - 1
	return seen.figures[f]
}

// slopes gives, for every node, how much the last one changes when that node
// changes by one unit and everything it does not rest on stays (reverse sweep).
func (p *program) slopes() []float64 {
	slope := make([]float64, len(p.nodes))
	slope[len(slope)-1] = 1
	for i := len(p.nodes) - 1; i >= 0; i-- {
		node, args := p.nodes[i], p.args[i]
		for n, arg := range args {
			slope[arg] += slope[i] * node.partial(n)
		}
	}
	return slope
}

// partial is the change of a figure with its n-th operand, at the nominal values.
func (f *Figure) partial(n int) float64 {
	at := func(i int) float64 { return f.from[i].value.Float() }
	switch f.how {
	case sum:
		return 1
	case difference:
		return 1 - 2*float64(n)
	case product:
		return at(1 - n)
	case quotient:
		if n == 0 {
			return 1 / at(1)
		}
		return -at(0) / (at(1) * at(1))
	case smaller, larger:
		if f.chosen() == n {
			return 1
		}
	}
	return 0
}

// chosen is which operand of a smaller or larger figure is the result.
func (f *Figure) chosen() int {
	if f.value.Cmp(f.from[0].value) == 0 {
		return 0
	}
	return 1
}

// exactAt evaluates the program exactly with each written figure at the end that
// makes the last one greatest (or least).
func (p *program) exactAt(slopes []float64, greatest bool) quantity.Number {
	values := make([]quantity.Number, len(p.nodes))
	for i, node := range p.nodes {
		if node.how != written {
			values[i] = node.reckon(values, p.args[i])
			if node.short {
				values[i] = values[i].Shortened()
			}
			continue
		}
		values[i] = node.low
		if (slopes[i] > 0) == greatest {
			values[i] = node.high
		}
		if slopes[i] == 0 {
			values[i] = node.value
		}
	}
	return values[len(values)-1]
}

func (f *Figure) reckon(values []quantity.Number, args []int) quantity.Number {
	if f.how == sum {
		var total quantity.Number
		for _, arg := range args {
			total = total.Plus(values[arg])
		}
		return total
	}
	a, b := values[args[0]], values[args[1]]
	switch f.how {
	case difference:
		return a.Minus(b)
	case product:
		return a.Times(b)
	case quotient:
		if b.IsZero() {
			return f.value
		}
		return a.Over(b)
	case smaller:
		return quantity.Smaller(a, b)
	}
	return quantity.Larger(a, b)
}
