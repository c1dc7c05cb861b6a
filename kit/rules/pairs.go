package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// A pair is one amount told twice side by side, "600 g (1 lb 5 oz)", in two systems of
// units.
type pair struct {
	first, second     quantity.Amount
	firstAt, secondAt source.Span
	// before and after are the words around it in its sentence, the nearest first.
	before, after []string
	// where names the place for a sentence, "step 2"; about is a key.
	where, about string
}

// A toldText is a text of the kit that amounts may be told in.
type toldText struct {
	text  string
	at    source.Span
	links []*kit.Operation
	where string
	about string
}

// toldTexts are all texts that a customer reads: steps, help, words, the box.
func toldTexts(k *kit.Kit) []toldText {
	var all []toldText
	add := func(text reading, where, about string) {
		all = append(all, toldText{text.text, text.at, text.links, where, about})
	}
	for _, part := range k.Method.Parts {
		if part.Body.Known() {
			add(read(part.Body, part.Prose, part.Operations, nil), "the part “"+part.Title+"”", part.ID)
		}
		for _, step := range part.Steps {
			add(read(step.Body, step.Prose, step.Operations, nil), inStep(step), step.ID)
		}
	}
	for _, trouble := range k.Troubles {
		add(read(trouble.Body, trouble.Prose, trouble.Operations, nil), "the help with “"+trouble.Title+"”", trouble.ID)
	}
	for _, words := range k.Words {
		add(read(words.Body, words.Prose, words.Operations, nil), "words.md", words.ID)
	}
	return append(all, boxTexts(k)...)
}

// boxTexts are the sentences of kit.yaml that are printed.
func boxTexts(k *kit.Kit) []toldText {
	var all []toldText
	add := func(said kit.Said[string], about string) {
		if said.Given() {
			all = append(all, toldText{text: said.Span.Text(), at: said.Span, where: "kit.yaml", about: about})
		}
	}
	add(k.About, "about")
	for _, c := range k.Components {
		add(c.Called, c.ID)
		add(c.Note, c.ID)
		for _, caution := range c.Cautions {
			add(caution, c.ID)
		}
	}
	for _, h := range k.Household {
		add(h.Note, h.ID)
	}
	for _, t := range k.Tools {
		add(t.Note, t.ID)
	}
	for _, claim := range k.Claims {
		add(claim.Says, "claims")
	}
	return all
}

// pairs gives every amount of the kit that is told in two systems side by side.
func pairs(k *kit.Kit) []pair { return pairsIn(k, toldTexts(k)) }

// degreePairs gives those of temperatures and their differences.
func degreePairs(k *kit.Kit) []pair {
	return pairsIn(k, slices.DeleteFunc(toldTexts(k), func(p toldText) bool {
		return !strings.Contains(p.text, "°") && !strings.Contains(p.text, "degree")
	}))
}

func pairsIn(k *kit.Kit, toldTexts []toldText) []pair {
	reader := amountReader(k)
	var all []pair
	for _, p := range toldTexts {
		known := map[source.Span]bool{}
		for _, one := range append(p.inLinks(), p.inText(reader)...) {
			if !known[one.secondAt] {
				known[one.secondAt] = true
				one.where = p.where
				if one.about == "" {
					one.about = p.about
				}
				all = append(all, one)
			}
		}
	}
	return all
}

// inLinks are those that one link tells, of which the first is what is done.
func (p toldText) inLinks() []pair {
	var all []pair
	for _, o := range p.links {
		for i := 1; i < len(o.Phrase.Amounts); i++ {
			first, second := o.Phrase.Amounts[0], o.Phrase.Amounts[i]
			if !areTwo(first, second) || second.Dimension != first.Dimension && !isDegrees(second) {
				continue
			}
			one := pair{first: first, second: second, firstAt: o.Phrase.AmountSpans[0], secondAt: o.Phrase.AmountSpans[i]}
			if tells(o.Kind) {
				one.about = o.Target
			}
			if p.at.Contains(one.firstAt) && p.at.Contains(one.secondAt) {
				one.before = p.wordsBefore(one.firstAt.Start - p.at.Start)
				one.after = p.wordsAfter(one.secondAt.End - p.at.Start)
			}
			all = append(all, one)
		}
	}
	return all
}

func isDegrees(a quantity.Amount) bool {
	return a.Dimension == quantity.Temperature || a.Dimension == quantity.TemperatureDifference
}

// areTwo says whether two amounts can be one in two systems; a reading of a
// thermometer beside a difference is one that went wrong.
func areTwo(a, b quantity.Amount) bool {
	return quantity.TwoSystems(a, b) || isDegrees(a) && isDegrees(b) && a.Unit.Symbol != b.Unit.Symbol
}

// inText are those that stand in running text: the second in brackets behind the
// first, or behind a stroke, “or” or “=”.
func (p toldText) inText(reader quantity.Reader) []pair {
	if !p.mayTellTwice() {
		return nil
	}
	var all []pair
	found := reader.Find(p.text)
	for i, first := range found {
		second, start, end, ok := p.beside(reader, found, i)
		if !ok || !areTwo(first.Amount, second) {
			continue
		}
		all = append(all, pair{
			first: first.Amount, second: second,
			firstAt: p.at.Part(first.Start, first.End), secondAt: p.at.Part(start, end),
			before: p.wordsBefore(first.Start), after: p.wordsAfter(end),
		})
	}
	return all
}

// mayTellTwice is a quick look for figures and what joins two of them.
func (p toldText) mayTellTwice() bool {
	return strings.ContainsAny(p.text, "0123456789½¼¾⅓⅔⅛") && (strings.ContainsAny(p.text, "(/=≈") || strings.Contains(p.text, " or "))
}

// joints stand between two tellings.
var joints = []string{"or about ", "or ", "/ ", "/", "= ", "≈ ", ", or ", "that is ", "about "}

// beside is the amount told right behind the one found i-th.
func (p toldText) beside(reader quantity.Reader, found []quantity.Found, i int) (second quantity.Amount, start, end int, ok bool) {
	at := overBlanks(p.text, found[i].End)
	if at < len(p.text) && p.text[at] == '(' {
		return p.inBrackets(reader, at+1)
	}
	for _, joint := range joints[:len(joints)-1] {
		if !strings.HasPrefix(p.text[at:], joint) {
			continue
		}
		next := overBlanks(p.text, at+len(joint))
		if i+1 < len(found) && found[i+1].Start == next {
			return found[i+1].Amount, next, found[i+1].End, true
		}
	}
	return second, 0, 0, false
}

// inBrackets reads an amount that begins a bracket at a byte of the text.
func (p toldText) inBrackets(reader quantity.Reader, start int) (second quantity.Amount, from, end int, ok bool) {
	length := strings.IndexByte(p.text[start:], ')')
	if length < 0 || length > quantity.MaxText {
		return second, 0, 0, false
	}
	end = start + length
	for _, joint := range joints {
		if strings.HasPrefix(p.text[start:end], joint) {
			start += len(joint)
			break
		}
	}
	for _, stop := range []string{", ", "; "} {
		if at := strings.Index(p.text[start:end], stop); at >= 0 {
			end = start + at
		}
	}
	second, err := reader.Amount(p.text[start:end])
	return second, start, end, err == nil
}

func overBlanks(text string, at int) int {
	for at < len(text) && (text[at] == ' ' || text[at] == '\n') {
		at++
	}
	return at
}

// around is how many bytes before and behind a pair its words are looked for in.
const around = 60

// wordsBefore are the words of the clause before a byte, the nearest first.
func (p toldText) wordsBefore(at int) []string {
	text := p.text[max(0, at-around):at]
	if start := strings.LastIndexAny(text, ".!?;,:("); start >= 0 {
		text = text[start+1:]
	}
	words := wordsOf(strings.ToValidUTF8(text, ""))
	slices.Reverse(words)
	return words
}

// wordsAfter are the words of the clause behind a byte.
func (p toldText) wordsAfter(at int) []string {
	text := p.text[min(at, len(p.text)):min(at+around, len(p.text))]
	if end := strings.IndexAny(text, ".!?;,"); end >= 0 {
		text = text[:end]
	}
	return wordsOf(strings.ToValidUTF8(text, ""))
}

// firstTold and secondTold are the two as they stand in the text, on one line.
func (p pair) firstTold() string { return onOneLine(p.firstAt) }

func (p pair) secondTold() string { return onOneLine(p.secondAt) }

func onOneLine(at source.Span) string { return strings.Join(strings.Fields(at.Text()), " ") }
