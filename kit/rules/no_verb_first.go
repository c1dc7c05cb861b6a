package rules

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

var noVerbFirst = Rule{
	Name:     "no-verb-first",
	Severity: diag.WorthKnowing,
	Title:    "The title of a step does not say what to do",
	Explanation: `Whoever looks up from the work finds the place again by the titles. “Melt the wax” is an
order; “Preparation” could be anything, and “The wax is melted” may be a thing to do or
a thing that has happened.

Looked at is the title of each step: whether an order stands at its head. Let pass are
words before it (“Now …”, “Step 2: …”, “When the wax is set, …”), titles that name the
action (“Melting the wax”) or ask for it (“How to melt the wax”), and words that no list
knows: they may be orders. What is told is a title in the passive, and one that begins
with a noun. It is common practice, no source, that instructions are orders.

Begin the title with what is to be done.`,
	Check: func(s Subject) []diag.Finding {
		table, known := titleWords[language(s.Kit)]
		if !known {
			return []diag.Finding{noWords(s.Kit, "the titles of steps", titleWords)}
		}
		t := titleJudge{kit: s.Kit, table: table, names: namesInBox(s.Kit)}
		var findings []diag.Finding
		for _, step := range s.Kit.Method.Steps() {
			if fault := t.fault(wordsOf(step.Title), clausesOf(step.Title)); fault != noFault {
				findings = append(findings, t.finding(step, fault))
			}
		}
		return findings
	},
}

// A titleFault is what is wrong with a title.
type titleFault int

const (
	noFault titleFault = iota
	inPassive
	noOrder
)

type titleJudge struct {
	kit   *kit.Kit
	table titleTable
	names map[string]bool
}

// clausesOf cuts a title at its commas and colons.
func clausesOf(title string) [][]string {
	var clauses [][]string
	for _, clause := range strings.FieldsFunc(title, func(r rune) bool { return strings.ContainsRune(",:;–—", r) }) {
		if all := wordsOf(clause); len(all) > 0 {
			clauses = append(clauses, all)
		}
	}
	return clauses
}

// fault judges a title by its clauses: one with an order at its head is enough.
func (t titleJudge) fault(title []string, clauses [][]string) titleFault {
	if len(title) == 0 {
		return noFault
	}
	for _, clause := range clauses {
		if t.isOrder(clause) {
			return noFault
		}
	}
	head := t.head(clauses[0])
	for len(head) == 0 && len(clauses) > 1 {
		clauses = clauses[1:]
		head = t.head(clauses[0])
	}
	switch {
	case len(head) == 0:
		return noOrder
	case t.table.clauses[title[0]], t.table.speech[head[0]]:
		return noFault
	case t.passiveAt(head) >= 0:
		return inPassive
	case t.isNoun(head):
		return noOrder
	}
	return noFault
}

// head is a clause without its numbering and the words that may stand before an order.
func (t titleJudge) head(clause []string) []string {
	for len(clause) > 0 {
		word := clause[0]
		switch {
		case isNumber(word), t.table.leads[word], strings.HasSuffix(word, "ly") && len(word) > len("only"):
			clause = clause[1:]
		case t.table.numbering[word] && len(clause) > 1 && t.isFigure(clause[1]):
			clause = clause[2:]
		default:
			return clause
		}
	}
	return clause
}

// isFigure: "2", "one", "b".
func (t titleJudge) isFigure(word string) bool {
	return isNumber(word) || len(word) == 1 || numerals[word]
}

var numerals = wordSet("one two three four five six seven eight nine ten")

// isOrder says whether a clause begins with an order, or with the name of an action.
func (t titleJudge) isOrder(clause []string) bool {
	head := t.head(clause)
	if len(head) == 0 {
		return false
	}
	first := head[0]
	switch {
	case strings.HasSuffix(first, t.table.ing) && len(first) > len(t.table.ing)+2 && !t.table.notIng[first]:
		return true
	case t.table.verbs[first], t.table.verbs[beforeHyphen(first)] && !t.table.nouns[first]:
		// "Wax preparation": a thing of the kit, then a noun.
		return !(len(head) == 2 && t.names[singular(first)] && t.endsLikeNoun(head[1])) && !t.isBeing(head)
	}
	if len(head) > 2 && t.table.joining[head[1]] && t.table.verbs[head[2]] {
		return true // "Tag and clear up": an order that no list knows, and one that is listed
	}
	return len(head) > 1 && t.table.articles[head[1]] && !t.table.articles[first] && !strings.HasSuffix(first, "s")
}

// isBeing: "Wax is melted", where the first word is a thing and not an order.
func (t titleJudge) isBeing(head []string) bool {
	return len(head) > 2 && t.names[singular(head[0])] && t.table.being[head[1]]
}

func beforeHyphen(word string) string {
	first, _, _ := strings.Cut(word, "-")
	return first
}

// passiveAt is the participle of a passive, -1 where there is none.
func (t titleJudge) passiveAt(head []string) int {
	for i, word := range head {
		if i == 0 || !t.table.being[word] {
			continue
		}
		for next := i + 1; next < len(head) && next <= i+3; next++ {
			if t.orderIn(head[next]) != "" {
				return next
			}
		}
	}
	return -1
}

// orderIn gives the order of a participle, "" for a word that is none.
func (t titleJudge) orderIn(participle string) string {
	if order, listed := t.table.participles[participle]; listed {
		return order
	}
	stem, regular := strings.CutSuffix(participle, "ed")
	if !regular {
		return ""
	}
	for _, order := range []string{stem, stem + "e", undoubled(stem), strings.TrimSuffix(stem, "i") + "y"} {
		if t.table.verbs[order] {
			return order
		}
	}
	return ""
}

// undoubled takes the last of two equal letters off: "stirr" is "stir".
func undoubled(stem string) string {
	if n := len(stem); n > 1 && stem[n-1] == stem[n-2] {
		return stem[:n-1]
	}
	return stem
}

// isNoun says whether what should be an order is a noun.
func (t titleJudge) isNoun(head []string) bool {
	first, last := head[0], head[len(head)-1]
	isPlural := strings.HasSuffix(first, "s") && !strings.HasSuffix(first, "ss") && singular(first) != first
	return t.table.articles[first] || t.table.nouns[first] || t.table.numbering[first] || isPlural || t.endsLikeNoun(first) ||
		t.names[singular(first)] || len(head) <= 2 && t.endsLikeNoun(last)
}

func (t titleJudge) endsLikeNoun(word string) bool {
	for _, end := range t.table.nounEnds {
		if strings.HasSuffix(singular(word), end) && !t.table.verbs[word] {
			return true
		}
	}
	return false
}

func (t titleJudge) finding(step *kit.Step, fault titleFault) diag.Finding {
	finding := diag.Finding{
		Where: titlePlace(step), About: step.ID,
		Found:    "the title of " + inStep(step) + ", “" + step.Title + "”, does not begin with what is to be done",
		Expected: "an order at its head, such as “Melt the wax”",
		Remedies: diag.Fix("begin the title with what is to be done"),
	}
	if fault == inPassive {
		finding.Found = "the title of " + inStep(step) + ", “" + step.Title + "”, is in the passive: it may be an order or a result"
	}
	switch better := t.better(step.Title, fault); {
	case better != "":
		finding.Remedies = []diag.Remedy{{Do: "write “" + better + "”"}}
		if step.Named {
			finding.Remedies[0].Changes = []diag.Change{{Where: finding.Where, New: better}}
		}
	case t.hint(step.Title) != "":
		finding.Remedies = diag.Fix("write what is done and to what, such as “" + t.hint(step.Title) + " …”")
	}
	return finding
}

// hint gives the order in a noun of a title, "" where there is none.
func (t titleJudge) hint(title string) string {
	for _, word := range t.head(clausesOf(title)[0]) {
		if order := t.table.asOrders[word]; order != "" {
			return capital(order)
		}
	}
	return ""
}

// better turns a title in the passive into an order, "" where that is not so plain.
func (t titleJudge) better(title string, fault titleFault) string {
	head := t.head(clausesOf(title)[0])
	at := t.passiveAt(head)
	if fault != inPassive || at < 0 || len(clausesOf(title)) > 1 {
		return ""
	}
	for _, word := range head[at+1:] {
		if t.orderIn(word) != "" {
			return "" // two things are done
		}
	}
	written := wordsAsWritten(title)
	written = written[len(written)-len(head):]
	subject := at
	for i, word := range head {
		if i > 0 && t.table.being[word] {
			subject = i
			break
		}
	}
	written[0] = small(written[0])
	order := append([]string{capital(t.orderIn(head[at]))}, written[:subject]...)
	return strings.Join(append(order, written[at+1:]...), " ")
}

// wordsAsWritten cuts a title into words and keeps their capitals.
func wordsAsWritten(title string) []string {
	var all []string
	for _, word := range cut(title) {
		all = append(all, title[word.start:word.end])
	}
	return all
}

// small writes a word with a small letter at its head, unless it is all capitals.
func small(word string) string {
	if word == strings.ToUpper(word) {
		return word
	}
	return strings.ToLower(word[:1]) + word[1:]
}

func capital(word string) string {
	if word == "" {
		return word
	}
	return strings.ToUpper(word[:1]) + word[1:]
}

// titlePlace is where the words of a title stand.
func titlePlace(step *kit.Step) source.Span {
	if at := strings.Index(step.Span.Text(), step.Title); at >= 0 && step.Title != "" {
		return step.Span.Part(at, at+len(step.Title))
	}
	return step.Span
}
