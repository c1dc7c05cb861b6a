package faults_test

import (
	"strings"

	"tallyfold/kit/proof"
)

// afterwards is what may rightly follow when a key of kit.yaml cannot be read: what
// it said is missing to the sums.
var afterwards = slicesOf(linkLost, "missing-reference", "missing-field", "used-but-not-packed", "essential-tool-not-announced",
	"no-density", "container-overfull", "role-without-component", "unreadable-amount", "tool-not-listed", "step-without-action", "duplicate-name", "bad-amount", "lye-for-children", "market-cannot-tell", "market-fact-missing")

// Slips in the form of kit.yaml.
var yamlFaults = []faultKind{
	{name: "a key misspelt", twins: few, rule: "unknown-field", also: afterwards, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)(?:^|^    |[{,] ?)([a-z][a-z -]*[a-z]):`, func(at place) []edit {
			if line := at.line().text(); strings.Contains(line, "with:") || strings.HasPrefix(strings.TrimSpace(line), "#") {
				return nil
			}
			return []edit{at.becomes(misspelt(at.text()))}
		})
	}},
	{name: "a key that means nothing", twins: few, rule: "unknown-field", edits: func(k *cleanKit) []edit {
		var all []edit
		for _, section := range []string{"components", "tools", "household", "mixtures", "pieces"} {
			for _, thing := range k.section(section) {
				end := place{k, thing.file, thing.to, thing.to}
				with := "    shade: pale\n"
				if name, ok := thing.within(`\{name: ()`); ok {
					end, with = place{k, name.file, name.from - len("name: "), name.from - len("name: ")}, "shade: pale, "
				}
				all = append(all, end.becomes(with))
			}
		}
		return all
	}},
	{name: "a key told twice", twins: few, rule: "duplicate-key", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^((?:    )?[a-z][a-z -]*: \S.*\n)`, func(at place) []edit {
			return []edit{at.end().becomes(at.text())}
		})
	}},
	{name: "a key with nothing after it", twins: few, rule: "missing-field", also: afterwards, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^(?:    )?[a-z][a-z -]*:( [^{\n]*)$`, func(at place) []edit {
			return []edit{at.becomes("")}
		})
	}},
	{name: "a key left out that must be there", rule: "missing-field", also: afterwards, edits: func(k *cleanKit) []edit {
		var all []edit
		for _, at := range k.find("kit.yaml", `(?m)^((?:name|makes): .*\n)`) {
			all = append(all, at.becomes("").toldAt(place{k, "kit.yaml", 0, 0}))
		}
		for _, at := range k.find("kit.yaml", `(made in: [a-z]+, |count: \d+(?:, )?|says: [^,]*, |holds: )`) {
			if strings.HasPrefix(at.text(), "holds") {
				continue // a tool need not hold anything
			}
			all = append(all, at.becomes(""))
		}
		return all
	}},
	{name: "a list where words should stand", twins: few, rule: "wrong-type", also: afterwards, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^(?:    )?(?:name|maker|about|makes|packed|density|spare): ([^{\n#]*[^{\n# ])`, func(at place) []edit {
			return []edit{at.becomes("[" + strings.ReplaceAll(at.text(), ", ", " and ") + "]")}
		})
	}},
	{name: "words where keys should stand", twins: few, rule: "wrong-type", also: afterwards, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^(?:    )?(?:audience|time|container|insert): (\{.*\})`, func(at place) []edit {
			return []edit{at.becomes("see the box")}
		})
	}},
	{name: "neither yes nor no", twins: few, rule: "wrong-type", also: []string{"essential-tool-not-announced"}, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?:essential|floats): (\w+)`, func(at place) []edit {
			return []edit{at.becomes("maybe"), at.becomes("1")}
		})
	}},
	{name: "a word where a whole number should stand", rule: "wrong-type", also: []string{"market-cannot-tell"}, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?:edition|age): (\S+[^,\s])`, func(at place) []edit { return []edit{at.becomes("grown up")} })
	}},
	{name: "an amount that is none", twins: few, rule: "bad-amount", also: afterwards, edits: eachAmount(func(at place) []edit {
		return []edit{at.becomes("some"), at.becomes("1.2.3 g"), at.becomes("-5 g"), at.becomes("12 blobs")}
	})},
	{name: "an amount of a kind that cannot stand there", twins: few, rule: "bad-amount", also: afterwards, edits: eachAmount(func(at place) []edit {
		if strings.Contains(at.line().text(), "withstands: "+at.text()) {
			return []edit{at.becomes("95 g")}
		}
		return []edit{at.becomes("20 °C")}
	})},
	{name: "a tolerance of another kind, or larger than the amount", rule: "bad-amount", also: afterwards, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `± ([^,}\n]*)`, func(at place) []edit {
			return []edit{at.becomes("3 °C"), at.becomes("9 kg")}
		})
	}},
	{name: "a line set in with a tab", twins: few, rule: "refused-file", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^(  +)\S`, func(at place) []edit { return []edit{at.becomes("\t")} })
	}},
	{name: "a key without its colon", rule: "unreadable-file", also: []string{"wrong-type"}, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^[a-z]+(:) \S`, func(at place) []edit {
			next := place{k, at.file, at.line().to, at.line().to}
			return []edit{at.becomes("").toldAt(at, next)}
		})
	}},
	{name: "a brace that is never closed", twins: few, rule: "unreadable-file", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^.*(\}) *$`, func(at place) []edit { return []edit{at.becomes("")} })
	}},
	{name: "a quotation mark that is never closed", twins: few, rule: "unreadable-file", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^(?:    )?name: ()\w`, func(at place) []edit { return []edit{at.becomes(`"`)} })
	}},
	{name: "two spaces too many before a key", rule: "unreadable-file", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^()    (?:packed|density|spare|share): `, func(at place) []edit { return []edit{at.becomes("  ")} })
	}},
	{name: "a colon inside words", rule: "unreadable-file", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^(?:about|    name): \S+( )`, func(at place) []edit { return []edit{at.becomes(": ")} })
	}},
	{name: "a value that stands for another", rule: "refused-file", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^(?:    )?(?:name|packed): ()\w`, func(at place) []edit {
			return []edit{at.becomes("&one "), at.becomes("!!str ")}
		})
	}},
	{name: "a second document in the file", rule: "refused-file", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^()(?:components|tools|pieces|claims):$`, func(at place) []edit { return []edit{at.becomes("---\n")} })
	}},
	{name: "a character that no text has", rule: "refused-file", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^(?:name|maker|about|    name): \w+()`, func(at place) []edit {
			return []edit{at.becomes("\x00"), at.becomes("\xe9"), at.becomes("\u2028")}
		})
	}},
	{name: "accepted, and there is no such rule", rule: "missing-reference", edits: accepts("{rule: left-overs, because: we like it}")},
	{name: "accepted, and there is nothing to accept", rule: "accept-matches-nothing", edits: accepts(
		"{rule: left-over, because: a spoonful to try}", "{rule: packed-too-little, because: it will do}")},
	{name: "accepted until a day that has gone by", rule: "accept-expired", twins: few, also: []string{"left-over"}, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `until: (\d{4})-`, func(at place) []edit { return []edit{at.becomes("2024")} })
	}},
	{name: "accepted without a reason", rule: "missing-field", also: []string{"accept-matches-nothing", "accept-without-reason"}, edits: accepts("{rule: left-over}")},
	{name: "accepted until a day that is none", rule: "wrong-type", also: []string{"accept-matches-nothing", "bad-amount"}, edits: accepts("{rule: left-over, because: we like it, until: 30.6.2027}")},
}

// eachAmount makes edits in every amount of kit.yaml.
func eachAmount(make func(at place) []edit) func(k *cleanKit) []edit {
	keys := []string{"packed", "spare", "density", "brimful", "headspace", "volume", "mass", "withstands", "hands-on", "total", "holds", "residue", "count"}
	return func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?:[{,]|\n)\s*(?:`+strings.Join(keys, "|")+`): ([^,}#\n]*[^,}#\n ])`, make)
	}
}

// accepts writes a list of accepted findings at the end of kit.yaml.
func accepts(all ...string) func(k *cleanKit) []edit {
	return func(k *cleanKit) []edit {
		var edits []edit
		for _, one := range all {
			edits = append(edits, k.whole("kit.yaml").end().becomes("\naccept:\n  - "+one+"\n"))
		}
		return edits
	}
}

// Faults in which files there are.
var fileFaults = []faultKind{
	{name: "a file that must be there is not", rule: "missing-file", also: []string{"no-steps"}, edits: func(k *cleanKit) []edit {
		return []edit{{place: k.whole("kit.yaml"), gone: true}, {place: k.whole("method.md"), gone: true},
			{place: k.whole("kit.yaml"), renamed: "kit.yml", at: []place{{k, "kit.yaml", 0, 0}}},
			{place: k.whole("method.md"), renamed: "steps.md", at: []place{{k, "method.md", 0, 0}}}}
	}},
	{name: "a file called nearly right", rule: "misnamed-file", also: []string{"missing-trouble", "caution-missing"}, edits: func(k *cleanKit) []edit {
		return []edit{{place: k.whole("trouble.md"), renamed: "troubles.md"}, {place: k.whole("trouble.md"), renamed: "Trouble.md"},
			{place: k.whole("words.md"), renamed: "words.txt"}}
	}},
	{name: "a picture that is gone, or called otherwise", rule: "missing-picture", edits: func(k *cleanKit) []edit {
		var all []edit
		for _, l := range k.links() {
			if l.kind == "picture" {
				file := "pictures/" + l.key
				all = append(all, edit{place: k.whole(file), gone: true, at: []place{l.place}}, edit{place: k.whole(file), renamed: "drawing.svg", at: []place{l.place}})
			}
		}
		return all
	}},
	{name: "a picture that is none", rule: "not-a-picture", also: []string{"missing-picture"}, edits: func(k *cleanKit) []edit {
		var all []edit
		for _, l := range k.links() {
			if l.kind == "picture" {
				file := k.whole("pictures/" + l.key)
				all = append(all, file.becomes("A drawing follows.\n"))
			}
		}
		return all
	}},
	{name: "a language of which no words are kept", rule: "language-not-read", also: proof.RuleNames(), edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^language: (en)`, func(at place) []edit {
			return []edit{at.becomes("da").toldAt(at, place{k, "method.md", 0, 0})}
		})
	}},
}
