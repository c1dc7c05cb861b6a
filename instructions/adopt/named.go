package adopt

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// findNamed recognises the kit's own tools where the method speaks of them. A tool is proposed
// once in a method, where it is named first, and not at all where a link names it already: a
// bare name counts as well, and a page full of links to one scale would help nobody.
func (r *reading) findNamed() {
	done := r.bare.named
	for i := 0; i < len(r.words); i++ {
		name, last, ok := r.callAt(i)
		if !ok {
			continue
		}
		tool := r.kit.Tool(name.key)
		if tool != nil && !(i == last && r.isOrderAt(i)) {
			r.named(tool, i, last, done)
		}
		i = last
	}
}

func (r *reading) named(tool *kit.Tool, first, last int, done map[string]bool) {
	start, end := r.withArticle(first), r.words[last].End
	p := &Proposal{Kind: Tool, Start: start, End: end, Names: []Name{{r.words[first].Start, end, tool.ID}}}
	if tool.Holds.Given() || tool.Residue.Given() {
		p.Kind = Vessel // for the steps, which are worked in one
	}
	if done[tool.ID] || r.inHeading(start) || r.bare.isLeftAlone(start, end) || r.bare.isLinked(start, end) || r.overlaps(p) || !r.isInAStep(start) {
		r.Proposals = append(r.Proposals, p)
		return
	}
	done[tool.ID] = true
	said := r.kit.Called(tool.ID)
	asTool := Alternative{"tool:" + tool.ID, "a tool that is used: " + said}
	asVessel := Alternative{"vessel:" + tool.ID, "what is worked in: " + said}
	meant, other := asTool, asVessel
	if r.isVessel(tool) {
		meant, other = asVessel, asTool
	}
	p.Destination, p.Meaning = meant.Destination, meant.Meaning
	p.Why = "the first place that names it; its bare name counts too"
	if tool.Holds.Given() {
		p.Alternatives = []Alternative{other}
	}
	r.propose(p)
}

// smallVessel is what a vessel holds at least: a spoon or a scoop measures (our own figure).
var smallVessel = quantity.Whole(100) // mL

// isVessel: a step is worked in it, a mixture is made in it, the kit says what stays behind in
// it, or it holds so much that it will not be there to measure by.
func (r *reading) isVessel(tool *kit.Tool) bool {
	madeIn := slices.ContainsFunc(r.kit.Mixtures, func(m *kit.Mixture) bool { return m.MadeIn.Value == tool.ID })
	if madeIn || tool.Residue.Given() || r.bare.workedIn[tool.ID] {
		return true
	}
	if r.isWaterBath(tool) {
		return false
	}
	return tool.Holds.Given() && !tool.ReadsTo.Given() && tool.Holds.Value.Nominal.Cmp(smallVessel) >= 0
}

// isWaterBath: where the kit says of another vessel what stays behind in it, a pan of which it
// says nothing mostly holds the water that the other one stands in (common practice, no source).
func (r *reading) isWaterBath(tool *kit.Tool) bool {
	isPan := slices.ContainsFunc(append(nameWords(r.kit.Called(tool.ID)), tool.ID), func(w string) bool { return pans[w] })
	return isPan && slices.ContainsFunc(r.kit.Tools, func(t *kit.Tool) bool { return t.Residue.Given() })
}

var pans = wordSet("pan saucepan pot stockpot kettle")

// inHeading says whether a byte stands in the line of a heading.
func (r *reading) inHeading(at int) bool {
	line := r.text[strings.LastIndexByte(r.text[:at], '\n')+1:]
	return strings.HasPrefix(strings.TrimLeft(line, " "), "#")
}
