package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var toolNotFree = Rule{
	Name:     "tool-not-free",
	Severity: diag.ShouldFix,
	Sums:     true,
	Title:    "A vessel is used again while something of another mixture is still in it",
	Explanation: `The jug that poured the pine candles pours the orange ones next, and nobody has wiped it:
the second scent carries some of the first. What stays behind is the residue told in
kit.yaml, or what the fills leave.

Told is a thing that gets into a mixture only because the vessel was not cleaned: the
scent or tint of another run, or a part of an earlier mixture of the same run that the
next one does not have. How much of the new mixture that is stands in the sum. Where no
residue is told, only runs with other components in the same role are looked at, and how
much is carried over cannot be told. One base divided over several runs is no finding,
nor is a cup whose contents all go into one pan, nor less than one in a thousand. From
a twentieth of the new mixture on it must be fixed.

Clean the vessel in between with a “clean:” link, or use another. Whether a vessel is
still hot when it is needed again is not looked at.`,
	Check: func(s Subject) []diag.Finding {
		return overRuns(s.Kit, carriedOver(s))
	},
	NotLookedAt: noResidueTold,
}

// noResidueTold names the vessels that are emptied and of which nobody knows what
// stays behind.
func noResidueTold(s Subject) []string {
	var names []string
	for _, tool := range s.Kit.Tools {
		emptied := slices.ContainsFunc(s.Ledger.Makings, func(m *ledger.Making) bool { return m.Vessel == tool.ID })
		if c := (&carrying{Subject: s}); emptied && c.residue(tool.ID) == nil {
			names = append(names, tool.String())
		}
	}
	if len(names) == 0 {
		return nil
	}
	return []string{"no residue is told for " + listed(names)}
}

func carriedOver(s Subject) []perRun {
	c := carrying{Subject: s, held: map[string]holding{}, downstream: downstream(s)}
	for _, action := range actions(s.Ledger) {
		c.follow(action)
	}
	return c.all
}

// notCleanCause groups what a vessel that was not cleaned brings about in a run:
// what is left over at its end counts what it began with.
func notCleanCause(s Subject, run *kit.Run, vessel string) string {
	for _, one := range carriedOver(s) {
		if one.run == run && one.finding.About == vessel {
			return one.finding.Cause
		}
	}
	return ""
}

// negligible is the part of a mixture that carries nothing anybody would notice
// (common practice, no source).
var negligible = quantity.Ratio(1, 1000)

// follow looks at what an action pours out, then moves it.
func (c *carrying) follow(action []ledger.Entry) {
	first := action[0]
	if first.Move == ledger.Moved || first.Move == ledger.Filled {
		c.judge(action)
	}
	c.move(action)
}

// judge looks for what is in a mixture only because its vessel was not clean.
func (c *carrying) judge(action []ledger.Entry) {
	first := action[0]
	h := c.held[first.From]
	if h.refilled == nil || c.Kit.Tool(first.From) == nil || h.refilled.Run != first.Run {
		return
	}
	foreign, from := c.foreign(first, h)
	if len(foreign) > 0 && !c.isWashed(h, from) {
		c.say(first, h, foreign, from)
	}
}

// foreign are the things in a mixture that nothing has put there, in the order of
// kit.yaml, and the run that the first of them comes from.
func (c *carrying) foreign(poured ledger.Entry, h holding) (things []string, from *kit.Run) {
	for _, list := range [][]*ledger.Balance{c.Ledger.Balances, c.Ledger.Household} {
		for _, b := range list {
			run, held := h.stale[b.Thing]
			if !held {
				run, held = h.meant[b.Thing]
			}
			if !held || !c.isForeign(b.Thing, run, poured, h) {
				continue
			}
			things = append(things, b.Thing)
			if from == nil {
				from = run
			}
		}
	}
	return things, from
}

// isForeign: the thing is in the mixture and nothing of this run has put it there.
func (c *carrying) isForeign(thing string, put *kit.Run, e ledger.Entry, h holding) bool {
	_, meant := h.meant[thing]
	switch {
	case put != e.Run:
		return c.isReplaced(thing, put, e.Run) && (h.meant[thing] == nil || h.meant[thing] == put)
	case meant, c.residue(e.From) == nil, c.downstream[place{e.Run, e.To}][thing]:
		return false
	}
	return true
}

// isReplaced: in the later run another component has the role of this one.
func (c *carrying) isReplaced(thing string, put, now *kit.Run) bool {
	for _, b := range put.With {
		other, bound := now.Component(b.Role.Value)
		if b.Component.Value == thing && bound && other != thing {
			return true
		}
	}
	return false
}

func (c *carrying) say(poured ledger.Entry, h holding, foreign []string, from *kit.Run) {
	carried := c.share(poured, h, from)
	if carried.Known() && carried.Value().Less(negligible) {
		return
	}
	vessel := poured.From
	name := c.Kit.Called(vessel)
	finding := diag.Finding{
		Where: amountSpan(h.refilled.Operation), About: vessel, Cause: "not clean " + vessel,
		Found:    inStep(h.refilled.Step) + " puts " + c.Kit.Called(h.refilled.Thing) + " into " + name + ", in which " + c.called(foreign) + c.since(from, poured.Run) + stillLeft(foreign),
		Expected: "a clean vessel, or only what belongs into the new mixture",
		Sum:      c.sum(poured, foreign, carried, c.remainder(h, from)),
	}
	if carried.Known() && quantity.Ratio(1, 20).Cmp(carried.Value()) <= 0 {
		finding.Severity = diag.MustFix
	}
	step := h.refilled.Step
	if h.emptied != nil {
		step = h.emptied.Step
		finding.Also = []diag.Place{{Where: amountSpan(h.emptied.Operation), Note: "emptied here and not cleaned, " + lineName(c.Kit, h.emptied.Run, step)}}
	}
	finding.Remedies = diag.Fix(
		"clean it in between, as in [Wipe out "+strings.ToLower(name)+"](clean:"+vessel+"), behind what "+inStep(step)+" pours out of it",
		"use another vessel for one of the two")
	c.all = append(c.all, perRun{poured.Run, finding})
}

func stillLeft(things []string) string {
	if len(things) == 1 {
		return " is still left"
	}
	return " are still left"
}

func (c *carrying) since(from, now *kit.Run) string {
	if from == now || from == nil {
		return ""
	}
	return " of the run " + runName(c.Kit, from)
}

func (c *carrying) called(things []string) string {
	names := make([]string, len(things))
	for i, thing := range things {
		names[i] = c.Kit.Called(thing)
	}
	return listed(names)
}
