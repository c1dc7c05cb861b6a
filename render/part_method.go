package render

import (
	"fmt"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// methodPart is one part of the method. Strings are Markdown.
type methodPart struct {
	Title, Anchor, Intro string
	Steps                []stepView
}

// stepView is one step as it is printed.
type stepView struct {
	Number        int
	Title, Anchor string
	Facts         []fact
	// Strip draws how work and waiting follow one another.
	Strip  string
	Needs  needsView
	Text   string
	Gauges []string
	// Ticks are what to tick when it is done: the runs, or one word.
	Ticks []string
}

func methodValues(a *assembly) any {
	var parts []methodPart
	for i, part := range a.kit.Method.Parts {
		view := methodPart{
			Title: escape(part.Title), Anchor: partAnchor(i),
			Intro: a.prose(passage{body: part.Body, operations: part.Operations, cautions: part.Cautions, deeper: 2, passes: a.passesOfPart(part)}),
		}
		if view.Title == "" {
			view.Title = a.say("method")
		}
		for _, step := range part.Steps {
			view.Steps = append(view.Steps, a.step(step, a.passesOfPart(part)))
		}
		parts = append(parts, view)
	}
	if len(parts) == 0 {
		return nil
	}
	return parts
}

func (a *assembly) step(step *kit.Step, passes []*kit.Run) stepView {
	return stepView{
		Number: step.Number, Title: escape(step.Title), Anchor: stepAnchor(step),
		Facts: a.facts(step), Strip: a.strip(step), Needs: a.needs(step, passes),
		Text:   a.stepProse(step, passes),
		Gauges: a.gauges(step), Ticks: a.ticks(passes),
	}
}

// facts tells at a glance how long, how hot and in what.
func (a *assembly) facts(step *kit.Step) []fact {
	var facts []fact
	add := func(name, says string) {
		if says != "" {
			facts = append(facts, fact{a.say(name), says})
		}
	}
	for _, line := range a.plan.Lines {
		if line.Step == step {
			add("time", escape(a.lasting(line.Work)))
			add("wait", escape(a.lasting(ledger.Plus(quantity.Duration, "", line.Wait, line.Beside))))
			break // the same in every run
		}
	}
	for _, o := range step.Operations {
		if told := a.temperature(o); told != "" {
			add("temperature", map[kit.Kind]string{kit.Warm: rising, kit.Cool: falling}[o.Kind]+told)
		}
	}
	if name, ok := a.kit.Named(step.Vessel); ok {
		add("in", a.say("the-thing", "thing", escape(a.small(name.String()))))
	}
	return facts
}

// temperatures are those the step brings something to, in the maker's words.
func (a *assembly) temperatures(step *kit.Step) string {
	var told []string
	for _, o := range step.Operations {
		if one := a.temperature(o); one != "" {
			told = append(told, one)
		}
	}
	return strings.Join(told, ", ")
}

// temperature is what an operation brings something to, or "".
func (a *assembly) temperature(o *kit.Operation) string {
	if _, ok := o.Phrase.Amount(); !ok || o.Kind != kit.Warm && o.Kind != kit.Cool || o.Aside {
		return ""
	}
	return escape(strings.TrimSpace(o.Text)) + a.inReadersUnits(o)
}

// ticks are the boxes at the end of a step: one for each run that comes by.
func (a *assembly) ticks(passes []*kit.Run) []string {
	if len(passes) < 2 {
		return []string{a.say("done")}
	}
	var ticks []string
	for _, run := range passes {
		ticks = append(ticks, escape(run.Name.Value))
	}
	return ticks
}

// needsView is the table "you need now" of one step. Strings are Markdown.
type needsView struct {
	Rows []needRow
	// Bags and Others say which columns hold anything.
	Bags, Others bool
	// Runs and Differs make a second table of what is not the same in each run.
	Runs    []string
	Differs []differRow
}

type needRow struct{ Bag, Name, Amount, Other string }

// differRow is one thing with what stands for it in each run.
type differRow struct {
	Name  string
	Cells []string
}

// needs gathers what a step takes out of the box or the kitchen, in the order
// in which the text names it.
func (a *assembly) needs(step *kit.Step, passes []*kit.Run) needsView {
	view := needsView{}
	for _, group := range byTarget(step.Operations) {
		if beside := a.containersBeside(group, passes); len(beside) > 0 {
			a.addNeed(&view, beside[0].thing, beside)
		}
		if needs := a.needsOf(group, passes); len(needs) > 0 {
			a.addNeed(&view, group[0].Target, needs)
		}
	}
	if len(view.Differs) > 0 {
		for _, run := range passes {
			view.Runs = append(view.Runs, escape(run.Name.Value))
		}
	}
	return view
}

// addNeed adds the line of one thing, and what stands for it in each run where
// the runs differ.
func (a *assembly) addNeed(view *needsView, target string, needs []need) {
	row, differs := a.needRow(target, needs)
	view.Rows = append(view.Rows, row)
	view.Bags = view.Bags || row.Bag != ""
	view.Others = view.Others || row.Other != ""
	if differs != nil {
		view.Differs = append(view.Differs, *differs)
	}
}

// byTarget groups the operations that are done by what they name.
func byTarget(operations []*kit.Operation) [][]*kit.Operation {
	var groups [][]*kit.Operation
	place := map[string]int{}
	for _, o := range operations {
		switch o.Kind {
		case kit.Take, kit.Use, kit.Place, kit.Fill:
		default:
			continue
		}
		if o.Aside {
			continue
		}
		at, seen := place[o.Target]
		if !seen {
			at = len(groups)
			place[o.Target] = at
			groups = append(groups, nil)
		}
		groups[at] = append(groups[at], o)
	}
	return groups
}

// needRow tells one thing. What isn't the same in all runs goes into a row of
// the second table.
func (a *assembly) needRow(target string, needs []need) (needRow, *differRow) {
	if alike(needs) {
		n := needs[0]
		return needRow{Bag: a.bag(n.thing), Name: escape(a.kit.Called(n.thing)), Amount: a.orAsNeeded(n), Other: escape(n.other)}, nil
	}
	name := escape(capital(a.roleOrName(target)))
	row := needRow{Name: a.say("see-below", "thing", name), Bag: a.bags(needs), Amount: a.say("see-below-short")}
	if sameAmount(needs) {
		row.Amount = a.orAsNeeded(needs[0])
	}
	if sameOther(needs) {
		row.Other = escape(needs[0].other)
	}
	differs := &differRow{Name: name}
	for _, n := range needs {
		differs.Cells = append(differs.Cells, a.differCell(n, !sameAmount(needs), !sameOther(needs)))
	}
	return row, differs
}

// differCell tells what stands for a role in one run, with the amounts that
// aren't the same in all of them.
func (a *assembly) differCell(n need, withAmount, withOther bool) string {
	text := strings.TrimSpace(a.bag(n.thing) + " " + escape(a.kit.Called(n.thing)))
	if withAmount {
		text += ", " + a.orAsNeeded(n)
	}
	if withOther && n.other != "" {
		text += ", " + a.say("about", "amount", escape(n.other))
	}
	return text
}

func alike(needs []need) bool {
	for _, n := range needs[1:] {
		if n.thing != needs[0].thing || n.amount != needs[0].amount {
			return false
		}
	}
	return true
}

func sameAmount(needs []need) bool {
	for _, n := range needs[1:] {
		if n.amount != needs[0].amount {
			return false
		}
	}
	return true
}

func sameOther(needs []need) bool {
	for _, n := range needs[1:] {
		if n.other != needs[0].other {
			return false
		}
	}
	return true
}

func (a *assembly) orAsNeeded(n need) string {
	if n.amount == "" {
		return a.say("as-needed")
	}
	return escape(n.amount)
}

// bag is the letter of a component, in bold.
func (a *assembly) bag(thing string) string {
	if c := a.kit.Component(thing); c != nil && c.Letter != "" {
		return "**" + escape(c.Letter) + "**"
	}
	return ""
}

// bags are the letters of two that differ; more find no room in the rail.
func (a *assembly) bags(needs []need) string {
	if len(needs) != 2 || a.bag(needs[0].thing) == "" || a.bag(needs[1].thing) == "" {
		return ""
	}
	return fmt.Sprintf("%s %s %s", a.bag(needs[0].thing), a.say("or"), a.bag(needs[1].thing))
}
