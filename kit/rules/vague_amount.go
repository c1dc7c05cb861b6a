package rules

import (
	"slices"
	"strings"
	"unicode"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

var vagueAmount = Rule{
	Name:     "vague-amount",
	Severity: diag.ShouldFix,
	Title:    "An amount is told in words that everyone reads differently",
	Explanation: `“A good splash”, “plenty”, “a handful”, “nearly full”: whoever wrote it knows how much it
is, and nobody else does. Ten customers will take ten amounts, and the sums of the kit
hold for none of them.

The running text of the steps, of their translations and of trouble.md is searched for
such phrases, in the words of each language. It goes by words, so it should be fixed, not must. Silent are phrases of time, care or patience
(“plenty of time”, “a little at a time”), those beside which an amount is told, and what
cautions say.

Write an amount that can be measured, best as a link, so that it is added up.`,
	Check: func(s Subject) []diag.Finding {
		table, known := vagueWords[language(s.Kit)]
		if !known {
			return []diag.Finding{noWords(s.Kit, "vague amounts", vagueWords)}
		}
		v := vagueSearch{Subject: s, table: table, phrases: vaguePhrases[language(s.Kit)]}
		for _, step := range s.Kit.Method.Steps() {
			v.search(readStep(step), step.ID)
		}
		for _, trouble := range s.Kit.Troubles {
			v.search(readTrouble(trouble), trouble.ID)
		}
		return append(v.findings, vagueTranslations(s)...)
	},
}

// vagueTranslations searches the translations in languages whose words are known; for
// another it is told elsewhere that its words are not read.
func vagueTranslations(s Subject) []diag.Finding {
	v := vagueSearch{Subject: s}
	for _, t := range s.Kit.Translations {
		table, known := vagueWords[baseOf(t.Language)]
		if !known {
			continue
		}
		v.table, v.phrases = table, vaguePhrases[baseOf(t.Language)]
		for _, step := range t.Method.Steps() {
			v.search(readStep(step), step.ID)
		}
	}
	return v.findings
}

type vagueSearch struct {
	Subject
	table    vagueTable
	phrases  map[string][]vaguePhrase
	findings []diag.Finding
}

func (v *vagueSearch) search(text reading, about string) {
	for i := 0; i < len(text.words); i++ {
		if n := v.phraseAt(text, i); n > 0 {
			v.note(text, i, i+n-1, about)
			i += n - 1
		}
	}
}

// phraseAt is how many words from i on are a phrase that leaves an amount open, 0
// for none.
func (v *vagueSearch) phraseAt(text reading, i int) int {
	for _, vague := range v.phrases[text.words[i].text] {
		if n := text.phrase(i, vague.parts); n > 0 && v.isMeant(text, i, n, vague.vagueWord) {
			return n
		}
	}
	return 0
}

// isMeant says whether words first to first+n speak of an amount, and of one that
// is told nowhere beside them.
func (v *vagueSearch) isMeant(text reading, first, n int, vague vagueWord) bool {
	before, next := text.neighbour(first, -1), text.neighbour(first+n-1, 1)
	if next == "more" || next == "extra" {
		next = text.neighbour(first+n-1, 2)
	}
	switch {
	case len(vague.then) > 0 && !slices.Contains(vague.then, next),
		slices.Contains(vague.unless, next), slices.Contains(v.table.never, next),
		slices.Contains(vague.after, before), strings.HasSuffix(next, "ly"), isNumber(next):
		return false
	}
	if v.isNear(text, first, vague.behind) || v.isRinsing(text, first, first+n-1) {
		return false
	}
	at := text.span(first, first+n-1)
	link := text.link(at)
	switch {
	case link != nil && (link.Phrase.Portion != kit.NoPortion || !tells(link.Kind)),
		link != nil && vague.level && isUnnumbered(link):
		return false
	case vague.level && (!v.isBehind(text, first, v.table.filling) || fillTold(text, first)),
		vague.adding && link == nil && !v.isAdding(text, first):
		return false
	}
	return !amountFollows(text, first+n-1)
}

// tells says whether a link of a kind should tell an amount.
func tells(kind kit.Kind) bool {
	switch kind {
	case kit.Take, kit.Use, kit.Fill, kit.Move, kit.Place:
		return true
	}
	return false
}

func isNumber(word string) bool { return word != "" && unicode.IsDigit(rune(word[0])) }

// reach is how many words from a phrase a word of adding may stand.
const reach = 5

func (v *vagueSearch) isAdding(text reading, i int) bool {
	for back := 1; back <= reach; back++ {
		is := text.neighbour(i, -back)
		if slices.Contains(v.table.adding, is) ||
			slices.Contains(v.table.stirring, is) && slices.Contains(v.table.inward, text.neighbour(i, -back+1)) {
			return true
		}
		if v.table.addingBehind && slices.Contains(v.table.adding, text.neighbour(i, back)) {
			return true
		}
	}
	return false
}

// isNear says whether one of the words stands among the few before i.
func (v *vagueSearch) isNear(text reading, i int, words []string) bool {
	for back := 1; back <= reach; back++ {
		if slices.Contains(words, text.neighbour(i, -back)) {
			return true
		}
	}
	return false
}

// isRinsing says whether a phrase is of water that something is rinsed in.
func (v *vagueSearch) isRinsing(text reading, first, last int) bool {
	isWater := text.neighbour(last, 1) == "water" || text.neighbour(last, 2) == "water"
	return isWater && v.isBehind(text, first, v.table.rinsing)
}

// isBehind says whether one of the words stands before i in its sentence.
func (v *vagueSearch) isBehind(text reading, i int, words []string) bool {
	for back := 1; text.neighbour(i, -back) != ""; back++ {
		if slices.Contains(words, text.neighbour(i, -back)) {
			return true
		}
	}
	return false
}

// fillTold says whether a link in the same sentence tells how much is filled, or is
// told of by fill-not-a-number because it does not.
func fillTold(text reading, i int) bool {
	for _, link := range text.links {
		told := (link.Kind == kit.Fill || link.Kind == kit.Move) && link.Phrase.Portion != kit.NoPortion
		if !told && !isUnnumbered(link) {
			continue
		}
		for _, w := range text.words {
			if w.sentence == text.words[i].sentence && link.Span.Contains(text.at.Part(w.start, w.end)) {
				return true
			}
		}
	}
	return false
}

// amountFollows says whether an amount in brackets stands close behind a phrase:
// "a good splash (15 mL)".
func amountFollows(text reading, last int) bool {
	const near = 40
	rest := text.text[text.words[last].end:]
	rest = rest[:min(near, len(rest))]
	open := strings.IndexByte(rest, '(')
	if open < 0 || strings.ContainsAny(rest[:open], ".!?;") {
		return false
	}
	return strings.ContainsAny(rest[open:], "0123456789½¼¾")
}

func (v *vagueSearch) note(text reading, first, last int, about string) {
	at := text.span(first, last)
	end := last
	if text.neighbour(last, 1) != "" && slices.Contains(v.table.wants, text.words[last].text) {
		end++ // "a good" splash
	}
	phrase := strings.Join(strings.Fields(text.text[text.words[first].start:text.words[end].end]), " ")
	finding := diag.Finding{
		Where: at, About: about,
		Found:    "“" + phrase + "”, which everyone reads differently",
		Expected: "an amount that can be measured, such as 15 g, 1 tbsp or a height in mm",
		Remedies: diag.Fix("write the amount, such as “15 g” or “1 tbsp”, or a fill height in mm"),
	}
	if thing, kind := v.thingAfter(text, at); thing != "" {
		finding.About = thing
		finding.Remedies = v.remedies(thing, kind)
	}
	v.findings = append(v.findings, finding)
}

// thingAfter is what the phrase speaks of: the thing of the link it stands in or
// just before.
func (v *vagueSearch) thingAfter(text reading, at source.Span) (thing string, kind kit.Kind) {
	if link := text.link(at); link != nil {
		return v.keyOf(link), link.Kind
	}
	for _, link := range text.links {
		gap := link.Span.Start - at.End
		if gap >= 0 && gap <= len(" of the ") && tells(link.Kind) {
			return v.keyOf(link), link.Kind
		}
	}
	return "", ""
}

// keyOf is the key of what a link is about; a role keeps its name.
func (v *vagueSearch) keyOf(link *kit.Operation) string {
	if _, known := v.Kit.Named(link.Target); known {
		return link.Target
	}
	return ""
}

func (v *vagueSearch) remedies(thing string, kind kit.Kind) []diag.Remedy {
	name, link := v.Kit.Called(thing), "("+string(kind)+":"+thing+")"
	remedies := []diag.Remedy{{Do: "write the amount into the link: [15 g of " + name + "]" + link + ", with the figure that you use yourself"}}
	if b := v.Ledger.Balance(thing); b != nil && b.Packed.Known() && b.Used.Known() && b.Left.Value().Sign() > 0 {
		remedies = append(remedies, diag.Remedy{
			Do:   "write [all of the " + name + "]" + link + ", if the rest of the pack is meant",
			Then: "the other steps leave " + show(b.Left.Value(), b.Dimension),
		})
	}
	return remedies
}

// isVague says whether vague-amount speaks of the words of a link, so that no
// other rule needs to.
func isVague(k *kit.Kit, o *kit.Operation) bool {
	table, known := vagueWords[language(k)]
	if !known || o.TextSpan.End <= o.TextSpan.Start {
		return false
	}
	text := read(o.TextSpan, nil, []*kit.Operation{o}, nil)
	v := vagueSearch{Subject: Subject{Kit: k}, table: table, phrases: vaguePhrases[language(k)]}
	for i := range text.words {
		if v.phraseAt(text, i) > 0 {
			return true
		}
	}
	return false
}
