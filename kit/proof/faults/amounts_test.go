package faults_test

import (
	"fmt"
	"math"
	"strings"
)

// Faults in amounts of the method.
var amountFaults = []faultKind{
	{name: "a step takes more than the box holds", rule: "packed-too-little", beside: true,
		also: []string{"typed-amount-disagrees", "share-outside-limits", "units-disagree"}, edits: func(k *cleanKit) []edit {
			return eachTaking(k, func(c entry, l link, told place, each figure) []edit {
				other := k.used(c).minus(figure{k.taken(c, l), c.amount("packed").unit})
				ratio := c.amount("packed").minus(other).number / k.taken(c, l)
				if unitOf(told) == "" {
					return []edit{told.becomes(more(figure{math.Floor(each.number * ratio), ""}, 1))}
				}
				return []edit{told.becomes(like(told, each.times(1.15*ratio)))}
			}, packedTooLittleBy)
		}},
	{name: "a step takes far less than the box holds", rule: "left-over", beside: true,
		also: []string{"typed-amount-disagrees", "share-outside-limits", "taken-from-empty", "net-less-than-claimed", "units-disagree"}, edits: func(k *cleanKit) []edit {
			return eachTaking(k, func(c entry, l link, told place, each figure) []edit {
				if each.number < 2 && each.unit == "" {
					return nil
				}
				if k.isKept(c.key) && l.kind == "take" {
					return nil // the rest is kept, and what it was mixed into is another kind
				}
				return []edit{told.becomes(like(told, each.times(0.5))).harmlessIf(k.isKept(c.key))}
			}, surplusOf)
		}},
	{name: "a step does its taking twice", rule: "packed-too-little", beside: true, also: []string{"share-outside-limits", "typed-amount-disagrees", "vessel-too-small"}, edits: func(k *cleanKit) []edit {
		return eachTaking(k, func(c entry, l link, told place, each figure) []edit {
			again := l.end().becomes(" and then " + l.text())
			return []edit{again.harmlessIf(!k.used(c).times(2).isOver(c.amount("packed")))}
		}, packedTooLittleBy)
	}},
	{name: "a step takes from a pack that is used up", rule: "taken-from-empty", edits: func(k *cleanKit) []edit {
		return eachLink(k, func(l link) []edit {
			if l.kind != "take" || !strings.HasPrefix(l.words.text(), "all of") && !strings.HasPrefix(l.words.text(), "the rest of") {
				return nil
			}
			return []edit{l.end().becomes(" and then [the rest of it](" + l.address.text() + ")")}
		})
	}},
	{name: "a step takes some more of a pack that is used up", rule: "packed-too-little", beside: true, also: []string{"share-outside-limits", "not-measurable"}, edits: func(k *cleanKit) []edit {
		return eachLink(k, func(l link) []edit {
			if l.kind != "take" || !strings.HasPrefix(l.words.text(), "all of") && !strings.HasPrefix(l.words.text(), "the rest of") {
				return nil
			}
			return []edit{l.end().becomes(" and then [2 g of it]("+l.address.text()+")", figure{2, "g"})}
		})
	}},
	{name: "done again too often", rule: "packed-too-little", beside: true, also: []string{"time-claimed-too-short"}, edits: func(k *cleanKit) []edit {
		return eachRepeat(k, func(l link, times place) []edit {
			short := ""
			e := times.becomes("twelve")
			for _, use := range k.links() {
				if use.kind == "use" && use.step == l.step && use.from < l.from {
					short = use.key
					e = e.toldAt(use.place)
				}
			}
			if short == "" {
				return nil // only time
			}
			c, _ := k.named("components", short)
			e.figures = []figure{k.used(c).times(13 / (k.uses(short)[0].times)).minus(c.amount("packed"))}
			return []edit{e}
		})
	}},
	{name: "done again too seldom", rule: "left-over", beside: true, edits: func(k *cleanKit) []edit {
		return eachRepeat(k, func(l link, times place) []edit {
			var all []edit
			for _, use := range k.links() {
				if use.kind == "use" && use.step == l.step && use.from < l.from {
					c, _ := k.named("components", use.key)
					left := c.amount("packed").minus(k.used(c).times(2 / use.times)).minus(sum(k.used(c).times(0), c.amount("spare")))
					all = append(all, times.becomes("one", left).toldAt(use.place).harmlessIf(k.isKept(use.key)))
				}
			}
			return all
		})
	}},
	{name: "done again, and not how often", rule: "unreadable-amount", also: []string{"left-over"}, edits: func(k *cleanKit) []edit {
		return eachRepeat(k, func(l link, times place) []edit { return []edit{l.words.becomes("Do the same for the others")} })
	}},
	{name: "an amount is left to the reader", rule: "unreadable-amount", also: []string{"typed-amount-disagrees"}, edits: func(k *cleanKit) []edit {
		return eachTaking(k, func(c entry, l link, told place, each figure) []edit {
			if each.unit == "" {
				return nil
			}
			name, _ := c.field("name")
			return []edit{l.words.becomes("the " + strings.ToLower(name.text()))}
		}, nil)
	}},
	{name: "a splash, a handful: an amount by eye in a link", rule: "vague-amount", also: []string{"typed-amount-disagrees"}, edits: func(k *cleanKit) []edit {
		return eachTaking(k, func(c entry, l link, told place, each figure) []edit {
			var all []edit
			for _, vague := range []string{"a good handful of it", "plenty of it", "a pinch of it", "a dash of it", "a generous amount"} {
				if each.unit != "" {
					all = append(all, l.words.becomes(vague))
				}
			}
			return all
		}, nil)
	}},
	{name: "an amount by eye in running text", rule: "vague-amount", edits: func(k *cleanKit) []edit {
		return eachStep(k, "Add a splash of rose water.", "Sprinkle on a pinch of salt.", "Use plenty of glue.", "Pour in a little oil.", "Put in a handful of petals.")
	}},
	{name: "filled by eye", rule: "vague-amount", also: []string{"unreadable-amount"}, edits: func(k *cleanKit) []edit {
		return eachStep(k, "Fill the glasses nearly full.", "Pour until it stands just below the rim.")
	}},
	{name: "a figure told again in another unit, and wrong", rule: "units-disagree", edits: func(k *cleanKit) []edit {
		return eachLink(k, func(l link) []edit {
			second, ok := l.within(`\(([\d.]+)[ \d/a-z]*\)`)
			if !ok {
				return nil
			}
			n, _ := reads(second.text())
			return []edit{second.becomes(more(n, 1)), second.becomes(more(n, 3))}
		})
	}},
	{name: "a figure told again in the same system, and rounded beyond all sense", rule: "typed-amount-disagrees", edits: swaps("method.md",
		"1 lb 3 1/2 oz", "1 kg", "2 1/2 cups", "1 L")},
	{name: "a figure told again, and rounded beyond all sense", rule: "units-disagree", edits: swaps("method.md",
		"1 lb 3 1/2 oz", "1 lb", "1 lb 3 1/2 oz", "2 lb", "2 1/2 cups", "3 cups")},
	{name: "a figure told again in another step, and wrong", rule: "typed-amount-disagrees", edits: func(k *cleanKit) []edit {
		return eachLink(k, func(l link) []edit {
			is, ok := reads(l.words.text())
			if !ok || l.kind != "same" {
				return nil
			}
			told, _ := l.within(`(\d+ \w+)`)
			return []edit{told.becomes(like(told, is.times(0.9)), is.times(0.9), is), told.becomes(like(told, is.times(2)), is.times(2), is)}
		})
	}},
	{name: "a figure typed into running text, and wrong", rule: "typed-amount-disagrees", edits: func(k *cleanKit) []edit { return typed(k, 1.73) }},
	{name: "a figure typed into running text, and right", rule: "typed-amount-disagrees", edits: func(k *cleanKit) []edit { return typed(k, 1) }},
	{name: "more clings to the vessel than the fills leave", rule: "last-container-short", beside: true, also: []string{"tool-not-free"}, edits: swaps("kit.yaml",
		"residue: 6 g ± 2 g", "residue: 40 g ± 2 g", "residue: 6 g ± 2 g", "residue: 60 g")},
	{name: "more filled than there is", rule: "taken-from-empty", also: []string{"typed-amount-disagrees", "units-disagree"}, edits: func(k *cleanKit) []edit {
		return eachLink(k, func(l link) []edit {
			told, ok := l.within(` to (\d+ g)`)
			if l.kind != "fill" || !ok {
				return nil
			}
			var all []edit
			for _, grams := range []float64{200, 215, 240, 300} {
				each := figure{grams, "g"}
				all = append(all, told.becomes(like(told, each), each.times(k.containersInRun())))
			}
			return all
		})
	}},
	{name: "what is left over goes nowhere", rule: "left-over", beside: true, edits: func(k *cleanKit) []edit {
		return eachLink(k, func(l link) []edit {
			if l.kind != "left" || !strings.Contains(l.address.text(), "as=kept") {
				return nil
			}
			e := l.becomes(l.words.text())
			c, isPack := k.named("components", l.key)
			if !isPack && k.fill() == 0 {
				return nil // what was in it goes into no container
			}
			if !isPack {
				return []edit{e.toldAt(k.links()[k.fill()].place)}
			}
			e.figures = []figure{c.amount("packed").minus(k.used(c))}
			surplus := e.figures[0].minus(sum(k.used(c).times(0), c.amount("spare")))
			return []edit{e.toldAt(c.head(), k.uses(l.key)[0].place).harmlessIf(!surplus.isOver(c.amount("packed").times(0.1)))}
		})
	}},
	{name: "an amount of the wrong kind", rule: "unreadable-amount", also: []string{"time-claimed-too-short", "poured-too-hot"}, edits: func(k *cleanKit) []edit {
		return eachLink(k, func(l link) []edit {
			switch l.kind {
			case "work", "wait":
				return []edit{l.words.becomes("20 g"), l.words.becomes("30 cm")}
			case "warm", "cool":
				return []edit{l.words.becomes("to 75 g"), l.words.becomes("for 5 minutes")}
			case "take":
				return []edit{l.words.becomes("5 minutes of it"), l.words.becomes("80 °C of it")}
			}
			return nil
		})
	}},
	{name: "a time or a temperature without a figure", rule: "unreadable-amount", also: []string{"time-claimed-too-short", "poured-too-hot"}, edits: func(k *cleanKit) []edit {
		return eachLink(k, func(l link) []edit {
			switch l.kind {
			case "work", "wait":
				return []edit{l.words.becomes("a good while")}
			case "warm", "cool":
				return []edit{l.words.becomes("until it is right")}
			}
			return nil
		})
	}},
	{name: "heated beyond what the vessel withstands", rule: "poured-too-hot", edits: func(k *cleanKit) []edit {
		return eachTemperature(k, "warm", figure{120, "°C"}, figure{10, "°C"})
	}},
	{name: "not cooled far enough", rule: "poured-too-hot", also: []string{"past-flash-point"}, edits: func(k *cleanKit) []edit {
		var all []edit
		for _, e := range eachTemperature(k, "cool", figure{98, "°C"}) {
			var after []link
			for _, l := range k.links() {
				if l.from > e.from && (l.kind == "take" || l.kind == "fill") {
					after = append(after, l)
				}
			}
			all = append(all, e.toldAt(after[0].place))
		}
		return all
	}},
	{name: "not cooled at all", rule: "poured-too-hot", edits: func(k *cleanKit) []edit {
		return eachLink(k, func(l link) []edit {
			if l.kind != "cool" || !k.mindsHeat() {
				return nil
			}
			next := k.links()[0]
			for _, m := range k.links() {
				if m.from > l.from && (m.kind == "take" || m.kind == "fill") {
					next = m
					break
				}
			}
			before := k.temperatureAt(l)
			// Colder than 70 °C before, nothing in the example minds.
			return []edit{l.becomes(l.words.text()[:2], before).toldAt(next.place).harmlessIf(before.number < 70)}
		})
	}},
	{name: "plain ounces of what is poured, in the method", rule: "plain-ounces", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "method.md", `oz( weight)\)`, func(at place) []edit { return []edit{at.becomes("")} })
	}},
	{name: "the words take all, the figure beside them less", rule: "typed-amount-disagrees", edits: func(k *cleanKit) []edit {
		return eachLink(k, func(l link) []edit {
			if l.kind != "take" || !strings.HasPrefix(l.words.text(), "all of") {
				return nil
			}
			return []edit{l.words.becomes("all " + "90 g" + " of it")}
		})
	}},
}

// eachTaking makes edits in each link that takes a told amount of a component; with
// sums the figure is reckoned from the edited kit.
func eachTaking(k *cleanKit, make func(c entry, l link, told place, each figure) []edit, sums func(k *cleanKit, c entry) figure) []edit {
	var all []edit
	for _, c := range k.section("components") {
		if !k.isExact(c.key) {
			continue
		}
		for _, l := range k.uses(c.key) {
			told, ok := l.words.within(`^(\d+(?: [a-z]*g|mL| cm| m)?)\b`)
			each, _ := reads(l.words.text())
			if !ok {
				continue
			}
			if is, _ := reads(told.text()); is.unit == "" {
				each.unit = ""
				each.number = is.number
			}
			for _, e := range make(c, l, told, each) {
				if sums != nil && !e.harmless {
					changed, _ := e.result().named("components", c.key)
					e.figures = append(e.figures, sums(e.result(), changed))
				}
				all = append(all, e)
			}
		}
	}
	return all
}

func packedTooLittleBy(k *cleanKit, c entry) figure { return k.used(c).minus(c.amount("packed")) }

func surplusOf(k *cleanKit, c entry) figure {
	return c.amount("packed").minus(k.used(c)).minus(sum(k.used(c).times(0), c.amount("spare")))
}

// eachRepeat makes edits in each link that has something done again.
func eachRepeat(k *cleanKit, make func(l link, times place) []edit) []edit {
	return eachLink(k, func(l link) []edit {
		if times, ok := l.words.within(`\b(two|seven)\b`); ok && l.kind == "again" {
			return make(l, times)
		}
		return nil
	})
}

func eachTemperature(k *cleanKit, kind string, to figure, figures ...figure) []edit {
	return eachLink(k, func(l link) []edit {
		if told, ok := l.within(`(\d+ °C)`); ok && l.kind == kind && k.mindsHeat() {
			return []edit{told.becomes(to.write("°C", 0), append(figures, to)...)}
		}
		return nil
	})
}

// mindsHeat says whether anything in the kit has a limit of temperature.
func (k *cleanKit) mindsHeat() bool { return len(k.find("kit.yaml", `(withstands|add below): `)) > 0 }

// eachStep writes sentences at the end of every step.
func eachStep(k *cleanKit, sentences ...string) []edit {
	var all []edit
	for _, end := range k.sectionEnds("method.md") {
		for _, sentence := range sentences {
			all = append(all, end.becomes("\n"+sentence+"\n"))
		}
	}
	return all
}

// sectionEnds are the ends of the text under each heading with ##.
func (k *cleanKit) sectionEnds(file string) []place {
	var all []place
	headings := k.find(file, `(?m)^(#+ .*)$`)
	for i, heading := range headings {
		if !strings.HasPrefix(heading.text(), "## ") {
			continue
		}
		end := len(k.files[file])
		if i+1 < len(headings) {
			end = headings[i+1].from - 1
		}
		all = append(all, place{k, file, end, end})
	}
	return all
}

// typed types the amount of a link into running text, so many times over.
func typed(k *cleanKit, times float64) []edit {
	var all []edit
	for _, c := range k.section("components") {
		name, _ := c.field("name")
		if !k.isExact(c.key) || c.amount("packed").unit == "" || k.isByTheSpoon(c) {
			continue
		}
		each, _ := reads(k.uses(c.key)[0].words.text())
		told, ok := k.uses(c.key)[0].words.within(`^(\d+ (?:g|cm))\b`)
		if !ok {
			continue
		}
		for i, template := range []string{"Now look at the %s of %s.", "The %s of %s is in the bag.", "You have %s of the %s before you.", "Your %s of %s, and no more, is for this.", "So this is what %s %s looks like."} {
			sentence := fmt.Sprintf(template, like(told, each.times(times)), strings.ToLower(name.text()))
			for j, file := range k.markdown() {
				ends := k.sectionEnds(file)
				e := ends[(i+j)%len(ends)].becomes("\n"+sentence+"\n", each.times(times), each)
				all = append(all, e.harmlessIf(times == 1))
			}
		}
	}
	return all
}
