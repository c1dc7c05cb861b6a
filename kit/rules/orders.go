package rules

import (
	"slices"
	"strings"
	"unicode"

	"tallyfold/kit"
)

// An order is one handling that a step's running text asks for.
type order struct {
	word     int // its verb, in the words of the reading
	sentence int
	listed   bool // in a list, which tells its orders one by one
}

// orders finds the handlings that a text orders: verbs of handling at the head of a
// sentence or clause. What stands in a question or after "if" is ordered too.
func orders(k *kit.Kit, r reading) []order {
	verbs, joints := actionVerbs[language(k)], orderWords[language(k)]
	var all []order
	for i, w := range r.words {
		if !slices.Contains(verbs, w.text) || r.isTimed(i) {
			continue
		}
		first := r.neighbour(i, -1) == "" || slices.Contains(joints.openers, r.neighbour(i, -1)) && r.neighbour(i, -2) == ""
		if first && !slices.Contains(joints.naming, r.neighbour(i, 1)) ||
			r.isClauseHead(i, joints.joints) && joints.isObject(r.neighbour(i, 1)) {
			all = append(all, order{i, w.sentence, r.isListed(i)})
		}
	}
	return all
}

// isTimed says whether a verb only tells how long something takes: "Take 5 minutes".
func (r reading) isTimed(i int) bool {
	if r.neighbour(i, 1) == "" {
		return false
	}
	link := r.link(r.span(i+1, i+1))
	return link != nil && (link.Kind == kit.Work || link.Kind == kit.Wait)
}

// isClauseHead says whether a word follows a comma or a word that joins clauses.
func (r reading) isClauseHead(i int, joints []string) bool {
	if slices.Contains(joints, r.neighbour(i, -1)) {
		return true
	}
	return r.neighbour(i, -1) != "" && strings.ContainsAny(r.text[r.words[i-1].end:r.words[i].start], ",:–—")
}

// isListed says whether a word stands in a list: on a line that begins with a mark
// of one, or is set in.
func (r reading) isListed(i int) bool {
	text, at := r.at.File.Text, r.at.Start+r.words[i].start
	start := at
	for start > 0 && text[start-1] != '\n' {
		start--
	}
	line := string(text[start:at])
	mark := strings.TrimLeft(line, " \t")
	number := strings.TrimLeftFunc(mark, unicode.IsDigit)
	return strings.HasPrefix(line, "  ") || strings.HasPrefix(mark, "- ") || strings.HasPrefix(mark, "* ") ||
		number != mark && (strings.HasPrefix(number, ". ") || strings.HasPrefix(number, ") "))
}

// joining words of one language around an order.
type joining struct {
	// openers may stand before the verb at the head of a sentence.
	openers []string
	// joints join a further order to the one before.
	joints []string
	// objects may follow the verb of a further order: what else follows makes it a
	// name in a row of names ("wax, tint and thread").
	objects []string
	// naming words behind the first word make it a name: "Wax is soft".
	naming []string
}

func (j joining) isObject(word string) bool {
	return slices.Contains(j.objects, word) || isNumber(word) || strings.HasSuffix(word, "ly")
}

var orderWords = map[string]joining{
	"en": {
		openers: []string{"then", "now", "next", "first", "finally", "lastly", "gently", "carefully", "slowly", "and", "please", "afterwards", "quickly", "again"},
		joints:  []string{"and", "then", "or", "gently", "carefully", "slowly", "quickly"},
		objects: []string{"the", "it", "them", "this", "that", "these", "those", "a", "an", "each", "every", "all", "both", "half", "one", "two",
			"three", "four", "five", "six", "seven", "eight", "nine", "ten", "your", "its", "their", "off", "up", "out", "down", "over", "in",
			"into", "on", "again", "well", "until", "away", "aside", "back", "together", "everything", "more", "any", "some", "what", "another"},
		naming: []string{"is", "are", "was", "will", "can", "may", "has", "of", "would", "does", "burns", "sets", "shrinks"},
	},
}
