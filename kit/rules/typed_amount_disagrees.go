package rules

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

var typedAmountDisagrees = Rule{
	Name:     "typed-amount-disagrees",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "A number is told twice, and differently",
	Explanation: `A number is written once; told a second time it will one day be changed in one place
only. Compared are: further figures within a link (“all of the wax, 600 g”), figures in
“same:” links, “about” fills with an equal share, and amounts typed into running text
beside the name of a thing (“the 570 g of water”), in the steps, in trouble.md and in
words.md.

A typed amount agrees when it is, to its last digit and a tenth of it at most, what some
step takes, what a run or the whole kit takes, what is packed, or what is in one
container. What a remedy adds is its own affair.

Take the second figure out, put it right, or make a link of it.`,
	Check: func(s Subject) []diag.Finding {
		findings := toldAgain(s)
		if otherwise[language(s.Kit)] == nil {
			return findings // what stands beside an amount is not understood
		}
		t := typedSearch{Subject: s, reader: amountReader(s.Kit), names: namesToFind(s.Kit)}
		for _, step := range s.Kit.Method.Steps() {
			t.search(readStep(step), step.Prose, step, false)
		}
		for _, trouble := range s.Kit.Troubles {
			t.search(readTrouble(trouble), trouble.Prose, nil, true)
		}
		for _, words := range s.Kit.Words {
			prose := []kit.Prose{{Text: words.Body.Text(), Span: words.Body}}
			t.search(read(words.Body, prose, nil, nil), prose, nil, true)
		}
		return append(findings, t.findings...)
	},
}

// toldAgain tells the figures that the ledger found to differ from their source.
func toldAgain(s Subject) []diag.Finding {
	var all []perRun
	for _, snag := range s.Ledger.Snags {
		if snag.Trouble == ledger.NotTheSame && !inTwoSystems(snag) {
			all = append(all, perRun{snag.Run, notTheSame(s.Kit, snag)})
		}
	}
	return overRuns(s.Kit, all)
}

func notTheSame(k *kit.Kit, snag ledger.Snag) diag.Finding {
	where := snag.Wanted.Where
	if !where.Known() {
		where = amountSpan(snag.Operation)
	}
	told := where.Text()
	finding := diag.Finding{
		Where: where, About: snag.Thing,
		Found:    inStep(snag.Step) + " tells “" + told + "” of " + k.Called(snag.Thing) + ", and it is " + snag.Had.Show(),
		Expected: snag.Had.Show(),
		Sum:      lines(toldAs(told, snag.Wanted), snag.Had.Sum()),
		Remedies: []diag.Remedy{
			{Do: "write " + snag.Had.Show() + " instead of “" + told + "”", Changes: rewrite(k, where, snag.Had.Show())},
			{Do: "put the other figure right, if this one is meant"}},
	}
	if span := amountSpan(snag.Operation); span != where {
		finding.Also = []diag.Place{{Where: span, Note: "told first here"}}
	}
	return finding
}

// toldAs tells what an amount in another unit comes to.
func toldAs(told string, f *ledger.Figure) string {
	if told == f.Show() {
		return ""
	}
	return "“" + told + "” is " + f.Show()
}

// amountReader reads amounts the way the kit writes them.
func amountReader(k *kit.Kit) quantity.Reader {
	decimal, _ := kit.NumberMarks(k.Language.Value)
	reader := quantity.Reader{
		Convention: k.Kitchen.Value, Language: language(k), DecimalComma: decimal == ",",
		Measures: map[string]quantity.Amount{},
	}
	for _, measure := range k.Measures {
		reader.Measures[measure.ID] = measure.Holds.Value
	}
	return reader
}

// A typedSearch looks for amounts typed beside the name of a thing.
type typedSearch struct {
	Subject
	reader   quantity.Reader
	names    []thingName
	findings []diag.Finding
	// elsewhere are figures told in two units, of which another rule speaks; found when
	// first asked for.
	elsewhere map[source.Span]bool
}

// A thingName is one way to call a thing, cut into words; the longest come first.
type thingName struct {
	id    string
	words []string
	all   []string // the words of its full name
}

func namesToFind(k *kit.Kit) []thingName {
	var all []thingName
	add := func(name kit.Name) {
		for _, called := range append(name.Names(), name.ID) {
			all = append(all, thingName{name.ID, wordsOf(called), wordsOf(name.String())})
		}
	}
	for _, c := range k.Components {
		add(c.Name)
	}
	for _, h := range k.Household {
		add(h.Name)
	}
	slices.SortStableFunc(all, func(a, b thingName) int { return len(b.words) - len(a.words) })
	return all
}

// search goes through the amounts typed in prose. A step is nil where the text
// tells of no action; told says that amounts there may be additions of its own.
func (t *typedSearch) search(text reading, prose []kit.Prose, step *kit.Step, told bool) {
	for _, piece := range prose {
		for _, found := range t.reader.Find(piece.Text) {
			at := piece.Span.Part(found.Start, found.End)
			first, last, ok := text.wordsAt(at)
			if !ok || !comparable(found.Amount) ||
				t.isOtherwise(text, first, last, told, found.Amount.Dimension == quantity.Length) {
				continue
			}
			if thing := t.beside(text, first, last); thing != "" {
				t.compare(thing, found.Amount, at, step)
			}
		}
	}
}

// comparable: what a pack or vessel is told in. Times and temperatures are not.
func comparable(a quantity.Amount) bool {
	switch a.Dimension {
	case quantity.Mass, quantity.Volume, quantity.Length, quantity.Area:
		return a.Bound == quantity.Exactly || a.Bound == quantity.About
	}
	return false
}

// wordsAt gives the first and last word of a place; not ok where it is not read.
func (r reading) wordsAt(at source.Span) (first, last int, ok bool) {
	first = -1
	for i, w := range r.words {
		start, end := r.at.Start+w.start, r.at.Start+w.end
		if start < at.End && end > at.Start {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	return first, last, first >= 0
}

// beside gives the thing that an amount stands beside: "570 g of the water",
// "570 g water", "water (570 g)".
func (t *typedSearch) beside(text reading, first, last int) string {
	next := last + 1
	for next < len(text.words) && slices.Contains(betweenWords[language(t.Kit)], text.neighbour(last, next-last)) {
		next++
	}
	for _, name := range t.names {
		if next < len(text.words) && text.words[next].sentence == text.words[last].sentence && t.named(text, next, name) {
			return name.id
		}
	}
	if !text.bracketed(first) {
		return ""
	}
	for _, name := range t.names {
		if at := first - len(name.words); at >= 0 && t.named(text, at, name) {
			return name.id
		}
	}
	return ""
}

// bracketed says whether a bracket opens just before word i.
func (r reading) bracketed(i int) bool {
	for at := r.words[i].start - 1; at >= 0; at-- {
		switch r.text[at] {
		case ' ', '\n':
			continue
		case '(':
			return true
		}
		return false
	}
	return false
}

func (t *typedSearch) compare(thing string, amount quantity.Amount, at source.Span, step *kit.Step) {
	typed := ledger.Written("typed", amount, at)
	likeliest := (*ledger.Figure)(nil)
	for _, figure := range t.figures(thing, step) {
		converted, ok := converted(t.Kit, thing, typed, figure.Dimension)
		if !ok || !figure.Known() {
			continue
		}
		if ledger.Agrees(amount, converted, figure) {
			return
		}
		if likeliest == nil {
			likeliest = figure
		}
	}
	if likeliest != nil && !t.isToldElsewhere(at) {
		t.findings = append(t.findings, t.disagrees(thing, amount, at, likeliest))
	}
}

// isToldElsewhere says whether a figure told in two units is one that another rule
// speaks of.
func (t *typedSearch) isToldElsewhere(at source.Span) bool {
	if t.elsewhere == nil {
		t.elsewhere = unequalPlaces(t.Kit)
	}
	return t.elsewhere[at]
}

// inWords tells a figure the way a link told it, where that is another way.
func (t *typedSearch) inWords(thing string, f *ledger.Figure) string {
	for _, use := range t.Ledger.Balance(thing).Uses {
		if told, ok := use.Operation.Phrase.Amount(); ok && use.Amount == f && told.Dimension != f.Dimension {
			return told.Written + " (" + f.Show() + ")"
		}
	}
	return f.Show()
}

func (t *typedSearch) disagrees(thing string, amount quantity.Amount, at source.Span, source *ledger.Figure) diag.Finding {
	name := t.Kit.Called(thing)
	finding := diag.Finding{
		Where: at, About: thing,
		Found:    "“" + amount.Written + "” of " + name + " is typed here, and the steps say " + t.inWords(thing, source),
		Expected: t.inWords(thing, source) + ", or what is packed or taken in all",
		Sum:      lines(source.Sum()),
		Remedies: diag.Fix(
			"take the figure out: it is told once already",
			"put it right and make a link of it, so that it is compared from now on: ["+source.Show()+"](same:"+thing+")"),
	}
	if b := t.Ledger.Balance(thing); b != nil {
		finding.Also = places(t.Kit, b.Uses)
	}
	return finding
}

// figures are what a typed amount of a thing may repeat, the likeliest first.
func (t *typedSearch) figures(thing string, step *kit.Step) []*ledger.Figure {
	b := t.Ledger.Balance(thing)
	if b == nil || len(b.Uses) == 0 {
		return nil // nothing to repeat
	}
	var here, elsewhere []*ledger.Figure
	perRun := map[*kit.Run][]*ledger.Figure{}
	for _, use := range b.Uses {
		list := &elsewhere
		if use.Step == step {
			list = &here
		}
		*list = append(*list, use.Amount)
		if told, ok := use.Operation.Phrase.Amount(); ok && told.Dimension == use.Amount.Dimension {
			*list = append(*list, ledger.Written("told", told, amountSpan(use.Operation)))
		}
		perRun[use.Run] = append(perRun[use.Run], use.Amount)
	}
	all := append(here, elsewhere...)
	for _, run := range t.Kit.Passes() {
		all = append(all, ledger.Plus(b.Dimension, "in a run", perRun[run]...))
	}
	all = append(all, b.Used)
	for _, figure := range []*ledger.Figure{b.Packed, b.Spare, b.Left} {
		if figure != nil && figure.Dimension == b.Dimension {
			all = append(all, figure)
		}
	}
	return append(all, t.inContainers(thing)...)
}

// inContainers are the figures of the containers and inserts that a thing is.
func (t *typedSearch) inContainers(thing string) []*ledger.Figure {
	var all []*ledger.Figure
	for _, f := range t.Ledger.Fillings {
		if f.Container.ID == thing {
			all = append(all, f.Mass(), f.Volume(), f.Brimful(), f.Headspace(), f.Room())
		}
		for _, part := range f.Parts() {
			if part.Thing == thing {
				all = append(all, part.Amount, f.Mass()) // people call the whole by what most of it is
			}
		}
	}
	if c := t.Kit.Component(thing); c != nil && c.Insert != nil {
		all = append(all, ledger.Written("mass", c.Insert.Mass.Value, c.Insert.Mass.Span),
			ledger.Written("volume", c.Insert.Volume.Value, c.Insert.Volume.Span))
	}
	if h := t.Kit.HouseholdItem(thing); h != nil && h.Amount.Given() {
		all = append(all, ledger.Written("to have ready", h.Amount.Value, h.Amount.Span))
	}
	return all
}

// converted turns a figure into another dimension by the density of a thing.
func converted(k *kit.Kit, thing string, f *ledger.Figure, to quantity.Dimension) (*ledger.Figure, bool) {
	if f.Dimension == to {
		return f, true
	}
	told, _ := density(k, thing)
	if !told.Given() {
		return nil, false
	}
	dense := ledger.Written("density", told.Value, told.Span)
	switch {
	case f.Dimension == quantity.Mass && to == quantity.Volume:
		return ledger.Over(to, f.Name, f, dense), true
	case f.Dimension == quantity.Volume && to == quantity.Mass:
		return ledger.Times(to, f.Name, f, dense), true
	}
	return nil, false
}
