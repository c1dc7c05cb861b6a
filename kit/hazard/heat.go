package hazard

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// heat finds what a step warms.
func (f *finder) heat() {
	for _, o := range f.step.Operations {
		if !heats(o) {
			continue
		}
		if tool := f.toolOf(handbook.Microwave); tool != "" {
			f.add(handbook.Microwave, tool, nil, o.Span)
		}
		f.add(handbook.Hot, strings.TrimSpace(o.Text), nil, o.Span)
	}
}

// heats says whether an operation warms something enough to scald, or to nobody knows what.
func heats(o *kit.Operation) bool {
	if o.Kind != kit.Warm || o.Aside {
		return false
	}
	amount, told := o.Phrase.Amount()
	return !told || amount.Dimension != quantity.Temperature || !amount.High.Less(quantity.Whole(handbook.ScaldsAt))
}

// pours finds what goes from vessel to vessel, or into containers, while it is hot enough to
// scald. What is lifted out of something hot drips, and is told as hot: it is not poured.
func (f *finder) pours() {
	for _, e := range f.ledger.Entries {
		hot := hotness(e)
		switch {
		case e.Step != f.step || e.Operation == nil || !scalds(hot):
		case lifts(e):
			f.add(handbook.Hot, hot.Show(), nil, e.Operation.Span)
		default:
			f.add(handbook.HotPour, hot.Show(), nil, e.Operation.Span)
		}
	}
}

// glass finds what is of glass, by its name, and takes something hot; or, the first time in a
// kit, anything else: it breaks when it is knocked, too.
func (f *finder) glass() {
	for _, e := range f.ledger.Entries {
		if e.Step != f.step || e.Operation == nil || e.Operation.Aside || e.Move == ledger.Placed || e.To == "" {
			continue
		}
		into := f.kit.Called(e.To)
		switch hot := hotness(e); {
		case !f.isGlass(into):
		case scalds(hot) && !lifts(e):
			f.add(handbook.HotGlass, into, nil, e.Operation.Span)
		case !slices.ContainsFunc(f.found, func(a Action) bool { return a.Hazard.ID == handbook.Glass || a.Hazard.ID == handbook.HotGlass }):
			f.add(handbook.Glass, into, nil, e.Operation.Span)
		}
	}
}

func scalds(hot *ledger.Figure) bool {
	return hot.Known() && !hot.Value().Less(quantity.Whole(handbook.ScaldsAt))
}

// hotness is how hot that is what goes from one thing into another, °C; of no known
// temperature where it is not liquid or was never warmed.
func hotness(e ledger.Entry) *ledger.Figure {
	switch e.Move {
	case ledger.Moved:
		return e.Moving
	case ledger.Filled:
		return e.Temperature // that of the vessel that it comes from
	}
	return nil
}

// lifts says whether one thing is taken out of a vessel, and not the vessel poured.
func lifts(e ledger.Entry) bool { return e.Move == ledger.Moved && e.Operation.From != "" }

// isGlass says whether something is of glass, by its name.
func (f *finder) isGlass(name string) bool {
	hazard, _ := handbook.Find(handbook.HotGlass)
	return f.is(hazard, name)
}

// unattended finds heat that is on while the customer waits, in a step or in a later one of its
// part: nothing between is poured on, cools or says that the heat is turned off.
func (f *finder) unattended() {
	since := 0
	for _, o := range f.step.Operations {
		switch {
		case o.Aside:
		case heats(o):
			f.onHeat, since = true, o.Span.End-f.step.Body.Start
		case o.Kind == kit.Cool || o.Kind == kit.Fill || o.Kind == kit.Move || o.Kind == kit.Left:
			f.onHeat = false
		case o.Kind == kit.Wait && f.onHeat && waitsLong(o) && !f.turnsOff(since, o.Span.Start-f.step.Body.Start):
			f.add(handbook.Unattended, strings.TrimSpace(o.Text), nil, o.Span)
		}
	}
	if f.turnsOff(since, len(f.step.Body.Text())) {
		f.onHeat = false
	}
}

// turnsOff says whether the step turns the heat off between two places of its text.
func (f *finder) turnsOff(from, to int) bool {
	text := f.step.Body.Text()
	if from < 0 || to > len(text) || from > to {
		return false
	}
	between := strings.ToLower(strings.Join(strings.Fields(withoutLinks(text[from:to])), " "))
	return slices.ContainsFunc(handbook.HeatOff[f.language], func(words string) bool { return strings.Contains(between, words) })
}

// withoutLinks leaves the words of links and takes their targets: "off [the stove](tool:stove)"
// is read as "off the stove".
func withoutLinks(text string) string {
	var out strings.Builder
	for {
		before, rest, found := strings.Cut(text, "](")
		out.WriteString(strings.ReplaceAll(before, "[", ""))
		if !found {
			return out.String()
		}
		_, text, _ = strings.Cut(rest, ")")
	}
}

// waitsLong says whether a wait is so long that people leave the room.
func waitsLong(o *kit.Operation) bool {
	amount, told := o.Phrase.Amount()
	return told && amount.Dimension == quantity.Duration && !amount.High.Less(quantity.Whole(handbook.LeavesAt))
}

// burning finds the candle that the last step leaves behind.
func (f *finder) burning() {
	steps := f.kit.Method.Steps()
	if f.kit.SoldAs.Value == kit.Candle && f.step == steps[len(steps)-1] {
		end := f.step.Body
		end.Start = end.End
		f.add(handbook.Burning, "the finished candle", nil, end)
	}
}
