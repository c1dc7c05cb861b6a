package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var missingPicture = Rule{
	Name:     "missing-picture",
	Severity: diag.MustFix,
	Title:    "A step shows a picture that is not in the folder",
	Explanation: `A picture is found by its file name in the folder pictures. One that is not there leaves a
hole in the booklet.

Put the file there, or write the name of the one that is meant.`,
	Check: func(s Subject) []diag.Finding {
		var names []string
		for _, picture := range s.Kit.Pictures {
			names = append(names, picture.Name)
		}
		return missing(s.Kit, kit.ShowPicture, "picture", names)
	},
}
