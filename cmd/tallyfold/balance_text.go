package main

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// writeBalance prints the ledger for people: the box, then run by run, then the
// containers, then the clock.
func writeBalance(w io.Writer, p *proved) error {
	b := &balancePrinter{table: tabwriter.NewWriter(w, 0, 0, 2, ' ', 0), kit: p.Kit, ledger: p.Ledger}
	b.line("%s, edition %d", p.Kit.Name.Value, max(1, p.Kit.Edition.Value))
	b.box()
	b.runs()
	b.containers()
	b.remainders()
	b.solutions()
	b.cuttings()
	b.choices()
	b.answers()
	b.clock(p)
	return b.table.Flush()
}

type balancePrinter struct {
	table  *tabwriter.Writer
	kit    *kit.Kit
	ledger *ledger.Ledger
}

// line writes one line; tabs part it into columns.
func (b *balancePrinter) line(format string, values ...any) {
	fmt.Fprintf(b.table, format+"\n", values...)
}

// heading ends the table before it, so that each has columns of its own.
func (b *balancePrinter) heading(text string) {
	b.table.Flush()
	b.line("\n%s", text)
}

func (b *balancePrinter) box() {
	b.heading("IN THE BOX")
	b.line("bag\tname\tpacked\tused\tleft\tof it spare")
	for _, balance := range b.ledger.Balances {
		component := b.kit.Component(balance.Thing)
		spare := ""
		if balance.Spare != nil {
			spare = balance.Spare.Show()
		}
		b.line("%s\t%s\t%s\t%s\t%s\t%s", component.Letter, component, within(balance.Packed),
			within(balance.Used), within(balance.Left), spare)
	}
	if len(b.ledger.Household) == 0 {
		return
	}
	b.heading("FROM THE CUSTOMER")
	b.line("name\tused")
	for _, balance := range b.ledger.Household {
		b.line("%s\t%s", b.kit.Called(balance.Thing), within(balance.Used))
	}
}

// within shows a figure, and after it the worst case where it has a tolerance.
func within(f *ledger.Figure) string {
	if !f.Known() {
		return f.Show()
	}
	low, high := f.Worst()
	if low.Cmp(high) == 0 {
		return f.Show()
	}
	return fmt.Sprintf("%s (%s to %s)", f.Show(), quantity.Show(low, f.Dimension), quantity.Show(high, f.Dimension))
}

func (b *balancePrinter) runs() {
	for _, stage := range b.ledger.Stages {
		title := fmt.Sprintf("STEP %d  %s", stage.Step.Number, stage.Step.Title)
		if name := stage.Run.Name.Value; name != "" {
			title += "  (" + name + ")"
		}
		b.heading(title)
		for _, entry := range b.ledger.In(stage.Run, stage.Step) {
			b.line("  %s\t%s\t%s\t%s", entry.Move, entry.Amount.Show(), b.kit.Called(entry.Thing), b.way(entry))
		}
		b.table.Flush()
		for _, contents := range stage.Vessels {
			b.contents("  then in "+b.called(contents.Vessel), &contents)
		}
	}
}

// way tells from where to where something moved.
func (b *balancePrinter) way(e ledger.Entry) string {
	from, to := b.called(e.From), b.called(e.To)
	switch {
	case e.Move == ledger.LeftOver:
		return "from " + from + ", " + strings.ReplaceAll(b.called(e.To), "-", " ")
	case e.From == e.Thing && to != "":
		return "into " + to
	case e.From == e.Thing:
		return ""
	case to == "":
		return "out of " + from
	}
	return from + " → " + to
}

func (b *balancePrinter) called(key string) string {
	if key == "" {
		return ""
	}
	return b.kit.Called(key)
}

func (b *balancePrinter) contents(head string, c *ledger.Contents) {
	if len(c.Parts()) > 0 {
		b.line("%s: %s%s", head, c.Mass().Show(), temperature(c))
	} else {
		b.line("%s:", head)
	}
	for _, part := range c.Parts() {
		share := c.Share(part.Thing)
		b.line("    %s\t%s\t%s", b.kit.Called(part.Thing), part.Amount.Show(), share.Show())
	}
	for _, object := range c.Objects() {
		b.line("    %s\t%s", b.kit.Called(object.Thing), object.Amount.Show())
	}
	b.table.Flush()
}

func temperature(c *ledger.Contents) string {
	if c.Temperature == nil {
		return ""
	}
	return " at " + c.Temperature.Show()
}

func inBrackets(text string) string {
	if text == "" {
		return ""
	}
	return " (" + text + ")"
}

func (b *balancePrinter) remainders() {
	if len(b.ledger.Remainders) == 0 {
		return
	}
	b.heading("STAYS BEHIND")
	for _, r := range b.ledger.Remainders {
		residue := "no residue is given for it"
		if r.Residue != nil {
			residue = "its residue is " + within(r.Residue)
		}
		if r.UsedLater {
			residue = "used again in a later run"
		}
		b.line("  %s%s\t%s\t%s", b.called(r.Vessel), inBrackets(r.Run.Name.Value), r.Mass().Show(), residue)
	}
}

func (b *balancePrinter) clock(p *proved) {
	b.heading("TIME")
	b.line("  hands-on\t%s", p.Plan.HandsOn.Show())
	b.line("  in all\t%s", p.Plan.Total.Show())
	var untimed []string
	for _, step := range p.Plan.Untimed {
		untimed = append(untimed, fmt.Sprintf("%d %s", step.Number, step.Title))
	}
	if len(untimed) > 0 {
		b.line("  no time told\t%s", strings.Join(untimed, "; "))
	}
}
