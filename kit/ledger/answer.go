package ledger

import (
	"math"

	"tallyfold/kit/quantity"
)

// Drawings is how many kits are made on paper for the answers, from a fixed seed, so
// that the same kit gives the same answers. With so many, the ends of the likely range
// move by about a fortieth of its width from seed to seed.
const Drawings = 20_000

const seed = 1

// An Answer is one figure told three ways: as written, at its worst, and as likely.
type Answer struct {
	// About is what the figure is of; Sort what kind of answer it is.
	About  string
	Sort   Sort
	Figure *Figure
	// Low and High are the worst case: every written figure at its bad end at once.
	Low, High quantity.Number
	// LikelyLow and LikelyHigh hold 95 of 100 kits between them, in base units.
	LikelyLow, LikelyHigh float64
	// Drawn: the likely range is that of the draws, as the law of propagation does not
	// agree with them here (JCGM 101:2008, 8.1.3).
	Drawn bool
}

// Sort says what an answer is asked for.
type Sort string

const (
	LeftInPack  Sort = "left in the pack"
	InContainer Sort = "in each"
	FreeInside  Sort = "free in each"
	ShareOf     Sort = "share"
	StaysBehind Sort = "stays behind"
)

// coverage is the factor for 95 of 100 of a normal distribution (JCGM 100:2008, G.1).
const coverage = 1.96

// Answers tells three ways every figure that matters and is not exact: what is left in
// each pack, what each container holds and has free, the share of each thing with a
// limit, what stays behind in the vessels.
func (l *Ledger) Answers() []Answer {
	all := l.questions()
	figures := make([]*Figure, len(all))
	for i, a := range all {
		figures[i] = a.Figure
	}
	if len(all) == 0 {
		return nil
	}
	for i, spread := range Draw(figures, Drawings, seed) {
		all[i].decide(spread)
	}
	return all
}

func (l *Ledger) questions() []Answer {
	var all []Answer
	ask := func(sort Sort, about string, f *Figure) {
		if !f.Known() {
			return
		}
		if low, high := f.Worst(); low.Cmp(high) != 0 {
			all = append(all, Answer{About: about, Sort: sort, Figure: f, Low: low, High: high})
		}
	}
	for _, b := range l.Balances {
		ask(LeftInPack, l.Kit.Called(b.Thing), b.Left)
	}
	for _, f := range l.Fillings {
		if f.Empty() {
			continue
		}
		ask(InContainer, f.Numbered(), f.Mass())
		ask(FreeInside, f.Numbered(), f.Free())
		for _, part := range f.Parts() {
			if c := l.Kit.Component(part.Thing); c != nil && len(c.Shares) > 0 {
				ask(ShareOf, c.String()+" in "+f.Numbered(), f.Share(part.Thing))
			}
		}
	}
	for _, r := range l.Remainders {
		about := l.Kit.Called(r.Vessel)
		if name := r.Run.Name.Value; name != "" {
			about += " (" + name + ")"
		}
		ask(StaysBehind, about, r.Mass())
	}
	return all
}

// decide takes the likely range by the law of propagation where the draws bear it out,
// else from the draws: JCGM 101:2008, 8.1, with one significant digit of the standard
// uncertainty as what must agree.
func (a *Answer) decide(drawn Spread) {
	value, u := a.Figure.Value().Float(), a.Figure.Likely()
	low, high := value-coverage*u, value+coverage*u
	allowed := tolerated(u)
	beyond := low < a.Low.Float() || high > a.High.Float() // what cannot be is not likely
	if beyond || math.Abs(low-drawn.Low) > allowed || math.Abs(high-drawn.High) > allowed {
		a.LikelyLow, a.LikelyHigh, a.Drawn = drawn.Low, drawn.High, true
		return
	}
	a.LikelyLow, a.LikelyHigh = low, high
}

// tolerated is half of the last place of u told to one significant digit (JCGM
// 101:2008, 7.9.2).
func tolerated(u float64) float64 {
	if u <= 0 {
		return 0
	}
	return 0.5 * math.Pow(10, math.Floor(math.Log10(u)))
}

// Likely tells the likely range, its ends rounded outwards.
func (a Answer) Likely() string {
	return quantity.ShowRange(quantity.FromFloat(a.LikelyLow), quantity.FromFloat(a.LikelyHigh), a.Figure.Dimension)
}

// Worst tells the ends of the worst case.
func (a Answer) Worst() string { return quantity.ShowRange(a.Low, a.High, a.Figure.Dimension) }

// MayFail says whether there may be less than nothing of it: short, or overfull.
func (a Answer) MayFail() bool {
	return (a.Sort == LeftInPack || a.Sort == FreeInside) && a.Low.Sign() < 0
}

// Sentence says in words what the three answers come to.
func (a Answer) Sentence() string {
	switch a.Sort {
	case LeftInPack:
		return a.enough("is left", "is missing", "runs short")
	case FreeInside:
		return a.enough("is free", "is too much", "overflows")
	}
	if a.Drawn {
		return "19 of 20 kits lie within " + a.Likely() + ", as the draws have it; none goes beyond " + a.Worst()
	}
	return "19 of 20 kits lie within " + a.Likely() + "; none goes beyond " + a.Worst()
}

// enough is for a figure that must not fall below nothing.
func (a Answer) enough(is, isNot, fails string) string {
	show := func(n quantity.Number) string { return quantity.Show(n.Abs(), a.Figure.Dimension) }
	lowest := quantity.FromFloat(a.LikelyLow)
	switch {
	case a.Low.Sign() >= 0:
		return "even with everything at its bad end " + show(a.Low) + " " + is
	case a.Figure.Value().Sign() < 0:
		return "as written " + show(a.Figure.Value()) + " " + isNot
	case lowest.Sign() >= 0:
		return "in 39 of 40 kits at least " + show(lowest) + " " + is + "; with everything at its bad end " + show(a.Low) + " " + isNot
	}
	return "enough as written, but more than 1 kit in 40 " + fails + "; with everything at its bad end " + show(a.Low) + " " + isNot
}

// How says how the likely range was found.
func (a Answer) How() string {
	if a.Drawn {
		return "draws"
	}
	return "propagation"
}
