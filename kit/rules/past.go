package rules

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
)

// A moment is one operation of one run.
type moment struct {
	run       *kit.Run
	step      *kit.Step
	operation *kit.Operation
}

// A past is what happened to a vessel before a moment, and what fills it after.
type past struct {
	moment
	vessel, name string
	// filled is the last entry before the moment that put something in, nil for none.
	filled *ledger.Entry
	// emptied is the action that emptied the vessel after that, nil for none.
	emptied *ledger.Entry
	// filledLater are the entries of the first later action that puts something in.
	filledLater []ledger.Entry
}

func pastOf(s Subject, at moment, vessel string) past {
	p := past{moment: at, vessel: vessel, name: s.Kit.Called(vessel)}
	for i := range s.Ledger.Entries {
		e := &s.Ledger.Entries[i]
		switch order := at.order(s.Kit, e); {
		case e.To == vessel && e.Move != ledger.LeftOver && order < 0 && !isNothing(e.Amount):
			p.filled, p.emptied = e, nil
		case e.From == vessel && order < 0 && empties(e.Operation):
			p.emptied = firstOf(p.emptied, e)
		case e.To == vessel && e.Move != ledger.LeftOver && order > 0:
			p.addLater(*e)
		}
	}
	if p.filled == nil {
		p.emptied = nil
	}
	return p
}

// firstOf keeps the action that did empty it; a later one found nothing.
func firstOf(known, e *ledger.Entry) *ledger.Entry {
	if known != nil {
		return known
	}
	return e
}

func (p *past) addLater(e ledger.Entry) {
	if len(p.filledLater) == 0 || p.filledLater[0].Operation == e.Operation && p.filledLater[0].Run == e.Run {
		p.filledLater = append(p.filledLater, e)
	}
}

// isTooEarly says whether what fills the vessel comes only later: in this run, where
// nothing did before in it, or in another, where nothing ever did.
func (p *past) isTooEarly() bool {
	if len(p.filledLater) == 0 {
		return false
	}
	if p.filledLater[0].Run == p.run {
		return p.filled == nil || p.filled.Run != p.run
	}
	return p.filled == nil
}

// namesLater says whether the sentence up to the moment names something that is only
// put in later, by a word of its name: "Warm the wax".
func (p *past) namesLater(k *kit.Kit) bool {
	text := readStep(p.step)
	sentence := text.sentenceOf(p.operation)
	for _, e := range p.filledLater {
		name := wordsOf(k.Called(e.Thing))
		for _, w := range text.words {
			before := text.at.Start+w.end <= p.operation.Span.Start
			if before && w.sentence == sentence && slices.Contains(name, singular(w.text)) {
				return true
			}
		}
	}
	return false
}

// stepThen names the step of an entry as seen from the moment: with its run where
// that is another.
func (p *past) stepThen(k *kit.Kit, e ledger.Entry) string {
	if e.Run != p.run {
		return inStep(e.Step) + " of the run " + runName(k, e.Run)
	}
	return inStep(e.Step)
}

// onlyThing leaves what was put in of one thing.
func (p *past) onlyThing(thing string) {
	if p.filled != nil && p.filled.Thing != thing {
		p.filled, p.emptied = nil, nil
	}
	p.filledLater = slices.DeleteFunc(p.filledLater, func(e ledger.Entry) bool { return e.Thing != thing })
}

// order says whether an entry came before the moment (−1), with it (0) or after (1).
func (m moment) order(k *kit.Kit, e *ledger.Entry) int {
	passes := k.Passes()
	if by := slices.Index(passes, e.Run) - slices.Index(passes, m.run); by != 0 {
		return by
	}
	if by := e.Step.Number - m.step.Number; by != 0 {
		return by
	}
	return e.Operation.Span.Start - m.operation.Span.Start
}

// empties says whether the words of an action leave nothing in the vessel but what
// clings to it.
func empties(o *kit.Operation) bool {
	part := o.Phrase.Portion == kit.Exactly || o.Phrase.Portion == kit.FractionOf
	switch o.Kind {
	case kit.Clean:
		return true
	case kit.Left:
		return o.From == "" && (!part || o.Phrase.Portion == kit.Exactly && o.Phrase.About)
	case kit.Move:
		return !part && (o.From == "" || o.Target == "") // else one thing is lifted out
	case kit.Fill:
		return !part || o.Phrase.About
	}
	return false
}

// emptiesDry gives the vessel that the action empties without moving anything out
// of it, "" where it does not. What is cleaned twice is only cleaner, and who throws
// away what is left need not know whether anything is.
func (m moment) emptiesDry(s Subject) string {
	o := m.operation
	if o.Aside || !empties(o) || o.Kind == kit.Clean || o.Kind == kit.Left && !keeps(s.Kit, m.run, o) {
		return ""
	}
	from := ""
	for _, e := range s.Ledger.In(m.run, m.step) {
		switch {
		case e.Operation != o:
		case !isNothing(e.Amount):
			return ""
		default:
			from = e.From
		}
	}
	if from != "" {
		return from
	}
	if vessel := vesselNamed(s.Kit, m.run, o.Target); o.Kind == kit.Left && vessel != "" {
		return vessel
	}
	return "" // a move or fill from nothing at all is a snag of the ledger
}

// keeps says whether what is left is wanted for something, not thrown away.
func keeps(k *kit.Kit, run *kit.Run, left *kit.Operation) bool {
	return left.As == "" || left.As == "kept" || vesselNamed(k, run, left.As) != ""
}

// vesselNamed is the vessel that a name stands for, "" for a thing that is none.
func vesselNamed(k *kit.Kit, run *kit.Run, name string) string {
	if m := k.Mixture(name); m != nil {
		return m.MadeIn.Value
	}
	if k.Tool(resolved(run, name)) != nil {
		return resolved(run, name)
	}
	return ""
}

func isNothing(f *ledger.Figure) bool { return f.Known() && f.Value().IsZero() }
