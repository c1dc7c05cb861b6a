package ledger

import (
	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// Follow follows the method of a kit over all its runs, taking the first of every
// choice and every optional component. It never fails: where the kit is incomplete,
// figures are unknown and snags say why.
func Follow(k *kit.Kit) *Ledger { return FollowChoosing(k, Choosing{}) }

// FollowChoosing does the same with what a customer chooses.
func FollowChoosing(k *kit.Kit, choosing Choosing) *Ledger {
	f := newFollower(k)
	f.choosing = choosing
	for _, f.run = range k.Passes() {
		f.startRun()
		for _, part := range k.Method.Parts {
			if f.run.Follows(part) {
				f.followPart(part)
			}
		}
		f.endRun()
	}
	f.compareToldAgain()
	f.balance()
	return f.ledger
}

// A follower is the reader who does what the steps say, to the letter.
type follower struct {
	ledger    *Ledger
	kit       *kit.Kit
	materials map[string]*material
	vessels   map[string]*vessel
	order     []*vessel // of first use
	shelves   map[string]*shelf
	toolUses  map[string]*ToolUse
	told      []toldAgain
	choosing  Choosing

	part      *kit.Part
	run       *kit.Run
	step      *kit.Step
	operation *kit.Operation
	// warmed are the vessels that this step has warmed already.
	warmed []*vessel
}

// A vessel is a tool or component that holds material while working.
type vessel struct {
	Contents
	name    string
	residue *Figure   // nil when not said
	tool    *kit.Tool // nil for a component
	step    *kit.Step
	last    *kit.Operation // last took from it
	noted   bool           // this making has been noted since something last came in
}

// put adds a portion; what comes in makes it another mixture than the one noted.
func (v *vessel) put(p portion) {
	v.noted = false
	v.add(p)
}

func newFollower(k *kit.Kit) *follower {
	f := &follower{
		ledger: &Ledger{Kit: k}, kit: k,
		materials: map[string]*material{}, vessels: map[string]*vessel{},
		shelves: map[string]*shelf{}, toolUses: map[string]*ToolUse{},
	}
	for _, c := range k.Components {
		f.materials[c.ID] = componentMaterial(c)
		if c.Container != nil {
			f.shelves[c.ID] = &shelf{container: c}
		}
	}
	for _, h := range k.Household {
		f.materials[h.ID] = householdMaterial(h)
	}
	return f
}

func (f *follower) startRun() {
	for _, s := range f.shelves {
		s.startRun(f.allotment(s.container))
	}
}

func (f *follower) endRun() {
	for _, v := range f.order {
		if !v.Empty() {
			f.ledger.Remainders = append(f.ledger.Remainders, f.remainderIn(v))
		}
	}
}

func (f *follower) remainderIn(v *vessel) *Remainder {
	return &Remainder{Contents: v.Contents.copy(), Run: f.run, Residue: v.residue, Step: v.step, Last: v.last}
}

func (f *follower) followPart(part *kit.Part) {
	f.part = part
	for _, f.step = range part.Steps {
		f.noteMentions()
		f.warmed = nil
		for i, operation := range f.step.Operations {
			if operation.Aside {
				continue
			}
			f.do(operation)
			if operation.Kind == kit.Again {
				f.again(f.step.Operations[:i], operation.Phrase.Count)
			}
		}
		f.keepStage()
	}
}

// again does the actions before it in the step as many more times as it says.
func (f *follower) again(before []*kit.Operation, times int) {
	for range times {
		for _, operation := range before {
			if !operation.Aside && operation.Kind != kit.Again {
				f.do(operation)
			}
		}
	}
}

// do follows one operation.
func (f *follower) do(operation *kit.Operation) {
	f.operation = operation
	f.noteVessels(operation)
	if !f.choosing.follows(f.part, operation, f.resolve(operation.Target)) {
		f.passOver()
		return
	}
	switch operation.Kind {
	case kit.Take:
		f.take()
	case kit.Use:
		f.use()
	case kit.Move:
		f.move()
	case kit.Fill:
		f.fill()
	case kit.Place:
		f.place()
	case kit.Left:
		f.left()
	case kit.Clean:
		f.clean()
	case kit.Warm, kit.Cool:
		f.bring()
	case kit.Same:
		f.told = append(f.told, toldAgain{f.run, f.step, operation, len(f.ledger.Entries)})
	}
}

func (f *follower) keepStage() {
	stage := &Stage{Run: f.run, Step: f.step}
	for _, v := range f.order {
		if !v.Empty() {
			stage.Vessels = append(stage.Vessels, v.Contents.copy())
		}
	}
	f.ledger.Stages = append(f.ledger.Stages, stage)
}

// vessel finds or sets up a vessel; nil for a key that names nothing.
func (f *follower) vessel(key string) *vessel {
	key = f.resolve(key)
	if v := f.vessels[key]; v != nil {
		return v
	}
	name, ok := f.kit.Named(key)
	if !ok {
		return nil
	}
	v := &vessel{Contents: Contents{Vessel: key}, name: name.String()}
	v.tool = f.kit.Tool(key)
	if tool := v.tool; tool != nil && tool.Residue.Given() {
		v.residue = Written("residue of "+v.name, tool.Residue.Value, tool.Residue.Span)
	}
	f.vessels[key] = v
	f.order = append(f.order, v)
	return v
}

// resolve gives the component that a role stands for in this run.
func (f *follower) resolve(key string) string {
	if id, ok := f.run.Component(key); ok {
		return id
	}
	return key
}

// worked is the vessel that the operation goes to: ?into=, else ?in=, else the step's.
func (f *follower) worked() string {
	for _, key := range []string{f.operation.Into, f.operation.In, f.step.Vessel} {
		if key != "" {
			return f.resolve(key)
		}
	}
	return ""
}

// source is the vessel that the operation takes from: ?from=, else ?in=, else the step's.
func (f *follower) source() string {
	for _, key := range []string{f.operation.From, f.operation.In, f.step.Vessel} {
		if key != "" {
			return f.resolve(key)
		}
	}
	return ""
}

func (f *follower) snag(trouble Trouble, thing string, wanted, had *Figure, why string) {
	f.ledger.Snags = append(f.ledger.Snags, Snag{
		Trouble: trouble, Run: f.run, Step: f.step, Operation: f.operation,
		Thing: thing, Wanted: wanted, Had: had, Why: why,
	})
}

func (f *follower) enter(move Move, thing, from, to string, amount, temperature *Figure) Entry {
	entry := Entry{
		Move: move, Run: f.run, Step: f.step, Operation: f.operation,
		Thing: thing, From: from, To: to, Amount: amount, Temperature: temperature,
	}
	f.ledger.Entries = append(f.ledger.Entries, entry)
	return entry
}

// place in the method, for the names of figures: "step 2, Pine".
func (f *follower) here() string {
	if f.run.Name.Value == "" {
		return "step " + quantity.Whole(int64(f.step.Number)).String()
	}
	return "step " + quantity.Whole(int64(f.step.Number)).String() + ", " + f.run.Name.Value
}
