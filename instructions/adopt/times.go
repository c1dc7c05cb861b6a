package adopt

import (
	"slices"
	"strings"

	"tallyfold/instructions"
	"tallyfold/kit/quantity"
	"tallyfold/kit/rules"
)

// findTimes recognises times and temperatures. Whether a time is worked or waited is
// told by the order before it; where that leaves it open, both are alternatives.
func (r *reading) findTimes() {
	for _, found := range r.found {
		end := r.withoutPoint(found.End)
		p := &Proposal{Start: found.Start, End: end, AmountStart: found.Start, AmountEnd: end, amount: found.Amount, known: true}
		switch found.Amount.Dimension {
		case quantity.Duration:
			p.Kind = Time
			r.time(p)
		case quantity.Temperature:
			p.Kind = Temperature
			r.temperature(p)
		default:
			continue
		}
		r.propose(p)
	}
	for _, open := range r.opens {
		if strings.HasPrefix(open.Measure, "deg") {
			said := r.text[open.Start:open.End]
			r.propose(&Proposal{Kind: Temperature, Start: open.Start, End: open.End, AmountStart: open.Start, AmountEnd: open.End,
				Meaning: said, Why: "a figure and degrees", Open: "whose degrees? " + open.Why, noSize: true,
				Alternatives: []Alternative{{"", "as degrees Celsius: write °C"}, {"", "as degrees Fahrenheit: write °F"}}})
		}
	}
}

// isInterval: "every 10 minutes", "twice in 24 hours" tell how often, not how long.
func (r *reading) isInterval(at int) bool {
	return r.before(at, 1, "every", "each") || r.before(at, 2, "times", "twice", "once") && r.before(at, 1, "in", "a")
}

// isWaited: "wait 5 minutes", "wait for another 10 minutes".
func (r *reading) isWaited(at int) bool {
	for i := r.wordAt(at) - 1; i >= 0 && !r.beginsSentence(at); i-- {
		if r.words[i].Text == "wait" {
			return true
		}
		if !beforeWaits[r.words[i].Text] {
			return false
		}
	}
	return false
}

var beforeWaits = wordSet("for another about at least most up to the")

func (r *reading) time(p *Proposal) {
	said := r.Words(p)
	work, wait := Alternative{"work:", "work for " + said}, Alternative{"wait:", "wait " + said}
	order, doing, ok := r.orderBefore(p.Start)
	switch {
	case r.isInterval(p.Start):
		p.Meaning, p.Why, p.Open = said, "a time behind “every” or “times in”", "it tells how often, and not how long"
		p.Alternatives = []Alternative{work, wait}
	case r.before(p.Start, 2, "will", "keeps"):
		p.Meaning, p.Why, p.Open = said, "a time", "it seems to tell what comes later, and no step"
		p.Alternatives = []Alternative{wait, work}
	case r.isWaited(p.Start):
		p.Destination, p.Meaning, p.Why = wait.Destination, wait.Meaning, "a time behind “wait”"
		p.Alternatives = []Alternative{work}
	case ok && (doing == rules.Leaves || doing == rules.SetsDown):
		p.Destination, p.Meaning, p.Why = wait.Destination, wait.Meaning, "a time behind “"+order.Text+"”, which goes on by itself"
		p.Alternatives = []Alternative{work}
	case ok && layDown[order.Text] && r.before(p.Start, 1, "for"):
		p.Destination, p.Meaning, p.Why = wait.Destination, wait.Meaning, "a time behind “"+order.Text+"” and “for”, which goes on by itself"
		p.Alternatives = []Alternative{work}
	case ok && (doing == rules.Heats || doing == rules.Mixes || doing == rules.Handles && r.before(p.Start, 1, "for")):
		p.Destination, p.Meaning, p.Why = work.Destination, work.Meaning, "a time behind “"+order.Text+"”, which someone stands by"
		p.Alternatives = []Alternative{wait}
	default:
		p.Meaning, p.Why, p.Open = said, "a time", "is someone at work meanwhile, or is it waited?"
		p.Alternatives = []Alternative{work, wait}
	}
}

func (r *reading) temperature(p *Proposal) {
	said := r.Words(p)
	warm, cool := Alternative{"warm:", "bring it to " + said}, Alternative{"cool:", "let it come down to " + said}
	order, doing, ok := r.orderBefore(p.Start)
	switch {
	case p.amount.Bound == quantity.Below, ok && strings.HasPrefix(order.Text, "cool"):
		p.Destination, p.Meaning, p.Why, p.Alternatives = cool.Destination, cool.Meaning, "a temperature, with words for cooling before it", []Alternative{warm}
	case ok && doing == rules.Heats:
		p.Destination, p.Meaning, p.Why, p.Alternatives = warm.Destination, warm.Meaning, "a temperature behind “"+order.Text+"”", []Alternative{cool}
	default:
		p.Meaning, p.Why, p.Open = said, "a temperature", "is it warmed or cooled to it, or only held at it?"
		p.Alternatives = []Alternative{warm, cool}
	}
}

// findCues recognises what to look for: the words behind "until" and "till".
func (r *reading) findCues() {
	r.openPhrases = rules.OpenPhrases(r.text, language)
	for i, w := range r.words {
		if w.Text != "until" && w.Text != "till" || i+1 >= len(r.words) || r.words[i+1].Sentence != w.Sentence {
			continue
		}
		start := r.words[i+1].Start
		end := r.clauseEnd(start)
		isOpen := slices.ContainsFunc(r.openPhrases, func(o rules.OpenPhrase) bool { return o.Start <= w.Start && w.End <= o.End })
		if isOpen || len(strings.Fields(r.text[start:end])) < 2 || strings.ContainsAny(r.text[start:end], "0123456789()") {
			continue
		}
		r.propose(&Proposal{Kind: Cue, Start: start, End: end, Destination: "cue:",
			Meaning: "what to look for: " + oneLine(r.text[start:end]), Why: "the words behind “" + w.Text + "”"})
	}
}

// clauseEnd is where the clause that begins at a byte ends.
func (r *reading) clauseEnd(start int) int {
	end := len(r.text)
	if cut := strings.IndexAny(r.text[start:], ",;:.!?—"); cut >= 0 {
		end = start + cut
	}
	if cut := strings.Index(r.text[start:end], "\n\n"); cut >= 0 {
		end = start + cut
	}
	return start + len(strings.TrimRight(r.text[start:end], " \t\r\n"))
}

// findRests recognises "the rest of the wax" where it is known what wax is.
func (r *reading) findRests() {
	for _, at := range instructions.RestPhrases(r.text, language) {
		i := r.wordAt(at[1])
		if i >= len(r.words) || r.words[i].Text != "of" || !r.joins(at[1], r.words[i].Start) {
			continue
		}
		name, ok := r.nameFrom(i+1, len(r.text), r.words[i].End)
		if !ok {
			continue
		}
		thing := r.thingCalled(r.text[name[0]:name[1]], name[0])
		if thing == nil {
			continue
		}
		r.rest(at, name, thing)
	}
}

// rest proposes what is left of a thing that some of was taken before. What is poured
// may be what a vessel holds, which only the maker knows.
func (r *reading) rest(at, name [2]int, thing *Thing) {
	r.alsoCalled(thing, r.text[name[0]:name[1]])
	if r.kit != nil && r.before(at[0], 1, "the") {
		at[0] = r.withArticle(r.wordAt(at[0]))
	}
	p := &Proposal{Kind: Amount, Start: at[0], End: name[1], Names: []Name{{name[0], name[1], thing.Key}},
		Meaning: "take what is left of " + thing.Key, Why: "“" + r.text[at[0]:at[1]] + " of” and a name that is known"}
	before := slices.ContainsFunc(r.Proposals, func(other *Proposal) bool {
		return other.Kind == Amount && other.Accepted && other.End <= p.Start && other.Destination == "take:"+thing.Key
	})
	if order, _, ok := r.orderBefore(p.Start); before && !(ok && order.Text == "pour") {
		p.Destination = "take:" + thing.Key
	} else {
		p.Open = "the rest of what: of the pack, or of what a vessel holds?"
		p.Alternatives = []Alternative{{"take:" + thing.Key, p.Meaning}, {"", "pour what a vessel holds: link it with move: and the key of the vessel"}}
	}
	r.propose(p)
}
