package rules

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var pictureWithoutWords = Rule{
	Name:     "picture-without-words",
	Severity: diag.ShouldFix,
	Title:    "A picture has no words that say what it shows",
	Explanation: `The words of a picture stand under it in the booklet, so that a reader knows what to look at,
and they are read aloud to somebody who cannot see it. A picture without them leaves both
to guess.

Say in a few words what one sees, and what matters in it: ![The wick stands upright, held
by the bar](picture:jar.jpg).`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		operations(s.Kit, func(o *kit.Operation, _ *kit.Step) {
			if o.Kind != kit.ShowPicture || strings.TrimSpace(o.Text) != "" {
				return
			}
			findings = append(findings, diag.Finding{
				Where: o.Span, About: o.Target,
				Found:    "the picture " + o.Target + " has no words",
				Expected: "a few words that say what it shows, in the square brackets",
				Remedies: diag.Fix("write what one sees in it between the brackets, such as [the finished jar, cut open](picture:"+o.Target+")", "take the picture out, if it shows nothing that the step needs"),
			})
		})
		return findings
	},
}
