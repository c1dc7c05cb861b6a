package render

import (
	"fmt"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/kit/schedule"
	"tallyfold/render/figure"
)

// glanceView is the page with the whole work in order. Strings are Markdown.
type glanceView struct{ Intro, Timeline string }

func glanceValues(a *assembly) any {
	rows := a.timelineRows()
	if len(rows) < 2 {
		return nil
	}
	drawn := figure.Timeline{Title: a.say("glance"), Rows: rows}
	if a.timed() {
		drawn.EndsSays = a.figure(a.plan.Total)
	}
	return glanceView{Intro: a.repeats(), Timeline: a.draw("timeline", drawn.Draw())}
}

// timed says whether every step tells its time. Where one keeps it to itself, no
// clock is shown: it would be too early from there on.
func (a *assembly) timed() bool { return len(a.plan.Untimed) == 0 && a.plan.Total.Known() }

// repeats says which steps are gone through more than once, and for what.
func (a *assembly) repeats() string {
	var told []string
	for _, part := range a.kit.Method.Parts {
		passes := a.passesOfPart(part)
		if len(passes) < 2 || len(part.Steps) == 0 {
			continue
		}
		var names []string
		for _, run := range passes {
			names = append(names, "*"+escape(run.Name.Value)+"*")
		}
		told = append(told, a.say("repeats", "steps", a.stepRange(part.Steps), "runs", strings.Join(names, ", ")))
	}
	return strings.Join(told, " ")
}

// stepRange names some steps: "steps 1 to 6".
func (a *assembly) stepRange(steps []*kit.Step) string {
	first, last := steps[0].Number, steps[len(steps)-1].Number
	if first == last {
		return a.say("step", "number", first)
	}
	return a.say("steps", "first", first, "last", last)
}

// timelineRows tells the plan row by row. Steps that a run goes through again
// are told in one row.
func (a *assembly) timelineRows() []figure.Row {
	var rows []figure.Row
	done := map[*kit.Step]bool{}
	lines := a.plan.Lines
	for at := 0; at < len(lines); {
		upTo := at + 1
		again := done[lines[at].Step]
		for again && upTo < len(lines) && lines[upTo].Run == lines[at].Run && done[lines[upTo].Step] {
			upTo++
		}
		var told []figure.Row
		if again {
			told = []figure.Row{a.againRow(lines[at:upTo], a.endOf(upTo-1))}
		} else {
			told = a.stepRows(lines[at], a.endOf(at))
		}
		if at == 0 || lines[at-1].Run != lines[at].Run {
			told[0].Heading = lines[at].Run.Name.Value
		}
		done[lines[at].Step] = true
		rows = append(rows, told...)
		at = upTo
	}
	return rows
}

// endOf is when a line of the plan is over: when the next begins.
func (a *assembly) endOf(line int) *ledger.Figure {
	if line+1 < len(a.plan.Lines) {
		return a.plan.Lines[line+1].Start
	}
	return a.plan.Total
}

// stepRows tells one step: what it must wait for, the work, its own waiting.
func (a *assembly) stepRows(line schedule.Line, end *ledger.Figure) []figure.Row {
	var rows []figure.Row
	start := line.Start
	add := func(says string, lasts *ledger.Figure, waiting bool) {
		rows = append(rows, figure.Row{
			StartSays: a.clock(start), Says: says, LastsSays: a.lasting(lasts), Minutes: minutes(lasts), Waiting: waiting,
		})
		start = ledger.Plus(quantity.Duration, "", start, lasts)
	}
	held := ledger.Minus("", end, ledger.Plus(quantity.Duration, "", line.Start, line.Work, line.Wait))
	if since := a.waitingSince(line.Step); since != "" && some(held) {
		add(since, held, true)
	}
	says := fmt.Sprintf("%d. %s", line.Step.Number, line.Step.Title)
	switch {
	case some(line.Work), !some(line.Wait) && !some(line.Beside):
		add(says, line.Work, false)
		says = a.say("waiting")
	case !some(line.Wait):
		// Only a wait that runs beside the steps after it: no time goes by here.
		return append(rows, figure.Row{
			StartSays: a.clock(start), Says: says, LastsSays: a.say("meanwhile", "time", a.lasting(line.Beside)), Waiting: true,
		})
	}
	if some(line.Wait) {
		add(says, line.Wait, true)
	}
	return rows
}

// againRow tells steps gone through once more, work and waiting together.
func (a *assembly) againRow(lines []schedule.Line, end *ledger.Figure) figure.Row {
	var steps []*kit.Step
	for _, line := range lines {
		steps = append(steps, line.Step)
	}
	lasts := ledger.Minus("", end, lines[0].Start)
	return figure.Row{
		StartSays: a.clock(lines[0].Start), Says: capital(a.say("again", "steps", a.stepRange(steps))),
		LastsSays: a.lasting(lasts), Minutes: minutes(lasts),
	}
}

// waitingSince tells which step began the wait that this step waits out, or ""
// where it waits for nothing.
func (a *assembly) waitingSince(step *kit.Step) string {
	for _, o := range step.Operations {
		if began := a.waitNamed(o.Target); o.Kind == kit.After && !o.Aside && began != nil {
			return a.say("waiting-since", "number", began.Number)
		}
	}
	return ""
}

// waitNamed is the step in which a named wait begins, or nil.
func (a *assembly) waitNamed(name string) *kit.Step {
	for _, step := range a.kit.Method.Steps() {
		for _, o := range step.Operations {
			if o.Kind == kit.Wait && o.Target == name && name != "" {
				return step
			}
		}
	}
	return nil
}

// clock is the time since the start, or "" where it isn't known.
func (a *assembly) clock(since *ledger.Figure) string {
	switch {
	case !a.timed():
		return ""
	case since.Value().IsZero():
		return a.say("start")
	}
	return a.figure(since)
}

// lasting tells a time with its ends; no time at all is told as nothing.
func (a *assembly) lasting(time *ledger.Figure) string {
	if !some(time) {
		return ""
	}
	low, high := time.Worst()
	if low.Cmp(high) != 0 {
		return a.say("from-to", "low", a.show(low, quantity.Duration), "high", a.show(high, quantity.Duration))
	}
	return a.figure(time)
}

func some(time *ledger.Figure) bool { return time.Known() && time.Value().Sign() > 0 }

func minutes(time *ledger.Figure) float64 {
	if !some(time) {
		return 0
	}
	return time.Value().Float() / 60
}
