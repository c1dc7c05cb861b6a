package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

var doesNotDissolve = Rule{
	Name:     "does-not-dissolve",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "More of something is stirred in than dissolves at that temperature",
	Explanation: `What does not dissolve lies at the bottom, and the customer wonders what went wrong. After
every step, the strength of each solution is held against the points under “dissolves”
in kit.yaml, at the temperature last said of the vessel. Between two points a straight
line is taken, which is a model: real curves bend a little.

A solution that is meant to be too strong when cold, as for growing crystals, is no
finding while it cools: only steps that add some, or warm it, are judged.

Where no temperature is said, or it lies beyond the points, this cannot be checked, and
is told so, unless the solution is weaker than all points, or warmer than the last of
rising points and weaker than that. Take less, take more of the solvent, or warm it further.`,
	Check: func(s Subject) []diag.Finding {
		var all []perRun
		for _, solution := range s.Ledger.Solutions() {
			if !isJudged(s.Ledger, solution) {
				continue
			}
			if finding, ok := undissolved(s, solution); ok {
				all = append(all, perRun{solution.Run, finding})
			}
		}
		return overRuns(s.Kit, all)
	},
	NotLookedAt: func(s Subject) []string {
		for _, c := range s.Kit.Components {
			if len(c.Dissolves) > 0 {
				return nil
			}
		}
		return []string{"no component tells how much of it dissolves"}
	},
}

// isJudged: the step adds some of the solute, or warms the vessel.
func isJudged(l *ledger.Ledger, solution *ledger.Solution) bool {
	for _, e := range l.In(solution.Run, solution.Step) {
		if e.Thing == solution.Solute.ID && e.To == solution.Vessel {
			return true
		}
	}
	for _, o := range solution.Step.Operations {
		if o.Kind == kit.Warm && !o.Aside {
			return true
		}
	}
	return false
}

func undissolved(s Subject, solution *ledger.Solution) (diag.Finding, bool) {
	name, solvent := solution.Solute.String(), s.Kit.Called(solution.Solvent)
	finding := diag.Finding{
		Where: solutionSpan(s.Ledger, solution), About: solution.Solute.ID,
		Also: pointPlaces(solution.Solute),
	}
	switch {
	case !solution.Strength.Known():
		return diag.Finding{}, false // told by no-density or no-amount
	case !solution.Takes.Known() && dissolvesAnyhow(solution):
		return diag.Finding{}, false
	case !solution.Takes.Known():
		finding.Severity = diag.WorthKnowing
		finding.Found = "cannot check whether " + name + " dissolves: " + solution.Takes.Why()
		finding.Expected = "a temperature within the points under “dissolves”"
		finding.Remedies = diag.Fix("say how warm it is with a warm: or cool: link before "+name+" goes in", "add a point to “dissolves” of "+name)
		return finding, true
	case solution.Strength.Value().Cmp(solution.Takes.Value()) <= 0:
		return diag.Finding{}, false
	}
	finding.Found = name + " does not all dissolve: " + perHundred(solution.Strength) + " of " + solvent + ", where " + perHundred(solution.Takes) + " do" + at(solution)
	finding.Expected = "at most " + perHundred(solution.Takes) + " of " + solvent + at(solution)
	part := solution.Takes.Value().Over(solution.Strength.Value())
	finding.Sum = lines("strength: "+solution.Strength.Sum(), perHundred(solution.Strength)+" against "+perHundred(solution.Takes))
	finding.Remedies = []diag.Remedy{
		scaled(s, solution.Run, solution.Vessel, solution.Solute.ID, part, false),
		scaled(s, solution.Run, solution.Vessel, solution.Solvent, solution.Strength.Value().Over(solution.Takes.Value()), true),
		{Do: "warm it further before " + name + " goes in"},
	}
	return finding, true
}

// dissolvesAnyhow: less than the least of all points dissolves at any temperature
// between them, and where they rise, less than the last at any above it.
func dissolvesAnyhow(solution *ledger.Solution) bool {
	points := solution.Solute.Dissolves
	least, rising := points[0].Value.Ratio.Nominal, true
	for i, point := range points {
		least = quantity.Smaller(least, point.Value.Ratio.Nominal)
		rising = rising && (i == 0 || !point.Value.Ratio.Nominal.Less(points[i-1].Value.Ratio.Nominal))
	}
	strength := solution.Strength.Value()
	last := points[len(points)-1].Value
	warmer := solution.Temperature.Known() && last.At.Nominal.Less(solution.Temperature.Value())
	return strength.Cmp(least) <= 0 || rising && warmer && len(points) > 1 && strength.Cmp(last.Ratio.Nominal) <= 0
}

// perHundred tells a strength as people do: grams to 100 g, or to 100 mL.
func perHundred(f *ledger.Figure) string {
	base := "100 g"
	if f.Dimension == quantity.Density {
		base = "100 mL"
	}
	return show(f.Value().Times(quantity.Whole(100)), quantity.Mass) + " to " + base
}

func at(solution *ledger.Solution) string {
	if !solution.Temperature.Known() {
		return ""
	}
	return " at " + solution.Temperature.Show()
}

// solutionSpan is where the step adds the solute, else where it stands.
func solutionSpan(l *ledger.Ledger, solution *ledger.Solution) (where source.Span) {
	where = solution.Step.Span
	for _, e := range l.In(solution.Run, solution.Step) {
		if e.Thing == solution.Solute.ID && e.To == solution.Vessel {
			where = amountSpan(e.Operation)
		}
	}
	return where
}

func pointPlaces(c *kit.Component) []diag.Place {
	var all []diag.Place
	for _, point := range c.Dissolves {
		all = append(all, diag.Place{Where: point.Span, Note: "a point, " + point.Value.Written})
	}
	return all
}
