package faults_test

import "strings"

// Faults in what kit.yaml names.
var nameFaults = []faultKind{
	{name: "a component taken out of the box", rule: "unknown-target",
		also: slicesOf(linkLost, "missing-reference"), edits: func(k *cleanKit) []edit {
			return eachPack(k, func(c entry, packed place) edit {
				var at []place
				for _, l := range k.uses(c.key) {
					at = append(at, l.place, l.address)
				}
				return c.becomes("").toldAt(at...)
			}, anyUse, func(k *cleanKit, c entry) bool { return k.uses(c.key)[0].key == c.key })
		}},
	{name: "something used of which no link tells", rule: "packed-but-never-used", also: []string{"typed-amount-disagrees"}, edits: func(k *cleanKit) []edit {
		return eachPack(k, func(c entry, packed place) edit {
			l := k.uses(c.key)[0]
			return l.becomes(l.words.text()).toldAt(c.head(), l.place)
		}, func(k *cleanKit, c entry) bool {
			return len(k.uses(c.key)) == 1 && k.uses(c.key)[0].kind != "take" && strings.Count(k.files["method.md"], ":"+c.key) == 1
		})
	}},
	{name: "a household item taken off the list", rule: "unknown-target", also: []string{"missing-field", "missing-reference"}, edits: func(k *cleanKit) []edit {
		var all []edit
		for _, item := range k.section("household") {
			var at []place
			for _, l := range k.uses(item.key) {
				at = append(at, l.place)
			}
			all = append(all, item.becomes("").toldAt(at...))
		}
		return all
	}},
	{name: "a container that is none any more", rule: "unknown-target", also: slicesOf(linkLost, "missing-reference"), edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(\n    container: .*)`, func(at place) []edit {
			return []edit{at.becomes("").toldAt(k.links()[k.fill()].place)}
		})
	}},
	{name: "a run binds what is not there", twins: few, rule: "missing-reference", also: linkLost, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?:scent|tint): ([a-z]+)`, func(at place) []edit { return []edit{at.becomes(misspelt(at.text()))} })
	}},
	{name: "a run says nothing of a role", rule: "role-without-component", also: linkLost, edits: func(k *cleanKit) []edit {
		var all []edit
		for _, name := range []string{"scent", "tint"} {
			for _, at := range k.find("kit.yaml", `with: \{[^}]*\b(`+name+`): `) {
				var told []place
				for _, l := range k.links() {
					if l.key == name {
						told = append(told, l.place)
					}
				}
				all = append(all, at.becomes(misspelt(name)).toldAt(told...))
			}
		}
		return all
	}},
	{name: "a run goes through a part that is not there", rule: "missing-reference",
		also: linkLost, edits: func(k *cleanKit) []edit {
			return eachMatch(k, "kit.yaml", `parts: \[([^\]]*)\]`, func(at place) []edit { return []edit{at.becomes(misspelt(at.text()))} })
		}},
	{name: "a kind of piece in what is not there", twins: few, rule: "missing-reference", also: []string{"counts-disagree", "claim-not-backed"}, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `, (?:in|of): ([a-z]+)`, func(at place) []edit {
			return []edit{at.becomes(misspelt(at.text())), at.becomes("thimble")}
		})
	}},
	{name: "a mixture made in what is not there", twins: few, rule: "missing-reference", also: anySum(), edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `made in: ([a-z]+)`, func(at place) []edit {
			return []edit{at.becomes(misspelt(at.text())), at.becomes("cauldron")}
		})
	}},
	{name: "a claim shown by what is not there", rule: "missing-reference", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `shown by: ([a-z]+)`, func(at place) []edit {
			return []edit{at.becomes(misspelt(at.text())), at.becomes("hearsay")}
		})
	}},
	{name: "two things of one name", twins: few, rule: "duplicate-name", also: []string{"tool-never-used", "named-otherwise", "ingredient-list-differs"}, edits: func(k *cleanKit) []edit {
		var all []edit
		components := append(k.section("components"), k.section("tools")...)
		for i, c := range components[1:] {
			name, _ := c.field("name")
			other, _ := components[i].field("name")
			all = append(all, name.becomes(other.text()))
		}
		return all
	}},
	{name: "two things of one key", rule: "duplicate-key", also: slicesOf(linkLost, "missing-reference"), edits: func(k *cleanKit) []edit {
		var all []edit
		components := k.section("components")
		for i, c := range components[1:] {
			key, _ := c.within(`^  ([a-z-]+)`)
			all = append(all, key.becomes(components[i].key))
		}
		return all
	}},
	{name: "a tool with the key of a component", rule: "duplicate-name", also: linkLost, edits: func(k *cleanKit) []edit {
		last := k.section("tools")[len(k.section("tools"))-1]
		var all []edit
		for _, c := range k.section("components") {
			all = append(all, last.end().becomes("  "+c.key+": {name: Another of these, from: box}\n"))
		}
		return all
	}},
	{name: "a key that cannot be one", rule: "bad-key-name", also: linkLost, edits: func(k *cleanKit) []edit {
		last := k.section("components")[len(k.section("components"))-1]
		var all []edit
		for _, key := range []string{"Paper Bag", "paper_bag", "2ply", "yes", "all", "größe"} {
			all = append(all, last.end().becomes("  "+key+": {name: Paper bag for the box, packed: 1, optional: yes}\n"))
		}
		return all
	}},
}
