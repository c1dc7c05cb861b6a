package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
)

var vagueInstruction = Rule{
	Name:     "vague-instruction",
	Severity: diag.ShouldFix,
	Title:    "A time, a heat or a place is told in words that everyone reads differently",
	Explanation: `“Heat it over medium heat for a while, until it is done”: how hot, how long, and what does
done look like? Whoever has made it a hundred times knows. The customer makes it once.

The running text of the steps and of trouble.md is searched for such phrases. It goes by
words, so it should be fixed, not must. Silent is what the text makes clear: a heat in a
step that tells a temperature or what to look for, a time or a place in a sentence that
does, and a sentence that goes on with “until …”. Cautions are not searched, and amounts
are those of vague-amount.

Write a time, a temperature or what to look for: until [the edge is firm](cue:).`,
	Check: func(s Subject) []diag.Finding {
		table, known := openWords[language(s.Kit)]
		if !known {
			return []diag.Finding{noWords(s.Kit, "vague times, heats and places", openWords)}
		}
		v := openSearch{table: table, phrases: openPhrases[language(s.Kit)], reader: amountReader(s.Kit)}
		for _, p := range passages(s.Kit) {
			v.search(p)
		}
		return v.findings
	},
}

type openSearch struct {
	table    openTable
	phrases  map[string][]cutOpenPhrase
	reader   quantity.Reader
	findings []diag.Finding
}

func (v *openSearch) search(p passage) {
	for i := range p.words {
		for _, open := range v.phrases[p.words[i].text] {
			n := p.phrase(i, open.parts)
			if n == 0 || v.isMeantOtherwise(p, i, i+n-1, open.openPhrase) || v.isTold(p, i, i+n-1, open.kind) {
				continue
			}
			v.note(p, i, i+n-1, open.kind)
			break
		}
	}
}

func (v *openSearch) isMeantOtherwise(p passage, first, last int, open openPhrase) bool {
	next := p.neighbour(last, 1)
	switch {
	case slices.Contains(open.unless, next), slices.Contains(open.after, p.neighbour(first, -1)):
		return true
	case open.kind == openPlace && slices.Contains(v.table.likes, next),
		open.kind == openTime && v.table.doing != "" && strings.HasSuffix(next, v.table.doing):
		return true
	}
	// In a link that needs an amount the reader of the method has told it already.
	link := p.link(p.span(first, last))
	return link != nil && link.Kind != kit.Cue && readsAmount(link.Kind)
}

// isTold says whether the sentence, or for a heat the step, tells what the phrase
// leaves open.
func (v *openSearch) isTold(p passage, first, last int, kind openKind) bool {
	if v.goesOn(p, last) {
		return true
	}
	in := func(i int) bool { return kind == openHeat || p.words[i].sentence == p.words[first].sentence }
	for _, link := range p.links {
		if v.saysEnough(link, kind) && p.holds(link, in) && !link.Span.Contains(p.span(last, last)) {
			return true
		}
	}
	for i := range p.words {
		if in(i) && isNumber(p.words[i].text) && v.figureTells(p, i, kind) {
			return true
		}
	}
	return false
}

// goesOn: "for a while, until no lumps show".
func (v *openSearch) goesOn(p passage, last int) bool {
	for away := 1; p.neighbour(last, away) != ""; away++ {
		if slices.Contains(v.table.ends, p.neighbour(last, away)) {
			return true
		}
	}
	return false
}

// saysEnough says whether a link of a kind settles what is open.
func (v *openSearch) saysEnough(link *kit.Operation, kind openKind) bool {
	switch link.Kind {
	case kit.Cue, kit.Warm, kit.Cool:
		return true
	case kit.Wait, kit.Work, kit.After:
		return kind == openTime
	case kit.ShowPicture, kit.ToStep, kit.ToHelp:
		return kind == openPlace
	}
	return false
}

// holds says whether a word of a link is one of those asked for.
func (p passage) holds(link *kit.Operation, in func(i int) bool) bool {
	for i := range p.words {
		if in(i) && link.Span.Contains(p.span(i, i)) {
			return true
		}
	}
	return false
}

// figureTells says whether the amount that begins with word i settles what is open.
func (v *openSearch) figureTells(p passage, i int, kind openKind) bool {
	const longest = 24 // bytes: a figure and its unit
	from := p.words[i].start
	for _, found := range v.reader.Find(p.text[from:min(len(p.text), from+longest)]) {
		switch found.Amount.Dimension {
		case quantity.Temperature:
			return true
		case quantity.Duration:
			return kind == openTime
		case quantity.Length, quantity.Volume, quantity.Area:
			return kind == openPlace
		}
		break
	}
	return false
}

// openTellings are what a finding says of each kind of phrase.
var openTellings = map[openKind]struct{ expected, order string }{
	openTime: {"how long, or what to look for",
		"write how long and what to look for: [10 minutes](wait:), until [the surface is firm](cue:)"},
	openHeat: {"a temperature, or what to look for",
		"write the temperature, [to 75 °C](warm:), or what shows it: until [small bubbles rise](cue:)"},
	openPlace: {"which place, size or way is meant",
		"name the place, the size or the way that you use yourself, or show it in a picture"},
}

func (v *openSearch) note(p passage, first, last int, kind openKind) {
	v.findings = append(v.findings, diag.Finding{
		Where: p.span(first, last), About: p.about,
		Cause:    "vague words in " + p.about + ", sentence " + whole(p.words[first].sentence).String(),
		Found:    p.where + ": “" + p.said(p.words[first].start, p.words[last].end) + "”, which everyone reads differently",
		Expected: openTellings[kind].expected,
		Remedies: diag.Fix(openTellings[kind].order),
	})
}
