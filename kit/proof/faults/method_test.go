package faults_test

import (
	"strings"
)

// Faults in the headings, quotations and files of text.
var methodFaults = []faultKind{
	{name: "a step called otherwise than its references", rule: "missing-step", edits: func(k *cleanKit) []edit { return renamedHeading(k, "method.md", "step") }},
	{name: "a help called otherwise than its references", rule: "missing-trouble", edits: func(k *cleanKit) []edit { return renamedHeading(k, "trouble.md", "trouble") }},
	{name: "two steps of one name", twins: few, rule: "duplicate-step", also: []string{"time-claimed-too-short"}, edits: func(k *cleanKit) []edit {
		return eachHeading(k, "method.md", func(heading place) []edit {
			name, _ := heading.within(`step:([a-z-]+)`)
			return []edit{k.whole("method.md").end().becomes("\n## [And once more](step:" + name.text() + ")\n\nWait [5 minutes](wait:).\n")}
		})
	}},
	{name: "two helps of one name", rule: "duplicate-heading", edits: func(k *cleanKit) []edit {
		return eachHeading(k, "trouble.md", func(heading place) []edit {
			return []edit{k.whole("trouble.md").end().becomes("\n" + heading.text() + "\n\n**What to do.** Read the help above.\n")}
		})
	}},
	{name: "two sections of words of one name", rule: "duplicate-heading", edits: func(k *cleanKit) []edit {
		return eachHeading(k, "words.md", func(heading place) []edit {
			return []edit{k.whole("words.md").end().becomes("\n" + heading.text() + "\n\nOnce more.\n")}
		})
	}},
	{name: "a step called like a thing", rule: "duplicate-name", edits: func(k *cleanKit) []edit {
		var all []edit
		for _, section := range []string{"components", "tools"} {
			for _, thing := range k.section(section) {
				heading := k.find("method.md", `(?m)^## \[.*\]\(step:([a-z-]+)`)
				last := heading[len(heading)-1]
				if !strings.Contains(k.files["method.md"]+k.files["trouble.md"], ": [") && len(k.find("method.md", `\(step:(`+last.text()+`)\)`)) == 1 {
					all = append(all, last.becomes(thing.key))
				}
			}
		}
		return all
	}},
	{name: "a step without a title", twins: few, rule: "step-without-title", edits: func(k *cleanKit) []edit {
		return eachHeading(k, "method.md", func(heading place) []edit {
			title, _ := heading.within(`\[(.*)\]`)
			return []edit{title.becomes("")}
		})
	}},
	{name: "a step in which nothing is linked", rule: "step-without-action", also: []string{"points-the-wrong-way"}, edits: func(k *cleanKit) []edit {
		return eachHeading(k, "method.md", func(heading place) []edit {
			new := "## Look out of the window\n\nThe tide is out.\n\n"
			if strings.Contains(heading.text(), "wicks") {
				new = "## Look out of the harbour window\n\nThe tide is out.\n\n"
			}
			start := place{k, heading.file, heading.from, heading.from}
			e := start.becomes(new)
			return []edit{e}
		})
	}},
	{name: "a caution outside its quotation", rule: "unmarked-caution", also: []string{"vague-amount", "caution-missing", "caution-elsewhere"}, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "method.md", `(?m)^(> (?:WARNING|CAUTION)(?:.*\n>)*.*\n)`, func(at place) []edit {
			return []edit{at.becomes(strings.ReplaceAll(at.text()[2:], "\n> ", "\n"))}
		})
	}},
	{name: "a note of the maker's that never ends", rule: "unclosed-note", also: linkLost, edits: func(k *cleanKit) []edit {
		return eachStep(k, "<!-- ask Ann about this")
	}},
	{name: "HTML in the text", twins: few, rule: "raw-html", edits: func(k *cleanKit) []edit {
		return eachStep(k, "Read <b>all</b> of this twice.")
	}},
	{name: "an action before the first step", twins: few, rule: "outside-a-step", edits: func(k *cleanKit) []edit {
		first := k.find("method.md", `(?m)^(## .*)$`)[0]
		start := place{k, "method.md", first.from, first.from}
		var all []edit
		for _, action := range []string{"Wait [5 minutes](wait:).", "Begin with [10 minutes](work:) of quiet."} {
			all = append(all, start.becomes(action+"\n\n"))
		}
		return all
	}},
	{name: "text before the first heading", rule: "outside-a-heading", edits: func(k *cleanKit) []edit {
		var all []edit
		for _, file := range []string{"trouble.md", "words.md"} {
			all = append(all, place{k, file, 0, 0}.becomes("Read this before you write to us.\n\n"))
		}
		return all
	}},
	{name: "no steps at all", rule: "no-steps", edits: func(k *cleanKit) []edit {
		return []edit{k.whole("method.md").becomes("The steps come later.\n").toldAt(place{k, "method.md", 0, 0})}
	}, also: slicesOf(linkLost, "missing-step", "missing-trouble")},
}

func slicesOf(all []string, more ...string) []string {
	return append(append([]string{}, all...), more...)
}

// eachHeading makes edits at each heading with ##.
func eachHeading(k *cleanKit, file string, make func(heading place) []edit) []edit {
	return eachMatch(k, file, `(?m)^(## .*)$`, make)
}

// renamedHeading gives each heading another name; references to the old one point
// nowhere.
func renamedHeading(k *cleanKit, file, kind string) []edit {
	return eachHeading(k, file, func(heading place) []edit {
		name, ok := heading.within(kind + `:([a-z-]+)`)
		if !ok {
			return nil
		}
		var at []place
		for _, file := range k.markdown() {
			at = append(at, k.find(file, `[^#\n]*\]\(`+kind+`:(`+name.text()+`)\)`)...)
		}
		at = withoutPlace(at, name)
		return []edit{name.becomes("another").toldAt(at...).harmlessIf(len(at) == 0)}
	})
}

func withoutPlace(all []place, one place) []place {
	var rest []place
	for _, p := range all {
		if p.file != one.file || p.from != one.from {
			rest = append(rest, p)
		}
	}
	return rest
}
