package ledger

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// toldAgain is a figure told a second time: compared with its source when all
// runs are over, since the text may tell it before it happens.
type toldAgain struct {
	run       *kit.Run
	step      *kit.Step
	operation *kit.Operation
	entries   int // how many entries there were when it was told
}

// compareTellings holds the further tellings of an amount within one link
// ("600 g (1 lb 5 oz)") against what is done.
func (f *follower) compareTellings(m *material, done *Figure) {
	phrase := f.operation.Phrase
	first := 1
	if phrase.Portion != kit.Exactly {
		first = 0
	}
	for i := first; i < len(phrase.Amounts); i++ {
		told := Written("told", phrase.Amounts[i], phrase.AmountSpans[i])
		converted, trouble := m.inPackDimension(told)
		if trouble != "" {
			f.snag(trouble, m.key, told, done, converted.Why())
			continue
		}
		if done.Known() && !Agrees(phrase.Amounts[i], converted, done) {
			f.snag(NotTheSame, m.key, told, done, phrase.Amounts[i].Written)
		}
	}
}

// compareToldAgain settles the `same` links: each must agree with something that
// the run takes of that thing, with all it takes, or with the pack.
func (f *follower) compareToldAgain() {
	for _, t := range f.told {
		f.run, f.step, f.operation = t.run, t.step, t.operation
		m := f.material(t.operation.Target)
		amount, told := t.operation.Phrase.Amount()
		if m == nil || !told {
			continue
		}
		figure := Written("told again", amount, t.operation.Phrase.AmountSpans[0])
		converted, trouble := m.inPackDimension(figure)
		if trouble != "" {
			f.snag(trouble, m.key, figure, nil, converted.Why())
			continue
		}
		if source := f.sourceOf(m, amount, converted); source != nil {
			f.snag(NotTheSame, m.key, figure, source, amount.Written)
		}
	}
}

// sourceOf gives nil when a told figure agrees with one of its sources, else the
// source it should have agreed with: the last taking before it, or the first after.
func (f *follower) sourceOf(m *material, amount quantity.Amount, told *Figure) *Figure {
	var inRun, sources []*Figure
	for _, use := range m.uses {
		if use.Run == f.run {
			inRun = append(inRun, use.Amount)
		}
	}
	sources = append(sources, inRun...)
	sources = append(sources, Plus(m.dimension, "in the run", inRun...))
	if m.packed != nil {
		sources = append(sources, m.packed)
	}
	for _, source := range sources {
		if source.Known() && Agrees(amount, told, source) {
			return nil
		}
	}
	switch {
	case len(m.uses) == 0 || slices.ContainsFunc(inRun, func(f *Figure) bool { return !f.Known() }):
		return nil // nothing to compare it with: another rule tells why
	case len(inRun) > 0:
		return inRun[len(inRun)-1]
	}
	return Fixed(m.dimension, m.name, quantity.Number{})
}

// coarsest is the part of an amount that rounding may take off or put on: 1 kg stands
// for 0.95 kg, and for 550 g no more (common practice, no source).
var coarsest = quantity.Ratio(1, 10)

// Agrees says whether a told amount can stand for a reckoned one: within half of
// the last digit told and a tenth of it all, or within its own tolerance (a spoon of
// powder is a range).
func Agrees(amount quantity.Amount, told, reckoned *Figure) bool {
	if !told.Known() {
		return false
	}
	low, high := told.Worst()
	half := quantity.Smaller(lastDigit(amount).Over(quantity.Whole(2)), amount.Nominal.Abs().Times(coarsest))
	if amount.Household {
		// A spoon is told to the nearest quarter.
		half = amount.Unit.Factor.Over(quantity.Whole(8))
	}
	if told.Dimension != amount.Dimension && amount.Nominal.Sign() > 0 {
		half = half.Times(told.Value()).Over(amount.Nominal)
	}
	value := reckoned.Value()
	return value.Cmp(low.Minus(half)) >= 0 && value.Cmp(high.Plus(half)) <= 0
}

// positions gives the place of each run in the order they are followed.
func (f *follower) positions() map[*kit.Run]int {
	position := map[*kit.Run]int{}
	for _, stage := range f.ledger.Stages {
		if _, ok := position[stage.Run]; !ok {
			position[stage.Run] = len(position)
		}
	}
	return position
}
