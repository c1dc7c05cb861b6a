package adopt

import (
	"slices"
	"strings"
)

// After is that a wait with a name is over.
const After Kind = "after"

var (
	opensAfter = wordSet("when once after")
	// overWords say of a wait that it is over (common practice, no source).
	overWords = wordSet("over up passed gone done set dry dried cured rested cooled hardened soaked")
	isOrHas   = wordSet("is are has have")
)

// findAfter recognises that a wait with a name is over: "once the mix has rested", "when the
// 2 hours are up".
func (r *reading) findAfter() {
	for i, w := range r.words {
		if !opensAfter[w.Text] || i+1 >= len(r.words) || r.words[i+1].Sentence != w.Sentence {
			continue
		}
		start := r.words[i+1].Start
		end := r.clauseEnd(start)
		name := r.waitThatIsOver(start, end)
		if name == "" {
			continue
		}
		r.propose(&Proposal{Kind: After, Start: start, End: end, Destination: "after:" + name,
			Meaning: "the wait “" + name + "” is over", Why: "the words behind “" + w.Text + "”, and a wait of this name before"})
	}
}

// waitThatIsOver is the name of the wait before a clause that the clause says is over: its
// name or its time stands in it, or there is only one. "" for none, or where that is open.
func (r *reading) waitThatIsOver(start, end int) string {
	var words []string
	for i := r.wordAt(start); i < len(r.words) && r.words[i].End <= end; i++ {
		words = append(words, r.words[i].Text)
	}
	has := func(all map[string]bool) bool {
		return slices.ContainsFunc(words, func(w string) bool { return all[w] })
	}
	if !has(isOrHas) {
		return ""
	}
	var before, meant []string
	for _, wait := range r.bare.waits {
		if wait.start >= start {
			break
		}
		before = append(before, wait.name)
		told := strings.Contains(r.text[start:end], r.text[wait.start:wait.end])
		if told || slices.ContainsFunc(words, func(w string) bool { return isOf(w, wait.name) }) {
			meant = append(meant, wait.name)
		}
	}
	if len(meant) == 1 {
		return meant[0]
	}
	if len(before) == 1 && has(overWords) {
		return before[0]
	}
	return ""
}

// isOf says whether a word is another form of a name: "dried" of "drying", "rested" of "rest".
func isOf(word, name string) bool {
	const stem = 3 // letters that both begin with
	word, name = strings.ReplaceAll(word, "y", "i"), strings.ReplaceAll(name, "y", "i")
	return len(word) >= stem && len(name) >= stem && word[:stem] == name[:stem]
}
