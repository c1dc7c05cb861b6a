package adopt

import (
	"slices"
	"strings"

	"tallyfold/kit/rules"
)

// A ToolFound is what will stand in kit.yaml under tools.
type ToolFound struct {
	Key, Name string
	// Start and End are the bytes where the leaflet first speaks of it.
	Start, End int
	Vessel     bool
	Why        string
	// Box: it stands on the list of parts, Packed times.
	Box    bool
	Packed string
}

// vesselWords hold material while someone works (common practice, no source). Jars and
// bottles are left out: they mostly hold what is finished.
var vesselWords = wordSet("pan saucepan pot kettle cauldron caldron boiler copper jug bowl basin bason pipkin skillet crock mortar tub bucket pail vessel beaker")

// vesselKinds say which of them is meant: "iron kettle" is another one than "kettle".
var vesselKinds = wordSet("iron brass earthen earthenware glass stone wooden tin pewter large small clean stew sauce porcelain enamel enamelled marble open mixing double")

// findTools recognises tools by the words of the rule tool-not-listed, and vessels. A
// bare name in the method is enough once kit.yaml knows it, so nothing is linked.
func (r *reading) findTools() {
	named := rules.ToolsNamed(r.text, language)
	for _, tool := range named {
		r.tool(tool.Called, tool.Start, tool.End, vesselWords[lastWord(tool.Called)], "the list of tools that are known by name")
	}
	for i, w := range r.words {
		if !vesselWords[rules.Singular(w.Text)] || slices.ContainsFunc(named, func(t rules.NamedTool) bool { return t.Start <= w.Start && w.End <= t.End }) {
			continue
		}
		if r.doing(i) != rules.NoOrder && i+1 < len(r.words) && beginsName[r.words[i+1].Text] || r.partOfName(w) {
			continue
		}
		first := i
		for first > 0 && vesselKinds[r.words[first-1].Text] && r.joins(r.words[first-1].End, r.words[first].Start) {
			first--
		}
		r.tool(oneLine(strings.ToLower(r.text[r.words[first].Start:w.End])), r.words[first].Start, w.End, true, "a word for what holds material")
	}
}

// partOfName: the copper of "acetate of copper" is no vessel.
func (r *reading) partOfName(w rules.Word) bool {
	return slices.ContainsFunc(r.Proposals, func(p *Proposal) bool {
		return slices.ContainsFunc(p.Names, func(n Name) bool { return n.Start <= w.Start && w.End <= n.End })
	}) || w.Text == "copper" && r.before(w.Start, 1, "of", "or")
}

func lastWord(text string) string { return text[strings.LastIndexByte(text, ' ')+1:] }

// sameVessel: "the bowl" is the mixing bowl that was named before, where there is no other. It is
// -1 for none.
func (r *reading) sameVessel(called string) int {
	words, found := stems(called), -1
	for i, t := range r.Tools {
		have := stems(t.Name)
		if len(words) != 1 || len(have) < 2 || have[len(have)-1] != words[0] {
			continue
		}
		if found >= 0 {
			return -1
		}
		found = i
	}
	return found
}

// handTools are used and not used up, besides those that the rules know (common practice, no
// source).
var handTools = wordSet("stick scoop spoon spatula brush paintbrush sandpaper needle awl hoop hook funnel ladle glove mask apron mat rack stencil stamp mallet")

// listedTool takes a thing on a list of parts for a tool by the last word of its name, if it is
// packed by the piece.
func (r *reading) listedTool(name, amount, why string) bool {
	last := rules.Singular(strings.ToLower(lastWord(oneLine(name))))
	named := rules.ToolsNamed(strings.ToLower(name), language)
	isTool := handTools[last] || vesselWords[last] || len(named) > 0 && named[len(named)-1].End == len(name)
	if !isTool || amount == "" || strings.Trim(amount, "0123456789") != "" {
		return false
	}
	r.Tools = append(r.Tools, &ToolFound{Key: r.freeKey(name), Name: oneLine(name), Vessel: vesselWords[last], Why: why, Box: true, Packed: amount})
	return true
}

func (r *reading) tool(called string, start, end int, vessel bool, why string) {
	kind := Tool
	if vessel {
		kind = Vessel
	}
	i := slices.IndexFunc(r.Tools, func(t *ToolFound) bool { return slices.Equal(stems(t.Name), stems(called)) })
	if i < 0 && !r.before(start, 1, "another", "other", "second") {
		i = r.sameVessel(called)
	}
	if i < 0 {
		if r.owner(called) != "" {
			return
		}
		r.Tools = append(r.Tools, &ToolFound{Key: r.freeKey(called), Name: called, Start: start, End: end, Vessel: vessel, Why: why})
		i = len(r.Tools) - 1
	}
	r.Proposals = append(r.Proposals, &Proposal{Kind: kind, Start: start, End: end, Names: []Name{{start, end, r.Tools[i].Key}},
		Meaning: "a " + string(kind) + ", under tools in kit.yaml", Why: why, Accepted: true})
}
