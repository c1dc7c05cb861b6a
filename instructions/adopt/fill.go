package adopt

import (
	"slices"
	"strings"

	"tallyfold/kit/quantity"
)

// Fill is what containers are filled with.
const Fill Kind = "fill"

// findFills recognises what goes into the containers of the kit: "each of 3 jars to 190 g",
// "190 g into each jar", "all of it out over 3 jars", "fill the jars". A link for taking
// something tells another thing, so the amount must not have a name of its own.
func (r *reading) findFills() {
	for i := 0; i < len(r.words); i++ {
		name, last, ok := r.callAt(i)
		if !ok {
			continue
		}
		if c := r.kit.Component(name.key); c != nil && c.Container != nil && !(i == last && r.isOrderAt(i)) {
			r.fill(name.key, i, last)
		}
		i = last
	}
}

// several are the words before a container that say how many of them are filled.
var several = wordSet("each every all both of the your one a an")

func (r *reading) fill(key string, first, last int) {
	start, each := r.containersFrom(first)
	end, told := r.behindContainers(last)
	why := "containers, and how much each is filled with"
	if !told {
		end = r.words[last].End
		if at, ok := r.sharedOut(start); ok {
			start, told, why = at, true, "words for sharing out over containers"
		} else if at, ok := r.amountInto(start); ok && each {
			start, told, why = at, true, "an amount that goes into each container"
		} else if r.isFilled(start, end) {
			told, why = true, "containers behind “fill”"
		}
	}
	if !told {
		return
	}
	said := oneLine(r.text[start:end])
	r.propose(&Proposal{Kind: Fill, Start: start, End: end, Names: []Name{{r.words[first].Start, r.words[last].End, key}},
		Destination: "fill:" + key, Meaning: "fill " + said, Why: why})
}

// containersFrom goes back over "each of the 3" before a container. each: it says that every
// one gets as much.
func (r *reading) containersFrom(first int) (start int, each bool) {
	i := first
	for i > 0 && r.joins(r.words[i-1].End, r.words[i].Start) && (several[r.words[i-1].Text] || r.isNumber(r.words[i-1].Text)) {
		i--
		each = each || r.words[i].Text == "each" || r.words[i].Text == "every"
	}
	for r.words[i].Text == "of" && i < first {
		i++
	}
	return r.words[i].Start, each
}

// isNumber says whether a word is a whole number, in digits or in letters.
func (r *reading) isNumber(word string) bool {
	is, known := r.numbers[word]
	if !known {
		amount, err := quantity.Reader{Language: language}.Amount(word)
		is = err == nil && amount.Dimension == quantity.Count && amount.Noun == "" && amount.Nominal.IsWhole()
		r.numbers[word] = is
	}
	return is
}

// behindContainers reads "to 190 g (6.7 oz weight)", "with 190 g each" behind a container.
func (r *reading) behindContainers(last int) (end int, ok bool) {
	if last+1 >= len(r.words) || !r.joins(r.words[last].End, r.words[last+1].Start) {
		return 0, false
	}
	if way := r.words[last+1].Text; way != "to" && way != "with" {
		return 0, false
	}
	i := slices.IndexFunc(r.found, func(f quantity.Found) bool { return isPoured(f.Amount) && r.joins(r.words[last+1].End, f.Start) })
	if i < 0 || r.hasOwnName(r.found[i].End) {
		return 0, false
	}
	end = r.withBracket(r.withoutPoint(r.found[i].End))
	if next := r.wordAt(end); next < len(r.words) && r.words[next].Text == "each" && r.joins(end, r.words[next].Start) {
		end = r.words[next].End
	}
	return end, true
}

func isPoured(a quantity.Amount) bool {
	switch a.Dimension {
	case quantity.Mass, quantity.Volume, quantity.Length:
		return true
	}
	return false
}

// hasOwnName: "with 20 g of sand" takes sand from its pack.
func (r *reading) hasOwnName(end int) bool { return r.ofFollows(end) }

// withBracket goes on over an amount told again: "190 g (6.7 oz weight)".
func (r *reading) withBracket(end int) int {
	rest := strings.TrimLeft(r.text[end:], " ")
	if !strings.HasPrefix(rest, "(") {
		return end
	}
	open := len(r.text) - len(rest)
	closing := strings.IndexByte(rest, ')')
	if closing < 0 {
		return end
	}
	again := slices.ContainsFunc(r.found, func(f quantity.Found) bool { return f.Start == open+1 && f.End <= open+closing })
	if !again || strings.ContainsAny(rest[1:closing], "(\n") {
		return end
	}
	return open + closing + 1
}

// sharedOut goes back over "all of it out over", "half of it equally into".
func (r *reading) sharedOut(start int) (at int, ok bool) {
	i := r.wordAt(start) - 1
	if i < 0 || !r.joins(r.words[i].End, start) || !overThem[r.words[i].Text] {
		return 0, false
	}
	for i--; i >= 0 && (r.words[i].Text == "out" || r.words[i].Text == "equally" || r.words[i].Text == "evenly"); i-- {
		ok = true
	}
	if i < 2 || r.words[i].Text != "it" || r.words[i-1].Text != "of" || r.words[i-2].Text != "all" && r.words[i-2].Text != "half" {
		return 0, false
	}
	return r.words[i-2].Start, ok && r.words[i-2].Sentence == r.words[r.wordAt(start)].Sentence
}

var overThem = wordSet("over into among between")

// amountInto goes back over "about 190 g into", where nothing is said of what it is.
func (r *reading) amountInto(start int) (at int, ok bool) {
	i := r.wordAt(start) - 1
	if i < 0 || !r.joins(r.words[i].End, start) || r.words[i].Text != "into" && r.words[i].Text != "in" && r.words[i].Text != "to" {
		return 0, false
	}
	for _, f := range r.found {
		if isPoured(f.Amount) && f.Amount.Dimension != quantity.Length && r.joins(f.End, r.words[i].Start) && f.End <= r.words[i].Start {
			return f.Start, true
		}
	}
	return 0, false
}

// isFilled: "fill the 3 jars", where nothing follows that says with what, or how far.
func (r *reading) isFilled(start, end int) bool {
	i := r.wordAt(start) - 1
	if i < 0 || r.words[i].Text != "fill" || !r.joins(r.words[i].End, start) || r.isNoun(i) {
		return false
	}
	next := r.wordAt(end)
	return next >= len(r.words) || r.words[next].Sentence != r.words[i].Sentence || !howFar[r.words[next].Text]
}

var howFar = wordSet("to with from up half until almost nearly only")
