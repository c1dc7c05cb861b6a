package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var insertForgotten = Rule{
	Name:     "insert-forgotten",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "An insert is not reckoned with in the fill",
	Explanation: `A jar takes 230 mL under its headspace; with a bag of pebbles of 15 mL in it, it takes 215.
Whoever fills to 230 mL has measured the empty jar, and the pebbles push the rest over
the rim. The finding says so where the fill would have room without the inserts; it
stands before that of container-overfull.

An insert that the steps take or use, but never place into a container, takes no room in
any sum: that should be fixed.

Fill less by what the inserts take, or place the insert: [one bag](place:pebbles?into=jar).`,
	Check: func(s Subject) []diag.Finding {
		var all []perRun
		for _, f := range s.Ledger.Fillings {
			if takes, ok := forgotten(f); ok {
				all = append(all, perRun{f.Run, withoutInserts(s.Kit, f, takes)})
			}
		}
		return append(overRuns(s.Kit, all), insertsNotPlaced(s)...)
	},
}

// forgotten says whether a fill has room only without the inserts, and gives what these
// take.
func forgotten(f *ledger.Filling) (takes *ledger.Figure, ok bool) {
	told := f.Operation.Phrase
	if len(f.Parts()) == 0 || told.Portion != kit.Exactly || told.About || !isOverRoom(f) {
		return nil, false
	}
	var all []*ledger.Figure
	for _, insert := range f.Inserts {
		if insert.Component.Insert != nil {
			all = append(all, f.Takes(insert))
		}
	}
	takes = ledger.Plus(quantity.Volume, "inserts", all...)
	if !takes.Known() || takes.Value().Sign() <= 0 {
		return nil, false
	}
	most := f.Room().Value().Plus(takes.Value())
	return takes, f.Volume().Value().Minus(most).Cmp(most.Times(rounding)) <= 0
}

func withoutInserts(k *kit.Kit, f *ledger.Filling, takes *ledger.Figure) diag.Finding {
	finding := fillFinding(f, f.Volume())
	empty := f.Room().Value().Plus(takes.Value())
	finding.Cause = roomCause(f.Container.ID)
	finding.Found = "each " + f.Container.String() + " gets " + f.Volume().Show() + ", which has room only without the insert: " +
		show(empty, quantity.Volume) + " less " + takes.Show() + " is " + f.Room().Show()
	finding.Expected = "at most " + f.Room().Show() + " beside the insert"
	finding.Remedies = fillLess(k, f, f.Room().Value(), f.Volume().Value(), f.Volume().Value())
	return finding
}

// insertsNotPlaced are inserts that steps use otherwise than by placing them.
func insertsNotPlaced(s Subject) []diag.Finding {
	var findings []diag.Finding
	for _, c := range s.Kit.Components {
		b := s.Ledger.Balance(c.ID)
		if c.Insert == nil || c.Optional.Value || c.Insert.Sits.Value == kit.OnTop || b == nil || len(b.Uses) == 0 || isPlaced(s.Ledger, c) {
			continue
		}
		use := b.Uses[0]
		container := fillsAny(s.Ledger)
		if container == nil {
			continue
		}
		findings = append(findings, diag.Finding{
			Severity: diag.ShouldFix, Where: use.Operation.Span, About: c.ID,
			Found:    inStep(use.Step) + " takes " + c.String() + ", which is an insert, and no step places it into a container",
			Expected: "an insert that is placed, so that the room it takes is counted",
			Remedies: diag.Fix(
				"place it: [one "+c.String()+"](place:"+use.Operation.Target+"?into="+container.ID+")",
				"take “insert:” out of "+c.ID+" in kit.yaml, if it goes into no container"),
			Also: []diag.Place{{Where: c.Insert.Span, Note: "the insert"}},
		})
	}
	return findings
}

func isPlaced(l *ledger.Ledger, c *kit.Component) bool {
	for _, e := range l.Entries {
		if e.Thing == c.ID && e.Move == ledger.Placed {
			return true
		}
	}
	return false
}

// fillsAny is the first container that steps fill, or nil.
func fillsAny(l *ledger.Ledger) *kit.Component {
	for _, f := range l.Fillings {
		if len(f.Parts()) > 0 {
			return f.Container
		}
	}
	return nil
}
