package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
)

// A drained is a finding on a vessel or pack from which more is wanted than is
// there. Three rules tell such findings, and each of them only one: the one that
// names the cause best.
type drained struct {
	perRun
	how how
}

// how a vessel or pack came to hold too little, and so which rule tells it.
type how int

const (
	ranOut   how = iota // taken-from-empty
	notYet              // used-before-made
	onceMore            // emptied-twice
)

// drainedFindings gives those that one rule tells, over all runs. What comes later from
// the same vessel in a run follows from the first, whichever rule tells it.
func drainedFindings(s Subject, told how) []diag.Finding {
	all := drainedInOrder(s)
	var chain, own []perRun
	for _, one := range all {
		chain = append(chain, one.perRun)
	}
	for i, one := range followChain(chain) {
		if all[i].how == told {
			own = append(own, one)
		}
	}
	return overRuns(s.Kit, own)
}

func drainedInOrder(s Subject) []drained {
	var all []drained
	for _, snag := range s.Ledger.Snags {
		switch {
		case snag.Trouble == ledger.Empty:
			one := emptySnag(s, snag)
			if thing := lifted(s, snag); thing != "" {
				one.finding.Cause = vesselCause(thing) // where it is missing once, it is missing from then on
			}
			all = append(all, one)
		case snag.Trouble == ledger.Short && !isRounding(snag):
			all = append(all, shortSnag(s, snag))
		}
	}
	all = append(all, dryEmptyings(s)...)
	return all
}

// emptySnag tells what was taken from nothing: made only later, emptied before, or
// never filled at all.
func emptySnag(s Subject, snag ledger.Snag) drained {
	if isEmptyPack(s, snag) {
		return drained{perRun{snag.Run, emptyPack(s, snag)}, ranOut}
	}
	p := pastOf(s, moment{snag.Run, snag.Step, snag.Operation}, snag.Thing)
	switch {
	case snag.Why != "":
		return liftedSnag(s, snag)
	case p.isTooEarly():
		return drained{perRun{snag.Run, tooEarly(s, p)}, notYet}
	case p.emptied != nil:
		return drained{perRun{snag.Run, emptiedAgain(s, p)}, onceMore}
	}
	return drained{perRun{snag.Run, emptyAt(s, snag)}, ranOut}
}

// lifted is the thing that was to be lifted out of a vessel, "" where the vessel was
// to be poured.
func lifted(s Subject, snag ledger.Snag) string {
	o := snag.Operation
	if thing := resolved(snag.Run, o.Target); o.Kind == kit.Move && o.From != "" && s.Ledger.Balance(thing) != nil {
		return thing
	}
	return ""
}

// liftedSnag is one thing lifted out of a vessel that does not hold it.
func liftedSnag(s Subject, snag ledger.Snag) drained {
	p := pastOf(s, moment{snag.Run, snag.Step, snag.Operation}, resolved(snag.Run, snag.Operation.From))
	p.onlyThing(snag.Thing)
	if p.isTooEarly() {
		finding := tooEarly(s, p)
		finding.About = snag.Thing
		finding.Found = inStep(snag.Step) + " lifts " + s.Kit.Called(snag.Thing) + " out of " + p.name + ", and it is first put there in " +
			inStep(p.filledLater[0].Step)
		return drained{perRun{snag.Run, finding}, notYet}
	}
	return drained{perRun{snag.Run, emptyAt(s, snag)}, ranOut}
}

// shortSnag is more than a vessel holds; nothing but residue counts as emptied.
func shortSnag(s Subject, snag ledger.Snag) drained {
	p := pastOf(s, moment{snag.Run, snag.Step, snag.Operation}, snag.Thing)
	if p.emptied != nil {
		finding := emptiedAgain(s, p)
		finding.Sum = lines(append(finding.Sum, "wanted: "+snag.Wanted.Show()+", there: "+snag.Had.Show())...)
		return drained{perRun{snag.Run, finding}, onceMore}
	}
	return drained{perRun{snag.Run, shortAt(s, snag)}, ranOut}
}

// dryEmptyings are actions that empty a vessel once more and move nothing: the
// ledger has no snag for them, since a residue may still be there.
func dryEmptyings(s Subject) []drained {
	var all []drained
	for _, run := range s.Kit.Passes() {
		for _, step := range followed(s.Kit, run) {
			for _, o := range step.Operations {
				at := moment{run, step, o}
				if warmed, ok := warmedEmpty(s, at); ok {
					all = append(all, warmed)
				}
				if vessel := at.emptiesDry(s); vessel != "" {
					all = append(all, dryAt(s, at, vessel)...)
				}
			}
		}
	}
	return all
}

// warmedEmpty is what is warmed or cooled by name before it is in the vessel: "Warm
// the wax" a step before the wax is weighed in. A vessel that is warmed itself,
// before anything goes in, is not meant.
func warmedEmpty(s Subject, at moment) (drained, bool) {
	o := at.operation
	if o.Kind != kit.Warm && o.Kind != kit.Cool || o.Aside || o.Target != "" {
		return drained{}, false
	}
	vessel := resolved(at.run, at.step.Vessel)
	if o.In != "" {
		vessel = resolved(at.run, o.In)
	}
	p := pastOf(s, at, vessel)
	if !p.isTooEarly() || !p.namesLater(s.Kit) {
		return drained{}, false
	}
	finding := tooEarly(s, p)
	then := "before " + p.stepThen(s.Kit, p.filledLater[0])
	if p.filledLater[0].Step == at.step {
		then = "before that"
	}
	finding.Found = inStep(at.step) + " brings what is in " + p.name + " to a temperature, and nothing is put into it " + then
	return drained{perRun{at.run, finding}, notYet}, true
}

func dryAt(s Subject, at moment, vessel string) []drained {
	p := pastOf(s, at, vessel)
	switch {
	case p.isTooEarly():
		return []drained{{perRun{at.run, tooEarly(s, p)}, notYet}}
	case p.emptied != nil:
		finding := emptiedAgain(s, p)
		if at.operation.Kind == kit.Left {
			finding.Severity = diag.ShouldFix
		}
		return []drained{{perRun{at.run, finding}, onceMore}}
	}
	return nil
}
