package rules

import (
	"regexp"
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/handbook"
	"tallyfold/kit/source"
)

var plasterOnSkin = Rule{
	Name:     "plaster-on-skin",
	Severity: diag.MustFix,
	Title:    "A step puts a hand, a foot or a face into plaster, or plaster on skin",
	Explanation: `Plaster gets hot as it sets, in a thick piece hot enough to burn to the bone, and it grips: a
hand that is in it does not come out in time. People have lost fingers that way (suppliers'
sheets of gypsum plasters, from memory). Casts of a body are taken in stuff that is made for
skin, and the plaster is poured into the empty mould.

In kits with a component that has “hazards: plaster” the sentences of the steps, without
their cautions, are searched for orders that put a part of a body into something or
something on skin. It goes by English words; what is meant otherwise can be found too.

Take a casting material for skin, and pour the plaster when the hand is out.`,
	Check: func(s Subject) []diag.Finding {
		if !slices.ContainsFunc(s.Kit.Components, isPlaster) {
			return nil
		}
		if language(s.Kit) != "en" {
			return []diag.Finding{noWords(s.Kit, "parts of a body in plaster", map[string]bool{"en": true})}
		}
		var findings []diag.Finding
		for _, step := range s.Kit.Method.Steps() {
			if where, found := bodyInPlaster(step); found {
				findings = append(findings, diag.Finding{
					Where: where, About: step.ID,
					Found:    "“" + strings.Join(strings.Fields(where.Text()), " ") + "”, in a kit with plaster",
					Expected: "no part of a body in plaster, and no plaster on skin",
					Remedies: diag.Fix("take the cast in a material that is made for skin, and pour plaster into the empty mould", "if it is no plaster that is meant, say in other words what goes where"),
				})
			}
		}
		return findings
	},
	NotLookedAt: func(s Subject) []string {
		if !slices.ContainsFunc(s.Kit.Components, isPlaster) {
			return []string{"no component has “hazards: plaster”"}
		}
		return nil
	},
}

func isPlaster(c *kit.Component) bool {
	return slices.ContainsFunc(c.Hazards, func(said kit.Said[string]) bool { return said.Value == handbook.Plaster })
}

// ontoSkin are orders that put a part of a body into something, or something on one.
var ontoSkin = []*regexp.Regexp{
	regexp.MustCompile(`(?i)\b(?:press|push|dip|lay|put|place|lower|hold|sink|stick|set)\s+(?:[\w'’]+\s+){0,3}(?:hands?|foot|feet|fingers?|arms?|face|fist)\s+(?:[\w'’]+\s+){0,2}(?:into|in|inside|under)\b`),
	regexp.MustCompile(`(?i)\b(?:cover|coat|spread|pour|wrap|brush|smooth)\s+(?:[\w'’]+\s+){0,6}(?:hands?|foot|feet|fingers?|arms?|face|belly|skin)\b`),
}

// bodyInPlaster finds the first such order of a step outside its cautions, save one that
// speaks of gloves.
func bodyInPlaster(step *kit.Step) (source.Span, bool) {
	text := step.Body.Text()
	for _, order := range ontoSkin {
		for _, at := range order.FindAllStringIndex(text, -1) {
			where := step.Body.Part(at[0], at[1])
			if !inCaution(where, step.Cautions) && !strings.Contains(strings.ToLower(text[at[0]:min(len(text), at[1]+40)]), "glove") {
				return where, true
			}
		}
	}
	return source.Span{}, false
}
