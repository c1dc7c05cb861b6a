package adopt

import (
	"bytes"
	"regexp"
	"slices"
	"strings"

	"tallyfold/instructions"
)

// A bared text is a method without its links, that knows where each byte comes from.
type bared struct {
	text  []byte
	from  []int    // of each byte, its place in the method
	links [][2]int // the words of links, in the bared text
	alone [][2]int // cautions, notes, other links and code, in the bared text
	// named are the tools that links name, workedIn the vessels of headings.
	named, workedIn map[string]bool
	// waits are those that have a name, in the bared text.
	waits []namedWait
	// headings are the links of steps, in order.
	headings []linkedHeading
}

// A linkedHeading is where the link of a step begins in the bared text, and its vessel, "" for
// none.
type linkedHeading struct {
	at     int
	vessel string
}

// A namedWait is a wait that a later step can begin after; its words are bytes of the bared
// text.
type namedWait struct {
	name       string
	start, end int
}

var (
	notes     = regexp.MustCompile(`(?s)<!--.*?(?:-->|\z)`)
	quotation = regexp.MustCompile(`(?m)^ {0,3}>.*$`)
	// foreign are links of other sorts, whose words would be lost if a link stood in them.
	foreign = regexp.MustCompile(`\[[^\[\]]*\](?:\([^()]*\)|\[[^\[\]]*\])`)
	fenced  = regexp.MustCompile("(?ms)^ {0,3}(?:```|~~~).*?(?:^ {0,3}(?:```|~~~)[^\n]*$|\\z)")
)

// leftAlone are what is never touched, by a sign that has to be there.
var leftAlone = map[string]*regexp.Regexp{"<!--": notes, ">": quotation, "](": foreign, "][": foreign, "```": fenced, "~~~": fenced}

func withoutLinks(text []byte) *bared {
	b := &bared{text: make([]byte, 0, len(text)), from: make([]int, 0, len(text)), named: map[string]bool{}, workedIn: map[string]bool{}}
	at := 0
	put := func(to int) {
		b.text = append(b.text, text[at:to]...)
		for ; at < to; at++ {
			b.from = append(b.from, at)
		}
	}
	for _, link := range instructions.LinkPlaces(text) {
		put(link.Start)
		at = link.WordsStart
		start := len(b.text)
		put(link.WordsEnd)
		b.links = append(b.links, [2]int{start, len(b.text)})
		b.note(start, string(text[link.WordsEnd:link.End]))
		at = link.End
	}
	put(len(text))
	for sign, kind := range leftAlone {
		if !bytes.Contains(b.text, []byte(sign)) {
			continue // sooner known than by the expression, while someone types
		}
		for _, found := range kind.FindAllIndex(b.text, -1) {
			b.alone = append(b.alone, [2]int{found[0], found[1]})
		}
	}
	return b
}

// leadsTo has the kind and the key of a link, inVessel the vessel of a heading.
var (
	hasName  = regexp.MustCompile(`^\]\(wait:([a-z0-9-]+)`)
	leadsTo  = regexp.MustCompile(`^\]\((tool|vessel):([a-z0-9-]+)`)
	inVessel = regexp.MustCompile(`^\]\(step:[^?]*\?(?:.*&)?in=([a-z0-9-]+)`)
)

func (b *bared) note(at int, destination string) {
	if strings.HasPrefix(destination, "](step:") && isHeadingAt(b.text, at) {
		b.headings = append(b.headings, linkedHeading{at: at})
	}
	if m := leadsTo.FindStringSubmatch(destination); m != nil {
		b.named[m[2]] = true
	}
	if m := hasName.FindStringSubmatch(destination); m != nil {
		b.waits = append(b.waits, namedWait{m[1], at, len(b.text)})
	}
	if m := inVessel.FindStringSubmatch(destination); m != nil {
		b.workedIn[m[1]] = true
		if n := len(b.headings); n > 0 && b.headings[n-1].at == at {
			b.headings[n-1].vessel = m[1]
		}
	}
}

// isHeadingAt says whether a byte stands in the line of a heading.
func isHeadingAt(text []byte, at int) bool {
	line := text[bytes.LastIndexByte(text[:at], '\n')+1:]
	return bytes.HasPrefix(bytes.TrimLeft(line, " "), []byte("#"))
}

// vesselAt is that of the step in which a byte stands, by the link of its heading; ok is false
// where that is none.
func (b *bared) vesselAt(at, stepStart int) (vessel string, ok bool) {
	for _, heading := range b.headings {
		if stepStart <= heading.at && heading.at <= at {
			vessel, ok = heading.vessel, true
		}
	}
	return vessel, ok
}

// at is where a byte stands in the method.
func (b *bared) at(place int) int {
	switch {
	case len(b.from) == 0:
		return 0
	case place >= len(b.from):
		return b.from[len(b.from)-1] + 1
	}
	return b.from[max(place, 0)]
}

func overlapsAny(all [][2]int, start, end int) bool {
	return slices.ContainsFunc(all, func(one [2]int) bool { return start < one[1] && one[0] < end })
}

func (b *bared) isLinked(start, end int) bool    { return overlapsAny(b.links, start, end) }
func (b *bared) isLeftAlone(start, end int) bool { return overlapsAny(b.alone, start, end) }
