package schedule

import (
	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// Between is the time that the steps tell from one action of a run to the end of another,
// which pours: what a pot life is held against. The work told behind the pour in its own
// step is that of pouring, up to the first wait, in which it sets. Waits that go on beside
// other steps do not count. untimed are the steps in between that tell no time: it is then
// at least so long.
func Between(k *kit.Kit, run *kit.Run, from, to *kit.Operation) (took *ledger.Figure, untimed []*kit.Step) {
	later := afterwards(k, 0)
	started, poured := false, false
	var lengths []*ledger.Figure
	for _, step := range stepsOf(k, run) {
		told := false
		for i, o := range step.Operations {
			started = started || o == from
			poured = poured || o == to
			if !started || o.Aside {
				continue
			}
			if poured && o.Kind == kit.Wait {
				break
			}
			for _, length := range lengthsOf(step, i, later) {
				lengths, told = append(lengths, length), true
			}
		}
		if started && !told {
			untimed = append(untimed, step)
		}
		if poured {
			break
		}
	}
	return ledger.Plus(quantity.Duration, "in all", lengths...), untimed
}

func stepsOf(k *kit.Kit, run *kit.Run) []*kit.Step {
	var steps []*kit.Step
	for _, part := range k.Method.Parts {
		if run.Follows(part) {
			steps = append(steps, part.Steps...)
		}
	}
	return steps
}

// lengthsOf gives the times that the i-th operation of a step takes: its own, or those
// of what it does again.
func lengthsOf(step *kit.Step, i int, later map[string]bool) []*ledger.Figure {
	o := step.Operations[i]
	if o.Kind == kit.Again {
		var all []*ledger.Figure
		for range o.Phrase.Count {
			for n, before := range step.Operations[:i] {
				if before.Kind != kit.Again && !before.Aside {
					all = append(all, lengthsOf(step, n, later)...)
				}
			}
		}
		return all
	}
	if o.Kind != kit.Work && (o.Kind != kit.Wait || later[o.Target]) {
		return nil
	}
	if length := duration(o, step); length != nil {
		return []*ledger.Figure{length}
	}
	return nil
}
