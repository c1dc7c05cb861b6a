package render

import (
	"fmt"
	"math"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/render/figure"
)

// gauges draws how far the containers of a step are filled: once where all of
// them are alike, else each sort with the run it belongs to.
func (a *assembly) gauges(step *kit.Step, passes []*kit.Run) []string {
	type kind struct {
		container string
		level     float64
		says      string
	}
	var shown []string
	seen := map[kind]bool{}
	for _, f := range a.ledger.Fillings {
		if f.Step != step {
			continue
		}
		shape, ok := drawnShape(f)
		if !ok {
			continue
		}
		says := a.levelSays(f, shape)
		this := kind{f.Container.ID, math.Round(shape.level * 1000), says}
		if seen[this] {
			continue
		}
		seen[this] = true
		name := fmt.Sprintf("fill-%d-%d", step.Number, len(seen))
		shown = append(shown, a.draw(name, a.gauge(f, shape, says)))
	}
	return shown
}

func (a *assembly) gauge(f *ledger.Filling, shape outline, says string) figure.Figure {
	g := figure.Gauge{
		Title:     a.say("from-the-side", "thing", f.Container.String()),
		BaseWidth: shape.base, RimWidth: shape.rim, Height: shape.tall, Level: shape.level,
		RimSays:   a.say("rim", "amount", a.figure(f.Brimful())),
		LevelSays: says,
	}
	if displaced(f).Over(f.Brimful().Value()).Float() < insertShown {
		return g.Draw()
	}
	for _, placed := range f.Inserts {
		if placed.Component.Insert != nil {
			g.Insert, g.InsertCount, g.InsertSays = sitting(placed), placed.Count, placed.Component.String()
		}
	}
	return g.Draw()
}

// insertShown is the part of a container that inserts must take up to be drawn:
// a wick or a label would be a speck.
const insertShown = 0.03

// sitting is how an insert is drawn.
func sitting(placed ledger.PlacedInsert) figure.Insert {
	switch placed.Component.Insert.Sits.Value {
	case kit.Floats:
		return figure.FloatingInsert
	case kit.OnTop:
		return figure.TopInsert
	}
	return figure.SunkInsert
}

// levelSays tells what goes in and how high it stands, to a millimetre.
func (a *assembly) levelSays(f *ledger.Filling, shape outline) string {
	amount := f.Mass()
	if told, ok := f.Operation.Phrase.Amount(); ok && told.Dimension == quantity.Volume || !amount.Known() {
		amount = f.Volume()
	}
	height := math.Round(shape.level * shape.tall)
	return a.say("fill-to-here", "amount", a.shown(amount),
		"height", a.show(quantity.FromFloat(height), quantity.Length))
}
