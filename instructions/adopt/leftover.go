package adopt

import (
	"slices"
	"strings"

	"tallyfold/instructions"
)

// Left is what becomes of the rest of a vessel or a pack.
const Left Kind = "left"

var (
	keeping  = wordSet("keep save store reserve")
	binning  = wordSet("discard bin")
	throwing = wordSet("throw")
	pouring  = wordSet("pour tip drain")
	// offOrAway make a rest of what is poured.
	offOrAway = wordSet("off away")
	drains    = wordSet("drain sink")
	// liquids are names of what a vessel is emptied of, besides those of the kit.
	liquids = wordSet("water liquid rinse")
)

// findLeft recognises what becomes of what is left: "keep the rest", "throw away what is left
// in the jug", "pour the water off" (common practice, no source).
func (r *reading) findLeft() {
	for _, at := range instructions.RestPhrases(r.text, language) {
		r.left(r.wordAt(at[0]), r.wordAt(at[1])-1)
	}
	for i, w := range r.words {
		if pouring[w.Text] && r.beginsClause(i) {
			r.pouredOff(i)
		} else if keeping[w.Text] && r.beginsClause(i) {
			r.keptIt(i)
		}
	}
}

// left: the words from first to last speak of a rest.
func (r *reading) left(first, last int) {
	start, end, target := r.withArticle(first), r.words[last].End, ""
	switch before := r.wordBefore(first); {
	case before == "what" || before == "whatever":
		start = r.words[first-1].Start
	case before == "that" || before == "which":
		var ok bool
		if start, target, ok = r.thingEndingAt(first - 2); !ok {
			return
		}
	}
	if key, nameEnd, ok := r.behindWord(last, "of"); ok {
		target, end = key, nameEnd
	} else if key, _, ok := r.behindWord(last, "in"); ok && r.kit.Tool(key) != nil {
		target = key
	}
	if target == "" {
		target = r.ownVessel(start)
	}
	as, why := r.fateOf(first, last)
	if isSaidLeft := r.words[last].Text == "left"; as == "" && isSaidLeft && r.beginsSentence(start) {
		as, why = r.fateOfSubject(last)
	}
	if target != "" && as != "" {
		r.leftOf(target, as, start, end, why)
	}
}

// fates are what mostly becomes of a rest, by the words of `?as=`.
var fates = []struct{ as, told string }{{"kept", "is kept"}, {"discarded", "is thrown away"}, {"poured-away", "is poured away"}}

func (r *reading) leftOf(target, as string, start, end int, why string) {
	where := "of " + r.kit.Called(target)
	if r.kit.Tool(target) != nil {
		where = "in " + r.kit.Called(target)
	}
	p := &Proposal{Kind: Left, Start: start, End: end, Why: why}
	for _, fate := range fates {
		destination := "left:" + target + "?as=" + fate.as
		if fate.as == as {
			p.Destination, p.Meaning = destination, "what is left "+where+" "+fate.told
		} else {
			p.Alternatives = append(p.Alternatives, Alternative{destination, "it " + fate.told})
		}
	}
	r.propose(p)
}

// fateOf says by the order of their clause what becomes of words that speak of a rest.
func (r *reading) fateOf(first, last int) (as, why string) {
	i, ok := r.clauseHead(first)
	if !ok {
		return "", ""
	}
	order := r.words[i].Text
	why = "a rest, and “" + order + "”"
	switch {
	case keeping[order]:
		return "kept", why
	case binning[order], throwing[order] && r.inSentence(i, "away", "out"):
		return "discarded", why
	case pouring[order] && (r.inSentence(i, "away", "off") || r.inSentence(last, "drain", "sink")):
		return "poured-away", why
	}
	return "", ""
}

// fateOfSubject: "what is left goes back on its card", "what is left goes down the drain". Where
// a figure stands behind it, the sentence tells how much it is.
func (r *reading) fateOfSubject(last int) (as, why string) {
	sentence := r.words[last].Sentence
	for i := last + 1; i < len(r.words) && r.words[i].Sentence == sentence; i++ {
		if strings.ContainsAny(r.words[i].Text, "0123456789") {
			return "", ""
		}
	}
	why = "a sentence about what is left"
	switch {
	case r.inSentence(last, "drain", "sink", "poured"):
		return "poured-away", why
	case r.inSentence(last, "bin", "thrown", "discarded", "rubbish", "waste"):
		return "discarded", why
	}
	return "kept", why
}

// keptIt: "keep it", "keep it for a second making"; "keep it for 45 minutes" is a time, and
// "keep it warm" a heat.
func (r *reading) keptIt(i int) {
	if i+1 >= len(r.words) || r.words[i+1].Text != "it" || !r.joins(r.words[i].End, r.words[i+1].Start) {
		return
	}
	next, after := r.wordIn(i, 2), r.wordIn(i, 3)
	if next != "" && (next != "for" || after == "" || r.isNumber(after) || strings.ContainsAny(after, "0123456789")) {
		return
	}
	if vessel := r.ownVessel(r.words[i].Start); vessel != "" {
		r.leftOf(vessel, "kept", r.words[i].Start, r.words[i+1].End, "“"+r.words[i].Text+" it”, and the vessel of the step")
	}
}

// wordIn is the nth word behind word i in its sentence, "" for none.
func (r *reading) wordIn(i, n int) string {
	if i+n >= len(r.words) || r.words[i+n].Sentence != r.words[i].Sentence {
		return ""
	}
	return r.words[i+n].Text
}

// inSentence says whether one of the words stands behind word i in its sentence.
func (r *reading) inSentence(i int, words ...string) bool {
	sentence := r.words[i].Sentence
	for i++; i < len(r.words) && r.words[i].Sentence == sentence; i++ {
		if slices.Contains(words, r.words[i].Text) {
			return true
		}
	}
	return false
}

func (r *reading) wordBefore(i int) string {
	if i == 0 || r.words[i-1].Sentence != r.words[i].Sentence {
		return ""
	}
	return r.words[i-1].Text
}

// thingEndingAt gives the component whose name ends with word i, and where it begins.
func (r *reading) thingEndingAt(i int) (start int, key string, ok bool) {
	for first := i; first >= 0 && r.words[first].Sentence == r.words[i].Sentence; first-- {
		if name, last, called := r.callAt(first); called && last == i && r.kit.Component(name.key) != nil {
			start, key, ok = r.withArticle(first), name.key, true
		}
	}
	return start, key, ok
}

// behindWord gives what the kit has of the name in "of the wax", "into the pan" behind word i:
// its key and where it ends.
func (r *reading) behindWord(i int, words ...string) (key string, end int, ok bool) {
	i++
	if i >= len(r.words) || !slices.Contains(words, r.words[i].Text) || !r.joins(r.words[i-1].End, r.words[i].Start) {
		return "", 0, false
	}
	i++
	if i < len(r.words) && articles[r.words[i].Text] {
		i++
	}
	if i >= len(r.words) || !r.joins(r.words[i-1].End, r.words[i].Start) {
		return "", 0, false
	}
	name, last, ok := r.callAt(i)
	return name.key, r.words[last].End, ok
}

// ownVessel is the vessel of the step in which a byte stands: that of its heading, or the only
// one that it names; "" where that is not known.
func (r *reading) ownVessel(at int) string {
	begin := r.stepStartOf(at)
	if vessel, linked := r.bare.vesselAt(at, begin); linked {
		return vessel
	}
	named := r.vesselsNamed(begin, r.stepEndOf(at))
	if len(named) != 1 {
		return ""
	}
	return named[0]
}

func (r *reading) stepEndOf(at int) int {
	for _, s := range r.steps {
		if s.at <= at && at < s.end {
			return s.end
		}
	}
	return len(r.text)
}

// vesselsNamed are the vessels of the kit that a stretch of the text names, each once.
func (r *reading) vesselsNamed(from, to int) []string {
	var all []string
	for i := r.wordAt(from); i < len(r.words) && r.words[i].Start < to; i++ {
		if tool, _, ok := r.toolAt(i); ok && r.isVessel(tool) && !slices.Contains(all, tool.ID) {
			all = append(all, tool.ID)
		}
	}
	return all
}

// pouredOff: "pour off the water", "pour it off", "pour the dye bath away", "tip the water
// down the drain". The words end with what is poured, or with "off" behind "it".
func (r *reading) pouredOff(i int) {
	sentence := r.words[i].Sentence
	isIn := func(j int) bool {
		return j < len(r.words) && r.words[j].Sentence == sentence && r.joins(r.words[j-1].End, r.words[j].Start)
	}
	j := i + 1
	if !isIn(j) {
		return
	}
	switch {
	case (r.words[j].Text == "it" || r.words[j].Text == "that") && isIn(j+1) && r.isAway(j+1):
		r.awayFromOwn(i, j+1)
	case offOrAway[r.words[j].Text] && isIn(j+1) && r.words[j+1].Text == "the" && isIn(j+2):
		if last, ok := r.liquidAt(j + 2); ok {
			r.awayFromOwn(i, last)
		}
	case r.words[j].Text == "the" && isIn(j+1):
		if last, ok := r.liquidAt(j + 1); ok && isIn(last+1) && r.isAway(last+1) {
			r.awayFromOwn(i, last)
		}
	}
}

// liquidAt gives the last word of a name of the kit, or of "the alum water", that begins with
// word i.
func (r *reading) liquidAt(i int) (last int, ok bool) {
	if _, last, ok := r.callAt(i); ok && !liquids[r.wordIn(last, 1)] {
		return last, true
	}
	for last := i; last <= i+1 && last < len(r.words) && r.words[last].Sentence == r.words[i].Sentence; last++ {
		if liquids[r.words[last].Text] {
			return last, true
		}
	}
	return 0, false
}

// isAway: "off" and "away" that nothing follows which it would be off, and "down the drain".
func (r *reading) isAway(i int) bool {
	if r.words[i].Text == "down" || r.words[i].Text == "into" {
		return r.wordIn(i, 1) == "the" && drains[r.wordIn(i, 2)]
	}
	return offOrAway[r.words[i].Text] && !articles[r.wordIn(i, 1)] && r.wordIn(i, 1) != "into" && r.wordIn(i, 1) != "of"
}

func (r *reading) awayFromOwn(first, last int) {
	if vessel := r.ownVessel(r.words[first].Start); vessel != "" {
		r.leftOf(vessel, "poured-away", r.words[first].Start, r.words[last].End, "words for pouring away, and the vessel of the step")
	}
}
