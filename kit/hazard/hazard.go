// Package hazard finds in each step of a kit what can hurt someone, by the table of the
// handbook, and the caution of the maker's that speaks of it.
//
// It goes by what the steps do (temperatures, tools, what is taken) and, for cautions,
// by words: a caution that speaks of heat answers heat. A link [words](hazard:dust) in
// a caution says which hazard it answers.
package hazard

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/ledger"
	"tallyfold/kit/source"
)

// An Action is one thing done in a step that brings a hazard.
type Action struct {
	Step   *kit.Step
	Hazard handbook.Hazard
	// By names what brings it: a tool, a component, a temperature as it is told.
	By string
	// Component is what brings it, or nil.
	Component *kit.Component
	// Where are the words that do it.
	Where source.Span
	// Caution is the maker's that speaks of it, or nil; Place says where that stands.
	Caution *kit.Caution
	Place   Place
}

// A Place is where the caution of an action stands.
type Place string

const (
	Nowhere   Place = "nowhere"
	Before    Place = "before it, in the step"
	AtPart    Place = "at the head of the part"
	After     Place = "after it, in the step"
	Elsewhere Place = "in another step"
	InWords   Place = "in words.md, on its use"
)

// Answered says whether the customer meets a caution of the maker's before the action.
func (a Action) Answered() bool { return a.Place == Before || a.Place == AtPart || a.Place == InWords }

// In lists the hazardous actions of a kit in the order of its steps, each hazard once a
// step. The language of the kit says by which words tools and cautions are known; in
// one without words (Readable) only materials and temperatures are.
func In(k *kit.Kit, l *ledger.Ledger) []Action {
	f := finder{kit: k, ledger: l, language: base(k.Language.Value)}
	for _, part := range k.Method.Parts {
		f.part, f.onHeat = part, false
		for _, step := range part.Steps {
			f.step = step
			f.heat()
			f.pours()
			f.glass()
			f.unattended()
			f.tools()
			f.materials()
			f.burning()
		}
	}
	return f.found
}

// Open are the actions of a step that no caution of the maker's comes before. The booklet
// warns of them itself, whatever is accepted: a finding can be lived with, the hazard is
// still there.
func Open(actions []Action, step int) []Action {
	var open []Action
	for _, a := range actions {
		if a.Step.Number == step && !a.Answered() {
			open = append(open, a)
		}
	}
	return open
}

// Readable says whether tools and cautions are known by their words in the kit's language.
func Readable(k *kit.Kit) bool {
	hazard, _ := handbook.Find(handbook.Blade)
	return hazard.Answers[base(k.Language.Value)] != nil
}

func base(tag string) string {
	short, _, _ := strings.Cut(tag, "-")
	if short == "" {
		return "en"
	}
	return strings.ToLower(short)
}

type finder struct {
	kit      *kit.Kit
	ledger   *ledger.Ledger
	language string
	part     *kit.Part
	step     *kit.Step
	// onHeat says whether what an earlier step of the part warmed is still on the heat.
	onHeat bool
	found  []Action
}

// add notes an action. A hazard that a step brings more than once is told once, where it is
// met first, under the gravest of its words: a caution that stands before that place stands
// before all of them.
func (f *finder) add(id, by string, component *kit.Component, where source.Span) {
	hazard, known := f.hazard(id)
	if !known {
		return
	}
	if component != nil && hazard.IsStatement() && hazard.Signal != kit.Notice && component.SignalWord.Value == kit.Danger {
		hazard.Signal = kit.Danger // the pack bears the graver word, for a reason of its supplier's
	}
	action := Action{Step: f.step, Hazard: hazard, By: by, Component: component, Where: where, Place: Nowhere}
	at := slices.IndexFunc(f.found, func(a Action) bool { return a.Step == f.step && a.Hazard.ID == id })
	if at < 0 {
		f.answer(&action)
		f.found = append(f.found, action)
		return
	}
	told := &f.found[at]
	if told.Hazard.Signal == kit.Danger {
		action.Hazard.Signal = kit.Danger
	}
	if where.Start < told.Where.Start {
		f.answer(&action)
		*told = action
	}
	told.Hazard.Signal = action.Hazard.Signal
}

// hazard is one of the handbook, or the maker's own.
func (f *finder) hazard(id string) (handbook.Hazard, bool) {
	if hazard, known := handbook.Find(id); known {
		return hazard, true
	}
	for _, own := range f.kit.OwnHazards {
		if own.ID == id {
			return handbook.Hazard{
				ID: id, What: own.String(), Happens: own.Happens.Value, Avoid: own.Avoid.Value, Signal: own.Signal.Value,
				When: "a component with “hazards: " + id + "” is taken", Source: "kit.yaml", Known: "the maker's own",
			}, true
		}
	}
	return handbook.Hazard{}, false
}
