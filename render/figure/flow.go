package figure

import (
	"cmp"
	"math"
	"slices"
)

// A Flow shows what goes where, from left to right: every stream is as broad as it is
// large.
type Flow struct {
	Title   string
	Places  []Place
	Streams []Stream
}

// A Place is where streams begin, meet or end.
type Place struct {
	Name string
	// Begins stands at the left, Ends at the right; others between them.
	Begins, Ends bool
}

// A Stream goes from one place to another, by their numbers. Tells is for the text
// alternative ("Wax, into the jug, 550 g").
type Stream struct {
	From, To int
	Size     float64
	Tells    string
}

const (
	flowLeft  = 112.0 // names of what begins stand left of it
	flowRight = 236.0 // names of what ends stand right of it
	flowTall  = 150.0
	flowGap   = 5.0
	placeWide = 6.0
	placeTall = 10.5 // room for a name
	hairline  = 0.5
)

// spot is where a place is drawn, and how far its streams have filled it on each side.
type spot struct{ x, y, tall, in, out float64 }

// Draw gives the figure.
func (f Flow) Draw() Figure {
	var p pen
	spots, height := f.spots()
	for _, i := range f.inOrder(spots) {
		stream := f.Streams[i]
		from, to := &spots[stream.From], &spots[stream.To]
		broad := math.Max(stream.Size*f.scale(), hairline)
		p.area("stream", band(from.x+placeWide, from.y+from.out, to.x, to.y+to.in, broad))
		from.out += broad
		to.in += broad
	}
	var told []string
	for i, place := range f.Places {
		s := spots[i]
		p.rect("hands", s.x, s.y, placeWide, math.Max(s.tall, hairline*2), 0)
		p.placeLabel(place, s)
		told = append(told, place.Name)
	}
	for _, stream := range f.Streams {
		told = append(told, stream.Tells)
	}
	return Figure{Kind: "flow", Width: plateWidth, Height: height, Title: f.Title, Text: sentence(told...), shapes: p.out.String()}
}

func (p *pen) placeLabel(place Place, s spot) {
	middle := s.y + s.tall/2 + 3.2
	switch {
	case place.Begins:
		p.text("label", "end", s.x-5, middle, shortened(place.Name))
	case place.Ends:
		p.text("label", "start", s.x+placeWide+5, middle, shortened(place.Name))
	default:
		p.text("group", "middle", s.x+placeWide/2, s.y-3.5, shortened(place.Name))
	}
}

// longestName is about what finds room beside a place.
const longestName = 23

func shortened(name string) string {
	if letters := []rune(name); len(letters) > longestName {
		return string(letters[:longestName-1]) + "…"
	}
	return name
}

// band is a stream with even breadth, level at both ends.
func band(x1, y1, x2, y2, broad float64) string {
	middle := (x1 + x2) / 2
	return path("M", x1, y1, "C", middle, y1, middle, y2, x2, y2, "L", x2, y2+broad,
		"C", middle, y2+broad, middle, y1+broad, x1, y1+broad, "Z")
}

// size of a place is what goes in, or out where that is more.
func (f Flow) size(place int) float64 {
	in, out := 0.0, 0.0
	for _, stream := range f.Streams {
		if stream.To == place {
			in += stream.Size
		}
		if stream.From == place {
			out += stream.Size
		}
	}
	return math.Max(in, out)
}

// scale is points to the unit: the fullest column fills the height.
func (f Flow) scale() float64 {
	columns := map[int]float64{}
	most := 0.0
	for i, rank := range f.ranks() {
		columns[rank] += f.size(i)
		most = math.Max(most, columns[rank])
	}
	if most == 0 {
		return 0
	}
	return flowTall / most
}

// ranks numbers the columns from the left. Places are in the order in which they are first
// met, so a stream to an earlier one goes back and moves nothing on.
func (f Flow) ranks() []int {
	ranks := make([]int, len(f.Places))
	for range f.Places {
		for _, stream := range f.Streams {
			if !f.Places[stream.To].Ends && (stream.From < stream.To || f.Places[stream.From].Begins) {
				ranks[stream.To] = max(ranks[stream.To], ranks[stream.From]+1)
			}
		}
	}
	last := 1
	for i, place := range f.Places {
		if !place.Ends {
			last = max(last, ranks[i]+1)
		}
	}
	for i, place := range f.Places {
		if place.Ends {
			ranks[i] = last
		}
	}
	return ranks
}

// spots lays the places out, column by column, each column in the middle of the height.
func (f Flow) spots() ([]spot, float64) {
	ranks, scale := f.ranks(), f.scale()
	spots := make([]spot, len(f.Places))
	talls := map[int]float64{}
	last := 1
	for i := range f.Places {
		spots[i].tall = f.size(i) * scale
		talls[ranks[i]] += math.Max(spots[i].tall, placeTall) + flowGap
		last = max(last, ranks[i])
	}
	height := 0.0
	for _, tall := range talls {
		height = math.Max(height, tall)
	}
	const head = 14 // for the names above what stands between
	filled := map[int]float64{}
	for i := range f.Places {
		rank := ranks[i]
		room := math.Max(spots[i].tall, placeTall)
		spots[i].x = flowLeft + (flowRight-flowLeft)*float64(rank)/float64(last)
		spots[i].y = head + (height-talls[rank])/2 + filled[rank] + (room-spots[i].tall)/2
		filled[rank] += room + flowGap
	}
	return spots, height + head + 2
}

// inOrder gives the streams from the top down, so that they cross as little as may be.
func (f Flow) inOrder(spots []spot) []int {
	order := make([]int, len(f.Streams))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		x, y := f.Streams[a], f.Streams[b]
		return cmp.Or(cmp.Compare(spots[x.From].y, spots[y.From].y), cmp.Compare(spots[x.To].y, spots[y.To].y))
	})
	return order
}
