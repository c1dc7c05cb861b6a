package render

import (
	"fmt"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/kit/schedule"
	"tallyfold/render/figure"
)

// strip draws how work and waiting follow one another in a step, where there is more
// than one stretch of either; else its facts say it all.
func (a *assembly) strip(step *kit.Step) string {
	for _, line := range a.plan.Lines {
		if line.Step != step {
			continue
		}
		stretches := a.stretches(line)
		if len(stretches) < 2 {
			return ""
		}
		drawn := figure.Strip{Title: a.say("time-of-step", "number", step.Number), Stretches: stretches}.Draw()
		return a.draw(fmt.Sprintf("time-%d", step.Number), drawn)
	}
	return ""
}

// A stretch is a part of a step: work, a wait, or a wait beside the steps after it.
type stretch struct {
	kind  kit.Kind
	lasts *ledger.Figure
	later bool
}

// stretches are told in the order of the text, if what its links tell adds up to the
// plan: a repetition or a time told in another way is not seen there. Else work comes
// first and waiting after it.
func (a *assembly) stretches(line schedule.Line) []figure.Stretch {
	told := inOrder(line)
	if !addsUp(told, kit.Work, line.Work) || !addsUp(told, kit.Wait, ledger.Plus(quantity.Duration, "", line.Wait, line.Beside)) {
		told = []stretch{{kit.Work, line.Work, false}, {kit.Wait, line.Wait, false}, {kit.Wait, line.Beside, true}}
	}
	var all []figure.Stretch
	for _, part := range told {
		if !some(part.lasts) {
			continue
		}
		drawn := figure.Stretch{Says: a.lasting(part.lasts), Minutes: minutes(part.lasts), Waiting: part.kind == kit.Wait}
		switch {
		case part.later:
			drawn.Says = a.say("meanwhile", "time", drawn.Says)
			drawn.Tells = drawn.Says
		case drawn.Waiting:
			drawn.Says = a.say("wait-of", "time", drawn.Says)
			drawn.Tells = drawn.Says
		default:
			drawn.Tells = a.say("hands-on", "time", drawn.Says)
		}
		all = append(all, drawn)
	}
	return all
}

// inOrder gives the stretches as the text tells them, work after work as one.
func inOrder(line schedule.Line) []stretch {
	var all []stretch
	for _, o := range line.Step.Operations {
		amount, ok := o.Phrase.Amount()
		if !ok || o.Aside || o.Kind != kit.Work && o.Kind != kit.Wait {
			continue
		}
		this := stretch{kind: o.Kind, lasts: ledger.Written("", amount, o.TextSpan)}
		this.later = o.Kind == kit.Wait && some(line.Beside) && o.Target != "" && line.Beside.Value().Cmp(this.lasts.Value()) == 0
		if last := len(all) - 1; last >= 0 && all[last].kind == kit.Work && this.kind == kit.Work {
			all[last].lasts = ledger.Plus(quantity.Duration, "", all[last].lasts, this.lasts)
			continue
		}
		all = append(all, this)
	}
	return all
}

// addsUp compares the stretches of a kind with what the plan has.
func addsUp(told []stretch, kind kit.Kind, planned *ledger.Figure) bool {
	var lasts []*ledger.Figure
	for _, part := range told {
		if part.kind == kind {
			lasts = append(lasts, part.lasts)
		}
	}
	if !some(planned) || len(lasts) == 0 {
		return !some(planned) && len(lasts) == 0
	}
	sum := ledger.Plus(quantity.Duration, "", lasts...)
	return sum.Known() && sum.Value().Cmp(planned.Value()) == 0
}
