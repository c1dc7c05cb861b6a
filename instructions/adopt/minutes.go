package adopt

import (
	"slices"
	"strings"

	"tallyfold/kit/quantity"
	"tallyfold/kit/rules"
)

// This file settles the times and temperatures of a method by the order that stands at the
// head of their clause, where "a cool, dark place" orders nothing.

// layDown are orders behind which a time goes by itself: "lay them under a book for 2 hours"
// (common practice, no source).
var layDown = wordSet("lay stand put place set hang keep wait store")

// headOrder gives the nearest order before a byte that begins a sentence or a clause.
func (r *reading) headOrder(at int) (word rules.Word, doing rules.Doing, ok bool) {
	i := r.wordAt(at) - 1
	if i < 0 || r.beginsSentence(at) {
		return word, doing, false
	}
	sentence := r.words[i].Sentence
	for ; i >= 0 && r.words[i].Sentence == sentence; i-- {
		doing := r.doing(i)
		if (doing != rules.NoOrder || r.words[i].Text == "wait") && r.beginsClause(i) {
			return r.words[i], doing, true
		}
	}
	return word, doing, false
}

// beginsSentence says whether no word of its sentence stands before a byte.
func (r *reading) beginsSentence(at int) bool {
	i := r.wordAt(at)
	return i == 0 || i < len(r.words) && r.words[i-1].Sentence != r.words[i].Sentence
}

// clauseWords may stand between two orders: "cover it and leave it", "then slowly stir".
var clauseWords = wordSet("and then now or first next slowly gently to")

func (r *reading) beginsClause(i int) bool {
	if i == 0 || r.words[i-1].Sentence != r.words[i].Sentence || clauseWords[r.words[i-1].Text] {
		return true
	}
	return strings.ContainsAny(r.text[r.words[i-1].End:r.words[i].Start], ",:;.(—>#*")
}

// clauseHead is the word before word i that begins its clause, mostly an order.
func (r *reading) clauseHead(i int) (head int, ok bool) {
	for head = i - 1; head >= 0 && r.words[head].Sentence == r.words[i].Sentence; head-- {
		if r.beginsClause(head) {
			return head, true
		}
	}
	return 0, false
}

// timeInMethod says whether a time is worked or waited.
func (r *reading) timeInMethod(p *Proposal) {
	said := r.Words(p)
	work, wait := Alternative{"work:", "work for " + said}, Alternative{"wait:", "wait " + said}
	meant := func(first, other Alternative, why string) {
		p.Destination, p.Meaning, p.Why, p.Alternatives = first.Destination, first.Meaning, why, []Alternative{other}
		r.settleOn(p)
	}
	order, doing, ok := r.headOrder(p.Start)
	behindFor := r.before(p.Start, 1, "for") || r.before(p.Start, 2, "for") && r.before(p.Start, 1, "another", "about")
	switch {
	case r.isInterval(p.Start) || r.isPast(p.End):
	case r.before(p.Start, 1, "allow", "take", "takes", "needs") || r.before(p.Start, 2, "takes", "allow"):
		meant(work, wait, "a time behind words for how long one is at it")
	case r.isCalledWork(p):
		meant(work, wait, "a time, and words for being at work")
	case r.isAttended(p.End):
		meant(work, wait, "a time, and what is done all the while")
	case r.before(p.Start, 1, "in") && r.doneBefore(p.Start):
		meant(work, wait, "a time that something before it in the sentence is done in")
	case !ok:
	case doing == rules.Leaves || doing == rules.SetsDown || layDown[order.Text] && (behindFor || order.Text == "wait"):
		meant(wait, work, "a time behind “"+order.Text+"”, which goes on by itself")
	case doing == rules.Heats || doing == rules.Mixes || behindFor:
		meant(work, wait, "a time behind “"+order.Text+"”, which someone stands by")
	}
}

// isCalledWork: "5 minutes of work", "hands-on time is 10 minutes", "be at this for 10 minutes",
// "stand there for 20 minutes" (common practice, no source).
func (r *reading) isCalledWork(p *Proposal) bool {
	if i := r.wordAt(p.End); i+1 < len(r.words) && r.words[i].Text == "of" && r.words[i+1].Text == "work" && r.joins(p.End, r.words[i].Start) {
		return true
	}
	i := r.wordAt(p.Start) - 1
	if i < 3 || r.beginsSentence(p.Start) {
		return false
	}
	if r.words[i].Text == "is" && r.before(r.words[i].Start, 2, "hands-on", "work", "working") {
		return true
	}
	at, place := r.words[i-2].Text, r.words[i-1].Text
	present := at == "at" && (place == "it" || place == "this") || (at == "stand" || at == "stay") && (place == "there" || place == "by" || place == "here")
	return r.words[i].Text == "for" && present
}

// doneBefore says whether something was recognised before a byte in its sentence.
func (r *reading) doneBefore(at int) bool {
	i := r.wordAt(at)
	if i >= len(r.words) {
		return false
	}
	return slices.ContainsFunc(r.Proposals, func(p *Proposal) bool {
		first := r.wordAt(p.Start)
		return p.Accepted && p.End <= at && (p.Kind == Amount || p.Kind == Fill) && r.words[first].Sentence == r.words[i].Sentence
	})
}

// isPast: "5 minutes later", "2 days before".
func (r *reading) isPast(end int) bool {
	i := r.wordAt(end)
	return i < len(r.words) && r.joins(end, r.words[i].Start) && (r.words[i].Text == "before" || r.words[i].Text == "ago" || r.words[i].Text == "old")
}

// isAttended: "45 minutes, turning the wool now and then".
func (r *reading) isAttended(end int) bool {
	i := r.wordAt(end)
	if i >= len(r.words) || !strings.HasSuffix(r.words[i].Text, "ing") {
		return false
	}
	if between := r.text[end:r.words[i].Start]; strings.Trim(between, ", \n\r\t") != "" || strings.Count(between, "\n") > 1 {
		return false
	}
	plain := strings.TrimSuffix(r.words[i].Text, "ing")
	for _, base := range []string{plain, plain + "e", strings.TrimSuffix(plain, plain[max(len(plain)-1, 0):])} {
		if doing := rules.DoingOf(base, language); doing == rules.Handles || doing == rules.Mixes {
			return true
		}
	}
	return false
}

// heatInMethod says whether something is warmed or comes down to a temperature.
func (r *reading) heatInMethod(p *Proposal) {
	i := r.wordAt(p.Start) - 1
	if i < 0 || p.Destination == "" && p.Open == "" {
		return
	}
	said := r.Words(p)
	warm, cool := Alternative{"warm:", "bring it to " + said}, Alternative{"cool:", "let it come down to " + said}
	order, doing, ok := r.headOrder(p.Start)
	joined := r.joins(r.words[i].End, p.Start)
	if joined && (r.words[i].Text == "to" || r.words[i].Text == "at" && r.before(r.words[i].Start, 1, "is")) {
		p.Start = r.words[i].Start
	}
	switch {
	case joined && r.words[i].Text == "to" && r.before(r.words[i].Start, 2, "cool", "cools", "cooled", "drop", "drops", "dropped", "fall", "falls", "fallen"):
		r.heat(p, cool, warm, "a temperature, with words for cooling before it")
	case joined && (r.words[i].Text == "reach" || r.words[i].Text == "reaches") && p.amount.Bound != quantity.Below:
		r.heat(p, warm, cool, "a temperature that is reached")
	case joined && r.words[i].Text == "to" && ok && doing == rules.Heats:
		r.heat(p, warm, cool, "a temperature behind “"+order.Text+"”")
	case joined && r.words[i].Text == "at" && ok && (doing == rules.Leaves || doing == rules.SetsDown) && r.before(p.Start, 1, "is"):
		r.heat(p, cool, warm, "a temperature behind “"+order.Text+"”")
	case p.Destination != "":
		r.settleOn(p) // its words may be others now
	}
}

func (r *reading) heat(p *Proposal, meant, other Alternative, why string) {
	p.Destination, p.Meaning, p.Why, p.Alternatives = meant.Destination, meant.Meaning, why, []Alternative{other}
	r.settleOn(p)
}
