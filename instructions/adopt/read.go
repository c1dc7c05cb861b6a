package adopt

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
	"tallyfold/kit/rules"
)

// A reading is a leaflet while it is gone through.
type reading struct {
	*Adoption
	words []rules.Word
	// figures are where amounts of any kind begin, in order.
	figures, figureEnds []int
	// found are all amounts of the text, opens those of no one size, both in order.
	found []quantity.Found
	opens []quantity.OpenMeasure
	steps []stepStart
	// openPhrases leave a time, a heat or a place to the reader.
	openPhrases []rules.OpenPhrase
	// unread are lines of the list of parts that nothing could be made of.
	unread []Question
	// manyKinds: a name of the leaflet that fits several things of the list of parts.
	doubtful []Question
	hasList  bool
	// kit is the one whose method is read, bare that method and calls the names of the kit;
	// nil for a leaflet.
	kit   *kit.Kit
	bare  *bared
	calls callIndex
	// callings are the names of the kit at each word.
	callings []calling
	// numbers are the words that were tried as one.
	numbers map[string]bool
}

func newReading(a *Adoption) *reading {
	return &reading{Adoption: a, words: wordsOf(a.text), numbers: map[string]bool{}}
}

func wordsOf(text string) []rules.Word { return rules.Words(text) }

// read recognises one kind of thing after another. Amounts come first, as they show
// what the leaflet is made of.
func (r *reading) read() {
	r.findTitle()
	r.findYield()
	r.findSteps()
	r.findFigures()
	r.findAmounts()
	r.ownList()
	r.findTimes()
	r.findCues()
	r.findShares()
	r.findRests()
	r.findTools()
	r.proposeSteps()
	r.sortProposals()
}

// figureAfter is where the next amount of any kind begins, -1 for none.
func (r *reading) figureAfter(at int) int {
	i, _ := slices.BinarySearch(r.figures, at)
	if i == len(r.figures) {
		return -1
	}
	return r.figures[i]
}

func (r *reading) findFigures() {
	r.found, r.opens = r.options.reader().Find(r.text), r.options.reader().FindOpen(r.text)
	for _, found := range r.found {
		if found.Amount.Dimension != quantity.Count {
			r.figures = append(r.figures, found.Start)
			r.figureEnds = append(r.figureEnds, found.End)
		}
	}
	for _, open := range r.opens {
		r.figures = append(r.figures, open.Start)
		r.figureEnds = append(r.figureEnds, open.End)
	}
	slices.Sort(r.figureEnds)
	slices.Sort(r.figures)
}

// sortProposals puts them in the order of the leaflet and numbers them.
func (r *reading) sortProposals() {
	slices.SortStableFunc(r.Proposals, func(a, b *Proposal) int {
		if a.Start != b.Start {
			return a.Start - b.Start
		}
		return a.End - b.End
	})
	for i, p := range r.Proposals {
		p.ID = i + 1
	}
}

const ofAnotherLink = "its words are part of another link"

// propose adds a proposal. One whose words cannot be those of a link is kept and told
// as open.
func (r *reading) propose(p *Proposal) {
	words := r.text[p.Start:p.End]
	switch {
	case p.Destination == "":
		p.Accepted = false
	case strings.ContainsAny(words, "[]\\`<>"):
		p.refuse("it holds a bracket or another sign that cannot stand in the words of a link")
	case strings.Contains(strings.ReplaceAll(words, "\r", ""), "\n\n"):
		p.refuse("the amount and what it is of stand in two paragraphs")
	case r.overlaps(p):
		p.refuse(ofAnotherLink)
	default:
		p.Accepted = true
	}
	r.Proposals = append(r.Proposals, p)
}

// refuse leaves the words as they were typed, and says why.
func (p *Proposal) refuse(why string) {
	p.Accepted, p.Open = false, why
}

func (r *reading) overlaps(p *Proposal) bool {
	return slices.ContainsFunc(r.Proposals, func(other *Proposal) bool {
		return other.Accepted && p.Start < other.End && other.Start < p.End
	})
}

// wordAt is the index of the first word that begins at or behind a byte.
func (r *reading) wordAt(at int) int {
	i, _ := slices.BinarySearchFunc(r.words, at, func(w rules.Word, at int) int { return w.Start - at })
	return i
}

// orderBefore gives the nearest word before a byte, in its sentence, that orders a
// handling; ok is false where there is none.
func (r *reading) orderBefore(at int) (word rules.Word, doing rules.Doing, ok bool) {
	i := r.wordAt(at) - 1
	if i < 0 {
		return word, doing, false
	}
	sentence := r.words[i].Sentence
	for ; i >= 0 && r.words[i].Sentence == sentence; i-- {
		if doing := r.doing(i); doing != rules.NoOrder && !r.isNoun(i) && !r.endsName(i) {
			return r.words[i], doing, true
		}
	}
	return word, doing, false
}

// isNoun: the wax of "warm the wax" orders nothing.
func (r *reading) isNoun(i int) bool {
	return i > 0 && beginsName[r.words[i-1].Text]
}

// endsName: the stick of "with the wooden stick" orders nothing where the list of parts has one.
func (r *reading) endsName(i int) bool {
	if i == 0 || r.words[i-1].Sentence != r.words[i].Sentence {
		return false
	}
	is := func(name string) bool {
		words := stems(name)
		return len(words) > 1 && words[len(words)-1] == rules.Singular(r.words[i].Text) && words[len(words)-2] == rules.Singular(r.words[i-1].Text)
	}
	return slices.ContainsFunc(r.Things, func(t *Thing) bool { return t.Listed && is(t.Name) }) || slices.ContainsFunc(r.Tools, func(t *ToolFound) bool { return is(t.Name) })
}

// longWaits are words of old receipts for what goes on by itself, which the rules on
// methods do not need (common practice, no source).
var longWaits = strings.Fields("stand stands remain remains keep lie macerate digest infuse steep drip soak")

// doing says what the word at i orders. "To dry" behind "leave" is what goes on meanwhile.
func (r *reading) doing(i int) rules.Doing {
	word := r.words[i].Text
	if slices.Contains(longWaits, word) {
		return rules.SetsDown
	}
	return rules.DoingOf(strings.TrimSuffix(word, "ing"), language)
}

// before says whether one of the words stands among the last n before a byte.
func (r *reading) before(at, n int, words ...string) bool {
	for i := r.wordAt(at) - 1; i >= 0 && n > 0; i, n = i-1, n-1 {
		if slices.Contains(words, r.words[i].Text) {
			return true
		}
	}
	return false
}
