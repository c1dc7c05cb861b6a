package quantity

import "sync"

// A role is what a phrase does in an amount. One phrase may have several: "min"
// is a unit and, before a figure, a bound.
type role uint8

const (
	numberWord   role = iota // six
	articleWord              // a, an: one, where a unit follows
	dozenWord                // dozen
	fractionWord             // half, three quarters
	linkWord                 // between a fraction and its unit: of a
	moreWord                 // and a half
	boundWord                // at most
	trailingWord             // or less
	betweenWord              // between
	toWord                   // to
	andWord                  // and
	orWord                   // or
	plusMinus                // ±
	byWord                   // by: a difference follows
	timesWord                // ×
	perWord                  // per
	ofWord                   // of
	theWord                  // the
	atWord                   // at, before the temperature of a solubility
	minusWord                // minus
	massWord                 // by weight
	fillWord                 // level, heaped
	fillerWord               // more, full: says nothing about how much
	unitWord                 // teaspoons
	stopWord                 // never a noun: times, of, and
	labelWord                // a number behind it is a name: step 3, size 24
)

// An entry is one role of a phrase.
type entry struct {
	role   role
	number Number
	bound  Bound
	fill   string
	row    int
	// exact is how the phrase must be written, where its case matters.
	exact string
	// field: only where a text is an amount from end to end. In prose, "over" and
	// "around" mostly say where.
	field bool
}

// A lexicon finds phrases word by word.
type lexicon struct {
	next    map[string]*lexicon
	entries []entry
	// roles are those of all phrases from here on, a bit each, so that most
	// questions need no look at the next word.
	roles uint32
	// begins: an amount can begin with a phrase that begins with this word.
	begins bool
}

// add puts a phrase in, cut into words as any text is.
func (l *lexicon) add(phrase string, e entry) {
	at := l
	for _, t := range tokenize(phrase, false, nil) {
		if skippedInPhrase(t) {
			continue
		}
		next := at.next[t.low]
		if next == nil {
			next = &lexicon{}
			if at.next == nil {
				at.next = map[string]*lexicon{}
			}
			at.next[t.low] = next
		}
		at = next
	}
	at.entries = append(at.entries, e)
}

// skippedInPhrase: "fl. oz" and "twenty-five" are found without their signs.
func skippedInPhrase(t token) bool {
	return t.kind == signToken && (t.low == "." || t.low == "-")
}

// find gives the longest phrase with the role that begins at token i.
func (p *parser) find(i int, want role) (found *entry, next int) {
	if i >= len(p.tokens) {
		return nil, 0
	}
	at := p.tokens[i].first
	if at == nil || at.roles&(1<<want) == 0 {
		return nil, 0
	}
	for j := i + 1; ; {
		for k := range at.entries {
			e := &at.entries[k]
			if e.role == want && !(e.field && p.prose) &&
				(e.exact == "" || e.exact == p.text[p.tokens[i].start:p.tokens[j-1].end]) {
				found, next = e, j
			}
		}
		if j = p.overSigns(j); j >= len(p.tokens) {
			return found, next
		}
		if at = at.next[p.tokens[j].low]; at == nil {
			return found, next
		}
		j++
	}
}

// overSigns passes a hyphen or point inside a phrase, which stand right behind a
// word; a hyphen stands right before the next one too.
func (p *parser) overSigns(j int) int {
	if j+1 < len(p.tokens) && skippedInPhrase(p.tokens[j]) && !p.tokens[j].spaced &&
		p.tokens[j+1].kind == wordToken && (p.tokens[j].low == "." || !p.tokens[j+1].spaced) {
		return j + 1
	}
	return j
}

// lexicons are built when first asked for. In prose a language stands alone; in
// a field of a file English is understood too where the language itself has no
// other meaning for a phrase.
type lexicons struct{ prose, field func() *lexicon }

func lexiconsOf(l *language) lexicons {
	return lexicons{
		prose: sync.OnceValue(func() *lexicon { return buildLexicon(l) }),
		field: sync.OnceValue(func() *lexicon {
			if l == english {
				return buildLexicon(l)
			}
			return buildLexicon(l, english)
		}),
	}
}

func buildLexicon(all ...*language) *lexicon {
	root := &lexicon{}
	for i, l := range all {
		own := root
		if i > 0 {
			own = &lexicon{}
		}
		l.fill(own)
		if i > 0 {
			root.addNew(own)
		}
	}
	root.addSymbols()
	root.setRoles()
	for _, first := range root.next {
		first.begins = first.mayBegin()
	}
	return root
}

// setRoles gathers the roles of all phrases from here on.
func (l *lexicon) setRoles() {
	for _, e := range l.entries {
		l.roles |= 1 << e.role
	}
	for _, next := range l.next {
		next.setRoles()
		l.roles |= next.roles
	}
}

// mayBegin says whether any phrase from here on can begin an amount.
func (l *lexicon) mayBegin() bool {
	for _, e := range l.entries {
		switch e.role {
		case numberWord, articleWord, fractionWord, boundWord, betweenWord, byWord, minusWord:
			return true
		case unitWord:
			if table[e.row].Dimension == Money {
				return true
			}
		}
	}
	for _, next := range l.next {
		if next.mayBegin() {
			return true
		}
	}
	return false
}

// addNew takes over the phrases of another lexicon that have no role here yet.
func (l *lexicon) addNew(other *lexicon) {
	if len(l.entries) == 0 {
		l.entries = other.entries
	}
	for word, next := range other.next {
		switch {
		case l.next == nil:
			l.next = map[string]*lexicon{word: next}
		case l.next[word] == nil:
			l.next[word] = next
		default:
			l.next[word].addNew(next)
		}
	}
}

// addSymbols puts in what is the same in all languages.
func (l *lexicon) addSymbols() {
	for i := range table {
		for _, spelling := range table[i].spellings {
			l.addUnit(spelling, i)
		}
	}
	for sign, bound := range map[string]Bound{"≤": AtMost, "≥": AtLeast, "<": Below, ">": Above, "~": About, "≈": About} {
		l.add(sign, entry{role: boundWord, bound: bound})
	}
	l.add("±", entry{role: plusMinus})
	for _, sign := range []string{"×", "x", "*"} {
		l.add(sign, entry{role: timesWord})
	}
}

func (l *lexicon) addUnit(spelling string, row int) {
	e := entry{role: unitWord, row: row}
	if spelling[0] == '=' {
		spelling = spelling[1:]
		e.exact = spelling
	}
	// A quotation mark is an inch only where nothing can be quoted.
	e.field = spelling == `"` || spelling == "'"
	l.add(spelling, e)
}
