package rules

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

var pouredTooHot = Rule{
	Name:     "poured-too-hot",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "Something meets more heat than it withstands",
	Explanation: `A jar that cracks spills hot wax; a fragrance stirred in too hot fumes, or is lost. The
temperature that the steps last told is held against what container, insert, component
and vessel withstand, and against “add below” when a component is added. Of a range
such as 80–85 °C the upper end counts. “Withstands” includes its figure, “add below”
does not: cooled “below 60 °C” is cool enough for “add below: 60 °C”, cooled “to 60 °C”
is not.

Where something was heated before and no temperature is told at the point that matters,
the limit cannot be checked; that should be fixed. Where nothing is heated, nothing is
asked.

Let it cool first, and say to what temperature; or use something that withstands more.`,
	Check: func(s Subject) []diag.Finding {
		h := heat{Subject: s, reached: map[reachedKey]bool{}}
		for _, run := range s.Kit.Passes() {
			h.containers(run)
			h.added(run)
			h.vessels(run)
			h.contents(run)
		}
		return overRuns(s.Kit, h.all)
	},
	NotLookedAt: heatUntold,
}

// heatUntold names what has no limit to hold heat against, in a kit that heats.
func heatUntold(s Subject) []string {
	if !heats(s.Kit) {
		return []string{"no step warms anything"}
	}
	not := untoldFor("no limit of heat is told for ", s, func(c *kit.Component) bool {
		switch {
		case c.Withstands.Given() || c.AddBelow.Given():
			return false
		case c.Container != nil:
			return !c.Container.Withstands.Given()
		case c.Insert != nil:
			return !c.Insert.Withstands.Given()
		}
		return c.IsMaterial()
	})
	var vessels []string
	for _, tool := range s.Kit.Tools {
		if (tool.Holds.Given() || tool.Residue.Given()) && !tool.Withstands.Given() {
			vessels = append(vessels, tool.String())
		}
	}
	if len(vessels) > 0 {
		not = append(not, "no limit of heat is told for the vessels "+listed(vessels))
	}
	return not
}

// heats says whether any step warms anything.
func heats(k *kit.Kit) bool {
	for _, step := range k.Method.Steps() {
		for _, o := range step.Operations {
			if o.Kind == kit.Warm && !o.Aside {
				return true
			}
		}
	}
	return false
}

// heat gathers what is too hot, once a run and place.
type heat struct {
	Subject
	all     []perRun
	reached map[reachedKey]bool
}

type reachedKey struct {
	run   *kit.Run
	about string
	where source.Span
}

func (h *heat) say(run *kit.Run, finding diag.Finding) {
	key := reachedKey{run, finding.About, finding.Where}
	if !h.reached[key] {
		h.reached[key] = true
		h.all = append(h.all, perRun{run, finding})
	}
}

// containers holds each fill against its container and the inserts in it.
func (h *heat) containers(run *kit.Run) {
	for _, f := range h.Ledger.Fillings {
		if f.Run != run || len(f.Parts()) == 0 {
			continue
		}
		at := amountSpan(f.Operation)
		h.meet(meeting{run, f.Step, f.Temperature, heatLimit(f.Container), f.Container.ID, at, false})
		for _, insert := range f.Inserts {
			h.meet(meeting{run, f.Step, f.Temperature, heatLimit(insert.Component), insert.Component.ID, at, false})
		}
	}
}

// heatLimit is what a component withstands: as container or insert, else as such.
func heatLimit(c *kit.Component) kit.Said[quantity.Amount] {
	switch {
	case c.Container != nil && c.Container.Withstands.Given():
		return c.Container.Withstands
	case c.Insert != nil && c.Insert.Withstands.Given():
		return c.Insert.Withstands
	}
	return c.Withstands
}

// A meeting is a thing that meets a temperature.
type meeting struct {
	run         *kit.Run
	step        *kit.Step
	temperature *ledger.Figure
	limit       kit.Said[quantity.Amount]
	id          string
	at          source.Span
	warmed      bool // by being warmed itself, not by something poured into it
}

// meet holds a temperature against what a thing withstands.
func (h *heat) meet(m meeting) {
	if !m.limit.Given() {
		return
	}
	name := h.Kit.Called(m.id)
	if m.temperature == nil || !m.temperature.Known() {
		if h.heated(m.run, m.step) {
			h.say(m.run, untoldHeat(name, m.id, m.at, m.limit, inStep(m.step)+" fills it"))
		}
		return
	}
	_, hottest := m.temperature.Worst()
	if hottest.Cmp(m.limit.Value.Nominal) <= 0 {
		return
	}
	cooler := "let it cool first, and say so: [below " + degrees(m.limit) + "](cool:)"
	if m.warmed {
		cooler = "warm it [to " + degrees(m.limit) + "](warm:) at most"
	}
	h.say(m.run, diag.Finding{
		Where: m.at, About: m.id, Cause: "heat in " + m.step.ID,
		Found:    name + " meets " + show(hottest, quantity.Temperature) + " in " + inStep(m.step),
		Expected: "at most " + degrees(m.limit) + ", which it withstands",
		Sum:      h.temperatureSum(m.temperature, hottest, m.limit.Value),
		Remedies: diag.Fix(cooler, "use one that withstands "+show(hottest, quantity.Temperature)),
		Also:     h.heatPlaces(m.temperature, m.limit, "withstands "+degrees(m.limit)),
	})
}

// degrees is a limit as it was written, without the words that say it is one.
func degrees(limit kit.Said[quantity.Amount]) string {
	return strings.TrimPrefix(limit.Value.Written, "at most ")
}

func (h *heat) temperatureSum(temperature *ledger.Figure, hottest quantity.Number, limit quantity.Amount) []string {
	told := ""
	if amount, ok := h.toldAt(temperature.Where); ok {
		told = " (told as “" + amount.Written + "”)"
	}
	return []string{show(hottest, quantity.Temperature) + told + " against " + strings.TrimPrefix(limit.Written, "at most ") + ": " +
		show(hottest.Minus(limit.Nominal), quantity.TemperatureDifference) + " too hot"}
}

func (h *heat) heatPlaces(temperature *ledger.Figure, limit kit.Said[quantity.Amount], note string) []diag.Place {
	all := []diag.Place{{Where: limit.Span, Note: note}}
	if temperature.Where.Known() {
		all = append(all, diag.Place{Where: temperature.Where, Note: "the temperature told last"})
	}
	return all
}

// toldAt finds the amount that was told at a place of the method.
func (h *heat) toldAt(at source.Span) (quantity.Amount, bool) {
	for _, step := range h.Kit.Method.Steps() {
		for _, o := range step.Operations {
			for i, span := range o.Phrase.AmountSpans {
				if span == at {
					return o.Phrase.Amounts[i], true
				}
			}
		}
	}
	return quantity.Amount{}, false
}

// heated says whether a step of the run up to this one heats anything.
func (h *heat) heated(run *kit.Run, upTo *kit.Step) bool {
	for _, step := range followed(h.Kit, run) {
		for _, o := range step.Operations {
			if o.Kind == kit.Warm && !o.Aside && step.Number <= upTo.Number {
				return true
			}
		}
	}
	return false
}

func untoldHeat(name, id string, at source.Span, limit kit.Said[quantity.Amount], when string) diag.Finding {
	return diag.Finding{
		Severity: diag.ShouldFix, Where: at, About: id,
		Found:    "cannot check whether " + name + " gets too hot: no temperature is told when " + when,
		Expected: "a temperature, since something was heated before and " + name + " has a limit of " + degrees(limit),
		Remedies: diag.Fix("say to what it has cooled by then: [below " + degrees(limit) + "](cool:)"),
		Also:     []diag.Place{{Where: limit.Span, Note: "the limit, " + degrees(limit)}},
	}
}

// added holds what is added against “add below” and what the thing withstands.
func (h *heat) added(run *kit.Run) {
	limits := map[string]kit.Said[quantity.Amount]{}
	for _, c := range h.Kit.Components {
		limits[c.ID] = c.AddBelow
	}
	for _, item := range h.Kit.Household {
		limits[item.ID] = item.AddBelow
	}
	told, last := map[string]bool{}, map[string]*ledger.Entry{}
	for i, e := range h.Ledger.Entries {
		if e.Run != run || e.To == "" || !limits[e.Thing].Given() || e.Move != ledger.Taken && e.Move != ledger.Moved {
			continue
		}
		last[e.Thing] = &h.Ledger.Entries[i]
		if e.Temperature != nil && e.Temperature.Known() {
			told[e.Thing] = true
			h.addedAt(run, e, limits[e.Thing])
		}
	}
	for thing, e := range last {
		if !told[thing] && h.heated(run, e.Step) {
			h.say(run, untoldHeat(h.Kit.Called(thing), thing, amountSpan(e.Operation), limits[thing], inStep(e.Step)+" adds it"))
		}
	}
}

// addedAt holds one addition against “add below”, which does not include its figure.
func (h *heat) addedAt(run *kit.Run, e ledger.Entry, limit kit.Said[quantity.Amount]) {
	_, hottest := e.Temperature.Worst()
	told, isTold := h.toldAt(e.Temperature.Where)
	isBelow := isTold && told.Bound == quantity.Below
	switch order := hottest.Cmp(limit.Value.Nominal); {
	case order < 0, order == 0 && isBelow:
		return
	}
	name := h.Kit.Called(e.Thing)
	h.say(run, diag.Finding{
		Where: amountSpan(e.Operation), About: e.Thing,
		Found:    name + " is added in " + inStep(e.Step) + " at " + show(hottest, quantity.Temperature),
		Expected: "below " + degrees(limit),
		Sum:      h.temperatureSum(e.Temperature, hottest, limit.Value),
		Remedies: diag.Fix(
			"let it cool before, and say so: [below "+degrees(limit)+"](cool:)",
			"add it in a later step"),
		Also: h.heatPlaces(e.Temperature, limit, "add below "+degrees(limit)),
	})
}

// vessels holds what a vessel is brought to against what it withstands.
func (h *heat) vessels(run *kit.Run) {
	for _, step := range followed(h.Kit, run) {
		for _, o := range step.Operations {
			told, ok := o.Phrase.Amount()
			vessel := h.Kit.Tool(warmed(run, o, step))
			if o.Kind != kit.Warm || o.Aside || !ok || o.Phrase.By || vessel == nil {
				continue
			}
			temperature := ledger.Written("temperature", told, o.Phrase.AmountSpans[0])
			h.meet(meeting{run, step, temperature, vessel.Withstands, vessel.ID, o.Phrase.AmountSpans[0], true})
		}
	}
	for _, m := range h.Ledger.Makings {
		to := h.Kit.Tool(pouredTo(run, m))
		if m.Run == run && m.Temperature != nil && to != nil {
			h.meet(meeting{run, m.Step, m.Temperature, to.Withstands, to.ID, amountSpan(m.Operation), false})
		}
	}
}

// pouredTo is the vessel that a mixture was moved into, "" where it went elsewhere.
func pouredTo(run *kit.Run, m *ledger.Making) string {
	if m.Operation.Kind != kit.Move {
		return ""
	}
	for _, key := range []string{m.Operation.Into, m.Operation.In, m.Step.Vessel} {
		if key != "" {
			return resolved(run, key)
		}
	}
	return ""
}

// warmed is the vessel that a link brings to a temperature.
func warmed(run *kit.Run, o *kit.Operation, step *kit.Step) string {
	for _, key := range []string{o.Target, o.In, step.Vessel} {
		if key != "" {
			return resolved(run, key)
		}
	}
	return ""
}

// contents holds what is in a vessel after each step against the vessel's heat, and the
// vessel itself, which may have been warmed by a difference.
func (h *heat) contents(run *kit.Run) {
	for _, stage := range h.Ledger.Stages {
		for i := range stage.Vessels {
			v := &stage.Vessels[i]
			if stage.Run != run || v.Temperature == nil {
				continue
			}
			at := h.heatSpan(run, stage.Step, v)
			if tool := h.Kit.Tool(v.Vessel); tool != nil && !v.Temperature.Where.Known() {
				h.meet(meeting{run, stage.Step, v.Temperature, tool.Withstands, tool.ID, at, true})
			}
			for _, part := range append(v.Parts(), v.Objects()...) {
				if c := h.Kit.Component(part.Thing); c != nil {
					h.meet(meeting{run, stage.Step, v.Temperature, heatLimit(c), c.ID, at, true})
				}
			}
		}
	}
}

// heatSpan is where the temperature of a vessel was told: where it was reckoned from a
// difference, the last link up to a step that warmed or cooled it.
func (h *heat) heatSpan(run *kit.Run, upTo *kit.Step, v *ledger.Contents) source.Span {
	if v.Temperature.Where.Known() {
		return v.Temperature.Where
	}
	at := upTo.Span
	for _, step := range followed(h.Kit, run) {
		for _, o := range step.Operations {
			changes := (o.Kind == kit.Warm || o.Kind == kit.Cool) && !o.Aside && o.Phrase.By
			if changes && step.Number <= upTo.Number && warmed(run, o, step) == v.Vessel {
				at = amountSpan(o)
			}
		}
	}
	return at
}
