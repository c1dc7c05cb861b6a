package faults_test

import "strings"

// Faults in how much is packed.
var boxFaults = []faultKind{
	{name: "half of what is needed is packed", rule: "packed-too-little", edits: func(k *cleanKit) []edit {
		return eachPack(k, func(c entry, packed place) edit {
			half := c.amount("packed").times(0.5)
			short := k.used(c).minus(roundedLike(packed, half))
			return packed.becomes(like(packed, half), short).harmlessIf(short.number <= 0)
		})
	}},
	{name: "the pack is told in a unit a thousand times smaller", rule: "packed-too-little", also: []string{"bad-amount"}, edits: func(k *cleanKit) []edit {
		return eachPack(k, func(c entry, packed place) edit {
			small := c.amount("packed").times(0.001)
			with := strings.NewReplacer(" kg", " g", " g", " mg", " m", " mm").Replace(untold(packed))
			return packed.becomes(with, k.used(c).minus(small)).harmlessIf(c.amount("packed").unit == "")
		}, measuredOnly)
	}},
	{name: "a light pack is not enough", rule: "packed-too-little", also: []string{"pack-tolerance-too-wide"}, edits: func(k *cleanKit) []edit {
		return eachPack(k, func(c entry, packed place) edit {
			under := c.amount("packed").times(0.2)
			least := c.amount("packed").minus(under)
			e := packed.becomes(untold(packed)+" ± "+like(packed, under), k.used(c).minus(least))
			if k.isByTheSpoon(c) {
				e.figures = nil // the loose density widens it further
			}
			return e.harmlessIf(!k.used(c).times(0.99).isOver(least))
		}, measuredOnly)
	}},
	{name: "the pack is lighter by half of its spare", rule: "packed-too-little", edits: func(k *cleanKit) []edit {
		return eachPack(k, func(c entry, packed place) edit {
			less := c.amount("packed").minus(c.amount("spare").times(0.5))
			return packed.becomes(like(packed, less)).harmlessIf(true)
		}, func(k *cleanKit, c entry) bool {
			return c.has("spare") && c.amount("packed").unit != "" && k.isExact(c.key) && !k.isByTheSpoon(c)
		})
	}},
	{name: "twice as much is packed", rule: "left-over", also: []string{"pack-tolerance-too-wide"}, edits: func(k *cleanKit) []edit {
		return eachPack(k, func(c entry, packed place) edit {
			twice := c.amount("packed").times(2)
			surplus := twice.minus(k.used(c)).minus(sum(k.used(c).times(0), c.amount("spare")))
			return packed.becomes(like(packed, twice), surplus).harmlessIf(k.isKept(c.key))
		})
	}},
	{name: "the spare is not told", rule: "left-over", edits: func(k *cleanKit) []edit {
		return eachPack(k, func(c entry, packed place) edit {
			spare, _ := c.within(`((?:, spare: [^,}]*)|(?:\n    spare: .*))`)
			surplus := c.amount("packed").minus(k.used(c))
			return spare.becomes("", surplus).toldAt(packed).
				harmlessIf(k.isKept(c.key) || !surplus.isOver(c.amount("packed").times(0.1)))
		}, func(k *cleanKit, c entry) bool { return c.has("spare") && k.isExact(c.key) })
	}},
	{name: "the spare is more than the pack", rule: "bad-amount", edits: func(k *cleanKit) []edit {
		return eachSpare(k, func(c entry, spare place) edit {
			return spare.becomes(like(spare, c.amount("packed").times(2)))
		})
	}},
	{name: "the spare is of another kind than the pack", rule: "bad-amount", edits: func(k *cleanKit) []edit {
		return eachSpare(k, func(c entry, spare place) edit {
			if c.amount("packed").unit == "g" {
				return spare.becomes("20 cm")
			}
			return spare.becomes("20 g")
		})
	}},
	{name: "a liquid is packed in plain ounces", rule: "plain-ounces", edits: func(k *cleanKit) []edit {
		return eachPack(k, func(c entry, packed place) edit {
			ounces := figure{c.amount("packed").number / gramsPerOunce, ""}
			told := roundedTo(ounces, 2)
			return packed.becomes(ounces.write("", 2)+" oz", figure{told.number * gramsPerOunce, "g"}, figure{told.number * mLPerFluid, "mL"})
		}, func(k *cleanKit, c entry) bool { return strings.Contains(c.text(), "ragrance") })
	}},
	{name: "a dry thing is packed in ounces", rule: "plain-ounces", edits: func(k *cleanKit) []edit {
		return eachPack(k, func(c entry, packed place) edit {
			return packed.becomes(figure{c.amount("packed").number / gramsPerOunce, ""}.write("", 2) + " oz").harmlessIf(true)
		}, func(k *cleanKit, c entry) bool { return strings.Contains(c.text(), "loose") })
	}},
	{name: "packed by another kind of unit than taken", rule: "other-kind", also: []string{"bad-amount", "market-cannot-tell"}, edits: func(k *cleanKit) []edit {
		return eachPack(k, func(c entry, packed place) edit {
			with := "3 m"
			if c.amount("packed").unit == "m" {
				with = "300 g"
			}
			return packed.becomes(with).toldAt(k.uses(c.key)[0].place)
		}, exactOnly, measuredOnly, notPlaced)
	}},
	{name: "no packed amount", rule: "missing-field", also: []string{"used-but-not-packed"}, edits: func(k *cleanKit) []edit {
		return eachPack(k, func(c entry, packed place) edit {
			key, _ := c.within(`((?:, packed: [^,}]*)|(?:\n    packed: .*))`)
			return key.becomes("").toldAt(c.head())
		}, anyUse)
	}},
	{name: "none is packed", rule: "bad-amount", also: []string{"used-but-not-packed"}, edits: func(k *cleanKit) []edit {
		return eachPack(k, func(c entry, packed place) edit { return packed.becomes("0") }, anyUse)
	}},
	{name: "packed and in no step", rule: "packed-but-never-used", also: []string{"market-cannot-tell"}, edits: func(k *cleanKit) []edit {
		last := k.section("components")[len(k.section("components"))-1]
		var all []edit
		for _, thing := range []string{"{name: Linen bow, packed: 6}", "{name: Gold dust, packed: 5 g}", "{name: Sea shells, packed: 40 g ± 2 g, spare: 5 g}", "{name: Jute string, packed: 4 m}"} {
			all = append(all, last.end().becomes("  in-vain: "+thing+"\n"))
		}
		return all
	}},
}

// A ruleOut says whether a component is one in which a fault can be made.
type ruleOut func(k *cleanKit, c entry) bool

var (
	exactOnly    ruleOut = func(k *cleanKit, c entry) bool { return k.isExact(c.key) }
	measuredOnly ruleOut = func(k *cleanKit, c entry) bool { return k.isExact(c.key) && c.amount("packed").unit != "" }
	anyUse       ruleOut = func(k *cleanKit, c entry) bool { return len(k.uses(c.key)) > 0 }
	notPlaced    ruleOut = func(k *cleanKit, c entry) bool { return k.uses(c.key)[0].kind != "place" }
)

// eachPack makes an edit in each component with a packed amount; unless said
// otherwise in those of which the steps take a told amount.
func eachPack(k *cleanKit, make func(c entry, packed place) edit, only ...ruleOut) []edit {
	if len(only) == 0 {
		only = []ruleOut{exactOnly}
	}
	var all []edit
next:
	for _, c := range k.section("components") {
		for _, is := range only {
			if !is(k, c) {
				continue next
			}
		}
		if packed, ok := c.field("packed"); ok {
			all = append(all, make(c, packed))
		}
	}
	return all
}

func eachSpare(k *cleanKit, make func(c entry, spare place) edit) []edit {
	var all []edit
	for _, c := range k.section("components") {
		if spare, ok := c.field("spare"); ok {
			all = append(all, make(c, spare))
		}
	}
	return all
}

// isByTheSpoon says whether a component that is packed by weight is taken by volume.
func (k *cleanKit) isByTheSpoon(c entry) bool {
	for _, l := range k.uses(c.key) {
		if is, ok := reads(l.words.text()); ok && is.unit == "mL" && c.amount("packed").unit == "g" {
			return true
		}
	}
	return false
}

// untold is an amount without its tolerance.
func untold(at place) string {
	text, _, _ := strings.Cut(at.text(), "±")
	return strings.TrimSpace(text)
}

// like tells a figure in the unit of an amount.
func like(at place, f figure) string {
	unit := unitOf(at)
	digits := 3
	if unit == "" {
		digits = 0
	}
	return f.write(unit, digits)
}

// roundedLike is the figure that like tells.
func roundedLike(at place, f figure) figure {
	is, _ := reads(like(at, f))
	return is
}

// unitOf is the unit that an amount is told in, "" for a count.
func unitOf(at place) string {
	if unit := amountPattern.FindStringSubmatch(untold(at)); unit != nil {
		return unit[3]
	}
	return ""
}

func roundedTo(f figure, digits int) figure {
	is, _ := reads(f.write("", digits))
	return is
}
