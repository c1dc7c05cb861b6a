package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var missingTrouble = Rule{
	Name:     "missing-trouble",
	Severity: diag.MustFix,
	Title:    "The text points at a help that trouble.md does not have",
	Explanation: `A customer whose gel weeps follows the reference to the help and finds nothing. A trouble
is found by the name that its heading in trouble.md gives in “(trouble:name)”.

Write the name of the trouble that is meant, or write the help.`,
	Check: func(s Subject) []diag.Finding {
		var names []string
		for _, trouble := range s.Kit.Troubles {
			names = append(names, trouble.ID)
		}
		return missing(s.Kit, kit.ToHelp, "trouble", names)
	},
}
