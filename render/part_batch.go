package render

import (
	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// batchView is the page on which the customer notes their own batch.
type batchView struct {
	// Columns are the runs, or one for all.
	Columns []string
	Rows    []batchRow
}

// batchRow is a line to fill in, with what the figure should be. Markdown.
type batchRow struct{ Name, Should string }

// mostNotes is how many figures a page of notes has room for beside its lines.
const mostNotes = 9

func batchValues(a *assembly) any {
	view := batchView{Columns: []string{a.say("yours")}}
	if runs := a.runs(); len(runs) > 0 {
		view.Columns = nil
		for _, run := range a.repeatedRuns() {
			view.Columns = append(view.Columns, escape(run.Name.Value))
		}
	}
	rows := append(a.weighed(), a.reached()...)
	rows = append(rows, a.filled()...)
	view.Rows = rows[:min(len(rows), mostNotes)]
	return view
}

// repeatedRuns are the runs that go through a part together with others: they
// are what a batch is compared by.
func (a *assembly) repeatedRuns() []*kit.Run {
	var longest []*kit.Run
	for _, part := range a.kit.Method.Parts {
		if passes := a.passesOfPart(part); len(passes) > len(longest) {
			longest = passes
		}
	}
	return longest
}

// weighed are the materials a run takes by weight or volume.
func (a *assembly) weighed() []batchRow {
	var rows []batchRow
	var steps []int             // of the rows
	taken := map[string][]int{} // rows by the name of the thing
	for _, step := range a.kit.Method.Steps() {
		for _, group := range byTarget(step.Operations) {
			needs := a.needsOf(group, a.passesOf(step))
			if len(needs) == 0 || !sameAmount(needs) || needs[0].amount == "" || !a.mixed(group, needs[0].thing) {
				continue
			}
			name := escape(capital(a.nameInAll(group[0].Target, needs)))
			taken[name] = append(taken[name], len(rows))
			rows = append(rows, batchRow{Name: a.say("taken", "thing", name), Should: escape(needs[0].amount)})
			steps = append(steps, step.Number)
		}
	}
	for name, at := range taken {
		for _, row := range at {
			if len(at) > 1 { // told apart by its step
				rows[row].Name = a.say("taken-at", "thing", name, "number", steps[row])
			}
		}
	}
	return rows
}

// nameInAll is the thing itself where every run takes the same, else its role.
func (a *assembly) nameInAll(target string, needs []need) string {
	if alike(needs) {
		return a.kit.Called(needs[0].thing)
	}
	return a.roleOrName(target)
}

// mixed: taken into a mixture by weight or volume, not used beside it.
func (a *assembly) mixed(group []*kit.Operation, thing string) bool {
	balance := a.ledger.Balance(thing)
	if balance == nil || group[0].Kind != kit.Take {
		return false
	}
	return balance.Dimension == quantity.Mass || balance.Dimension == quantity.Volume
}

// reached are the temperatures the steps ask for.
func (a *assembly) reached() []batchRow {
	var rows []batchRow
	for _, step := range a.kit.Method.Steps() {
		if told := a.temperatures(step); told != "" {
			rows = append(rows, batchRow{Name: a.say("reached", "number", step.Number), Should: told})
		}
	}
	return rows
}

// filled are the containers and what each of them should hold.
func (a *assembly) filled() []batchRow {
	var rows []batchRow
	seen := map[string]bool{}
	for _, f := range a.ledger.Fillings {
		amount := f.Mass()
		if !amount.Known() {
			amount = f.Volume()
		}
		if !amount.Known() || seen[f.Container.ID] || a.differsLater(f) {
			continue
		}
		seen[f.Container.ID] = true
		rows = append(rows, batchRow{Name: a.say("in-each", "thing", escape(a.small(f.Container.String()))), Should: escape(a.shown(amount))})
	}
	return rows
}

// differsLater: not every container of this kind gets the same.
func (a *assembly) differsLater(f *ledger.Filling) bool {
	for _, other := range a.ledger.Fillings {
		if other.Container != f.Container {
			continue
		}
		if other.Mass().Show() != f.Mass().Show() || other.Volume().Show() != f.Volume().Show() {
			return true
		}
	}
	return false
}
