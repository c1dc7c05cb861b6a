package faults_test

import (
	"slices"
	"strings"
)

// Faults in the list of tools.
var toolFaults = []faultKind{
	{name: "a tool taken off the list", rule: "unknown-target", also: slicesOf(linkLost, "missing-reference", "tool-not-listed", "protection-not-listed"), edits: func(k *cleanKit) []edit {
		return eachTool(k, func(tool entry, named []place) []edit {
			at := k.find("method.md", `\]\((?:tool|vessel|clean|left):(`+tool.key+`)[?)]`)
			at = append(at, k.find("method.md", `[?]in=(`+tool.key+`)\b`)...)
			return []edit{tool.becomes("").toldAt(at...)}
		})
	}},
	{name: "a tool on the list that no step uses", rule: "tool-never-used", edits: func(k *cleanKit) []edit {
		last := k.section("tools")[len(k.section("tools"))-1]
		var all []edit
		for _, tool := range []string{"Hammer", "Sieve", "Rubber mallet", "Palette knife", "Funnel"} {
			all = append(all, last.end().becomes("  in-vain: {name: "+tool+", from: customer, essential: true}\n"))
		}
		return all
	}},
	{name: "a tool whose only link is gone", rule: "tool-never-used", edits: func(k *cleanKit) []edit {
		return eachTool(k, func(tool entry, named []place) []edit {
			links := slices.DeleteFunc(slices.Clone(k.links()), func(l link) bool { return l.key != tool.key })
			isMeasure := strings.Contains(tool.text(), "reads to") || strings.Contains(tool.text(), "Measuring")
			if len(links) != 1 || links[0].kind != "tool" || strings.Contains(tool.text(), "stands in for") {
				return nil
			}
			return []edit{links[0].becomes("that which you have").toldAt(tool.head()).harmlessIf(len(named) > 1 || isMeasure)}
		})
	}},
	{name: "a tool in running text that is not on the list", rule: "tool-not-listed", edits: func(k *cleanKit) []edit {
		return eachStep(k, "Smooth it with a rolling pin.", "Hold it with tweezers.", "Point a hair dryer at it.", "Press it with an iron.", "Weigh it down and use pliers.")
	}},
	{name: "a tool of the customer's that the cover keeps quiet about", rule: "essential-tool-not-announced", edits: func(k *cleanKit) []edit {
		return eachTool(k, func(tool entry, named []place) []edit {
			essential, _ := tool.within(`(, essential: \w+)`)
			isLinked := slices.ContainsFunc(k.links(), func(l link) bool { return l.key == tool.key })
			return []edit{essential.becomes("").harmlessIf(strings.Contains(tool.text(), "from: box") || !isLinked)}
		})
	}},
	{name: "a tool that stands in for one that is not there", twins: few, rule: "missing-reference", also: []string{"picture-shows-another-tool"}, edits: func(k *cleanKit) []edit {
		return eachTool(k, func(tool entry, named []place) []edit {
			other, ok := tool.field("stands in for")
			if !ok {
				return nil
			}
			return []edit{other.becomes(misspelt(other.text())), other.becomes("nothing-we-have")}
		})
	}},
	{name: "who brings a tool is not told", twins: few, rule: "missing-field", also: []string{"essential-tool-not-announced"}, edits: func(k *cleanKit) []edit {
		return eachTool(k, func(tool entry, named []place) []edit {
			from, _ := tool.within(`(, from: \w+)`)
			return []edit{from.becomes("")}
		})
	}},
	{name: "who brings a tool is misspelt", twins: few, rule: "wrong-type", also: []string{"essential-tool-not-announced"}, edits: func(k *cleanKit) []edit {
		return eachTool(k, func(tool entry, named []place) []edit {
			from, _ := tool.field("from")
			return []edit{from.becomes(misspelt(from.text()))}
		})
	}},
}

// eachTool makes edits in each tool, given where the texts name it.
func eachTool(k *cleanKit, make func(tool entry, named []place) []edit) []edit {
	var all []edit
	for _, tool := range k.section("tools") {
		name, _ := tool.field("name")
		called, _, _ := strings.Cut(strings.ReplaceAll(strings.ToLower(name.text()), " to ", " of "), " of ")
		called, _, _ = strings.Cut(called, " for ")
		words := strings.Fields(called)
		var named []place
		for _, file := range []string{"method.md", "trouble.md"} {
			for _, word := range []string{strings.ReplaceAll(tool.key, "-", " "), words[len(words)-1]} {
				named = append(named, k.find(file, `(?i)[^:=](\b`+word+`s?\b)`)...)
			}
		}
		lines := map[int]place{}
		for _, p := range named {
			lines[p.from] = p
		}
		named = nil
		for _, p := range lines {
			named = append(named, p)
		}
		all = append(all, make(tool, named)...)
	}
	return all
}
