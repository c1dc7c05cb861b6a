package render

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/render/figure"
	"tallyfold/templates"
)

// This file draws single figures of the ledger, for pages that are no booklet.

// A Flow is what goes where in one run, by weight: drawn, and as a table of the same figures.
type Flow struct {
	Figure  figure.Figure
	Streams []Stream
	// Left tells what is not drawn, "" for nothing.
	Left string
}

// A Stream is what goes from one place to another.
type Stream struct{ From, To, Amount string }

// FlowOf draws what goes where in one run, in grams. ok is false where nothing is weighed.
func FlowOf(k *kit.Kit, l *ledger.Ledger, run *kit.Run) (flow Flow, ok bool) {
	g := &gathering{kit: k, numbers: map[string]int{}, packs: map[int]bool{}}
	for _, e := range l.Entries {
		if e.Run == run {
			g.add(e)
		}
	}
	if len(g.streams) == 0 {
		return Flow{}, false
	}
	g.stayBehind()
	drawn := figure.Flow{Title: strings.TrimSpace("From packs to pieces " + run.Name.Value), Places: g.places()}
	for _, s := range g.streams {
		stream := Stream{g.called[s.from], g.called[s.to], quantity.Show(s.grams, quantity.Mass)}
		drawn.Streams = append(drawn.Streams, figure.Stream{
			From: s.from, To: s.to, Size: s.grams.Float(), Tells: stream.Amount + " from " + stream.From + " to " + stream.To,
		})
		flow.Streams = append(flow.Streams, stream)
	}
	if len(g.unweighed) > 0 {
		flow.Left = "Not drawn, as nothing tells what it weighs: " + strings.Join(g.unweighed, ", ") + "."
	}
	flow.Figure = drawn.Draw()
	return flow, true
}

// A Gauge is how far containers of one sort are filled in one run, drawn to scale.
type Gauge struct {
	Run    *kit.Run
	Step   *kit.Step
	Says   string
	Figure figure.Figure
}

// Gauges draws how far the containers of a kit are filled, those that are alike once; only
// containers whose shape and fill are known.
func Gauges(k *kit.Kit, l *ledger.Ledger, set templates.Set) ([]Gauge, error) {
	words, err := set.Words(templates.SourceLanguage)
	if err != nil {
		return nil, err
	}
	a := &assembly{kit: k, ledger: l, words: words, booklet: &Booklet{templates: set, words: words}}
	var all []Gauge
	for _, step := range k.Method.Steps() {
		for _, kind := range a.fillKinds(step) {
			all = append(all, Gauge{Run: kind.filling.Run, Step: step, Says: kind.says, Figure: a.gauge(kind).Draw()})
		}
	}
	return all, nil
}
