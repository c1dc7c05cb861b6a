package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
)

var essentialToolNotAnnounced = Rule{
	Name:     "essential-tool-not-announced",
	Severity: diag.MustFix,
	Title:    "A step needs a tool of the customer's, and the cover does not say so",
	Explanation: `The cover announces what a customer must have: the tools marked “essential: true”. A
step that links a tool which is not in the box and is marked neither essential nor
helpful leaves it open whether the kit works without it.

Mark it “essential: true” and it is announced; mark it “essential: false” if the step
can be done without it; or put it into the box.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, use := range s.Ledger.Tools {
			tool := s.Kit.Tool(use.Tool)
			if use.Linked && tool.From.Value != kit.FromBox && !tool.Essential.Given() {
				findings = append(findings, notAnnounced(tool, use))
			}
		}
		return findings
	},
}

func notAnnounced(tool *kit.Tool, use *ledger.ToolUse) diag.Finding {
	finding := diag.Finding{
		Where: tool.IDSpan, About: tool.ID,
		Found:    inStep(use.Steps[0]) + " needs " + tool.String() + ", which the customer brings, and the cover does not announce it",
		Expected: "“essential: true” or “essential: false” for every tool that the customer brings",
		Remedies: diag.Fix(
			"write “essential: true” under "+tool.ID+" in kit.yaml: the cover then asks for it",
			"write “essential: false”, if the step can be done without it",
			"put one into the box and write “from: box”"),
	}
	for i, at := range use.Spans {
		finding.Also = append(finding.Also, diag.Place{Where: at, Note: inStep(use.Steps[i])})
	}
	return finding
}
