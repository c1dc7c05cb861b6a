package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

var toolNeverUsed = Rule{
	Name:     "tool-never-used",
	Severity: diag.ShouldFix,
	Sums:     true,
	Title:    "A tool is listed and no step uses it",
	Explanation: `The cover asks a customer to have a tool ready, and no step needs it: they will have
bought or borrowed it for nothing, or think that a step is missing.

A step uses a tool when it links or names it. A scale is used wherever something is
weighed, a thermometer wherever a temperature is told, measuring spoons and jugs
wherever something is measured by them. "The stick" is enough for a stirring stick, where
nothing else on the lists is a stick. What stands in for another tool may stay
unnamed, and what only trouble.md needs is used there.

Name it in the step that needs it, or take it off the list.`,
	Check: func(s Subject) []diag.Finding {
		used := map[string]bool{}
		for _, use := range s.Ledger.Tools {
			used[use.Tool] = true
		}
		helps := linkedKeys(s.Kit)
		var findings []diag.Finding
		for _, tool := range s.Kit.Tools {
			if !used[tool.ID] && !helps[tool.ID] && len(tool.StandsInFor) == 0 && !measures(s.Kit, tool) && !helpNames(s.Kit, tool) &&
				!isSpokenOf(s.Kit, tool) {
				findings = append(findings, unusedTool(tool))
			}
		}
		return findings
	},
}

func unusedTool(tool *kit.Tool) diag.Finding {
	return diag.Finding{
		Where: tool.IDSpan, About: tool.ID,
		Found:    tool.String() + " is listed as a tool, and no step uses it",
		Expected: "a step for every tool on the list",
		Remedies: diag.Fix(
			"name it in the step that needs it: ["+strings.ToLower(tool.String())+"](tool:"+tool.ID+")",
			"take it out of tools in kit.yaml"),
	}
}

// measures says whether a measuring tool is needed because steps tell amounts or
// temperatures that nothing else on the list would tell.
func measures(k *kit.Kit, tool *kit.Tool) bool {
	wanted := map[quantity.Dimension]bool{}
	words := measuringWords[language(k)]
	is := func(names ...string) bool {
		return slices.ContainsFunc(names, func(name string) bool { return isCalled(tool.String(), name) })
	}
	spoons := is(words.spoons...)
	switch reads := tool.ReadsTo.Value.Dimension; {
	case is(words.scales...), reads == quantity.Mass:
		wanted[quantity.Mass] = true
	case is(words.thermometers...), reads == quantity.Temperature, reads == quantity.TemperatureDifference:
		wanted[quantity.Temperature] = true
	case is(words.rulers...), reads == quantity.Length:
		wanted[quantity.Length] = true
	case is(words.timers...):
		wanted[quantity.Duration] = true
	case reads == quantity.Volume, is(words.jugs...):
		wanted[quantity.Volume] = true
	}
	needed := false
	operations(k, func(o *kit.Operation, _ *kit.Step) {
		for _, told := range o.Phrase.Amounts {
			needed = needed || wanted[told.Dimension] || spoons && told.Household
		}
	})
	return needed
}

// isSpokenOf says whether the text of the method has the key of a tool, or the noun
// of its name alone ("the stick" for a stirring stick) where nothing else is one.
func isSpokenOf(k *kit.Kit, tool *kit.Tool) bool {
	called := [][]string{wordsOf(strings.ReplaceAll(tool.ID, "-", " "))}
	noun := []string{nounOf(tool.String())}
	same := 0
	for _, name := range thingNames(k) {
		if holdsPhrase(name, noun) {
			same++
		}
	}
	if same <= 2 { // its own name and key
		called = append(called, noun)
	}
	for _, part := range k.Method.Parts {
		texts := []source.Span{part.Body}
		for _, step := range part.Steps {
			texts = append(texts, step.Body)
		}
		for _, text := range texts {
			words := wordsOf(text.Text())
			if slices.ContainsFunc(called, func(name []string) bool { return holdsPhrase(words, name) }) {
				return true
			}
		}
	}
	return false
}

// nounOf is the word of a name that says what it is: "lid" of "Lid for the pan".
func nounOf(name string) string {
	words := wordsOf(name)
	for i, word := range words {
		if i > 0 && slices.Contains([]string{"for", "to", "of", "on", "with", "in"}, word) {
			return words[i-1]
		}
	}
	if len(words) == 0 {
		return ""
	}
	return words[len(words)-1]
}

// helpNames says whether the running text of trouble.md names the tool.
func helpNames(k *kit.Kit, tool *kit.Tool) bool {
	for _, trouble := range k.Troubles {
		if _, ok := readTrouble(trouble).find(tool.String()); ok {
			return true
		}
	}
	return false
}
