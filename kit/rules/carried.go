package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// A holding is what a vessel holds on purpose, each thing with the run that put it
// there, and what an earlier mixture has left in it.
type holding struct {
	meant, stale map[string]*kit.Run
	emptied      *ledger.Entry // the action that left what is stale
	refilled     *ledger.Entry // the first entry that put something in after that
}

// carrying follows what clings to vessels through the whole ledger.
type carrying struct {
	Subject
	held map[string]holding
	// downstream is what each vessel is meant to hold at some time in a run.
	downstream map[place]map[string]bool
	all        []perRun
}

// A place is a vessel in a run.
type place struct {
	run    *kit.Run
	vessel string
}

// actions parts the entries of a ledger into those of one action each.
func actions(l *ledger.Ledger) [][]ledger.Entry {
	var all [][]ledger.Entry
	for i, e := range l.Entries {
		last := len(all) - 1
		if i > 0 && l.Entries[i-1].Operation == e.Operation && l.Entries[i-1].Run == e.Run && l.Entries[i-1].From == e.From {
			all[last] = append(all[last], e)
			continue
		}
		all = append(all, []ledger.Entry{e})
	}
	return all
}

// downstream follows the entries once, without what clings.
func downstream(s Subject) map[place]map[string]bool {
	meant := map[place]map[string]bool{}
	put := func(run *kit.Run, vessel, thing string) {
		at := place{run, vessel}
		if meant[at] == nil {
			meant[at] = map[string]bool{}
		}
		meant[at][thing] = true
	}
	c := carrying{Subject: s, held: map[string]holding{}}
	for _, action := range actions(s.Ledger) {
		for _, e := range action {
			if _, clings := c.held[e.From].meant[e.Thing]; clings || e.Move == ledger.Taken || e.Move == ledger.Placed {
				put(e.Run, e.To, e.Thing)
			}
		}
		c.move(action)
	}
	return meant
}

// move keeps account of what is meant to be where after an action.
func (c *carrying) move(action []ledger.Entry) {
	first := action[0]
	from := c.held[first.From]
	for _, e := range action {
		run, meant := from.meant[e.Thing]
		if !mixes(c.Kit, e.Thing) || e.To == "" || c.Kit.Tool(e.To) == nil {
			continue
		}
		if e.Move == ledger.Taken || e.Move == ledger.Placed {
			run, meant = e.Run, true
		}
		if meant {
			c.put(e, run)
		}
	}
	if c.Kit.Tool(first.From) == nil || !empties(first.Operation) {
		return
	}
	if first.Move == ledger.WashedOut {
		delete(c.held, first.From)
		return
	}
	if len(from.meant) > 0 {
		c.held[first.From] = holding{stale: from.meant, emptied: &first}
	}
}

func (c *carrying) put(e ledger.Entry, run *kit.Run) {
	h := c.held[e.To]
	if h.meant == nil {
		h.meant = map[string]*kit.Run{}
	}
	if h.refilled == nil && (h.emptied != nil || c.isFromOtherRun(h, e.Run)) {
		h.refilled = &e
	}
	h.meant[e.Thing] = run
	c.held[e.To] = h
}

// isFromOtherRun says whether the vessel still holds what an earlier run put in.
func (c *carrying) isFromOtherRun(h holding, run *kit.Run) bool {
	for _, put := range h.meant {
		if put != run {
			return true
		}
	}
	return false
}

// mixes says whether a thing is part of a mixture: what is counted or cut clings to
// nothing.
func mixes(k *kit.Kit, thing string) bool {
	c := k.Component(thing)
	return c == nil || c.Packed.Value.Dimension == quantity.Mass || c.Packed.Value.Dimension == quantity.Volume
}

// remainder is the mass that was still in the vessel when it was used again.
func (c *carrying) remainder(h holding, from *kit.Run) *ledger.Figure {
	vessel := h.refilled.To
	if from != h.refilled.Run {
		for _, r := range c.Ledger.Remainders {
			if r.Run == from && r.Vessel == vessel {
				return r.Mass()
			}
		}
	}
	residue := c.residue(vessel)
	if residue == nil || from != h.refilled.Run {
		return ledger.Unknown(quantity.Mass, "carried over", "kit.yaml tells no residue of "+c.Kit.Called(vessel))
	}
	if old := c.making(*h.emptied); residue.Dimension == quantity.Volume && old != nil {
		return ledger.Times(quantity.Mass, "residue", residue, old.Density())
	}
	return residue
}

// residue that a vessel keeps: its own, or that of the mixture made in it.
func (c *carrying) residue(vessel string) *ledger.Figure {
	if tool := c.Kit.Tool(vessel); tool != nil && tool.Residue.Given() {
		return ledger.Written("residue of "+tool.String(), tool.Residue.Value, tool.Residue.Span)
	}
	for _, m := range c.Kit.Mixtures {
		if m.MadeIn.Value == vessel && m.Residue.Given() {
			return ledger.Written("residue of "+m.String(), m.Residue.Value, m.Residue.Span)
		}
	}
	return nil
}

// making is the mixture that was poured, as it was at that action.
func (c *carrying) making(poured ledger.Entry) *ledger.Making {
	for _, m := range c.Ledger.Makings {
		if m.Run == poured.Run && m.Step == poured.Step && m.Operation == poured.Operation && m.Vessel == poured.From {
			return m
		}
	}
	return nil
}

// share is the part of the new mixture that is old; unknown where no residue is
// told or a density is missing.
func (c *carrying) share(poured ledger.Entry, h holding, from *kit.Run) *ledger.Figure {
	making := c.making(poured)
	if making == nil {
		return ledger.Unknown(quantity.Share, "carried over", "nothing is told of the new mixture")
	}
	return ledger.Over(quantity.Share, "carried over", c.remainder(h, from), making.Mass())
}

func (c *carrying) sum(poured ledger.Entry, foreign []string, share, remainder *ledger.Figure) []string {
	if !share.Known() {
		return []string{"cannot tell how much is carried over: " + share.Why()}
	}
	making := c.making(poured)
	sum := []string{remainder.Show() + " stays behind ÷ " + making.Mass().Show() + " poured in " + inStep(poured.Step) +
		" = " + percent(share.Value()) + " of the new mixture"}
	for _, thing := range foreign {
		if mass := making.MassOf(thing); mass.Known() && mass.Value().Sign() > 0 {
			sum = append(sum, "of "+c.Kit.Called(thing)+", which does not belong in it: "+mass.Show())
		}
	}
	return sum
}

// cleaning are words by which running text says that something is made clean.
var cleaning = map[string][]string{"en": {"wipe", "wash", "rinse", "clean", "scrub"}}

// isWashed says whether the vessel is cleaned in between: by a link that found
// nothing to wash out, or by running text without one, of which the figures do not
// know, but the customer does.
func (c *carrying) isWashed(h holding, from *kit.Run) bool {
	vessel := h.refilled.To
	names := [][]string{wordsOf(c.Kit.Called(vessel)), wordsOf(strings.ReplaceAll(vessel, "-", " "))}
	for _, step := range c.Kit.Method.Steps() {
		for _, o := range step.Operations {
			if o.Kind == kit.Clean && !o.Aside && vesselNamed(c.Kit, from, o.Target) == vessel && h.isBetween(step, o.Span.Start, from) {
				return true
			}
		}
		text := readStep(step)
		for i, w := range text.words {
			if !slices.Contains(cleaning[language(c.Kit)], w.text) || !h.isBetween(step, text.span(i, i).Start, from) {
				continue
			}
			if text.namesBehind(i, names[0]) || text.namesBehind(i, names[1]) {
				return true
			}
		}
	}
	return false
}

// isBetween says whether a place of the method comes after the vessel was emptied
// and before it was filled again; between two runs either is enough.
func (h holding) isBetween(step *kit.Step, at int, from *kit.Run) bool {
	before := step.Number < h.refilled.Step.Number || step == h.refilled.Step && at < h.refilled.Operation.Span.Start
	if h.emptied == nil {
		return true
	}
	after := step.Number > h.emptied.Step.Number || step == h.emptied.Step && at > h.emptied.Operation.Span.Start
	if from != h.refilled.Run {
		return before || after
	}
	return before && after
}
