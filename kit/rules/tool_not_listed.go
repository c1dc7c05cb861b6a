package rules

import (
	"maps"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var toolNotListed = Rule{
	Name:     "tool-not-listed",
	Severity: diag.ShouldFix,
	Title:    "The steps use a tool that kit.yaml does not list",
	Explanation: `A customer reads on the cover what they must have. A blender that turns up only in step
4 stops them with the mixture cooling in the pan.

The running text of the steps and of trouble.md is searched for the names of common
tools. It goes by words, and words can be meant otherwise: so it should be fixed, not
must. Silent are tools that kit.yaml lists under a like name, tools that the text says
are not needed ("no oven"), and those named only as another way ("or a fork").

List the tool under tools, with “from: customer” or “from: box”.`,
	Check: func(s Subject) []diag.Finding {
		table, known := toolSenses[language(s.Kit)]
		if !known {
			return []diag.Finding{noWords(s.Kit, "tools", toolSenses)}
		}
		t := toolSearch{kit: s.Kit, unlisted: unlisted(s.Kit, table), found: map[string]*diag.Finding{}}
		for _, step := range s.Kit.Method.Steps() {
			t.search(readStep(step), inStep(step))
		}
		for _, trouble := range s.Kit.Troubles {
			t.search(readTrouble(trouble), "the help with “"+trouble.Title+"”")
		}
		return t.findings()
	},
}

// noWords says that no list of words is kept for the language of the kit. kept are the
// lists there are, by language.
func noWords[T any](k *kit.Kit, what string, kept map[string]T) diag.Finding {
	return diag.Finding{
		Severity: diag.WorthKnowing, Where: k.Language.Span, About: "language", Cause: "language",
		Found:    "cannot check: no list of words for " + what + " is kept for the language " + k.Language.Value,
		Expected: "a language that such a list is kept for: " + strings.Join(slices.Sorted(maps.Keys(kept)), ", "),
		Remedies: diag.Fix("read the steps through for " + what + " yourself"),
	}
}

// A toolSearch gathers tools that are named and not listed, each told once.
type toolSearch struct {
	kit *kit.Kit
	// unlisted are the names to look for, by their first word.
	unlisted map[string][]toolName
	order    []string
	found    map[string]*diag.Finding
}

// A toolName is one name of a tool, cut into words.
type toolName struct {
	toolSense
	words []string
}

// unlisted gives the names of all tools that kit.yaml lists under no like name.
func unlisted(k *kit.Kit, table []toolSense) map[string][]toolName {
	things := thingNames(k)
	all := map[string][]toolName{}
	for _, tool := range table {
		if tool.isAmong(things) {
			continue
		}
		for _, words := range tool.names {
			first := singular(words[0])
			all[first] = append(all[first], toolName{tool, words})
		}
	}
	return all
}

func (t *toolSearch) search(text reading, where string) {
	for i := range text.words {
		for _, name := range t.unlisted[singular(text.words[i].text)] {
			if n := text.phrase(i, name.words); n > 0 && !isInnocent(t.kit, text, i, name.toolSense) {
				t.note(name.toolSense, text, i, i+n-1, where)
			}
		}
	}
}

func (t *toolSearch) note(tool toolSense, text reading, first, last int, where string) {
	at := text.span(first, last)
	if link := text.link(at); link != nil && (link.Kind == kit.WithTool || link.Kind == kit.WithVessel) {
		return // it stands for a tool that kit.yaml lists under another name
	}
	if known := t.found[tool.called]; known != nil {
		known.Also = append(known.Also, diag.Place{Where: at, Note: where})
		return
	}
	key := keyOf(tool.called)
	t.order = append(t.order, tool.called)
	t.found[tool.called] = &diag.Finding{
		Where: at, About: key,
		Found:    where + " speaks of “" + at.Text() + "”, and kit.yaml lists no " + tool.called,
		Expected: "every tool under tools in kit.yaml",
		Remedies: diag.Fix(
			"add “"+key+": {name: "+capitalised(tool.called)+", from: customer, essential: true}” under tools in kit.yaml",
			"if one listed there is meant, call it by that name or link it with tool:"),
	}
}

// keyOf makes a key of kit.yaml of a name: letters without accents, hyphens.
func keyOf(called string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z':
			return r
		case unicode.Is(unicode.Mn, r):
			return -1
		}
		return '-'
	}, norm.NFD.String(strings.ReplaceAll(strings.ToLower(called), "ß", "ss")))
}

// capitalised writes the first letter large.
func capitalised(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}

func (t *toolSearch) findings() []diag.Finding {
	var findings []diag.Finding
	for _, called := range t.order {
		findings = append(findings, *t.found[called])
	}
	return findings
}

// isAmong says whether kit.yaml has a thing of that or a like name.
func (t toolSense) isAmong(things [][]string) bool {
	for _, name := range things {
		for _, alike := range t.alikes {
			if holdsPhrase(name, alike) {
				return true
			}
		}
	}
	return false
}

// thingNames are the names and keys of all tools, components and household items.
func thingNames(k *kit.Kit) [][]string {
	var names []string
	for _, known := range k.Tools {
		names = append(append(names, known.Names()...), known.ID)
	}
	for _, known := range k.Components {
		names = append(append(names, known.Names()...), known.ID)
	}
	for _, known := range k.Household {
		names = append(append(names, known.Names()...), known.ID)
	}
	for i := range names {
		names[i] = strings.ReplaceAll(names[i], "-", " ")
	}
	return cutAll(names)
}

// isCalled says whether the words of a name hold another in a row: "Stick blender"
// is called "blender".
func isCalled(name, called string) bool {
	return holdsPhrase(wordsOf(strings.ReplaceAll(name, "-", " ")), wordsOf(called))
}

// holdsPhrase says the same of words. The last word may be a plural in either.
func holdsPhrase(name, phrase []string) bool {
	for start := 0; start+len(phrase) <= len(name); start++ {
		alike := true
		for i, part := range phrase {
			is := name[start+i]
			alike = alike && (is == part || i == len(phrase)-1 && singular(is) == singular(part))
		}
		if alike {
			return true
		}
	}
	return false
}

// isInnocent: the word belongs to a phrase that means something else, or the text
// says that the tool is not needed.
func isInnocent(k *kit.Kit, text reading, i int, tool toolSense) bool {
	for _, phrase := range tool.innocents {
		for back := range phrase {
			if at := i - back; at >= 0 && text.phrase(at, phrase) > 0 {
				return true
			}
		}
	}
	if isNotNeeded(k, text, i) {
		return true
	}
	for back := 1; back <= 3; back++ {
		if slices.Contains(notMeant[language(k)], text.neighbour(i, -back)) {
			return true
		}
	}
	return false
}

// isNotNeeded says whether the words behind a tool's name say that it is not needed.
func isNotNeeded(k *kit.Kit, text reading, i int) bool {
	const near = 8
	no, needed := false, false
	for ahead := 1; ahead <= near; ahead++ {
		is := text.neighbour(i, ahead)
		no = no || slices.Contains(notNeeded[language(k)][0], is)
		needed = needed || no && slices.Contains(notNeeded[language(k)][1], is)
	}
	return needed
}
