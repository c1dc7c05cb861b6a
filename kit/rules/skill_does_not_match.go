package rules

import (
	"slices"

	"tallyfold/kit/diag"
)

var skillDoesNotMatch = Rule{
	Name:     "skill-does-not-match",
	Severity: diag.WorthKnowing,
	Title:    "The box says for beginners, and a step needs more than that",
	Explanation: `A beginner has never held a soldering iron, and the first joint of their life is the one
in your kit. They write to say that it does not work.

The tools and materials that each step works with are held against a short table of what
makers usually ask some practice for (sewing machine, drill, soldering iron, lye) or
experience (torch, kiln, lathe). The table is our own: common practice, no source. Nothing
else is judged: how hard a fold or a knot is, no table knows.

Name the skill that is needed, teach it in a step of its own with something to practise on,
and accept the finding; or use another tool.`,
	Check: func(s Subject) []diag.Finding {
		skill := s.Kit.Audience.Skill
		has := slices.Index(skills, skill.Value)
		if !skill.Given() || has < 0 {
			return nil
		}
		if demands[language(s.Kit)] == nil {
			return []diag.Finding{noWords(s.Kit, "what is not for every beginner", demands)}
		}
		finding := diag.Finding{Where: skill.Span, About: "audience"}
		most, first := has, demanding{}
		for _, d := range demandsOf(s.Kit) {
			needs := slices.Index(skills, d.skill)
			if needs <= has {
				continue
			}
			most = max(most, needs)
			if first.step == nil {
				first = d
			}
			finding.Sum = append(finding.Sum, inStep(d.step)+": "+d.called+", usually for "+d.skill+" (common practice, no source)")
			finding.Also = append(finding.Also, diag.Place{Where: d.step.Span, Note: inStep(d.step) + ", " + d.called})
		}
		if len(finding.Sum) == 0 {
			return nil
		}
		finding.Found = "the kit is for “" + skill.Value + "”, and what " + inStep(first.step) + " needs (" + first.called + ") usually asks for “" + first.skill + "”"
		finding.Expected = "the skill that the steps ask for"
		finding.Remedies = []diag.Remedy{
			{Do: "write “skill: " + skills[most] + "” under audience in kit.yaml", Changes: rewrite(s.Kit, skill.Span, skills[most])},
			{Do: "let the customer practise on something that does not matter, in a step of its own"},
		}
		return []diag.Finding{finding}
	},
	NotLookedAt: func(s Subject) []string {
		if !s.Kit.Audience.Skill.Given() {
			return []string{"no skill is told"}
		}
		return nil
	},
}

// skills as kit.yaml knows them, the least first.
var skills = []string{"beginner", "some practice", "experienced"}
