package faults_test

import (
	"slices"
	"strings"

	"tallyfold/kit/rules"
)

// Faults in the form of links and in what they point at.
var linkFaults = []faultKind{
	{name: "the key of a thing misspelt in a link", twins: few, rule: "unknown-target", also: linkLost, edits: func(k *cleanKit) []edit {
		var all []edit
		for _, l := range k.linksIn("method.md") {
			key, ok := l.within(`\(\w+:([a-z-]+)`)
			if ok && !slices.Contains([]string{"step", "trouble", "picture", "wait"}, l.kind) {
				all = append(all, key.becomes(misspelt(l.key)))
			}
		}
		return all
	}},
	{name: "a vessel or container misspelt behind a question mark", twins: few, rule: "unknown-target", also: linkLost, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "method.md", `\?(?:in|into|from)=([a-z]+)`, func(at place) []edit { return []edit{at.becomes(misspelt(at.text()))} })
	}},
	{name: "the heading does not say in which vessel", rule: "no-vessel", edits: func(k *cleanKit) []edit {
		var all []edit
		for i, heading := range k.find("method.md", `(?m)^(## .*)$`) {
			in, ok := heading.within(`(\?in=[a-z]+)`)
			if !ok {
				continue
			}
			e := in.becomes("").harmlessIf(true)
			for _, l := range k.links() {
				if l.step == i && (l.kind == "take" || l.kind == "fill") && e.harmless {
					e = e.toldAt(l.place).harmlessIf(false)
				}
			}
			all = append(all, e)
		}
		return all
	}},
	{name: "a link to a step that is not there", twins: few, rule: "missing-step", edits: pointsWrong("step")},
	{name: "the number of a step in words, and of another", rule: "points-the-wrong-way", edits: swaps("trouble.md",
		"the third step", "the fifth step", "the third step", "step 1")},
	{name: "a link to a help that is not there", twins: few, rule: "missing-trouble", edits: pointsWrong("trouble")},
	{name: "a link to a picture that is not there", rule: "missing-picture", edits: pointsWrong("picture")},
	{name: "a picture without words", rule: "picture-without-words", edits: func(k *cleanKit) []edit {
		return eachMatch(k, "method.md", `(\[[^\]]*\]\(picture:[^)]*\))`, func(at place) []edit {
			_, destination, _ := strings.Cut(at.text(), "](")
			return []edit{at.becomes("![](" + destination)}
		})
	}},
	{name: "a wait that is over under another name", rule: "unknown-target", edits: func(k *cleanKit) []edit {
		return eachLink(k, func(l link) []edit {
			if key, ok := l.within(`wait:([a-z-]+)`); ok && l.kind == "wait" {
				var at []place
				for _, m := range k.links() {
					if m.kind == "after" && m.key == l.key {
						at = append(at, m.place)
					}
				}
				return []edit{key.becomes(misspelt(key.text())).toldAt(at...).harmlessIf(len(at) == 0),
					key.becomes("").toldAt(at...).harmlessIf(len(at) == 0)}
			}
			return nil
		})
	}},
	{name: "the word for what happens misspelt", twins: few, rule: "unreadable-link", also: linkLost, edits: eachForm(func(l link) edit {
		kind, _ := l.within(`\((\w+):`)
		return kind.becomes(misspelt(l.kind))
	})},
	{name: "a blank between the brackets of a link", twins: few, rule: "unreadable-link", also: linkLost, edits: eachForm(func(l link) edit {
		gap, _ := l.within(`\](\()`)
		return gap.becomes(" (").toldAt(l.place, l.address)
	})},
	{name: "a link without its last bracket", twins: few, rule: "unreadable-link", also: linkLost, edits: eachForm(func(l link) edit {
		return place{l.kit, l.file, l.to - 1, l.to}.becomes("").toldAt(l.place, l.address)
	})},
	{name: "a link without its square bracket", twins: few, rule: "unreadable-link", also: linkLost, edits: eachForm(func(l link) edit {
		return place{l.kit, l.file, l.from, l.from + 1}.becomes("").toldAt(l.place, l.address)
	})},
	{name: "a blank inside the round brackets", twins: few, rule: "unreadable-link", also: linkLost, edits: eachForm(func(l link) edit {
		colon, _ := l.within(`\(\w+(:)`)
		e := colon.becomes(": ").toldAt(l.place, l.address)
		e.harmless = l.key == "" // nothing stands behind it: it is read all the same
		return e
	})},
	{name: "a link without its word and colon", twins: few, rule: "unreadable-link", also: linkLost, edits: eachForm(func(l link) edit {
		if l.key == "" {
			return l.address.becomes("soon")
		}
		return l.address.becomes(l.key)
	})},
	{name: "a link that runs something", twins: few, rule: "refused-link", also: slicesOf(linkLost, "unreadable-link"), edits: eachForm(func(l link) edit {
		return l.address.becomes("javascript:go")
	})},
}

// linkLost is what may follow when a link means nothing any more: what it did is
// missing to the sums, or to its step.
var linkLost = slicesOf(anySum(), "unknown-target", "step-without-action")

// anySum are the rules that add up over steps: any of them may rightly speak up where
// an amount is lost. How often they are told apart from their cause is counted.
func anySum() []string {
	var names []string
	for _, rule := range rules.All {
		if rule.Sums {
			names = append(names, rule.Name)
		}
	}
	return names
}

// eachForm makes an edit in each link of the method and of trouble.md.
func eachForm(make func(l link) edit) func(k *cleanKit) []edit {
	return func(k *cleanKit) []edit {
		var all []edit
		for _, l := range slices.Concat(k.links(), k.linksIn("trouble.md")) {
			if !strings.HasPrefix(l.line().text(), "#") {
				all = append(all, make(l))
			}
		}
		return all
	}
}

// pointsWrong misspells what the links of a kind point at, in all files.
func pointsWrong(kind string) func(k *cleanKit) []edit {
	return func(k *cleanKit) []edit {
		var all []edit
		for _, file := range k.markdown() {
			for _, l := range k.linksIn(file) {
				if l.kind == kind && !strings.HasPrefix(l.line().text(), "#") {
					key, _ := l.within(`\(\w+:([a-z-]+)`)
					all = append(all, key.becomes(misspelt(key.text())), key.becomes("elsewhere"))
				}
			}
		}
		return all
	}
}

// misspelt turns two letters round, or doubles the last.
func misspelt(word string) string {
	if len(word) > 2 && word[1] != word[2] {
		return word[:1] + word[2:3] + word[1:2] + word[3:]
	}
	return word + word[len(word)-1:]
}
