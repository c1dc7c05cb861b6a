package render

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// A need is what one run takes of one thing at one place in a step.
type need struct {
	run *kit.Run
	// thing is the key of the component or household item.
	thing string
	// amount is told in the measure it is packed in, other in further ones.
	amount, other string
	counted       bool // amount is a number of things
}

// needsOf gives what operations with the same target take, a need for each run
// they happen in.
func (a *assembly) needsOf(operations []*kit.Operation, passes []*kit.Run) []need {
	return a.needsFor(operations, passes, false)
}

// containersBeside gives the containers that operations take from the box though
// they name something else: who puts a wick into a jar needs the jar too.
func (a *assembly) containersBeside(operations []*kit.Operation, passes []*kit.Run) []need {
	return a.needsFor(operations, passes, true)
}

func (a *assembly) needsFor(operations []*kit.Operation, passes []*kit.Run, beside bool) []need {
	var needs []need
	for _, run := range passes {
		if n, ok := a.needIn(operations, run, beside); ok {
			needs = append(needs, n)
		}
	}
	return needs
}

// needIn adds up what the operations take in one run ("the same five more
// times" is part of it).
func (a *assembly) needIn(operations []*kit.Operation, run *kit.Run, beside bool) (need, bool) {
	n := need{run: run}
	var amounts []*ledger.Figure
	for _, e := range a.ledger.Entries {
		if e.Run == run && fromPack(e) && slices.Contains(operations, e.Operation) && takenBeside(e) == beside {
			n.thing = e.Thing
			amounts = append(amounts, e.Amount)
		}
	}
	switch {
	case len(amounts) == 0 && beside:
		return n, false
	case len(amounts) == 0:
		return a.containersIn(operations, run)
	}
	n.counted = amounts[0].Dimension == quantity.Count
	total := ledger.Plus(amounts[0].Dimension, "", amounts...)
	if beside {
		n.amount = a.shown(total)
		return n, true
	}
	n.amount, n.other = a.measured(operations, n.thing, total)
	if operations[0].Either != "" {
		n.amount = a.say("if-chosen", "amount", n.amount)
	}
	return n, true
}

// takenBeside: the entry takes another thing than the operation names.
func takenBeside(e ledger.Entry) bool {
	target := e.Operation.Target
	if id, ok := e.Run.Component(target); ok {
		target = id
	}
	return e.Thing != target
}

// fromPack: the customer reaches for something new, rather than moving what is
// already in a vessel.
func fromPack(e ledger.Entry) bool {
	switch e.Move {
	case ledger.Taken, ledger.UsedUp, ledger.Placed, ledger.NotChosen:
		return true
	}
	return false
}

// containersIn counts the containers that the operations fill in one run.
func (a *assembly) containersIn(operations []*kit.Operation, run *kit.Run) (need, bool) {
	n, count := need{run: run, counted: true}, 0
	for _, f := range a.ledger.Fillings {
		if f.Run == run && slices.Contains(operations, f.Operation) {
			n.thing = f.Container.ID
			count += f.Count
		}
	}
	n.amount = a.show(quantity.Whole(int64(count)), quantity.Count)
	return n, count > 0
}

// measured tells an amount: first as it is packed, then in the ways that the
// maker tells it or that a density allows. What isn't known is left to the
// step's own words.
func (a *assembly) measured(operations []*kit.Operation, thing string, amount *ledger.Figure) (first, other string) {
	told := toldOnce(operations)
	household := a.kit.HouseholdItem(thing) != nil
	switch {
	case !amount.Known(), told != "" && household && amount.Dimension == quantity.Count:
		return told, ""
	case told != "" && operations[0].Phrase.Amounts[0].Dimension != amount.Dimension:
		return told, a.shown(amount) // what the customer does comes first
	}
	first = a.shown(amount)
	others := toldOtherwise(operations)
	if len(others) == 0 && mustMeasure(operations) {
		others = a.otherMeasures(thing, amount)
	}
	if upTo(operations) {
		first = a.say("up-to", "amount", first)
	}
	return first, strings.Join(withoutRepeats(others, first), ", ")
}

// mustMeasure: an amount is told, so that the customer has to measure it. "All
// of it" and "half of the bag" need no spoon.
func mustMeasure(operations []*kit.Operation) bool {
	for _, o := range operations {
		if o.Phrase.Portion != kit.Exactly {
			return false
		}
	}
	return true
}

// toldOnce gives a single amount in the maker's own words.
func toldOnce(operations []*kit.Operation) string {
	if len(operations) != 1 || operations[0].Phrase.Portion != kit.Exactly || operations[0].Phrase.Each {
		return ""
	}
	return operations[0].Phrase.Amounts[0].Written
}

// toldOtherwise gives the maker's own second telling of a single amount.
func toldOtherwise(operations []*kit.Operation) []string {
	if toldOnce(operations) == "" {
		return nil
	}
	var told []string
	for _, amount := range operations[0].Phrase.Amounts[1:] {
		told = append(told, amount.Written)
	}
	return told
}

func upTo(operations []*kit.Operation) bool {
	for _, o := range operations {
		if told, ok := o.Phrase.Amount(); ok && told.Bound == quantity.UpTo {
			return true
		}
	}
	return false
}

// otherMeasures tells a mass in spoons and cups, a volume in grams and spoons.
func (a *assembly) otherMeasures(thing string, amount *ledger.Figure) []string {
	density := a.density(thing)
	switch {
	case a.measures == inMetric:
		return a.metricMeasures(thing, amount, density)
	case amount.Dimension == quantity.Volume && density != nil && a.kit.HouseholdItem(thing) == nil:
		return []string{a.show(amount.Value().Times(density.Value()), quantity.Mass), a.household(amount.Value())}
	case amount.Dimension == quantity.Volume:
		return []string{a.household(amount.Value())}
	case amount.Dimension == quantity.Mass && density != nil:
		return []string{a.household(amount.Value().Over(density.Value()))}
	}
	return nil
}

// metricMeasures tells a volume in grams too, where it can be weighed.
func (a *assembly) metricMeasures(thing string, amount, density *ledger.Figure) []string {
	if amount.Dimension != quantity.Volume || density == nil || a.kit.HouseholdItem(thing) != nil {
		return nil
	}
	return []string{a.show(amount.Value().Times(density.Value()), quantity.Mass)}
}

// density of a thing in g/mL, nil where the maker gave none, or one so wide that
// a spoon would only seem exact.
func (a *assembly) density(thing string) *ledger.Figure {
	said := kit.Said[quantity.Amount]{}
	if c := a.kit.Component(thing); c != nil {
		said = c.Density
	} else if h := a.kit.HouseholdItem(thing); h != nil {
		said = h.Density
	}
	d := said.Value
	if !said.Given() || d.Nominal.Sign() <= 0 || d.Tolerance().Over(d.Nominal).Float() > householdError {
		return nil
	}
	return ledger.Written("density", d, said.Span)
}

// householdError is how far a spoon or cup may be from what it stands for before
// it isn't told, as a part of it: about the least that a levelled spoon is off (common practice,
// no source).
const householdError = 0.06

// household tells a volume (mL) in spoons and cups, or "" where none comes near.
func (a *assembly) household(volume quantity.Number) string {
	text, off, ok := quantity.HouseholdIn(a.words.Language, volume, a.kit.Kitchen.Value)
	if !ok || off.Abs().Float() > householdError {
		return ""
	}
	return text
}

// withoutRepeats drops what is empty or said already.
func withoutRepeats(texts []string, said string) []string {
	var kept []string
	for _, text := range texts {
		if text != "" && text != said {
			kept = append(kept, text)
		}
	}
	return kept
}
