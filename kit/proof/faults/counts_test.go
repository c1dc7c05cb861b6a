package faults_test

import (
	"regexp"
	"strings"
)

// Faults in numbers of pieces and containers, and in times.
var countAndTimeFaults = []faultKind{
	{name: "another number of pieces on the box", rule: "counts-disagree", also: []string{"claim-not-backed"}, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^makes: (\d+)`, func(at place) []edit {
			n, _ := reads(at.text())
			return []edit{at.becomes(more(n, 1), plus(n, 1), n), at.becomes(more(n, -1), plus(n, -1), n), at.becomes(more(n, n.number), plus(n, n.number), n)}
		})
	}},
	{name: "a claim of another number of pieces", rule: "claim-not-backed", edits: swaps("kit.yaml",
		"Makes eight", "Makes nine", "Makes six", "Makes seven", "Makes three", "Makes four", "says: Two skeins", "says: Three skeins")},
	{name: "another count of a kind of piece", rule: "counts-disagree", beside: true, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `count: (\d+)`, func(at place) []edit {
			n, _ := reads(at.text())
			return []edit{at.becomes(more(n, 1), plus(n, 1), n), at.becomes(more(n, -1), plus(n, -1), n)}
		})
	}},
	{name: "containers that stay empty", rule: "counts-disagree", edits: func(k *cleanKit) []edit {
		return eachFilled(k, func(packed place, n figure) []edit {
			return []edit{packed.becomes(more(n, 2), plus(n, 2), n, figure{2, ""}), packed.becomes(more(n, n.number), n)}
		})
	}},
	{name: "fewer containers than are filled", rule: "counts-disagree", beside: true, also: []string{"taken-from-empty", "left-over"}, edits: func(k *cleanKit) []edit {
		return eachFilled(k, func(packed place, n figure) []edit {
			return []edit{packed.becomes(more(n, -2), figure{k.containersInRun(), ""})}
		})
	}},
	{name: "more containers filled than are packed", rule: "counts-disagree", also: []string{"taken-from-empty", "typed-amount-disagrees", "net-less-than-claimed", "lids-and-labels"}, edits: func(k *cleanKit) []edit {
		return eachFillCount(k, 1)
	}},
	{name: "fewer containers filled than are packed", rule: "counts-disagree", beside: true, also: []string{"packed-too-little", "left-over", "typed-amount-disagrees", "lids-and-labels"}, edits: func(k *cleanKit) []edit {
		return eachFillCount(k, -1)
	}},
	{name: "less hands-on time on the box than the steps take", rule: "time-claimed-too-short", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `hands-on: ([^,}]*)`, func(at place) []edit {
			takes := k.handsOn()
			return []edit{
				at.becomes(takes.minus(figure{1, "min"}).write("min", 0), takes, figure{1, "min"}),
				at.becomes(takes.times(0.5).write("min", 0), takes),
				at.becomes("about "+takes.times(0.9).write("min", 0), takes),
				at.becomes("about " + takes.times(0.96).write("min", 0)).harmlessIf(true),
				at.becomes(takes.write("min", 0)).harmlessIf(true),
			}
		})
	}},
	{name: "less time in all on the box than the steps take", rule: "time-claimed-too-short", also: []string{"bad-amount"}, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `total: ([^,}]*)`, func(at place) []edit {
			takes := k.clock()
			return []edit{
				at.becomes(takes.minus(figure{1, "min"}).write("min", 0), takes, figure{1, "min"}),
				at.becomes(takes.times(0.5).write("min", 0), takes),
				at.becomes(takes.write("min", 0)).harmlessIf(true),
			}
		})
	}},
	{name: "a step that takes longer", rule: "time-claimed-too-short", edits: func(k *cleanKit) []edit {
		return eachTime(k, "work", "3 hours", `hands-on: (.)`, (*cleanKit).handsOn)
	}},
	{name: "a wait that takes longer", rule: "time-claimed-too-short", edits: func(k *cleanKit) []edit {
		return eachTime(k, "wait", "5 days", `total: (.)`, (*cleanKit).clock)
	}},
	{name: "a step that tells no time", rule: "time-claimed-too-short", edits: func(k *cleanKit) []edit {
		times, acts, cleans := map[int]int{}, map[int]bool{}, map[int]bool{}
		for _, l := range k.links() {
			switch l.kind {
			case "work", "wait":
				times[l.step]++
			case "take", "use", "move", "fill", "place", "left", "clean", "warm", "cool", "again", "after":
				acts[l.step] = true
				cleans[l.step] = cleans[l.step] || l.kind == "clean" // which takes hands, whatever waits beside it
			}
		}
		return eachLink(k, func(l link) []edit {
			if l.kind != "work" {
				return nil
			}
			if times[l.step] == 1 && !acts[l.step] {
				return nil // nothing is left in the step: a kind of its own
			}
			heading := k.find("method.md", `(?m)^(## .*)$`)[l.step]
			return []edit{l.becomes("your time").toldAt(heading).harmlessIf(times[l.step] > 1 && !cleans[l.step])}
		})
	}},
}

func more(n figure, by float64) string { return plus(n, by).write("", 0) }

func plus(n figure, by float64) figure { return figure{n.number + by, n.unit} }

// eachMatch makes edits at every match of a pattern's group in a file.
func eachMatch(k *cleanKit, file, pattern string, make func(at place) []edit) []edit {
	var all []edit
	for _, at := range k.find(file, pattern) {
		all = append(all, make(at)...)
	}
	return all
}

// eachLink makes edits in every link of the method outside its headings.
func eachLink(k *cleanKit, make func(l link) []edit) []edit {
	var all []edit
	for _, l := range k.links() {
		all = append(all, make(l)...)
	}
	return all
}

// eachFilled makes edits in how many of a container are packed.
func eachFilled(k *cleanKit, make func(packed place, n figure) []edit) []edit {
	var all []edit
	for _, c := range k.section("components") {
		if packed, ok := c.field("packed"); ok && c.has("brimful") {
			all = append(all, make(packed, c.amount("packed"))...)
		}
	}
	return all
}

// eachFillCount changes how many containers a run fills.
func eachFillCount(k *cleanKit, by float64) []edit {
	return eachLink(k, func(l link) []edit {
		if at, ok := l.within(`each of (\d+)`); ok && l.kind == "fill" {
			n, _ := reads(at.text())
			if by > 0 {
				return []edit{at.becomes(more(n, by), plus(n, by))}
			}
			return []edit{at.becomes(more(n, by), plus(n, by).times(l.times))}
		}
		return nil
	})
}

// eachTime puts another time into each link of a kind; what that takes in all is
// reckoned again, and told where the claim stands.
func eachTime(k *cleanKit, kind, longer, claim string, reckon func(*cleanKit) figure) []edit {
	return eachLink(k, func(l link) []edit {
		if l.kind != kind {
			return nil
		}
		old := regexp.MustCompile(`\d+ (?:minutes|hours?|days?)`).FindString(l.words.text())
		e := l.words.becomes(strings.Replace(l.words.text(), old, longer, 1)).toldAt(k.find("kit.yaml", claim)...)
		e.figures = []figure{reckon(e.result())}
		return []edit{e}
	})
}

// result is the faulty kit as text again, for reckoning.
func (e edit) result() *cleanKit {
	changed := &cleanKit{name: e.kit.name, files: map[string]string{}}
	for name, file := range e.faulty() {
		changed.files[name] = string(file.Data)
	}
	return changed
}
