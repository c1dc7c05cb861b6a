package faults_test

import (
	"slices"
	"strings"
)

// longWinded is a sentence that no beginner can follow.
const longWinded = "Immediately following complete preparation of the aforementioned constituents, and while continuously maintaining " +
	"the indicated conditions, proceed in an uninterrupted manner, considering that irregularities introduced at this stage of the " +
	"operation are invariably visible afterwards and that their subsequent elimination necessitates disproportionate additional effort."

// Faults in how things are worded.
var wordingFaults = []faultKind{
	{name: "a time, a heat or a place that everyone reads differently", rule: "vague-instruction", edits: func(k *cleanKit) []edit {
		return eachStep(k, "Leave it for a while.", "Put it in the right position.", "Go on until it is done.")
	}},
	{name: "a heat told by the word, where nothing says how hot", rule: "vague-instruction", edits: func(k *cleanKit) []edit {
		var all []edit
		for i, end := range k.sectionEnds("method.md") {
			isTold := slices.ContainsFunc(k.links(), func(l link) bool {
				return l.step == i && slices.Contains([]string{"cue", "warm", "cool"}, l.kind)
			})
			all = append(all, end.becomes("\nSet it over medium heat.\n").harmlessIf(isTold))
		}
		return all
	}},
	{name: "an abbreviation read in two ways", rule: "ambiguous-abbreviation", also: []string{"units-mixed"}, edits: func(k *cleanKit) []edit {
		return eachStep(k, "Never heat it above 180 degrees.", "The last 2 gr cling to the spoon.", "It takes 2 T of salt.")
	}},
	{name: "a sentence that begins with a figure", rule: "number-at-sentence-head", edits: func(k *cleanKit) []edit {
		return eachStep(k, "The rest is easy. 3 friends can share the table.")
	}},
	{name: "a title that says nothing to do", rule: "no-verb-first", edits: func(k *cleanKit) []edit {
		return eachHeading(k, "method.md", func(heading place) []edit {
			title, _ := heading.within(`\[(.*)\]`)
			return []edit{title.becomes("Preparation"), title.becomes("The work is done")}
		})
	}},
	{name: "a temperature in the other system", rule: "units-mixed", edits: func(k *cleanKit) []edit {
		if !strings.Contains(k.files["method.md"], "°C") {
			return nil // the only one is of one system
		}
		return eachStep(k, "Keep it below 120 °F.")
	}},
	{name: "a figure of a translation that differs", rule: "translation-differs", also: anySum(), edits: func(k *cleanKit) []edit {
		var all []edit
		whole := k.withTranslations()
		for file := range k.translated {
			if !strings.HasPrefix(file, "method.") {
				continue
			}
			for _, l := range whole.linksIn(file) {
				if told, ok := l.words.within(`(\d+)`); ok {
					n, _ := reads(told.text())
					all = append(all, told.becomes(more(n, 1)))
				}
			}
		}
		return all
	}},
	{name: "a step too hard to read", rule: "hard-to-read", edits: func(k *cleanKit) []edit {
		return eachStep(k, longWinded+" "+longWinded)
	}},
	{name: "a component called otherwise than in the box", rule: "named-otherwise", edits: func(k *cleanKit) []edit {
		return eachTaking(k, func(c entry, l link, told place, each figure) []edit {
			if each.unit == "" || strings.Contains(l.words.text(), "level") {
				return nil
			}
			return []edit{l.words.becomes(told.text() + " of blue marbles")}
		}, nil)
	}},
	{name: "poured after it has set", rule: "used-too-late", twins: everyRow, also: []string{"time-claimed-too-short"}, edits: inTwin("used-too-late",
		row{"method.md", "[2 minutes](wait:) to soak", "[9 minutes](wait:) to soak", "all of the plaster", []figure{{22, "min"}}},
		row{"method.md", "stir for [3 minutes]", "stir for [13 minutes]", "all of the plaster", []figure{{25, "min"}}},
		row{"method.md", "Allow [5 minutes](work:).", "Allow [45 minutes](work:).", "all of the resin", []figure{{55, "min"}}},
		row{"kit.yaml", "use within: 15 min", "use within: 10 min", "all of the plaster", []figure{{15, "min"}}})},
}
