package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"tallyfold/kit/diag"
	"tallyfold/kit/rules"
)

// screen is how many lines of findings a person takes in at once.
const screen = 40

// severities, worst first.
var severities = []diag.Severity{diag.MustFix, diag.ShouldFix, diag.WorthKnowing}

// writeText prints each kit for people, and a table where there are several.
func (o *checkOptions) writeText(outcomes []outcome) error {
	told := 0
	for _, one := range outcomes {
		if one.err != nil {
			continue
		}
		if told > 0 {
			fmt.Fprintln(o.out)
		}
		told++
		if err := o.writeKit(one.proof); err != nil {
			return err
		}
	}
	if len(outcomes) < 2 {
		return nil
	}
	return o.writeTable(outcomes)
}

func (o *checkOptions) writeKit(p *proved) error {
	style := diag.Style{Colour: o.colour, Folder: p.folder, Screen: screen, Rest: "--all prints everything in full"}
	if o.all {
		style.Screen = 0
	}
	if err := diag.WriteText(o.out, p.Findings, style); err != nil {
		return err
	}
	if len(p.Findings) > 0 {
		fmt.Fprintln(o.out)
	}
	if err := diag.WriteAccepted(o.out, p.Accepted, style); err != nil {
		return err
	}
	_, err := fmt.Fprintln(o.out, diag.Printable(p.folder)+": "+summary(p))
	return err
}

// summary counts the findings and says what was and was not looked at.
func summary(p *proved) string {
	counts := counted(p.Findings)
	if p.Kit == nil {
		return counts + "; the kit could not be followed"
	}
	if counts == "" {
		counts = "nothing to fix"
	}
	if n := len(p.Accepted); n > 0 {
		counts += fmt.Sprintf(", %d accepted", n)
	}
	return fmt.Sprintf("%s; %s followed in %s by %d rules", counts,
		count(len(p.Kit.Method.Steps()), "step"), count(len(p.Kit.Passes()), "run"), len(rules.All))
}

// counted tells how many findings of each severity there are: "2 must fix".
func counted(list diag.List) string {
	var counts []string
	for _, severity := range severities {
		if n := list.Count(severity); n > 0 {
			counts = append(counts, fmt.Sprintf("%d %s", n, severity))
		}
	}
	return strings.Join(counts, ", ")
}

// writeTable sums up a catalogue: a line a kit, in the order they were checked.
func (o *checkOptions) writeTable(outcomes []outcome) error {
	table := tabwriter.NewWriter(o.out, 0, 0, 2, ' ', 0)
	fmt.Fprintln(table, "\nkit\tedition\tmust\tshould\tworth\tresult")
	results := map[string]int{}
	for _, one := range outcomes {
		result := resultOf(one)
		results[result]++
		if one.proof != nil && len(one.proof.Accepted) > 0 {
			result += fmt.Sprintf(", %d accepted", len(one.proof.Accepted))
		}
		fmt.Fprintln(table, diag.Printable(one.folder)+"\t"+cells(one)+"\t"+result)
	}
	if err := table.Flush(); err != nil {
		return err
	}
	line := count(len(outcomes), "kit") + ":"
	for _, result := range allResults {
		if n := results[result]; n > 0 {
			line += fmt.Sprintf(" %d %s,", n, result)
		}
	}
	_, err := fmt.Fprintln(o.out, strings.TrimSuffix(line, ","))
	return err
}

// What a kit of a catalogue comes to, the worst first.
const (
	notChecked = "could not be checked"
	notRead    = "cannot be read"
	mustFix    = "must be fixed"
	shouldFix  = "should be fixed"
	worthALook = "worth a look"
	nothing    = "nothing to fix"
)

var allResults = []string{notChecked, notRead, mustFix, shouldFix, worthALook, nothing}

func resultOf(one outcome) string {
	switch {
	case one.err != nil:
		return notChecked
	case one.proof.Kit == nil:
		return notRead
	case one.proof.Findings.Count(diag.MustFix) > 0:
		return mustFix
	case one.proof.Findings.Count(diag.ShouldFix) > 0:
		return shouldFix
	case one.proof.Findings.Count(diag.WorthKnowing) > 0:
		return worthALook
	}
	return nothing
}

// cells are the figures of a kit in the table; what is not known is a dash.
func cells(one outcome) string {
	if one.err != nil {
		return "–\t–\t–\t–"
	}
	edition := "–"
	if one.proof.Kit != nil {
		edition = fmt.Sprint(max(1, one.proof.Kit.Edition.Value))
	}
	for _, severity := range severities {
		edition += fmt.Sprintf("\t%d", one.proof.Findings.Count(severity))
	}
	return edition
}
