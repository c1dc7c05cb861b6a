package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var missingPicture = Rule{
	Name:     "missing-picture",
	Severity: diag.MustFix,
	Title:    "A step or the list of the box shows a picture that is not in the folder",
	Explanation: `A picture is found by its file name in the folder pictures. One that is not there leaves a
hole in the booklet. Steps name one by a link, components and tools by “picture:”.

Put the file there, or write the name of the one that is meant.`,
	Check: func(s Subject) []diag.Finding {
		var names []string
		for _, picture := range s.Kit.Pictures {
			names = append(names, picture.Name)
		}
		findings := missing(s.Kit, kit.ShowPicture, "picture", names)
		for _, listed := range picturesInList(s.Kit) {
			if s.Kit.Picture(listed.Value) == nil {
				findings = append(findings, notInFolder(listed, names))
			}
		}
		return findings
	},
}

// picturesInList are those that the lists of what is needed show, of components and tools.
func picturesInList(k *kit.Kit) []kit.Said[string] {
	var all []kit.Said[string]
	for _, c := range k.Components {
		if c.Picture.Given() {
			all = append(all, c.Picture)
		}
	}
	for _, t := range k.Tools {
		if t.Picture.Given() {
			all = append(all, t.Picture)
		}
	}
	return all
}

func notInFolder(listed kit.Said[string], names []string) diag.Finding {
	finding := diag.Finding{
		Where: listed.Span, About: listed.Value,
		Found:    "“picture: " + listed.Value + "”, and there is no picture of that name",
		Expected: "the name of a picture" + some(names),
	}
	if near := nearest(listed.Value, names); near != "" {
		finding.Remedies = []diag.Remedy{{Do: "write “picture: " + near + "”, if that is meant", Changes: []diag.Change{{Where: listed.Span, New: near}}}}
	}
	finding.Remedies = append(finding.Remedies, diag.Remedy{Do: "put the picture into the folder pictures, or take the line out"})
	return finding
}
