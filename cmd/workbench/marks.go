package workbench

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/proof"
	"tallyfold/kit/source"
)

// Marks are what an editor shows in its text besides the text: links as marked words,
// findings under the words that they are about, and links that could be made. Places are
// those of the editor.
type marks struct {
	Links    []linkMark    `json:"links"`
	Findings []findingMark `json:"findings"`
	Could    []couldMark   `json:"could"`
	Asked    []askedMark   `json:"asked"`
}

// A linkMark is one link: the whole of it, its words, and what it does.
type linkMark struct {
	From        int    `json:"from"`
	To          int    `json:"to"`
	WordsFrom   int    `json:"wordsFrom"`
	WordsTo     int    `json:"wordsTo"`
	Kind        string `json:"kind"`
	Destination string `json:"destination"`
	// Stands is what the booklet puts in the place of a link without words.
	Stands string `json:"stands"`
	// Does says in plain words what happens there, with its sum: a line each.
	Does []string `json:"does"`
}

type findingMark struct {
	From     int      `json:"from"`
	To       int      `json:"to"`
	Class    string   `json:"class"`
	Severity string   `json:"severity"`
	Says     string   `json:"says"`
	Sum      []string `json:"sum"`
	Do       []string `json:"do"`
}

// A couldMark is a link that the words could have.
type couldMark struct {
	From        int    `json:"from"`
	To          int    `json:"to"`
	Words       string `json:"words"`
	Kind        string `json:"kind"`
	Destination string `json:"destination"`
	Meaning     string `json:"meaning"`
	Why         string `json:"why"`
	// Others are further readings.
	Others []otherReading `json:"others"`
}

type otherReading struct {
	Destination string `json:"destination"`
	Meaning     string `json:"meaning"`
}

// An askedMark is a phrase that could not be settled.
type askedMark struct {
	From   int    `json:"from"`
	To     int    `json:"to"`
	Asks   string `json:"asks"`
	Advice string `json:"advice"`
}

// marks gives those of one file of the kit as it is typed now. The lock is held.
func (d *desk) marks(name string) *marks {
	p := d.proved()
	if d.marked.proof != p || d.marked.name != name {
		d.marked = markedText{p, name, marksOf(p, name)}
	}
	return d.marked.marks
}

// A markedText keeps the marks of the text that was asked for last.
type markedText struct {
	proof *proof.Proof
	name  string
	marks *marks
}

func marksOf(p *proof.Proof, name string) *marks {
	m := &marks{Links: []linkMark{}, Findings: []findingMark{}, Could: []couldMark{}, Asked: []askedMark{}}
	for _, f := range p.Findings {
		if f.Where.File != nil && f.Where.File.Name == name {
			m.Findings = append(m.Findings, findingAt(f))
		}
	}
	if p.Kit == nil {
		return m
	}
	for _, o := range operationsIn(p.Kit, name) {
		m.Links = append(m.Links, linkAt(p, o))
	}
	if name == "method.md" && p.Kit.Method.File != nil {
		for _, step := range p.Kit.Method.Steps() {
			if at, ok := headingLink(step.Span); ok {
				m.Links = append(m.Links, at)
			}
		}
		m.propose(p)
	}
	slices.SortFunc(m.Links, func(a, b linkMark) int { return a.From - b.From })
	return m
}

// operationsIn are the links of one file that say what happens.
func operationsIn(k *kit.Kit, name string) []*kit.Operation {
	var all []*kit.Operation
	add := func(operations []*kit.Operation) {
		for _, o := range operations {
			if o.Span.File != nil && o.Span.File.Name == name {
				all = append(all, o)
			}
		}
	}
	for _, part := range k.Method.Parts {
		add(part.Operations)
		for _, step := range part.Steps {
			add(step.Operations)
		}
	}
	for _, t := range k.Troubles {
		add(t.Operations)
	}
	for _, w := range k.Words {
		add(w.Operations)
	}
	return all
}

func linkAt(p *proof.Proof, o *kit.Operation) linkMark {
	text := o.Span.File.Text
	return linkMark{
		From: inEditor(text, o.Span.Start), To: inEditor(text, o.Span.End),
		WordsFrom: inEditor(text, o.TextSpan.Start), WordsTo: inEditor(text, o.TextSpan.End),
		Kind: string(o.Kind), Destination: string(text[o.TargetSpan.Start:o.TargetSpan.End]), Does: doesOf(p, o),
		Stands: standsFor(p, o),
	}
}

// standsFor tells a link without words by its first movement.
func standsFor(p *proof.Proof, o *kit.Operation) string {
	if o.Text != "" || p.Ledger == nil {
		return ""
	}
	for _, e := range p.Ledger.Entries {
		if e.Operation == o {
			return e.Amount.Show() + " of " + p.Kit.Called(e.Thing)
		}
	}
	return p.Kit.Called(o.Target)
}

// headingLink finds the link that a heading is.
func headingLink(heading source.Span) (linkMark, bool) {
	text := heading.File.Text
	line := text[heading.Start:heading.End]
	open, middle := bytes.IndexByte(line, '['), bytes.LastIndex(line, []byte("](step:"))
	if open < 0 || middle < open {
		return linkMark{}, false
	}
	end := bytes.IndexByte(line[middle:], ')')
	if end < 0 {
		return linkMark{}, false
	}
	at := func(n int) int { return inEditor(text, heading.Start+n) }
	return linkMark{
		From: at(open), To: at(middle + end + 1), WordsFrom: at(open + 1), WordsTo: at(middle), Kind: "step",
		Destination: string(line[middle+2 : middle+end]), Does: []string{"begins a step"},
	}, true
}

// doesOf says what a link does, by what the ledger made of it: a line for each movement.
func doesOf(p *proof.Proof, o *kit.Operation) []string {
	kind, _ := kindNamed(o.Kind)
	does := []string{kind.Does}
	if p.Ledger == nil {
		return does
	}
	for _, e := range p.Ledger.Entries {
		if e.Operation == o {
			does = append(does, movementOf(p.Kit, e))
		}
	}
	const most = 9
	if len(does) > most {
		does = append(does[:most-1], fmt.Sprintf("and %d more", len(does)-most+1))
	}
	return does
}

// movementOf tells an entry with its sum.
func movementOf(k *kit.Kit, e ledger.Entry) string {
	var b strings.Builder
	if e.Run != nil && e.Run.Name.Given() {
		b.WriteString(e.Run.Name.Value + ": ")
	}
	amount := e.Amount.Show()
	if sum := e.Amount.Sum(); e.Amount.Known() && sum != amount && sum != "" {
		amount = sum
	}
	fmt.Fprintf(&b, "%s of %s", amount, k.Called(e.Thing))
	if e.From != "" && e.From != e.Thing {
		b.WriteString(", from " + k.Called(e.From))
	}
	if e.To != "" && e.To != e.Thing {
		b.WriteString(" into " + k.Called(e.To))
	}
	return b.String()
}

func findingAt(f diag.Finding) findingMark {
	text := f.Where.File.Text
	end := f.Where.End
	if end <= f.Where.Start { // a place without words is marked to the end of its line
		if n := bytes.IndexByte(text[f.Where.Start:], '\n'); n >= 0 {
			end = f.Where.Start + n
		} else {
			end = len(text)
		}
	}
	m := findingMark{
		From: inEditor(text, f.Where.Start), To: inEditor(text, end), Class: strings.ReplaceAll(f.Severity.String(), " ", "-"),
		Severity: f.Severity.String(), Says: sentence(f.Found), Sum: f.Sum, Do: []string{},
	}
	if f.Expected != "" {
		m.Says += " Expected: " + withoutDestinations(f.Expected) + "."
	}
	for _, r := range f.Remedies {
		m.Do = append(m.Do, withoutDestinations(r.Do))
	}
	return m
}
