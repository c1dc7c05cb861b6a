package faults_test

import "strings"

// afterUnanswered is what may rightly follow when the words that answered a hazard are gone.
var afterUnanswered = []string{"lye-for-children", "caution-missing", "caution-after-action", "signal-too-weak", "first-aid-missing"}

// Slips in what can hurt someone, and in what a market asks.
var lawFaults = []faultKind{
	{name: "a caution left out", rule: "caution-missing", also: []string{"hard-to-read"}, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "method.md", `(?m)^(> WARNING: Fragrance.*\n(?:>.*\n)+)`, func(at place) []edit {
			return []edit{at.becomes("").toldAt(k.find("method.md", `(\(take:scent\))`)...)}
		})
	}},
	{name: "a caution behind what it guards", rule: "caution-after-action", also: []string{"hard-to-read"}, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "method.md", `(?m)^(> WARNING: Fragrance.*\n(?:>.*\n)+\n(?s:.*?))^## `, func(at place) []edit {
			caution, text, _ := strings.Cut(at.text(), "\n\n")
			return []edit{at.becomes(text+caution+"\n\n").toldAt(k.find("method.md", `(> WARNING: Fragrance)`)[0], k.find("method.md", `(\(take:scent\))`)[0], at)}
		})
	}},
	{name: "too weak a signal word", rule: "signal-too-weak", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "method.md", `> (WARNING): Fragrance`, func(at place) []edit {
			return []edit{at.becomes("CAUTION"), at.becomes("NOTICE")}
		})
	}},
	{name: "a caution in a later step alone", rule: "caution-elsewhere", also: []string{"hard-to-read"}, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "method.md", `(?m)^(> CAUTION: The awl is sharp.*\n(?:>.*\n)+\n)`, func(at place) []edit {
			return []edit{at.becomes("").toldAt(k.find("method.md", `Hold \[(the awl)\]`)...)}
		})
	}},
	{name: "DANGER over what hurts lightly", rule: "signal-too-strong", also: []string{"translation-differs"}, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "method.md", `> (CAUTION): (?:The jug|A full jar|Scissors|The awl|Even a blunt|Orris|Alum)`, func(at place) []edit {
			return []edit{at.becomes("DANGER")}
		})
	}},
	{name: "a supplier's word below that of its statements", rule: "signal-too-weak", also: afterUnanswered, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^    (hazards: H317)`, func(at place) []edit {
			var all []edit
			for _, statement := range []string{"H225", "H304", "H318"} {
				all = append(all, at.becomes("signal word: warning\n    hazards: [H317, "+statement+"]"))
			}
			return all
		})
	}},
	{name: "no first aid for what hurts for good", rule: "first-aid-missing", also: afterUnanswered, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `hazards: (H317|dust)\b`, func(at place) []edit {
			var all []edit
			for _, statement := range []string{"H318", "H314", "H302"} {
				all = append(all, at.becomes(statement))
			}
			return all
		})
	}},
	{name: "lye in a kit for children", rule: "lye-for-children", also: afterUnanswered, edits: func(k *cleanKit) []edit {
		if len(k.find("kit.yaml", `age: (8)\+`)) == 0 {
			return nil
		}
		return eachMatch(k, "kit.yaml", `hazards: (dust)`, func(at place) []edit {
			return []edit{at.becomes("[dust, lye]").toldAt(k.find("kit.yaml", `(age: 8\+)`)...)}
		})
	}},
	{name: "warmer than what it gives off can bear", rule: "past-flash-point", also: []string{"signal-too-weak", "caution-missing"}, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `flash point: (82 °C)`, func(at place) []edit {
			taken := k.find("method.md", `(\(take:scent\))`)
			return []edit{at.becomes("48 °C").toldAt(append(taken, at)...), at.becomes("120 °F").toldAt(append(taken, at)...)}
		})
	}},
	{name: "protection that nobody has", rule: "protection-not-listed", also: []string{"tool-never-used"}, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "method.md", `(?m)^> (?:CAUTION|WARNING): ()`, func(at place) []edit {
			return []edit{at.becomes("Wear goggles. ")}
		})
	}},

	{name: "sold where nobody looked at the law", rule: "market-without-pack", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^markets: \[.*(\])$`, func(at place) []edit {
			return []edit{at.becomes(", CA]"), at.becomes(", AU, NZ]")}
		})
	}},
	{name: "what it is sold as is not told", rule: "market-cannot-tell", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^(sold as: .*\n)`, func(at place) []edit {
			return []edit{at.becomes("").toldAt(k.find("kit.yaml", `(?m)^(markets): \[`)...)}
		})
	}},
	{name: "whether it is a toy is not told", rule: "market-cannot-tell", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(, toy: no)`, func(at place) []edit {
			return []edit{at.becomes("").toldAt(k.find("kit.yaml", `(?m)^(markets): \[`)...)}
		})
	}},
	{name: "whether it is an art material is not told", rule: "market-cannot-tell", edits: func(k *cleanKit) []edit {
		var all []edit
		for _, c := range k.section("components") {
			if at, ok := c.within(`((?:\n    |, )art material: no)`); ok {
				all = append(all, at.becomes("").toldAt(c.head()))
			}
		}
		return all
	}},
	{name: "no address", rule: "market-fact-missing", edits: func(k *cleanKit) []edit { return eachFact(k, "address") }},
	{name: "no contact", rule: "market-fact-missing", edits: func(k *cleanKit) []edit { return eachFact(k, "contact") }},
	{name: "nobody answers for it in the Union", rule: "market-fact-missing", edits: func(k *cleanKit) []edit { return eachFact(k, "responsible in eu") }},
	{name: "a statement without a label to stand on", rule: "market-not-printed", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^labels:\n()`, func(at place) []edit { return []edit{at.becomes("  box: none\n")} })
	}},
	{name: "a toxicologist's look from long ago", rule: "review-too-old", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `review: \{day: (\d{4}-\d\d-\d\d)`, func(at place) []edit {
			return []edit{at.becomes("2020-11-24"), at.becomes("2014-03-01")}
		})
	}},
}

// eachFact takes a line of labels away; it is told where the markets that ask for it stand.
func eachFact(k *cleanKit, key string) []edit {
	return eachMatch(k, "kit.yaml", `(?m)^(  `+key+`: .*\n)`, func(at place) []edit {
		return []edit{at.becomes("").toldAt(k.find("kit.yaml", `(?m)^(markets): \[`)...)}
	})
}
