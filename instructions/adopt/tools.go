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

func (r *reading) tool(called string, start, end int, vessel bool, why string) {
	kind := Tool
	if vessel {
		kind = Vessel
	}
	i := slices.IndexFunc(r.Tools, func(t *ToolFound) bool { return slices.Equal(stems(t.Name), stems(called)) })
	if i < 0 {
		key := r.freeKey(called)
		if key == "" || r.owner(called) != "" {
			return
		}
		r.Tools = append(r.Tools, &ToolFound{Key: key, Name: called, Start: start, End: end, Vessel: vessel, Why: why})
		i = len(r.Tools) - 1
	}
	r.Proposals = append(r.Proposals, &Proposal{Kind: kind, Start: start, End: end, Names: []Name{{start, end, r.Tools[i].Key}},
		Meaning: "a " + string(kind) + ", under tools in kit.yaml", Why: why, Accepted: true})
}
