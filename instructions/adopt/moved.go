package adopt

import "slices"

// Move is what a vessel holds, moved over into another.
const Move Kind = "move"

var moving = wordSet("pour tip scrape spoon move transfer stir empty turn put add")

// findMoved recognises what is moved from one vessel into another: "the contents of the cup",
// "empty the cup into the pan", "scrape all of it into the pan" (common practice, no source).
func (r *reading) findMoved() {
	for i, w := range r.words {
		switch w.Text {
		case "contents":
			if key, end, ok := r.behindWord(i, "of"); ok && r.isVesselKey(key) {
				r.moved(key, r.withArticle(i), end)
			}
		case "empty":
			r.emptied(i)
		case "all":
			if i+2 < len(r.words) && r.words[i+1].Text == "of" && (r.words[i+2].Text == "it" || r.words[i+2].Text == "this") {
				r.allOfIt(i, i+2)
			}
		case "everything":
			r.allOfIt(i, i)
		}
	}
}

func (r *reading) isVesselKey(key string) bool {
	tool := r.kit.Tool(key)
	return tool != nil && r.isVessel(tool)
}

// emptied: "empty the cup into the pan".
func (r *reading) emptied(i int) {
	if !r.beginsClause(i) {
		return
	}
	j := i + 1
	for j < len(r.words) && (articles[r.words[j].Text] || r.words[j].Text == "out") {
		j++
	}
	if tool, last, ok := r.toolAt(j); ok && r.isVessel(tool) && r.joins(r.words[j-1].End, r.words[j].Start) {
		r.moved(tool.ID, r.withArticle(j), r.words[last].End)
	}
}

// allOfIt: the words from first to last are all that some vessel holds: the one they name
// behind "from", else the only other one that the step has spoken of.
func (r *reading) allOfIt(first, last int) {
	if order, ok := r.clauseHead(first); !ok || !moving[r.words[order].Text] {
		return
	}
	start, end := r.words[first].Start, r.words[last].End
	if key, _, ok := r.behindWord(last, "from"); ok && r.isVesselKey(key) {
		r.moved(key, start, end)
		return
	}
	begin := r.stepStartOf(start)
	into := r.intoBehind(end)
	if into == "" {
		into, _ = r.bare.vesselAt(start, begin)
	}
	others := r.vesselsNamed(begin, start)
	others = slices.DeleteFunc(others, func(key string) bool { return key == into })
	if into != "" && len(others) == 1 {
		r.moved(others[0], start, end)
	}
}

// intoBehind is the vessel that the sentence names behind a byte as where something goes.
func (r *reading) intoBehind(at int) string {
	for i := r.wordAt(at); i < len(r.words) && r.words[i].Sentence == r.words[r.wordAt(at)].Sentence; i++ {
		if key, _, ok := r.behindWord(i-1, "into", "to", "in"); ok {
			if r.isVesselKey(key) {
				return key
			}
			return ""
		}
	}
	return ""
}

// isIntoOther: what goes into containers is filled, and not moved.
func (r *reading) isIntoOther(at int) bool {
	i := r.wordAt(at)
	key, _, ok := r.behindWord(i-1, "into", "over", "between", "among")
	c := r.kit.Component(key)
	return ok && c != nil && c.Container != nil
}

// moved proposes that what a vessel holds goes into the one that the sentence names, else into
// that of the step.
func (r *reading) moved(from string, start, end int) {
	own, linked := r.bare.vesselAt(start, r.stepStartOf(start))
	into := r.intoBehind(end)
	if r.isIntoOther(end) || into == from || into == "" && (!linked || own == "" || own == from) {
		return
	}
	p := &Proposal{Kind: Move, Start: start, End: end, Destination: "move:" + from, Why: "words for all that a vessel holds"}
	if into != "" && !(linked && own == into) {
		p.Destination += "?into=" + into
	}
	if into == "" {
		into = own
	}
	p.Meaning = "all that " + r.kit.Called(from) + " holds goes into " + r.kit.Called(into)
	r.propose(p)
}
