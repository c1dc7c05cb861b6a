package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
)

var namedOtherwise = Rule{
	Name:     "named-otherwise",
	Severity: diag.ShouldFix,
	Title:    "A step calls a thing by a name that its bag does not bear",
	Explanation: `The step says “soya pellets”, the bag says “Soy wax flakes”, and the customer writes to ask
where the pellets are. Or it says “pine fragrance” where the link takes the orange one:
then the customer does one thing and the sums another.

Compared are the words of links that take, use or place something with its name, its key,
the names it is also called by, and the names of its role. One word in common is enough:
shortened names, plurals, compounds and other spellings pass, and so do words that name
nothing (“the larger bag”, “all of it”) or a kind of thing (“the fragrance”, where only
one could be meant). What is told is a link with no word in common,
and one that has another thing's whole name.

Use the name on the bag, or declare the other one: “also called: …” under the thing in
kit.yaml.`,
	Check: func(s Subject) []diag.Finding {
		table, known := nameWords[language(s.Kit)]
		if !known {
			return []diag.Finding{noWords(s.Kit, "names in the words of links", nameWords)}
		}
		n := nameSearch{
			kit: s.Kit, table: table, verbs: titleWords[language(s.Kit)].verbs, reader: amountReader(s.Kit),
			known: wholeNames(s.Kit), found: map[string]*diag.Finding{},
		}
		operations(s.Kit, n.judge)
		return n.findings()
	},
}

type nameSearch struct {
	kit    *kit.Kit
	table  nameTable
	verbs  map[string]bool
	reader quantity.Reader
	known  []thingName
	order  []string
	found  map[string]*diag.Finding // by thing and words
}

// wholeNames are all names of components and household items, cut into words.
func wholeNames(k *kit.Kit) []thingName {
	var all []thingName
	add := func(name kit.Name) {
		for _, called := range name.Names() {
			all = append(all, thingName{id: name.ID, words: wordsOf(strings.ReplaceAll(called, "-", " "))})
		}
	}
	for _, c := range k.Components {
		add(c.Name)
	}
	for _, h := range k.Household {
		add(h.Name)
	}
	return all
}

// judge compares the words of one link.
func (n *nameSearch) judge(o *kit.Operation, step *kit.Step) {
	if o.Kind != kit.Take && o.Kind != kit.Use && o.Kind != kit.Place {
		return
	}
	meant := n.content(o.Text)
	ids := n.things(o.Target)
	if len(meant) == 0 || len(ids) == 0 {
		return
	}
	own := n.most(meant, ids)
	if other, whole := n.another(meant, ids); whole > own {
		n.say(o, step, ids, meant, other)
		return
	}
	if own == 0 && inCommon(meant, wordsOf(strings.ReplaceAll(o.Target, "-", " "))) == 0 && !n.isLetter(o.Text, ids) && !n.isClass(meant, ids) {
		n.say(o, step, ids, meant, "")
	}
}

// things are the keys that a target stands for in any run.
func (n *nameSearch) things(target string) []string {
	var ids []string
	for _, run := range n.kit.Passes() {
		id := resolved(run, target)
		if (n.kit.Component(id) != nil || n.kit.HouseholdItem(id) != nil) && !slices.Contains(ids, id) {
			ids = append(ids, id)
		}
	}
	return ids
}

// content are the words of a link that may name something, in lower case.
func (n *nameSearch) content(text string) []string {
	text = strings.ReplaceAll(n.withoutAmounts(text), "-", " ")
	var meant []string
	before := ""
	for _, word := range wordsOf(text) {
		switch {
		case n.table.fillers[word], isNumber(word), len(word) < 2, strings.Contains(word, "'"), strings.Contains(word, "’"):
		case n.verbs[word] && !n.table.before[before] && before != "" && len(meant) == 0, n.verbs[word] && before == "" && len(wordsOf(text)) > 1:
		case n.endsFree(word):
		default:
			meant = append(meant, word)
		}
		before = word
	}
	return meant
}

// endsFree says whether the end of a word shows that it names nothing.
func (n *nameSearch) endsFree(word string) bool {
	return slices.ContainsFunc(n.table.ends, func(end string) bool { return strings.HasSuffix(word, end) && len(word) > len(end)+2 })
}

// withoutAmounts blanks the figures and units of a link; what is counted stays.
func (n *nameSearch) withoutAmounts(text string) string {
	bytes := []byte(text)
	for _, found := range n.reader.Find(text) {
		if found.Amount.Dimension == quantity.Count {
			continue
		}
		for i := found.Start; i < found.End; i++ {
			bytes[i] = ' '
		}
	}
	return string(bytes)
}

// most is the largest number of words in common with one name or key of the things.
func (n *nameSearch) most(meant []string, ids []string) int {
	most := 0
	for _, name := range n.known {
		if slices.Contains(ids, name.id) {
			most = max(most, inCommon(meant, name.words))
		}
	}
	for _, id := range ids {
		most = max(most, inCommon(meant, wordsOf(strings.ReplaceAll(id, "-", " "))))
	}
	return most
}

// isClass says whether the words are the kind that a thing is of, and nothing else
// in the kit is called so.
func (n *nameSearch) isClass(meant []string, ids []string) bool {
	for _, word := range meant {
		if !n.table.classes[singular(word)] {
			return false
		}
	}
	for _, name := range n.known {
		if !slices.Contains(ids, name.id) && inCommon(meant, name.words) > 0 {
			return false
		}
	}
	return true
}

// another is another thing whose whole name stands in the words, and how many words
// that name has.
func (n *nameSearch) another(meant []string, ids []string) (id string, whole int) {
	for _, name := range n.known {
		if !slices.Contains(ids, name.id) && len(name.words) > whole && holdsAll(meant, name.words) {
			id, whole = name.id, len(name.words)
		}
	}
	return id, whole
}

func holdsAll(meant, name []string) bool {
	for _, word := range name {
		if !slices.ContainsFunc(meant, func(is string) bool { return singular(is) == singular(word) }) {
			return false
		}
	}
	return len(name) > 0
}

// inCommon counts the words of a name that are among others.
func inCommon(meant, name []string) int {
	count := 0
	for _, word := range name {
		if slices.ContainsFunc(meant, func(is string) bool { return isAkin(singular(is), singular(word)) }) {
			count++
		}
	}
	return count
}

// isAkin says whether two words are one: equal, one a part of the other as in a
// compound ("waxflakes", "newspaper"), of one stem ("fragranced"), or two spellings.
func isAkin(a, b string) bool {
	const leastPart, leastRest = 3, 3
	if len(a) < len(b) {
		a, b = b, a
	}
	isPart := len(b) >= leastPart && len(a)-len(b) >= leastRest && (strings.HasPrefix(a, b) || strings.HasSuffix(a, b))
	return a == b || isPart || beginsAlike(a, b) || len(b) > alike && diag.Nearest(a, []string{b}) != ""
}

// isLetter says whether the link names the thing by the letter of its bag: "bag C".
func (n *nameSearch) isLetter(text string, ids []string) bool {
	words := strings.FieldsFunc(text, func(r rune) bool { return !isWordLetter(r) })
	for _, id := range ids {
		if c := n.kit.Component(id); c != nil && slices.Contains(words, c.Letter) {
			return true
		}
	}
	return false
}

func isWordLetter(r rune) bool { return r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' }

func (n *nameSearch) say(o *kit.Operation, step *kit.Step, ids []string, meant []string, other string) {
	id, words := ids[0], strings.Join(meant, " ")
	where := "trouble.md"
	if step != nil {
		where = inStep(step)
	}
	if known := n.found[id+"/"+words]; known != nil {
		known.Also = append(known.Also, diag.Place{Where: o.TextSpan, Note: "the same, " + where})
		return
	}
	var names []string
	for _, one := range ids {
		names = append(names, n.kit.Called(one))
	}
	name := strings.Join(names, " or ")
	thing, _ := n.kit.Named(id)
	finding := &diag.Finding{
		Where: o.TextSpan, About: id,
		Found:    where + " speaks of “" + words + "” and takes " + name + ", which has no word in common with it",
		Expected: "the name in the box list: " + name,
		Remedies: []diag.Remedy{{Do: "call it “" + name + "” in the words of the link"}, {
			Do:      "if both names are right, put “also called: " + words + "” under " + id + " in kit.yaml",
			Changes: alsoCalled(thing, words),
		}},
		Also: []diag.Place{{Where: keySpan(n.kit, id), Note: n.kit.Called(id)}},
	}
	if other != "" {
		finding.Found = where + " speaks of “" + n.kit.Called(other) + "”, and the link takes " + name
		finding.Remedies = diag.Fix("if "+n.kit.Called(other)+" is meant, write ("+string(o.Kind)+":"+other+")",
			"if "+name+" is meant, call it so in the words of the link")
		finding.Also = append(finding.Also, diag.Place{Where: keySpan(n.kit, other), Note: n.kit.Called(other)})
	}
	n.order = append(n.order, id+"/"+words)
	n.found[id+"/"+words] = finding
}

func (n *nameSearch) findings() []diag.Finding {
	var findings []diag.Finding
	for _, key := range n.order {
		findings = append(findings, *n.found[key])
	}
	return findings
}
