package ledger

import (
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"sync"
)

// A Spread is where a figure lies when every written figure behind it falls
// anywhere within its tolerance, all values alike likely (JCGM 101:2008, 6.4.2).
type Spread struct {
	// Mean and Standard are the average and the standard deviation of the draws.
	Mean, Standard float64
	// Low and High hold the middle 95 of 100 draws between them.
	Low, High float64
}

// Draw makes the kit so many times on paper: for each draw every written figure
// is drawn once and used wherever it stands, so that the same scale errs the same
// way each time. The same seed gives the same spreads. Figures must be known.
func Draw(figures []*Figure, draws int, seed uint64) []Spread {
	tape := newTape(figures)
	values := make([][]float64, len(figures))
	for i := range values {
		values[i] = make([]float64, draws)
	}
	// The draws are parted into blocks with a seed each, so that the answer does not
	// depend on how many processors share the work.
	const block = 4096
	shareOut(draws, block, func(starts <-chan int) {
		state := make([]float64, len(tape.codes))
		for start := range starts {
			random := rand.New(rand.NewPCG(seed, uint64(start)))
			for n := start; n < min(start+block, draws); n++ {
				tape.play(state, random)
				for i, at := range tape.results {
					values[i][n] = state[at]
				}
			}
		}
	})
	// Sorting takes longer than drawing, so it is shared as well.
	spreads := make([]Spread, len(figures))
	shareOut(len(values), 1, func(starts <-chan int) {
		for i := range starts {
			spreads[i] = spreadOf(values[i])
		}
	})
	return spreads
}

// shareOut deals the numbers 0, step, 2 × step … below end to as many workers as
// there are processors, and comes back when all are done.
func shareOut(end, step int, worker func(starts <-chan int)) {
	starts := make(chan int)
	var workers sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		workers.Go(func() { worker(starts) })
	}
	for start := 0; start < end; start += step {
		starts <- start
	}
	close(starts)
	workers.Wait()
}

// spreadOf sorts the values in place.
func spreadOf(values []float64) Spread {
	slices.Sort(values)
	var sum, squares float64
	for _, v := range values {
		sum += v
	}
	mean := sum / float64(len(values))
	for _, v := range values {
		squares += (v - mean) * (v - mean)
	}
	at := func(part float64) float64 { return values[int(math.Round(part*float64(len(values)-1)))] }
	return Spread{
		Mean: mean, Standard: math.Sqrt(squares / float64(max(1, len(values)-1))),
		Low: at(0.025), High: at(0.975),
	}
}

// A tape is the reckoning of several figures laid out flat in floating point:
// what a draw plays from beginning to end.
type tape struct {
	codes   []code
	results []int
}

// code is one line of a tape. For a written figure a is the middle and b the half
// width; for a sum, left is added to right; right is -1 for a sum of one.
type code struct {
	how         operation
	left, right int32
	a, b        float64
}

func newTape(figures []*Figure) *tape {
	t := &tape{}
	seen := newSeen()
	for _, f := range figures {
		t.results = append(t.results, t.add(f, seen))
	}
	return t
}

func (t *tape) add(f *Figure, seen *seen) int {
	f = seen.the(f)
	if at, ok := seen.figures[f]; ok {
		return at
	}
	args := make([]int, len(f.from))
	for i, from := range f.from {
		args[i] = t.add(from, seen)
	}
	seen.figures[f] = t.put(f, args)
	return seen.figures[f]
}

// put lays down one figure; a sum of many becomes a chain of sums of two.
func (t *tape) put(f *Figure, args []int) int {
	switch {
	case f.how == written || len(args) == 0:
		middle := f.low.Plus(f.high).Float() / 2
		return t.push(code{how: written, a: middle, b: f.halfWidth()})
	case f.how == sum:
		at := args[0]
		for _, arg := range args[1:] {
			at = t.push(code{how: sum, left: int32(at), right: int32(arg)})
		}
		return at
	}
	return t.push(code{how: f.how, left: int32(args[0]), right: int32(args[1])})
}

func (t *tape) push(c code) int {
	t.codes = append(t.codes, c)
	return len(t.codes) - 1
}

// play reckons all lines once with new draws of what was written.
func (t *tape) play(state []float64, random *rand.Rand) {
	for i := range t.codes {
		c := &t.codes[i]
		switch c.how {
		case written:
			state[i] = c.a
			if c.b != 0 {
				state[i] += c.b * (2*random.Float64() - 1)
			}
		case sum:
			state[i] = state[c.left] + state[c.right]
		case difference:
			state[i] = state[c.left] - state[c.right]
		case product:
			state[i] = state[c.left] * state[c.right]
		case quotient:
			state[i] = state[c.left] / state[c.right]
		case smaller:
			state[i] = min(state[c.left], state[c.right])
		case larger:
			state[i] = max(state[c.left], state[c.right])
		}
	}
}
