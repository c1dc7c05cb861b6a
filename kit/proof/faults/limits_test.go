package faults_test

import (
	"slices"
	"strings"
)

// Faults in densities, limits and containers.
var limitFaults = []faultKind{
	{name: "no density of what the spoon measures", rule: "no-density", edits: func(k *cleanKit) []edit {
		var all []edit
		for _, c := range k.section("components") {
			if line, ok := c.within(`((?:, density: [^,}]*)|(?:\n    density: .*))`); ok {
				all = append(all, line.becomes("").toldAt(c.head()).harmlessIf(!k.isByTheSpoon(c)))
			}
		}
		return all
	}},
	{name: "no density of what the scoop fills", rule: "no-density", edits: func(k *cleanKit) []edit {
		var all []edit
		for _, m := range k.section("mixtures") {
			line, ok := m.within(`(, density: [^,}]*)`)
			if fill := k.links()[k.fill()]; ok {
				all = append(all, line.becomes("").toldAt(k.looseThings()...).harmlessIf(!strings.Contains(fill.words.text(), "scoop")))
			}
		}
		return all
	}},
	{name: "more of it than its limit allows", rule: "share-outside-limits", beside: true, edits: func(k *cleanKit) []edit {
		return eachLimit(k, func(c entry, limit place, share figure) edit {
			return limit.becomes("at most "+share.times(0.9).write("", 2)+" % of "+base(limit), share)
		})
	}},
	{name: "less of it than its limit asks for", rule: "share-outside-limits", beside: true, edits: func(k *cleanKit) []edit {
		return eachLimit(k, func(c entry, limit place, share figure) edit {
			return limit.becomes("at least "+share.times(1.1).write("", 2)+" % of "+base(limit), share)
		})
	}},
	{name: "twice as much of a pack goes in whole", rule: "share-outside-limits", edits: func(k *cleanKit) []edit {
		return eachLimit(k, func(c entry, limit place, share figure) edit {
			packed, _ := c.field("packed")
			twice := c.amount("packed").times(2)
			part, whole := k.shareParts(c, limit)
			if base(limit) == "mixture" {
				whole = sum(whole, part)
			}
			e := packed.becomes(like(packed, twice), twice.percentOf(whole))
			e.harmless = k.isExact(c.key)
			return e
		}, func(k *cleanKit, c entry) bool { return !k.isExact(c.key) && limitBase(c) != "mixture" })
	}},
	{name: "a share of nothing named", rule: "share-without-base", edits: func(k *cleanKit) []edit {
		return eachLimit(k, func(c entry, limit place, share figure) edit {
			told, _, _ := strings.Cut(limit.text(), " of ")
			return limit.becomes(told)
		})
	}},
	{name: "a share of what is not there", rule: "missing-reference", edits: func(k *cleanKit) []edit {
		return eachLimit(k, func(c entry, limit place, share figure) edit {
			told, _, _ := strings.Cut(limit.text(), " of ")
			return limit.becomes(told + " of paraffin")
		})
	}},
	{name: "added hotter than its limit", rule: "poured-too-hot", beside: true, edits: func(k *cleanKit) []edit {
		var all []edit
		for _, c := range k.section("components") {
			if limit, ok := c.field("add below"); ok {
				at := k.temperatureAt(k.uses(c.key)[0])
				all = append(all, limit.becomes(at.minus(figure{5, "°C"}).write("°C", 0), at, figure{5, "°C"}))
			}
		}
		return all
	}},
	{name: "a container filled hotter than it withstands", rule: "poured-too-hot", beside: true, edits: func(k *cleanKit) []edit {
		var all []edit
		for _, c := range k.section("components") {
			if limit, ok := c.field("withstands"); ok {
				at := k.temperatureAt(k.links()[k.fill()])
				all = append(all, limit.becomes(at.minus(figure{5, "°C"}).write("°C", 0), at, figure{5, "°C"}))
			}
		}
		return all
	}},
	{name: "a vessel heated beyond what it withstands", rule: "poured-too-hot", beside: true, edits: func(k *cleanKit) []edit {
		var all []edit
		for _, c := range k.section("tools") {
			if limit, ok := c.field("withstands"); ok {
				hottest := k.hottest()
				all = append(all, limit.becomes(hottest.minus(figure{5, "°C"}).write("°C", 0), hottest, figure{5, "°C"}))
			}
		}
		return all
	}},
	{name: "a smaller container", rule: "container-overfull", beside: true, edits: func(k *cleanKit) []edit {
		return eachContainer(k, func(c entry, fill figure) edit {
			brimful, _ := c.field("brimful")
			room := fill.times(0.8)
			return brimful.becomes(sum(room, c.amount("headspace"), k.inserted()).write("mL", 2), room, fill.times(0.2))
		})
	}},
	{name: "more left free under the rim", rule: "container-overfull", edits: func(k *cleanKit) []edit {
		return eachContainer(k, func(c entry, fill figure) edit {
			headspace, _ := c.field("headspace")
			room := fill.times(0.8)
			return headspace.becomes(c.amount("brimful").minus(room).minus(k.inserted()).write("mL", 2), room, fill.times(0.2)).
				toldAt(k.links()[k.fill()].place)
		})
	}},
	{name: "a thicker insert", rule: "container-overfull", edits: func(k *cleanKit) []edit {
		var all []edit
		for _, insert := range k.section("components") {
			volume, ok := insert.field("volume")
			if !ok {
				continue
			}
			all = append(all, eachContainer(k, func(c entry, fill figure) edit {
				room := fill.times(0.8)
				return volume.becomes(c.amount("brimful").minus(room).minus(c.amount("headspace")).write("mL", 2), room, fill.times(0.2)).
					toldAt(k.links()[k.fill()].place)
			})...)
		}
		return all
	}},
	{name: "how much a container holds is not told", rule: "container-overfull", edits: func(k *cleanKit) []edit {
		return eachContainer(k, func(c entry, fill figure) edit {
			brimful, _ := c.within(`(brimful: [^,]*, )`)
			return brimful.becomes("").toldAt(c.head())
		})
	}},
}

// eachLimit makes an edit in each share limit, given the share reckoned from the texts.
func eachLimit(k *cleanKit, make func(c entry, limit place, share figure) edit, only ...ruleOut) []edit {
	var all []edit
	for _, c := range k.section("components") {
		limit, ok := c.field("share")
		if ok && (len(only) == 0 || only[0](k, c)) {
			part, whole := k.shareParts(c, limit)
			all = append(all, make(c, limit, part.percentOf(whole)))
		}
	}
	return all
}

// base is what a limit is a share of.
func base(limit place) string {
	_, of, _ := strings.Cut(limit.text(), " of ")
	return of
}

func limitBase(c entry) string {
	limit, _ := c.field("share")
	return base(limit)
}

// shareParts are the mass of a component in a run, and that of the base of its limit.
func (k *cleanKit) shareParts(c entry, limit place) (part, whole figure) {
	if other, ok := k.named("components", base(limit)); ok {
		return k.inRun(c), k.inRun(other)
	}
	return k.inRun(c), k.mixed()
}

// inRun is what one run takes of a component.
func (k *cleanKit) inRun(c entry) figure {
	if !k.isExact(c.key) {
		return k.used(c) // the whole pack goes into one run
	}
	return k.used(c).times(1 / k.uses(c.key)[0].times)
}

// mixed is the mass of all that is taken into a vessel in one run.
func (k *cleanKit) mixed() figure {
	whole := figure{unit: "g"}
	for _, c := range k.section("components") {
		if slices.ContainsFunc(k.uses(c.key), func(l link) bool { return l.kind == "take" }) {
			whole = sum(whole, k.inRun(c))
		}
	}
	return whole
}

// looseThings are the heads of components with a loose density.
func (k *cleanKit) looseThings() []place {
	var all []place
	for _, c := range k.section("components") {
		if strings.Contains(c.text(), "loose") {
			all = append(all, c.head())
		}
	}
	return all
}

// fill is where among the links the containers are filled.
func (k *cleanKit) fill() int {
	for i, l := range k.links() {
		if l.kind == "fill" {
			return i
		}
	}
	return 0
}

// temperatureAt is the last one told before a link.
func (k *cleanKit) temperatureAt(at link) figure {
	var last figure
	for _, l := range k.links() {
		if is, ok := reads(l.words.text()); ok && l.from < at.from && (l.kind == "cool" || l.kind == "warm") {
			last = is
		}
	}
	return last
}

func (k *cleanKit) hottest() figure {
	for _, l := range k.links() {
		if l.kind == "warm" {
			is, _ := reads(l.words.text())
			return is
		}
	}
	return figure{}
}

// inserted is the room that the inserts of one container take.
func (k *cleanKit) inserted() figure {
	for _, c := range k.section("components") {
		if c.has("volume") {
			return c.amount("volume")
		}
	}
	return figure{0, "mL"}
}

// eachContainer makes an edit in each container, given the volume of one fill: what
// the link tells by weight, or all that was mixed, by the density of the mixture.
func eachContainer(k *cleanKit, make func(c entry, fill figure) edit) []edit {
	var all []edit
	for _, c := range k.section("components") {
		if !c.has("brimful") {
			continue
		}
		dense := k.section("mixtures")[0].amount("density").number
		fill, _ := reads(strings.Join(strings.Split(k.links()[k.fill()].words.text(), " to ")[1:], ""))
		if fill.unit != "g" {
			vessel, _ := k.named("tools", "bowl")
			fill = k.mixed().minus(vessel.amount("residue")).times(1 / k.containersInRun())
		}
		all = append(all, make(c, figure{fill.number / dense, "mL"}))
	}
	return all
}
