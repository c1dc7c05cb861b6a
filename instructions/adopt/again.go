package adopt

// Again is what stands before it in the step, done so many more times.
const Again Kind = "again"

// findAgains recognises "make two more", "four more times" and "do the same with the other
// two" (common practice, no source).
func (r *reading) findAgains() {
	for i, w := range r.words {
		switch w.Text {
		case "more":
			r.more(i)
		case "same":
			r.sameWithOthers(i)
		}
	}
}

// addsMore are orders behind which "two more" are two more things, and no work done again.
var addsMore = wordSet("add take put use stir pour weigh need needs have has is are allow wait leave")

// more: the number stands before the word at i. "Two more" of something tells what, and does
// nothing again; so the sentence has to end there.
func (r *reading) more(i int) {
	if i < 1 || !r.isNumber(r.words[i-1].Text) || !r.joins(r.words[i-1].End, r.words[i].Start) {
		return
	}
	if next := i + 1; next < len(r.words) && (r.words[next].Text == "times" || r.words[next].Text == "time") && r.joins(r.words[i].End, r.words[next].Start) {
		r.again(r.words[i-1].Start, r.words[next].End, "“more times” behind a number")
		return
	}
	endsSentence := i+1 >= len(r.words) || r.words[i+1].Sentence != r.words[i].Sentence
	if i < 2 || !endsSentence || r.words[i-2].Sentence != r.words[i].Sentence || !r.beginsClause(i-2) || addsMore[r.words[i-2].Text] {
		return
	}
	r.again(r.words[i-2].Start, r.words[i].End, "an order and “more” behind a number")
}

// sameWithOthers: "do the same with the other two".
func (r *reading) sameWithOthers(i int) {
	if i < 2 || r.words[i-2].Text != "do" || r.words[i-1].Text != "the" || i+4 >= len(r.words) {
		return
	}
	with, the, other, number := r.words[i+1], r.words[i+2], r.words[i+3], r.words[i+4]
	if !withOthers[with.Text] || the.Text != "the" || other.Text != "other" && other.Text != "remaining" || !r.isNumber(number.Text) || number.Sentence != r.words[i].Sentence {
		return
	}
	r.again(r.words[i-2].Start, number.End, "“do the same” and how many others there are")
}

var withOthers = wordSet("with for to on")

func (r *reading) again(start, end int, why string) {
	r.propose(&Proposal{Kind: Again, Start: start, End: end, Destination: "again:", Why: why,
		Meaning: "what stands before it in the step is done again: " + oneLine(r.text[start:end])})
}
