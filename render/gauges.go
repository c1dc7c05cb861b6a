package render

import (
	"fmt"
	"math"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/render/figure"
)

// A fillKind is containers that are filled alike.
type fillKind struct {
	filling *ledger.Filling
	shape   outline
	says    string
}

// fillKinds are the sorts of filling in a step whose shape and fill are known.
func (a *assembly) fillKinds(step *kit.Step) []fillKind {
	type alike struct {
		container string
		level     float64
		says      string
	}
	var kinds []fillKind
	seen := map[alike]bool{}
	for _, f := range a.ledger.Fillings {
		shape, ok := drawnShape(f)
		if f.Step != step || !ok {
			continue
		}
		says := a.levelSays(f, shape)
		if this := (alike{f.Container.ID, math.Round(shape.level * 1000), says}); !seen[this] {
			seen[this] = true
			kinds = append(kinds, fillKind{f, shape, says})
		}
	}
	return kinds
}

// gauges draws how far the containers of a step are filled, to scale.
func (a *assembly) gauges(step *kit.Step) []string {
	var shown []string
	for i, kind := range a.fillKinds(step) {
		name := fmt.Sprintf("fill-%d-%d", step.Number, i+1)
		caption := ""
		if _, ok := a.trueGauge(kind); ok && !a.options.Form.Short {
			caption = a.say("true-size-at", "title", a.say("fill-gauge"))
		}
		shown = append(shown, a.drawWithCaption(name, a.gauge(kind).Draw(), caption))
	}
	return shown
}

// trueGauge is the gauge of containers at true size, if it fits the page.
func (a *assembly) trueGauge(kind fillKind) (figure.Figure, bool) {
	wide, tall := a.options.Form.textRoom()
	return a.gauge(kind).DrawTrue(a.say("check-bar"), wide, tall-aroundGauge)
}

// aroundGauge is what heading, introduction and caption take on the page of a gauge, in mm.
const aroundGauge = 58

// gaugesValues gives the gauges at true size, those that are alike once.
func gaugesValues(a *assembly) any {
	var shown []string
	seen := map[string]bool{}
	for _, step := range a.kit.Method.Steps() {
		for _, kind := range a.fillKinds(step) {
			drawn, ok := a.trueGauge(kind)
			if !ok || seen[kind.filling.Container.ID+drawn.Text] {
				continue
			}
			seen[kind.filling.Container.ID+drawn.Text] = true
			name := fmt.Sprintf("true-size-%d", len(seen))
			shown = append(shown, a.drawWithCaption(name, drawn, capital(a.say("step", "number", step.Number))+": "+escape(kind.filling.Container.String())))
		}
	}
	if len(shown) == 0 {
		return nil
	}
	return shown
}

// gauge is what there is to draw of one kind of filling.
func (a *assembly) gauge(kind fillKind) figure.Gauge {
	f, shape := kind.filling, kind.shape
	g := figure.Gauge{
		Title:     a.say("from-the-side", "thing", f.Container.String()),
		BaseWidth: shape.base, RimWidth: shape.rim, Height: shape.tall, Level: shape.level,
		RimSays:   a.say("rim", "amount", a.figure(f.Brimful())),
		LevelSays: kind.says,
	}
	if displaced(f).Over(f.Brimful().Value()).Float() < insertShown {
		return g
	}
	for _, placed := range f.Inserts {
		if placed.Component.Insert != nil {
			g.Insert, g.InsertCount, g.InsertSays = sitting(placed), placed.Count, placed.Component.String()
		}
	}
	return g
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
