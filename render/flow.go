package render

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/render/figure"
)

// gathering adds up the entries of a run, from place to place.
type gathering struct {
	kit     *kit.Kit
	numbers map[string]int // of places, by a key
	called  []string
	packs   map[int]bool
	streams []*stream
	// unweighed are the things of which an entry is neither a mass nor made one by a density.
	unweighed []string
}

type stream struct {
	from, to int
	grams    quantity.Number
}

// add counts one entry. What only passes through the hand is no place.
func (g *gathering) add(e ledger.Entry) {
	switch e.Move {
	case ledger.UsedUp, ledger.NotChosen:
		return
	}
	grams, ok := g.mass(e)
	if !ok {
		if name := g.kit.Called(e.Thing); e.Move == ledger.Taken && e.To != "" && e.To != e.Thing && !slices.Contains(g.unweighed, name) {
			g.unweighed = append(g.unweighed, name)
		}
		return
	}
	to := e.To
	if e.Move == ledger.WashedOut || e.Move == ledger.Evaporated {
		to = string(e.Move)
	}
	if to == "" || e.From == "" || grams.Sign() <= 0 {
		return
	}
	key := e.From
	if e.From == e.Thing {
		key = "pack of " + e.From
	}
	from := g.place(key, g.kit.Called(e.From))
	g.packs[from] = e.From == e.Thing
	name := strings.ReplaceAll(to, "-", " ")
	if _, known := g.kit.Named(to); known {
		name = g.kit.Called(to)
	}
	g.pour(from, g.place(to, name), grams)
}

func (g *gathering) place(key, name string) int {
	if number, known := g.numbers[key]; known {
		return number
	}
	g.numbers[key] = len(g.called)
	g.called = append(g.called, name)
	return len(g.called) - 1
}

func (g *gathering) pour(from, to int, grams quantity.Number) {
	if from == to {
		return
	}
	for _, s := range g.streams {
		if s.from == from && s.to == to {
			s.grams = s.grams.Plus(grams)
			return
		}
	}
	g.streams = append(g.streams, &stream{from, to, grams})
}

// mass of an entry in grams; a volume is weighed by the density that the maker gives.
func (g *gathering) mass(e ledger.Entry) (quantity.Number, bool) {
	if !e.Amount.Known() {
		return quantity.Number{}, false
	}
	switch e.Amount.Dimension {
	case quantity.Mass:
		return e.Amount.Value(), true
	case quantity.Volume:
		density := kit.Said[quantity.Amount]{}
		if c := g.kit.Component(e.Thing); c != nil {
			density = c.Density
		} else if h := g.kit.HouseholdItem(e.Thing); h != nil {
			density = h.Density
		}
		return e.Amount.Value().Times(density.Value.Nominal), density.Given()
	}
	return quantity.Number{}, false
}

// stayBehind lets what goes into a place and does not leave it stay there, where some of
// it does leave.
func (g *gathering) stayBehind() {
	leaves, held := map[int]bool{}, map[int]quantity.Number{}
	for _, s := range g.streams {
		leaves[s.from] = true
		held[s.to] = held[s.to].Plus(s.grams)
		held[s.from] = held[s.from].Minus(s.grams)
	}
	for place := range len(g.called) {
		if leaves[place] && !g.packs[place] && held[place].Float() > leastHeld {
			g.pour(place, g.place("stays behind", "stays behind"), held[place])
		}
	}
}

// leastHeld is what may be missing by the rounding of a scale, in grams.
const leastHeld = 0.05

func (g *gathering) places() []figure.Place {
	leaves := map[int]bool{}
	for _, s := range g.streams {
		leaves[s.from] = true
	}
	var places []figure.Place
	for number, name := range g.called {
		places = append(places, figure.Place{Name: name, Begins: g.packs[number], Ends: !leaves[number]})
	}
	return places
}
