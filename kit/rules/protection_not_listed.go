package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var protectionNotListed = Rule{
	Name:     "protection-not-listed",
	Severity: diag.ShouldFix,
	Title:    "A caution tells people to wear what is neither in the box nor on the list",
	Explanation: `“Wear goggles” helps nobody who has none in the house when the lye is already weighed. What a
caution asks for is in the box, or stands among the tools that the customer brings, so
that it is there before the work begins.

The cautions of the steps and of the parts are searched for gloves, goggles, masks and
aprons; the names of tools and components are searched for the same words.

Put it into the box, or list it under “tools” with “from: customer”.`,
	Check: func(s Subject) []diag.Finding {
		kinds := protections[language(s.Kit)]
		if kinds == nil {
			return []diag.Finding{noWords(s.Kit, "protective things", protections)}
		}
		var findings []diag.Finding
		seen := map[string]bool{}
		for _, caution := range cautionsOfMethod(s.Kit) {
			for _, kind := range kinds {
				if seen[kind[0]] || !worn(caution.Text, kind) || isListed(s.Kit, kind) {
					continue
				}
				seen[kind[0]] = true
				findings = append(findings, diag.Finding{
					Where: caution.Span, About: "tools",
					Found:    "a caution speaks of " + kind[0] + ", and nothing of that name is in the box or among the tools",
					Expected: kind[0] + " in the box, or on the list of what the customer brings",
					Remedies: diag.Fix("list it under “tools” in kit.yaml with “from: customer”", "pack it"),
				})
			}
		}
		return findings
	},
}

// protections are the words for what people wear, by language: each kind by its beginnings
// of words, the first of them as it is told.
var protections = map[string][][]string{
	"en": {{"gloves", "glove"}, {"goggles", "goggle", "safety glasses"}, {"mask"}, {"apron"}},
	"fr": {{"gants", "gant"}, {"lunettes"}, {"masque"}, {"tablier"}},
	"de": {{"Handschuhe", "handschuh"}, {"Schutzbrille", "schutzbrille"}, {"Maske", "maske", "staubmaske"}, {"Schürze", "schürze"}},
	"es": {{"guantes", "guante"}, {"gafas"}, {"mascarilla"}, {"delantal"}},
	"nl": {{"handschoenen", "handschoen", "ovenwant"}, {"veiligheidsbril"}, {"masker", "stofmasker"}, {"schort"}},
	"it": {{"guanti", "guanto"}, {"occhiali"}, {"mascherina"}, {"grembiule"}},
}

// worn says whether a text speaks of a kind of protection.
func worn(text string, kind []string) bool {
	lower := strings.ToLower(text)
	return slices.ContainsFunc(kind, func(word string) bool {
		word = strings.ToLower(word)
		for _, one := range wordsOf(lower) {
			if strings.HasPrefix(one, word) || strings.HasSuffix(one, word) {
				return true
			}
		}
		return strings.Contains(word, " ") && strings.Contains(lower, word)
	})
}

func isListed(k *kit.Kit, kind []string) bool {
	for _, tool := range k.Tools {
		if slices.ContainsFunc(tool.Names(), func(name string) bool { return worn(name, kind) }) {
			return true
		}
	}
	return slices.ContainsFunc(k.Components, func(c *kit.Component) bool { return worn(c.String(), kind) }) ||
		slices.ContainsFunc(k.Household, func(h *kit.Household) bool { return worn(h.String(), kind) })
}

// cautionsOfMethod are those of the parts and of the steps, in their order.
func cautionsOfMethod(k *kit.Kit) []kit.Caution {
	var all []kit.Caution
	for _, part := range k.Method.Parts {
		all = append(all, part.Cautions...)
		for _, step := range part.Steps {
			all = append(all, step.Cautions...)
		}
	}
	return all
}
