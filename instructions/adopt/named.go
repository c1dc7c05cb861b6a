package adopt

import (
	"slices"

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
	if done[tool.ID] || isHeadingAt(r.File.Text, start) || r.bare.isLeftAlone(start, end) || r.bare.isLinked(start, end) || r.overlaps(p) || !r.isInAStep(start) {
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
	if !slices.ContainsFunc(r.kit.Tools, func(t *kit.Tool) bool { return t.Holds.Given() || t.Residue.Given() }) {
		name := nameWords(r.kit.Called(tool.ID)) // all that a kit begun from a leaflet tells
		return len(name) > 0 && vesselWords[name[len(name)-1]]
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

// vesselBehind is the vessel in "200 g of wax into the pan" where it is another than that of
// the step, "" for none. Without it the step's own would get what is poured.
func (r *reading) vesselBehind(p *Proposal) string {
	i := r.wordAt(p.End)
	if i+1 >= len(r.words) || r.words[i].Text != "into" || !r.joins(p.End, r.words[i].Start) {
		return ""
	}
	i++
	if articles[r.words[i].Text] && i+1 < len(r.words) && r.joins(r.words[i].End, r.words[i+1].Start) {
		i++
	}
	name, _, ok := r.callAt(i)
	tool := r.kit.Tool(name.key)
	if !ok || tool == nil || !tool.Holds.Given() {
		return ""
	}
	if own, linked := r.bare.vesselAt(p.Start, r.stepStartOf(p.Start)); !linked || own == tool.ID {
		return ""
	}
	return tool.ID
}

func (r *reading) stepStartOf(at int) int {
	start := 0
	for _, s := range r.steps {
		if s.at <= at {
			start = s.at
		}
	}
	return start
}
