package rules

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
)

var notMeasurable = Rule{
	Name:     "not-measurable",
	Severity: diag.ShouldFix,
	Title:    "An amount cannot be measured with the tools on the list",
	Explanation: `0.3 g on a scale that reads 1 g shows nothing or 1 g; 4 7/8 teaspoons need a spoon that no
set has; 65 °C without a thermometer is a guess. The customer has what the list of tools
says, and what is in the box.

Looked at is what the customer must measure: amounts in take:, use:, move: and fill:
links and temperatures in warm: and cool: links. Not “all of it”, not “about”, not what
is counted, not a whole pack, and no temperature beside a cue or a waiting time. Tools
are known by words in their names and by “reads to”; where half a step of the finest is
more than a tenth of the amount, it cannot be measured, and where it is more than half
of it the finding must be fixed. A kit that lists up to four tools and nothing that
measures is not yet asked.

Round the amount, list a finer tool, or pack portions so that all of one is taken.`,
	Check: func(s Subject) []diag.Finding {
		words, known := measuresByWord[language(s.Kit)]
		if !known {
			return []diag.Finding{noWords(s.Kit, "measuring tools", measuresByWord)}
		}
		m := measuring{Subject: s, missing: map[quantity.Dimension]*diag.Finding{}}
		m.gauges, m.judged = gauges(s.Kit, words)
		for _, step := range s.Kit.Method.Steps() {
			for _, o := range step.Operations {
				if !o.Aside {
					m.look(step, o)
				}
			}
		}
		return m.all()
	},
}

// measuring gathers amounts that cannot be measured. What lacks a tool altogether is
// told once for each kind of tool.
type measuring struct {
	Subject
	gauges   gaugeList
	judged   bool
	order    []quantity.Dimension
	missing  map[quantity.Dimension]*diag.Finding
	findings []diag.Finding
}

func (m *measuring) all() []diag.Finding {
	for _, d := range m.order {
		m.findings = append(m.findings, *m.missing[d])
	}
	return m.findings
}

// look judges what one link tells to measure. One telling that can be measured is
// enough.
func (m *measuring) look(step *kit.Step, o *kit.Operation) {
	if !m.isMeasured(step, o) {
		return
	}
	for _, told := range o.Phrase.Amounts {
		if m.problem(told) == noProblem {
			return
		}
	}
	told := o.Phrase.Amounts[0]
	switch m.problem(told) {
	case noGauge:
		m.noGauge(step, o, told)
	case tooCoarse:
		m.tooCoarse(step, o, told)
	case noSuchSpoon:
		m.noSuchSpoon(step, o, told)
	}
}

// isMeasured says whether the customer must measure what a link tells.
func (m *measuring) isMeasured(step *kit.Step, o *kit.Operation) bool {
	told, ok := o.Phrase.Amount()
	if !ok || o.Phrase.About || o.Phrase.By || o.Phrase.Portion != kit.Exactly || told.Nominal.IsZero() || o.Phrase.Lots.Sign() > 0 {
		return false
	}
	switch o.Kind {
	case kit.Warm, kit.Cool:
		return told.Dimension == quantity.Temperature && !m.isFelt(step, o, told)
	case kit.Take, kit.Use:
		c := m.Kit.Component(o.Target)
		return c == nil || !c.Packed.Given() || !told.Nominal.Equal(c.Packed.Value.Nominal) || told.Dimension != c.Packed.Value.Dimension
	case kit.Move, kit.Fill:
		return true
	}
	return false
}

// handWarm is about the temperature of a room or hand, boils that of boiling water and
// of what has a dial, °C (common practice, no source).
var handWarm, boils = [2]quantity.Number{quantity.Whole(15), quantity.Whole(37)}, quantity.Whole(95)

// isFelt: a cue says when it is reached, or a waiting time; or hand, eye or dial do.
func (m *measuring) isFelt(step *kit.Step, o *kit.Operation, told quantity.Amount) bool {
	for _, other := range step.Operations {
		waited := other.Kind == kit.Wait && o.Kind == kit.Cool && other.Span.Start < o.Span.Start
		if other.Kind == kit.Cue || waited {
			return true
		}
	}
	return !told.Nominal.Less(handWarm[0]) && !handWarm[1].Less(told.Nominal) || !told.Nominal.Less(boils)
}

// A problem is why an amount cannot be measured.
type problem int

const (
	noProblem problem = iota
	noGauge
	tooCoarse
	noSuchSpoon
)

// blurred is the part of an amount that half a step of a gauge may be.
var blurred = quantity.Ratio(1, 10)

func (m *measuring) problem(told quantity.Amount) problem {
	d, needed := gaugedIn(told)
	if !needed || m.isOwnMeasure(told) {
		return noProblem
	}
	if told.Household && !isSpoonful(told) {
		return noSuchSpoon
	}
	list := slices.DeleteFunc(slices.Clone(m.gauges[d]), func(g gauge) bool {
		return g.small && !told.Household && mostBySpoon.Less(told.Nominal)
	})
	switch {
	case len(list) == 0 && m.judged:
		return noGauge
	case len(list) == 0 || told.Household || told.Dimension == quantity.Area:
		return noProblem
	case blurs(finest(list), told):
		return tooCoarse
	}
	return noProblem
}

// isOwnMeasure: a scoop or a drop of the kit's own is its maker's to provide.
func (m *measuring) isOwnMeasure(told quantity.Amount) bool {
	return slices.ContainsFunc(m.Kit.Measures, func(own *kit.Measure) bool {
		return isCalled(own.String(), told.Unit.Name) || isCalled(own.ID, told.Unit.Name)
	})
}

// isSpoonful says whether spoons or cups of common sets measure it.
func isSpoonful(told quantity.Amount) bool {
	figure := told.Figure()
	part := figure.Minus(quantity.Whole(figure.Int()))
	return told.Ranged || told.Bound != quantity.Exactly ||
		slices.ContainsFunc(spoonParts, func(known quantity.Number) bool { return known.Equal(part) })
}

// smallestTold is what an untold kitchen scale shows, g (common practice, no source).
var smallestTold = quantity.Whole(1)

// blurs says whether the steps of a gauge are too coarse for an amount.
func blurs(g gauge, told quantity.Amount) bool {
	if told.Dimension == quantity.Temperature {
		return told.Ranged && told.High.Minus(told.Low).Less(g.reads)
	}
	if g.reads.IsZero() {
		return told.Dimension == quantity.Mass && told.Nominal.Less(smallestTold)
	}
	return told.Nominal.Times(blurred).Less(halfStep(g))
}

func halfStep(g gauge) quantity.Number {
	step := g.reads
	if step.IsZero() {
		step = smallestTold
	}
	return step.Over(quantity.Whole(2))
}

func (m *measuring) noGauge(step *kit.Step, o *kit.Operation, told quantity.Amount) {
	d, _ := gaugedIn(told)
	at := amountSpan(o)
	if known := m.missing[d]; known != nil {
		known.Also = append(known.Also, diag.Place{Where: at, Note: onOneLine(at) + ", " + inStep(step)})
		return
	}
	names := measureNames[d]
	finding := &diag.Finding{
		Where: at, About: step.ID,
		Found:    inStep(step) + " has “" + onOneLine(at) + "” to measure, and kit.yaml lists nothing to measure it with",
		Expected: names[0] + " among the tools",
		Remedies: diag.Fix("add “" + names[1] + "” under tools, and name it in " + inStep(step)),
	}
	if d == quantity.Temperature {
		finding.Remedies = append(finding.Remedies, diag.Remedy{Do: "say what to look for when it is reached: [no flakes are left](cue:)"})
	} else {
		finding.Remedies = append(finding.Remedies, diag.Remedy{Do: "pack portions and write “all of”, so that nothing need be measured"})
	}
	m.order = append(m.order, d)
	m.missing[d] = finding
}

// scaleSteps are steps that tools for the home are sold with, of any unit.
var scaleSteps = []quantity.Number{
	quantity.Whole(5), quantity.Whole(1), quantity.Ratio(1, 2), quantity.Ratio(1, 10), quantity.Ratio(1, 20), quantity.Ratio(1, 100),
}

func (m *measuring) tooCoarse(step *kit.Step, o *kit.Operation, told quantity.Amount) {
	d, _ := gaugedIn(told)
	best := finest(m.gauges[d])
	at := amountSpan(o)
	reads := "reads to " + show(best.reads, told.Dimension)
	if best.reads.IsZero() {
		reads = "is taken to read 1 g, as kit.yaml does not say what it reads to"
	}
	finding := diag.Finding{
		Where: at, About: o.Target,
		Found:    inStep(step) + " has “" + onOneLine(at) + "” to measure with " + best.name + ", which " + reads,
		Expected: "an amount of which half a step is at most a tenth",
	}
	if best.at.Known() {
		finding.Also = []diag.Place{{Where: best.at, Note: "it reads to " + onOneLine(best.at)}}
	}
	if told.Dimension == quantity.Temperature {
		finding.About = step.ID
		finding.Found = inStep(step) + " has “" + onOneLine(at) + "” to keep with " + best.name + ", which reads to " +
			show(best.reads, quantity.TemperatureDifference)
		finding.Expected = "a range at least as wide as one step of the thermometer"
		finding.Remedies = diag.Fix("tell a wider range", "list a thermometer that reads to "+show(told.High.Minus(told.Low), quantity.TemperatureDifference))
		m.findings = append(m.findings, finding)
		return
	}
	half := halfStep(best)
	finding.Sum = []string{"half a step is " + show(half, told.Dimension) + ", " +
		quantity.Show(half.Over(told.Nominal), quantity.Share, quantity.Digits(2)) + " of " + show(told.Nominal, told.Dimension)}
	if told.Nominal.Over(quantity.Whole(2)).Less(half) {
		finding.Severity = diag.MustFix
	}
	for _, finer := range scaleSteps {
		if finer.Cmp(told.Nominal.Times(blurred).Times(quantity.Whole(2))) <= 0 {
			finding.Remedies = diag.Fix("list a finer tool, such as “reads to: " + quantity.Show(finer, told.Dimension, quantity.In(told.Unit)) + "”")
			break
		}
	}
	finding.Remedies = append(finding.Remedies, diag.Remedy{Do: "pack it in portions and write “all of”, so that nothing need be measured"})
	m.findings = append(m.findings, finding)
}

func (m *measuring) noSuchSpoon(step *kit.Step, o *kit.Operation, told quantity.Amount) {
	at := amountSpan(o)
	finding := diag.Finding{
		Where: at, About: o.Target,
		Found:    inStep(step) + " has “" + onOneLine(at) + "” to measure, for which no set has a spoon",
		Expected: "whole spoons and cups, halves, quarters, thirds or an eighth",
	}
	if near, off, ok := quantity.Household(told.Nominal, m.Kit.Kitchen.Value); ok {
		finding.Remedies = []diag.Remedy{{
			Do:   "write “" + near + "” instead",
			Then: quantity.Show(off.Abs(), quantity.Share, quantity.Digits(2)) + " away from “" + onOneLine(at) + "”",
		}}
	}
	if density, _ := density(m.Kit, o.Target); density.Given() {
		weight := told.Nominal.Times(density.Value.Nominal)
		finding.Remedies = append(finding.Remedies, diag.Remedy{Do: "tell it by weight: " + down(weight, quantity.Amount{Dimension: quantity.Mass})})
	}
	finding.Remedies = append(finding.Remedies, diag.Remedy{Do: "put a measure of the right size into the box, and name it under measures in kit.yaml"})
	m.findings = append(m.findings, finding)
}
