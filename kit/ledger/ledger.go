// Package ledger follows the steps of a kit literally, run by run, and keeps
// account of every gram, piece and metre: what was packed, what was taken, moved,
// filled, left and lost, and what is where after each step.
//
// Everything that judges, draws, prints or prices a kit reads the ledger, never
// the prose. The ledger itself judges nothing: where a literal reader would be
// stuck it notes a Snag, and goes on as well as it can, so that one run shows all.
//
// What is reckoned, and how:
//   - an amount in a step is for one run of that step; a packed amount is for the box;
//   - a density turns volume into mass where the maker has given one, never otherwise;
//   - moving part of what a vessel holds moves the same part of everything in it;
//   - emptying a vessel leaves its residue behind, an amount a vessel, once a making;
//   - volumes add up (a model: mixing and dissolving shrink a mixture by a few
//     percent) unless the mixture has a measured density.
package ledger

import (
	"fmt"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// A Ledger is the whole account of one kit.
type Ledger struct {
	Kit *kit.Kit
	// Entries in the order they happen, over all runs.
	Entries []Entry
	// Stages tell what is where after each step of each run, in order.
	Stages []*Stage
	// Balances of all components, in the order of kit.yaml.
	Balances []*Balance
	// Household items used, in the order of kit.yaml.
	Household []*Balance
	// Fillings are the containers filled, a group for each run and making.
	Fillings []*Filling
	// Cuttings are the pieces cut out of sheets, one for each component so cut.
	Cuttings []*Cutting
	// Makings are the mixtures as they left their vessel.
	Makings []*Making
	// Remainders are what vessels still hold at the end of a run.
	Remainders []*Remainder
	// Cleaned is what vessels held when a step cleaned them.
	Cleaned []*Remainder
	// Discarded is what vessels held when a step threw the remainder away.
	Discarded []*Remainder
	// Tools are the tools and vessels the steps use, in order of first use.
	Tools []*ToolUse
	// Snags are the places where a literal reader would be stuck.
	Snags []Snag
}

// Move says what an entry does.
type Move string

const (
	Taken      Move = "taken"      // from a pack into a vessel, container or hand
	UsedUp     Move = "used up"    // from a pack, joining no mixture
	Moved      Move = "moved"      // from vessel to vessel
	Filled     Move = "filled"     // from a vessel into containers
	Placed     Move = "placed"     // an object into containers or a vessel
	LeftOver   Move = "left"       // what is done with a remainder
	WashedOut  Move = "washed out" // residue cleaned away
	Evaporated Move = "evaporated" // lost from a vessel that is warmed
	NotChosen  Move = "not chosen" // stays in the pack here; another customer chooses it
)

// An Entry is one movement of one thing, caused by one operation of one run.
type Entry struct {
	Move      Move
	Run       *kit.Run
	Step      *kit.Step
	Operation *kit.Operation
	// Thing is the key of the component or household item that moved.
	Thing string
	// From and To are keys of components (their pack, or containers), tools or
	// "" for the hand of the customer.
	From, To string
	// Amount is in the dimension that the thing is packed in.
	Amount *Figure
	// Temperature of what it was added to, °C, nil when never said.
	Temperature *Figure
	// Moving is how hot it is itself where it is moved from vessel to vessel, °C, nil when
	// never said.
	Moving *Figure
}

// A Stage is what is where after a step.
type Stage struct {
	Run  *kit.Run
	Step *kit.Step
	// Vessels holding something, in order of first use.
	Vessels []Contents
}

// A Balance is packed against used for one thing, in the dimension of its pack.
type Balance struct {
	Thing     string
	Dimension quantity.Dimension
	// Packed is nil for a household item.
	Packed, Spare *Figure
	// Used is all that the steps take, every "up to" at its upper end.
	Used *Figure
	// Left is Packed − Used.
	Left *Figure
	// Uses are the entries that took from it.
	Uses []Entry
	// LeftSaid is the operation that says what is done with what is left, or nil.
	LeftSaid *kit.Operation
}

// A Filling is a group of equal containers filled in one run. Its Contents are
// of one container; inserts do not count.
type Filling struct {
	Contents
	Run       *kit.Run
	Step      *kit.Step // the step that filled them last
	Operation *kit.Operation
	Container *kit.Component
	Count     int
	// First is the number of the first container of the group in the box, from 1.
	First int
	// Inserts in one container.
	Inserts []PlacedInsert
}

// Numbered names the containers of the group: "Glass jar 1 to 3 (Pine)".
func (l *Filling) Numbered() string {
	name := fmt.Sprintf("%s %d", l.Container, l.First)
	if l.Count > 1 {
		name += fmt.Sprintf(" to %d", l.First+l.Count-1)
	}
	if run := l.Run.Name.Value; run != "" {
		name += " (" + run + ")"
	}
	return name
}

// A PlacedInsert is an insert in one container.
type PlacedInsert struct {
	Component *kit.Component
	Step      *kit.Step
	Operation *kit.Operation
	Count     int
}

// A Making is a mixture as it left its vessel: what limits on shares are held against.
type Making struct {
	Contents
	Run       *kit.Run
	Step      *kit.Step
	Operation *kit.Operation
}

// A Remainder is what a vessel still holds when a run ends, or is cleaned.
type Remainder struct {
	Contents
	Run *kit.Run
	// Residue is what the vessel is expected to keep, nil when not said.
	Residue *Figure
	// Step and Last are where it was last taken from, nil if it never was.
	Step *kit.Step
	Last *kit.Operation
	// UsedLater: a later run still takes from it.
	UsedLater bool
}

// A ToolUse is a tool or vessel that steps name.
type ToolUse struct {
	Tool  string
	Steps []*kit.Step
	// Spans are the places that name it, one a step, in order.
	Spans []source.Span
	// Linked: at least one place is a link, not only a bare word.
	Linked bool
}

// Trouble is the sort of a snag.
type Trouble string

const (
	// Empty: taken, moved or filled from something that holds nothing.
	Empty Trouble = "empty"
	// Short: more was wanted from a vessel than it held.
	Short Trouble = "short"
	// Clings: a fill leaves less in a vessel than what is told to cling to it.
	Clings Trouble = "clings"
	// NoDensity: volume and mass meet, and no density joins them.
	NoDensity Trouble = "no density"
	// OtherKind: an amount of another kind than the thing is packed in.
	OtherKind Trouble = "other kind"
	// NoAmount: a literal reader would not know how much.
	NoAmount Trouble = "no amount"
	// NoVessel: nothing says from or into which vessel.
	NoVessel Trouble = "no vessel"
	// NotEnoughContainers: more containers are wanted than there are.
	NotEnoughContainers Trouble = "not enough containers"
	// Uneven: things do not divide equally over the containers.
	Uneven Trouble = "uneven"
	// NotTheSame: a figure told again differs from its source.
	NotTheSame Trouble = "not the same"
	// PlainOunce: "oz" on a liquid.
	PlainOunce Trouble = "plain ounce"
)

// A Snag is a place where a literal reader would be stuck.
type Snag struct {
	Trouble   Trouble
	Run       *kit.Run
	Step      *kit.Step
	Operation *kit.Operation
	// Thing is the key it is about.
	Thing string
	// Wanted and Had are what the operation asks for and what there was.
	Wanted, Had *Figure
	// Why tells more where the trouble's name is not enough.
	Why string
}

// Balance finds the balance of a component or household item, or nil.
func (l *Ledger) Balance(thing string) *Balance {
	for _, list := range [][]*Balance{l.Balances, l.Household} {
		for _, b := range list {
			if b.Thing == thing {
				return b
			}
		}
	}
	return nil
}

// At gives what is where after a step in a run, or nil.
func (l *Ledger) At(run *kit.Run, step *kit.Step) *Stage {
	for _, stage := range l.Stages {
		if stage.Run == run && stage.Step == step {
			return stage
		}
	}
	return nil
}

// In gives the entries of a step in one run, in order.
func (l *Ledger) In(run *kit.Run, step *kit.Step) []Entry {
	var entries []Entry
	for _, e := range l.Entries {
		if e.Run == run && e.Step == step {
			entries = append(entries, e)
		}
	}
	return entries
}
