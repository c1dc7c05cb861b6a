package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var vesselTooSmall = Rule{
	Name:     "vessel-too-small",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "A vessel does not hold what the steps put into it",
	Explanation: `Two litres into a pan of one and a half run over the stove, hot or not. At every moment
that a step ends or something is poured out, what is in a vessel is added up: what mixes,
what lies in it, and the room that “foam” asks for. That must be less than “holds”, the
vessel up to its rim.

“fills to: 70 %” says how far a vessel may be filled so that it can be stirred and
carried. More than that, foam left aside, should be fixed.

Where a density is missing and the vessel may be too small without it, it cannot be
checked; that should be fixed too. A vessel that does not say what it holds is not
looked at.

Use a larger vessel, or make the mixture in two goes.`,
	Check: func(s Subject) []diag.Finding {
		var all []perRun
		for _, run := range s.Kit.Passes() {
			for _, t := range s.Kit.Tools {
				if worst, ok := fullest(s, run, t); ok {
					all = append(all, perRun{run, worst})
				}
			}
		}
		return overRuns(s.Kit, all)
	},
	NotLookedAt: func(s Subject) []string {
		var names []string
		for _, t := range s.Kit.Tools {
			if !t.Holds.Given() && holdsAny(s, t) {
				names = append(names, t.String())
			}
		}
		if len(names) == 0 {
			return nil
		}
		return []string{"kit.yaml does not say what the vessels hold: " + listed(names)}
	},
}

// holdsAny says whether anything is ever in a vessel.
func holdsAny(s Subject, t *kit.Tool) bool {
	for _, run := range s.Kit.Passes() {
		if len(fillMoments(s.Ledger, run, t.ID)) > 0 {
			return true
		}
	}
	return false
}

// fullest finds the moment of a run at which a vessel is fullest, and judges it.
func fullest(s Subject, run *kit.Run, t *kit.Tool) (diag.Finding, bool) {
	var worst diag.Finding
	var most quantity.Number
	found := false
	for _, fillMoment := range fillMoments(s.Ledger, run, t.ID) {
		finding, stands, ok := judgeLevel(s, run, fillMoment)
		if ok && (!found || most.Less(stands)) {
			worst, most, found = finding, stands, true
		}
	}
	return worst, found
}

// A fillMoment is what a vessel holds when a step ends, or when it is poured from.
type fillMoment struct {
	contents *ledger.Contents
	step     *kit.Step
}

func fillMoments(l *ledger.Ledger, run *kit.Run, vessel string) []fillMoment {
	var all []fillMoment
	for _, stage := range l.Stages {
		for i := range stage.Vessels {
			if stage.Run == run && stage.Vessels[i].Vessel == vessel {
				all = append(all, fillMoment{&stage.Vessels[i], stage.Step})
			}
		}
	}
	for _, m := range l.Makings {
		if m.Run == run && m.Vessel == vessel {
			all = append(all, fillMoment{&m.Contents, m.Step})
		}
	}
	for _, r := range l.Cleaned {
		if r.Run == run && r.Vessel == vessel && r.Step != nil {
			all = append(all, fillMoment{&r.Contents, r.Step})
		}
	}
	return all
}

// judgeLevel holds one moment against the vessel; stands is how much is in it, mL.
func judgeLevel(s Subject, run *kit.Run, m fillMoment) (finding diag.Finding, stands quantity.Number, ok bool) {
	level := s.Ledger.Level(m.contents)
	if level == nil {
		return finding, stands, false
	}
	inside, known := level.Stands, true
	if !inside.Known() {
		inside, known = level.Volume, false // what lies in it has no volume told
	}
	holds := level.Holds.Value()
	if !inside.Known() {
		return untoldLevel(s, run, m, level)
	}
	finding = levelFinding(s, run, m, level, inside)
	if over := inside.Value().Minus(holds); over.Cmp(holds.Times(rounding)) > 0 {
		finding.Found = level.Tool.String() + " holds " + level.Holds.Show() + ", and " + inStep(m.step) + " has " + inside.Show() + " in it" + withFoam(level, known)
		finding.Expected = "at most " + level.Holds.Show()
		finding.Sum = append(finding.Sum, inside.Show()+" − "+level.Holds.Show()+" = "+show(over, quantity.Volume)+" too much")
		finding.Remedies = diag.Fix("use one that holds at least "+up(roomy(inside.Value(), level.Tool), level.Tool.Holds.Value), "make it in two goes")
		return finding, inside.Value(), true
	}
	return tooFullToStir(finding, level, m)
}

func withFoam(level *ledger.Level, known bool) string {
	if known && level.Foam.Known() && level.Foam.Value().Sign() > 0 {
		return ", foam counted"
	}
	return ""
}

// roomy is what a vessel must hold so that so much fills it only to its part.
func roomy(inside quantity.Number, t *kit.Tool) quantity.Number {
	if part := t.FillsTo.Value.Nominal; t.FillsTo.Given() && part.Sign() > 0 {
		return inside.Over(part)
	}
	return inside
}

// tooFullToStir holds what is in a vessel against “fills to”.
func tooFullToStir(finding diag.Finding, level *ledger.Level, m fillMoment) (diag.Finding, quantity.Number, bool) {
	t := level.Tool
	inside := ledger.Plus(quantity.Volume, "in "+t.String(), level.Volume, level.Solids)
	if !inside.Known() {
		inside = level.Volume
	}
	holds, part := level.Holds.Value(), t.FillsTo.Value.Nominal
	most := holds.Times(part)
	if !t.FillsTo.Given() || inside.Value().Minus(most).Cmp(most.Times(rounding)) <= 0 {
		return diag.Finding{}, most, false
	}
	finding.Severity = diag.ShouldFix
	finding.Found = inStep(m.step) + " has " + inside.Show() + " in " + t.String() + ", which is " + percent(inside.Value().Over(holds)) + " of what it holds"
	finding.Expected = "at most " + percent(part) + ", which is " + show(most, quantity.Volume)
	finding.Sum = append(finding.Sum, level.Holds.Show()+" × "+percent(part)+" = "+show(most, quantity.Volume))
	finding.Remedies = diag.Fix("use one that holds at least "+up(roomy(inside.Value(), t), t.Holds.Value), "make it in two goes")
	finding.Also = append(finding.Also, diag.Place{Where: t.FillsTo.Span, Note: "fills to " + t.FillsTo.Value.Written})
	return finding, inside.Value(), true
}

func levelFinding(s Subject, run *kit.Run, m fillMoment, level *ledger.Level, inside *ledger.Figure) diag.Finding {
	finding := diag.Finding{
		Where: level.Tool.IDSpan, About: level.Tool.ID,
		Sum:  lines(level.Volume.Sum(), besides(level, inside)),
		Also: []diag.Place{{Where: level.Tool.Holds.Span, Note: "holds " + level.Tool.Holds.Value.Written}},
	}
	if level.Tool.Foam.Given() {
		finding.Also = append(finding.Also, diag.Place{Where: level.Tool.Foam.Span, Note: "room for foam, " + level.Tool.Foam.Value.Written})
	}
	if entry := lastIntoUpTo(s.Ledger, run, level.Tool.ID, m.step); entry != nil {
		finding.Where = amountSpan(entry.Operation)
	}
	return finding
}

// besides shows what is added to what mixes, where anything is.
func besides(level *ledger.Level, inside *ledger.Figure) string {
	if !inside.Known() || inside.Value().Equal(level.Volume.Value()) {
		return ""
	}
	return inside.Sum()
}

// lastIntoUpTo is the last entry that put something into a vessel up to a step.
func lastIntoUpTo(l *ledger.Ledger, run *kit.Run, vessel string, step *kit.Step) *ledger.Entry {
	var last *ledger.Entry
	for i, e := range l.Entries {
		if e.Run == run && e.To == vessel && e.Move != ledger.LeftOver && e.Step.Number <= step.Number {
			last = &l.Entries[i]
		}
	}
	return last
}

// lightLiquid is what a millilitre of a liquid or of melted wax weighs at least, g/mL
// (common practice, no source).
var lightLiquid = quantity.Ratio(7, 10)

// besidesFoam adds the foam and what lies in it to a volume of what mixes, as far as
// they are known.
func besidesFoam(level *ledger.Level, volume quantity.Number) quantity.Number {
	inside := volume
	if foam := level.Tool.Foam.Value; level.Tool.Foam.Given() && foam.Dimension == quantity.Share {
		inside = inside.Plus(volume.Times(foam.Nominal))
	} else if level.Foam.Known() {
		inside = inside.Plus(level.Foam.Value())
	}
	if level.Solids.Known() {
		inside = inside.Plus(level.Solids.Value())
	}
	return inside
}

// untoldLevel: a volume is not known. Where even a light liquid has room, nothing is
// said.
func untoldLevel(s Subject, run *kit.Run, m fillMoment, level *ledger.Level) (diag.Finding, quantity.Number, bool) {
	var least, most quantity.Number
	for _, part := range m.contents.Parts() {
		switch {
		case part.Volume.Known():
			least, most = least.Plus(part.Volume.Value()), most.Plus(part.Volume.Value())
		case part.Mass.Known():
			dense := lightLiquid
			if told, _ := density(s.Kit, part.Thing); told.Given() && told.Value.Low.Sign() > 0 {
				dense = told.Value.Low
			}
			most = most.Plus(part.Mass.Value().Over(dense))
		default:
			return diag.Finding{}, most, false // told by no-amount
		}
	}
	least, most = besidesFoam(level, least), besidesFoam(level, most)
	if most.Cmp(level.Holds.Value()) <= 0 {
		return diag.Finding{}, most, false
	}
	finding := levelFinding(s, run, m, level, level.Volume)
	if level.Holds.Value().Less(least) {
		finding.Found = level.Tool.String() + " holds " + level.Holds.Show() + ", and " + inStep(m.step) + " has at least " + show(least, quantity.Volume) + " in it, foam and what lies in it counted"
		finding.Expected = "at most " + level.Holds.Show()
		finding.Sum = []string{"at least " + show(least, quantity.Volume) + " − " + level.Holds.Show() + " = " + show(least.Minus(level.Holds.Value()), quantity.Volume) + " too much"}
		finding.Remedies = diag.Fix("use one that holds at least "+up(roomy(most, level.Tool), level.Tool.Holds.Value), "make it in two goes")
		return finding, least, true
	}
	finding.Severity = diag.ShouldFix
	finding.Found = "cannot check whether " + level.Tool.String() + " holds what " + inStep(m.step) + " has in it: " + level.Volume.Why()
	finding.Expected = "the density of everything that goes into it"
	finding.Sum = []string{"it may be up to " + show(most, quantity.Volume) + " of " + level.Holds.Show()}
	finding.Remedies = diag.Fix("write the density into kit.yaml", "give the mixture a measured density under mixtures")
	return finding, most, true
}
