package adopt

import "tallyfold/kit"

// Clean is a vessel that is cleaned, so that nothing stays in it.
const Clean Kind = "clean"

var (
	cleaning = wordSet("wash wipe rinse clean scrub")
	// amongCleaned may stand between the order and the vessels, and between these.
	amongCleaned = wordSet("out up down off and both all the a an your")
)

// findCleaned recognises "wash the pot, the bowl and the jug" of vessels that were used before
// (common practice, no source).
func (r *reading) findCleaned() {
	for i, w := range r.words {
		if !cleaning[w.Text] || !r.beginsClause(i) {
			continue
		}
		for j := i + 1; j < len(r.words) && r.words[j].Sentence == w.Sentence; j++ {
			if !r.goesOn(j) {
				break
			}
			if amongCleaned[r.words[j].Text] {
				continue
			}
			tool, last, ok := r.toolAt(j)
			if !ok {
				break
			}
			if r.isVessel(tool) && r.isNamedBefore(tool.ID, i) {
				start, end := r.withArticle(j), r.words[last].End
				r.propose(&Proposal{Kind: Clean, Start: start, End: end, Names: []Name{{r.words[j].Start, end, tool.ID}}, Destination: "clean:" + tool.ID,
					Meaning: r.kit.Called(tool.ID) + " is cleaned, and nothing stays in it", Why: "a vessel behind “" + w.Text + "”"})
			}
			j = last
		}
	}
}

// goesOn says whether nothing but a comma stands between a word and the one before it.
func (r *reading) goesOn(i int) bool {
	from := r.words[i-1].End
	if r.text[from:r.words[i].Start] != "" && r.text[from] == ',' {
		from++
	}
	return r.joins(from, r.words[i].Start)
}

// toolAt gives the tool of the kit whose name begins with word i, and its last word.
func (r *reading) toolAt(i int) (tool *kit.Tool, last int, ok bool) {
	if i >= len(r.words) {
		return nil, 0, false
	}
	name, last, ok := r.callAt(i)
	if !ok {
		return nil, 0, false
	}
	tool = r.kit.Tool(name.key)
	return tool, last, tool != nil
}

// isNamedBefore: a vessel that was not spoken of before word i holds nothing yet.
func (r *reading) isNamedBefore(key string, i int) bool {
	if r.bare.workedIn[key] {
		return true
	}
	for j := range i {
		if name, _, ok := r.callAt(j); ok && name.key == key {
			return true
		}
	}
	return false
}
