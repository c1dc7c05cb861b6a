// Package schedule adds up the time a kit takes: hands-on work and waiting, over
// all its runs, as the steps tell it.
//
// Steps follow one another, and so do waits, unless a named wait is taken up
// again by a later `after`: what stands between the two goes on meanwhile. What a
// step does not time is not guessed; it is listed as untimed.
package schedule

import (
	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// A Plan is the time of a whole kit.
type Plan struct {
	// HandsOn is all work; Total runs from the first step to the last, waits included.
	HandsOn, Total *ledger.Figure
	// Lines tell when each step starts, in order, run by run.
	Lines []Line
	// Untimed are the steps that tell neither work nor wait, each once.
	Untimed []*kit.Step
}

// A Line is one step of one run on the clock.
type Line struct {
	Run  *kit.Run
	Step *kit.Step
	// Start is counted from the beginning of the first run.
	Start *ledger.Figure
	// Work and Wait are what the step itself tells; Beside is the part of its
	// waiting that goes on while later steps are done.
	Work, Wait, Beside *ledger.Figure
}

// Of reckons the plan of a kit.
func Of(k *kit.Kit) Plan {
	c := &clock{now: zero("start"), done: map[string]*ledger.Figure{}, untimed: map[*kit.Step]bool{}}
	for i, run := range k.Passes() {
		c.run, c.later = run, afterwards(k, i)
		for _, part := range k.Method.Parts {
			if !run.Follows(part) {
				continue
			}
			for _, step := range part.Steps {
				c.follow(step)
			}
		}
	}
	for _, end := range c.open {
		c.now = ledger.Larger("total", c.now, end)
	}
	c.plan.HandsOn = ledger.Plus(quantity.Duration, "hands-on", c.work...)
	c.plan.Total = c.now.Called("total")
	return c.plan
}

// A clock stands where the reader is in time.
type clock struct {
	plan    Plan
	run     *kit.Run
	now     *ledger.Figure
	work    []*ledger.Figure
	done    map[string]*ledger.Figure // when a named wait is over
	open    []*ledger.Figure          // ends of waits that ran beside later steps
	later   map[string]bool           // named waits that an `after` still takes up
	untimed map[*kit.Step]bool
}

func (c *clock) follow(step *kit.Step) {
	line := Line{Run: c.run, Step: step, Start: c.now, Work: zero("work"), Wait: zero("wait"), Beside: zero("beside")}
	c.actions(&line, step.Operations)
	c.plan.Lines = append(c.plan.Lines, line)
	if isZero(line.Work) && isZero(line.Wait) && isZero(line.Beside) && !c.untimed[step] {
		c.untimed[step] = true
		c.plan.Untimed = append(c.plan.Untimed, step)
	}
}

func (c *clock) actions(line *Line, operations []*kit.Operation) {
	for i, o := range operations {
		if o.Aside {
			continue
		}
		if o.Kind == kit.Again {
			for range o.Phrase.Count {
				c.actions(line, timed(operations[:i]))
			}
			continue
		}
		c.act(line, o)
	}
}

// timed leaves out `again`, which repeats what stands before it but not itself.
func timed(operations []*kit.Operation) []*kit.Operation {
	var kept []*kit.Operation
	for _, o := range operations {
		if o.Kind != kit.Again {
			kept = append(kept, o)
		}
	}
	return kept
}

func (c *clock) act(line *Line, o *kit.Operation) {
	if o.Kind == kit.After {
		if end := c.done[o.Target]; end != nil {
			c.now = ledger.Larger("after "+o.Target, c.now, end)
		}
		return
	}
	if o.Kind != kit.Work && o.Kind != kit.Wait {
		return
	}
	length := duration(o, line.Step)
	if length == nil {
		return
	}
	switch {
	case o.Kind == kit.Work:
		line.Work = plus(line.Work, length)
		c.work = append(c.work, length)
		c.now = plus(c.now, length)
	case o.Target != "" && c.later[o.Target]:
		line.Beside = plus(line.Beside, length)
		c.done[o.Target] = plus(c.now, length)
		c.open = append(c.open, c.done[o.Target])
	default:
		line.Wait = plus(line.Wait, length)
		c.now = plus(c.now, length)
		if o.Target != "" {
			c.done[o.Target] = c.now
		}
	}
}

// duration is the time a link tells; with "each" it counts once for each.
func duration(o *kit.Operation, step *kit.Step) *ledger.Figure {
	amount, ok := o.Phrase.Amount()
	if !ok || amount.Dimension != quantity.Duration {
		return nil
	}
	name := "step " + quantity.Whole(int64(step.Number)).String()
	length := ledger.Written(name, amount, o.Phrase.AmountSpans[0])
	if o.Phrase.Each && o.Phrase.EachCount > 0 {
		count := ledger.Fixed(quantity.Count, "each", quantity.Whole(int64(o.Phrase.EachCount)))
		length = ledger.Times(quantity.Duration, length.Name, length, count)
	}
	return length
}

// afterwards lists the named waits that an `after` takes up in this run or a later one.
func afterwards(k *kit.Kit, from int) map[string]bool {
	names := map[string]bool{}
	for _, run := range k.Passes()[from:] {
		for _, part := range k.Method.Parts {
			if !run.Follows(part) {
				continue
			}
			for _, step := range part.Steps {
				for _, o := range step.Operations {
					if o.Kind == kit.After && !o.Aside {
						names[o.Target] = true
					}
				}
			}
		}
	}
	return names
}

func zero(name string) *ledger.Figure {
	return ledger.Fixed(quantity.Duration, name, quantity.Number{})
}

func isZero(f *ledger.Figure) bool { return f.Known() && f.Value().IsZero() }

func plus(a, b *ledger.Figure) *ledger.Figure {
	if isZero(a) {
		return b
	}
	return ledger.Plus(quantity.Duration, "", a, b)
}
