package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var missingStep = Rule{
	Name:     "missing-step",
	Severity: diag.MustFix,
	Title:    "The text points at a step that is not there",
	Explanation: `“See step …” must lead somewhere. A step is found by its name, which its heading gives in
“(step:name)”; the number that is printed follows by itself.

Write the name of the step that is meant.`,
	Check: func(s Subject) []diag.Finding {
		var names []string
		for _, step := range s.Kit.Method.Steps() {
			names = append(names, step.ID)
		}
		return missing(s.Kit, kit.ToStep, "step", names)
	},
}

// missing finds links of a kind whose name is none of those there are.
func missing(k *kit.Kit, kind kit.Kind, what string, names []string) []diag.Finding {
	known := map[string]bool{}
	for _, name := range names {
		known[name] = true
	}
	var findings []diag.Finding
	operations(k, func(o *kit.Operation, _ *kit.Step) {
		if o.Kind == kind && !known[o.Target] {
			findings = append(findings, pointsNowhere(o, what, names))
		}
	})
	return findings
}

func pointsNowhere(o *kit.Operation, what string, names []string) diag.Finding {
	where := o.TargetSpan
	if !where.Known() {
		where = o.Span
	}
	finding := diag.Finding{
		Where: where, About: o.Target,
		Found:    "“" + string(o.Kind) + ":" + o.Target + "”, and there is no " + what + " of that name",
		Expected: "the name of a " + what + some(names),
	}
	if near := nearest(o.Target, names); near != "" {
		finding.Remedies = diag.Fix("write " + string(o.Kind) + ":" + near + ", if that is meant")
	}
	finding.Remedies = append(finding.Remedies, diag.Remedy{Do: "add the " + what + ", or take the link out"})
	return finding
}

// some tells a handful of names.
func some(names []string) string {
	const handful = 8
	switch {
	case len(names) == 0:
		return " (there is none yet)"
	case len(names) > handful:
		return " (" + listed(names[:handful]) + " …)"
	}
	return " (" + listed(names) + ")"
}
