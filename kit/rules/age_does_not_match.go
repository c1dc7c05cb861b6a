package rules

import (
	"tallyfold/kit/diag"
)

var ageDoesNotMatch = Rule{
	Name:     "age-does-not-match",
	Severity: diag.WorthKnowing,
	Title:    "The age on the box is lower than what the steps ask for",
	Explanation: `The box says 8+, and step 3 needs a craft knife. Someone buys it for a child, and either
sits beside it or does not.

The tools and materials that each step works with, and what it warms above 60 °C, are held
against a short table of ages from which makers usually let a child do that alone: scissors
and needles 6, awls 8, irons and glue guns 10, knives, saws, stoves and hot liquids 12,
drills and soldering irons 14, heat guns and lye 16, torches and kilns 18. The table is
our own: common practice, no source. It is no age grading, which the law leaves to people
licensed to do it. A step that calls a grown-up in, itself or in a caution, is not told.

Raise the age, let a grown-up do that step and say so in it, or use another tool.`,
	Check: func(s Subject) []diag.Finding {
		age := s.Kit.Audience.Age
		if !age.Given() {
			return nil
		}
		if demands[language(s.Kit)] == nil {
			return []diag.Finding{noWords(s.Kit, "what is not for every age", demands)}
		}
		finding := diag.Finding{Where: age.Span, About: "audience"}
		least, first := age.Value, demanding{}
		for _, d := range demandsOf(s.Kit) {
			if d.age <= age.Value || callsGrownUp(s.Kit, d.step) {
				continue
			}
			least = max(least, d.age)
			if first.step == nil {
				first = d
			}
			finding.Sum = append(finding.Sum, inStep(d.step)+": "+d.called+", usually from "+whole(d.age).String()+" (common practice, no source)")
			finding.Also = append(finding.Also, diag.Place{Where: d.step.Span, Note: inStep(d.step) + ", " + d.called})
		}
		if len(finding.Sum) == 0 {
			return nil
		}
		finding.Found = "the kit is for " + whole(age.Value).String() + "+, and what " + inStep(first.step) + " needs (" + first.called + ") is usually left to those of " +
			whole(first.age).String() + " and over"
		finding.Expected = "an age from which the steps can be done alone, or a grown-up called in where they cannot"
		raised := whole(least).String() + "+"
		finding.Remedies = []diag.Remedy{
			{Do: "say in the step that a grown-up does it or sits by"},
			{Do: "write “age: " + raised + "” under audience in kit.yaml", Changes: rewrite(s.Kit, age.Span, raised)},
		}
		return []diag.Finding{finding}
	},
	NotLookedAt: func(s Subject) []string {
		if !s.Kit.Audience.Age.Given() {
			return []string{"no age is told"}
		}
		return nil
	},
}
