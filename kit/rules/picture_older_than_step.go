package rules

import (
	"strconv"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var pictureOlderThanStep = Rule{
	Name:     "picture-older-than-step",
	Severity: diag.WorthKnowing,
	Title:    "A picture was drawn for an earlier edition of the kit",
	Explanation: `A new edition has another jar, and the drawing still shows the old one. Nobody notices,
because nobody looks at a drawing that has always been there.

When a file was saved says nothing: it changes with every copy of the folder. So a picture
is only looked at where its link says for which edition it was drawn or last looked at,
“picture:jar.svg?drawn-for=1”. Where the kit has a later edition, it is worth knowing that
nobody has looked since. Whether the step has really changed is for people to see.

Look at step and picture side by side; draw it anew where they differ, and write the
edition you have looked at.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		operations(s.Kit, func(o *kit.Operation, step *kit.Step) {
			if s.Kit.Edition.Given() && o.DrawnFor.Given() && o.DrawnFor.Value < s.Kit.Edition.Value {
				findings = append(findings, olderPicture(s.Kit, o, step))
			}
		})
		return findings
	},
	NotLookedAt: func(s Subject) []string {
		var untold []string
		operations(s.Kit, func(o *kit.Operation, _ *kit.Step) {
			if o.Kind == kit.ShowPicture && !o.DrawnFor.Given() {
				untold = append(untold, o.Target)
			}
		})
		if len(untold) == 0 {
			return nil
		}
		return []string{"it is not told for which edition these pictures were drawn: " + listed(withoutDoubles(untold))}
	},
}

func olderPicture(k *kit.Kit, o *kit.Operation, step *kit.Step) diag.Finding {
	drawn, now := strconv.Itoa(o.DrawnFor.Value), strconv.Itoa(k.Edition.Value)
	finding := diag.Finding{
		Where: o.DrawnFor.Span, About: "edition",
		Found:    "the picture " + o.Target + " was drawn for edition " + drawn + ", and this is edition " + now,
		Expected: "a picture that someone has looked at for this edition",
		Remedies: []diag.Remedy{
			{Do: "draw it anew where it differs from what the text says now"},
			{Do: "write ?drawn-for=" + now + ", once you have looked", Changes: rewrite(k, o.DrawnFor.Span, now)},
		},
		Also: []diag.Place{{Where: k.Edition.Span, Note: "edition " + now}},
	}
	if step != nil {
		finding.About = step.ID
		finding.Remedies[0].Do = "draw it anew where it differs from what " + inStep(step) + " says now"
	}
	return finding
}
