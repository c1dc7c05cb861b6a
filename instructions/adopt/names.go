package adopt

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"tallyfold/kit/rules"
)

// A naming is what an amount is of: the places of the names, and how they were known.
type naming struct {
	names [][2]int
	why   string
}

// A side says where a leaflet writes what an amount is of.
type side int

const (
	behind  side = iota // 200 g of wax
	inFront             // Wax, 200 g
)

// endsName are words at which the name of a thing ends: small words, and words that
// say what was done to it (common practice, no source).
var endsName = wordSet("a an the and to in into with for from then on onto over until till which that this when while as is are was were be being been " +
	"by at upon each say it its them mix boil add put take pour stir let keep warm sliced thin thinly cut fine finely pulverised pulverized " +
	"dissolved beaten powdered bruised mixed melted so such enough if sufficient about per but not or only fit ready say " +
	"through under against off out up down before after during gradually slowly well having till these those")

// beginsName may stand before a name and are not of it.
var beginsName = wordSet("the a an of some your good say")

func wordSet(words string) map[string]bool {
	set := map[string]bool{}
	for _, word := range strings.Fields(words) {
		set[word] = true
	}
	return set
}

// longestName is how many words a name has at most: "finest newly rectified oil of turpentine".
const longestName = 7

// listStyle says on which side most amounts of the leaflet that leave no doubt have
// their names.
func (r *reading) listStyle(all []measured) side {
	front, back := 0, 0
	for _, m := range all {
		before, after := r.closedBefore(m.start), r.closedBehind(m.end)
		switch {
		case after && !before || after && r.commaBefore(m.start):
			front++
		case before && !after:
			back++
		}
	}
	if front > back {
		return inFront
	}
	return behind
}

// closedBehind says whether no name can follow an amount: a stop, a line end, the end.
func (r *reading) closedBehind(end int) bool {
	rest := r.text[end:]
	point := strings.HasPrefix(rest, ".")
	rest = strings.TrimPrefix(rest, ".")
	trimmed := strings.TrimLeft(rest, " \t")
	if trimmed == "" || strings.ContainsRune(",;:)\n\r—|.", firstRune(trimmed)) {
		return true
	}
	if firstRune(trimmed) == '(' {
		return true
	}
	return point && trimmed != rest && unicode.IsUpper(firstRune(trimmed)) && !isAbbreviation(r.text[:end])
}

// isAbbreviation says whether the point behind a text belongs to its last word.
func isAbbreviation(text string) bool {
	const longest = 4
	word := text[strings.LastIndexAny(text, " \t\n0123456789½¼¾")+1:]
	return len(word) <= longest
}

// closedBefore says whether no name stands before an amount.
func (r *reading) closedBefore(start int) bool {
	before := strings.TrimRight(r.text[:start], " \t")
	if before == "" {
		return true
	}
	last, _ := utf8.DecodeLastRuneInString(before)
	if !unicode.IsLetter(last) && last != ')' && last != ',' && last != ':' {
		return true
	}
	i := r.wordAt(start) - 1
	return i < 0 || last != ',' && last != ')' && last != ':' && (endsName[r.words[i].Text] || r.doing(i) != rules.NoOrder || r.words[i].Text == "of")
}

func (r *reading) commaBefore(start int) bool {
	before := strings.TrimRight(r.text[:start], " \t")
	return strings.HasSuffix(before, ",") || strings.HasSuffix(before, ":") || strings.HasSuffix(before, "|")
}

func firstRune(text string) rune {
	c, _ := utf8.DecodeRuneInString(text)
	return c
}

// namesOf finds what an amount is of, between the amounts before and behind it.
func (r *reading) namesOf(m measured, from, to int, style side) naming {
	if names, each := r.eachOf(m, from, to); each {
		return naming{names, "“each” beside the amount"}
	}
	behindName, hasBehind := r.nameBehind(m.end, to)
	frontName, hasFront := r.nameBefore(m.start, from)
	switch {
	case r.ofFollows(m.end) && hasBehind:
		return naming{[][2]int{behindName}, "“of” and a name behind the amount"}
	case hasBehind && (!hasFront || style == behind):
		return naming{[][2]int{behindName}, "a name right behind the amount"}
	case hasFront:
		return naming{[][2]int{frontName}, "a name before the amount, as in a list"}
	}
	return naming{why: "an amount with no name beside it"}
}

func (r *reading) ofFollows(end int) bool {
	return strings.HasPrefix(strings.TrimLeft(strings.TrimPrefix(r.text[end:], "."), " \t\n\r"), "of ")
}

// nameBehind reads the words of a name from byte end on.
func (r *reading) nameBehind(end, to int) ([2]int, bool) {
	if r.closedBehind(end) {
		return [2]int{}, false
	}
	return r.nameFrom(r.wordAt(end), to, end)
}

// nameFrom reads a name that begins with word i; from is the byte that must join it.
func (r *reading) nameFrom(i, to, from int) ([2]int, bool) {
	for i < len(r.words) && beginsName[r.words[i].Text] && r.joins(from, r.words[i].Start) {
		from = r.words[i].End
		i++
	}
	first, last := i, i-1
	for ; i < len(r.words) && i-first < longestName; i++ {
		w := r.words[i]
		if w.Start >= to || !r.joins(from, w.Start) || !r.continues(i, first, to) {
			break
		}
		from, last = w.End, i
	}
	for last >= first && r.endsBadly(last) {
		last--
	}
	if last < first {
		return r.calledFrom(first, to)
	}
	return [2]int{r.words[first].Start, r.words[last].End}, true
}

// joins says whether nothing but blanks, one line end and the point of an abbreviation
// stands between.
func (r *reading) joins(from, to int) bool {
	if from > to {
		return false
	}
	between := strings.TrimPrefix(r.text[from:to], ".")
	if i := r.wordAt(from) - 1; between != r.text[from:to] && i >= 0 && r.words[i].End == from && !r.endsFigure(from) {
		return false // a sentence ends
	}
	return strings.TrimLeft(between, " \t\n\r") == "" && strings.Count(between, "\n") < 2
}

// endsFigure says whether an amount ends at a byte, whose abbreviation may have a point.
func (r *reading) endsFigure(at int) bool {
	_, found := slices.BinarySearch(r.figureEnds, at)
	return found
}

// continues says whether word i may be part of a name that begins with word first.
func (r *reading) continues(i, first, to int) bool {
	w := r.words[i]
	next := ""
	if i+1 < len(r.words) && r.words[i+1].Start < to && r.joins(w.End, r.words[i+1].Start) {
		next = r.words[i+1].Text
	}
	switch {
	case w.Text == "of":
		return i > first && next != "" && !endsName[next]
	case w.Text == "or":
		return i > first && next != "" && !endsName[next]
	case !startsWithLetter(w.Text):
		return false
	case i > first && endsName[w.Text], i == first && endsName[w.Text] && next == "":
		return false
	case i == first && endsName[w.Text]:
		return isParticiple(w.Text) || w.Text == "fine"
	case i > first && isParticiple(w.Text):
		return next != "" && !endsName[next]
	case i > first && rules.DoingOf(w.Text, language) != rules.NoOrder && (objects[next] || r.figureFollows(w.End)):
		return false // "… quick lime mix them"
	}
	return true
}

// figureFollows: "hot water dissolve six ounces".
func (r *reading) figureFollows(at int) bool {
	next := r.figureAfter(at)
	return next > at && strings.TrimSpace(r.text[at:next]) == ""
}

// objects follow an order: "mix them", and show that the word before them is one.
var objects = wordSet("the a an it them all together these this well")

func startsWithLetter(word string) bool { return unicode.IsLetter(firstRune(word)) }

func isParticiple(word string) bool { return strings.HasSuffix(word, "ed") && len(word) > 4 }

func (r *reading) endsBadly(i int) bool {
	w := r.words[i].Text
	return w == "of" || w == "or" || strings.HasSuffix(w, "ly") && i > 0 && r.words[i-1].Text != "of"
}

// nameBefore reads the name that ends before byte start: "Galls (powdered), 42 oz.",
// "Gum-copal, in clear lumps, 26.5 lbs.", "gum arabic 1/4 lb."
func (r *reading) nameBefore(start, from int) ([2]int, bool) {
	if r.closedBefore(start) {
		return [2]int{}, false
	}
	end := start
	for tries := 0; tries < 3; tries++ {
		end = r.overBrackets(r.overSeparator(end), from)
		at, ok := r.segmentBefore(end, from)
		if !ok {
			return [2]int{}, false
		}
		if name, ok := r.nameIn(at, end); ok {
			return name, true
		}
		end = at
	}
	return [2]int{}, false
}

// overSeparator goes back over blanks and the comma or colon of a list.
func (r *reading) overSeparator(end int) int {
	return len(strings.TrimRight(strings.TrimRight(strings.TrimRight(r.text[:end], " \t"), ",:|"), " \t"))
}

// overBrackets goes back over "(powdered)".
func (r *reading) overBrackets(end, from int) int {
	if !strings.HasSuffix(r.text[:end], ")") {
		return end
	}
	if open := strings.LastIndexByte(r.text[from:end], '('); open >= 0 {
		return len(strings.TrimRight(r.text[:from+open], " \t\n"))
	}
	return end
}

// segmentBefore gives where the piece of the text that ends at a byte begins: behind the
// last comma, semicolon, point or line end. ok is false where nothing is left.
func (r *reading) segmentBefore(end, from int) (int, bool) {
	at := from
	if cut := strings.LastIndexAny(r.text[from:end], ",;:.\n)("); cut >= 0 {
		at = from + cut + 1
	}
	if dash := strings.LastIndex(r.text[at:end], "—"); dash >= 0 {
		at += dash + len("—")
	}
	return at, strings.TrimSpace(r.text[at:end]) != ""
}

// nameIn reads the last name in a piece of the text: what stands behind the last small
// word or order.
func (r *reading) nameIn(at, end int) ([2]int, bool) {
	first, last := r.wordAt(at), r.wordAt(end)-1
	begin := first
	for i := first; i <= last; i++ {
		text := r.words[i].Text
		verb := i == first && r.doing(i) != rules.NoOrder || text == "add"
		lead := text == "of" && i > first && (endsName[r.words[i-1].Text] || r.doing(i-1) != rules.NoOrder)
		if verb && i < last || lead || text != "of" && text != "or" && endsName[text] && !isParticiple(text) || text == "of" && i == begin {
			begin = i + 1
		}
		if isParticiple(text) && i+1 <= last && endsName[r.words[i+1].Text] {
			begin = i + 1
		}
	}
	for begin <= last && beginsName[r.words[begin].Text] {
		begin++
	}
	if begin > first && first <= last && isPreposition(r.words[first].Text) {
		return [2]int{}, false // "in clear lumps" says how it looks
	}
	if first <= last && r.onlyDone(first, last) {
		return [2]int{}, false // "dried and ground" says what was done to it
	}
	if begin > last || last-begin >= longestName || r.words[last].End > end || !startsWithLetter(r.words[begin].Text) {
		return [2]int{}, false
	}
	return [2]int{r.words[begin].Start, r.words[last].End}, true
}

// onlyDone says whether words tell nothing but what was done to a thing.
func (r *reading) onlyDone(first, last int) bool {
	for _, w := range r.words[first : last+1] {
		if !isParticiple(w.Text) && w.Text != "ground" && w.Text != "and" && w.Text != "finely" {
			return false
		}
	}
	return true
}

func isPreposition(word string) bool { return slices.Contains([]string{"in", "for"}, word) }
