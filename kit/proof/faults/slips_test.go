package faults_test

import "strings"

// Slips of a hand that is tired: a unit, a decimal point, a line in the wrong place.
var slipFaults = []faultKind{
	{name: "kilograms for grams in a step", rule: "packed-too-little", beside: true, also: []string{"typed-amount-disagrees", "share-outside-limits", "container-overfull", "units-disagree", "vessel-too-small"}, edits: func(k *cleanKit) []edit {
		return eachTaking(k, func(c entry, l link, told place, each figure) []edit {
			switch unitOf(told) {
			case "g":
				return []edit{told.becomes(strings.Replace(told.text(), " g", " kg", 1))}
			case "cm":
				return []edit{told.becomes(strings.Replace(told.text(), " cm", " m", 1))}
			}
			return nil
		}, packedTooLittleBy)
	}},
	{name: "a spoon for another spoon", rule: "packed-too-little", beside: true, also: []string{"share-outside-limits", "typed-amount-disagrees"}, edits: func(k *cleanKit) []edit {
		var all []edit
		for _, c := range k.section("components") {
			for _, l := range k.uses(c.key) {
				if spoons, ok := l.words.within(`(level teaspoons)`); ok {
					e := spoons.becomes("level tablespoons")
					changed, _ := e.result().named("components", c.key)
					e.figures = []figure{packedTooLittleBy(e.result(), changed)}
					all = append(all, e)
				}
			}
		}
		return all
	}},
	{name: "a pack that goes in whole is ten times too small", rule: "taken-from-empty", edits: func(k *cleanKit) []edit {
		return eachPack(k, func(c entry, packed place) edit {
			tenth := c.amount("packed").times(0.1)
			fill := k.links()[k.fill()]
			each, _ := reads(fill.words.text()[strings.Index(fill.words.text(), " to "):])
			wanted := each.times(k.containersInRun())
			there := k.mixedWith(c).minus(c.amount("packed").times(0.9))
			return packed.becomes(like(packed, tenth), wanted, there).toldAt(fill.place).harmlessIf(!wanted.isOver(there))
		}, func(k *cleanKit, c entry) bool {
			return k.name == "harbour-candles" && len(k.uses(c.key)) > 0 && !k.isExact(c.key)
		})
	}},
	{name: "both runs take the same", rule: "packed-but-never-used", also: []string{"taken-from-empty", "typed-amount-disagrees", "net-less-than-claimed"}, edits: func(k *cleanKit) []edit {
		var all []edit
		for _, role := range []string{"scent", "tint"} {
			at := k.find("kit.yaml", `with: \{[^}]*\b`+role+`: ([a-z]+)`)
			if len(at) == 2 {
				for i := range at {
					unused, _ := k.named("components", at[i].text())
					all = append(all, at[i].becomes(at[1-i].text()).toldAt(unused.head()))
				}
			}
		}
		return all
	}},
	{name: "one container filled for each of several", rule: "counts-disagree", beside: true, also: []string{"left-over", "packed-too-little", "typed-amount-disagrees", "container-overfull", "lids-and-labels"}, edits: func(k *cleanKit) []edit {
		return eachLink(k, func(l link) []edit {
			each, ok := l.words.within(`(each of \d+)`)
			if l.kind != "fill" || !ok {
				return nil
			}
			return []edit{each.becomes("1"), each.becomes("one")}
		})
	}},
	{name: "the filling stands before the mixing", rule: "used-before-made", beside: true, also: slicesOf(anySum(), "points-the-wrong-way"), edits: func(k *cleanKit) []edit {
		fill := k.links()[k.fill()]
		step := k.stepText(fill.step)
		var all []edit
		for i := range fill.step {
			if first := k.stepText(i); first.from > 0 && strings.Contains(first.text(), "take:") {
				moved := place{k, "method.md", first.from, step.to}
				between := k.files["method.md"][first.from:step.from]
				all = append(all, moved.becomes(step.text()+between))
				break
			}
		}
		return all
	}},
	{name: "grams for each litre written as grams for each millilitre", rule: "bad-amount", also: []string{"container-overfull", "share-outside-limits", "no-density"}, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `density: (0\.\d+)(?:–0\.\d+)? g/mL`, func(at place) []edit {
			whole, _ := at.line().within(`density: ([\d.–]+)`)
			n, _ := reads(at.text())
			return []edit{whole.becomes(n.times(1000).write("", 0))}
		})
	}},
	{name: "more hands-on time on the box than time in all", rule: "bad-amount", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `hands-on: ([^,}]*)`, func(at place) []edit {
			total, _ := k.find("kit.yaml", `total: ([^,}]*)`)[0], at
			longest, _ := reads(total.text())
			return []edit{at.becomes(longest.times(1.5).write("min", 0)), at.becomes(longest.write("min", 0)).harmlessIf(true)}
		})
	}},
}

// mixedWith is the mass that the run which takes a component mixes.
func (k *cleanKit) mixedWith(c entry) figure {
	total := c.amount("packed").times(0)
	for _, l := range k.links() {
		if l.kind != "take" {
			continue
		}
		for _, other := range k.section("components") {
			isBound := k.isBound(l.key, other.key) && k.runOf(other.key) == k.runOf(c.key)
			if l.key == other.key {
				total = sum(total, k.inRun(other))
			} else if isBound || k.isBound(l.key, other.key) && other.key == c.key {
				total = sum(total, other.amount("packed"))
			}
		}
	}
	return total
}

// runOf is the line of the run that binds a component.
func (k *cleanKit) runOf(component string) string {
	for _, with := range k.find("kit.yaml", `with: \{([^}]*)\}`) {
		if strings.Contains(with.text()+",", ": "+component+",") {
			return with.text()
		}
	}
	return ""
}

// stepText is a step from its heading to the next.
func (k *cleanKit) stepText(i int) place {
	headings := k.find("method.md", `(?m)^(#+ .*)$`)
	n := -1
	for at, heading := range headings {
		if strings.HasPrefix(heading.text(), "## ") {
			n++
		}
		if n == i {
			to := len(k.files["method.md"])
			if at+1 < len(headings) {
				to = headings[at+1].from
			}
			return place{k, "method.md", heading.from, to}
		}
	}
	return place{kit: k, file: "method.md"}
}
