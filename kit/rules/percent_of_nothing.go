package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
)

var percentOfNothing = Rule{
	Name:     "percent-of-nothing",
	Severity: diag.ShouldFix,
	Title:    "A step tells a percentage and not of what",
	Explanation: `“Add 2 % fragrance”: of the wax, or of wax and fragrance together? By weight or by volume?
And a customer has a scale, not a calculator.

The running text of the steps and of trouble.md is searched for percentages behind a word
of adding. It goes by words, so it should be fixed, not must. Silent are percentages that
say of what (“2 % of the wax”), strengths and fibres (“96 % alcohol”, “100 % cotton”),
how full something is, changes (“10 % more”), and those beside a link that tells the
amount.

Write the amount into a link, or name what it is a part of.`,
	Check: func(s Subject) []diag.Finding {
		table, known := vagueWords[language(s.Kit)]
		if !known {
			return []diag.Finding{noWords(s.Kit, "adding percentages", vagueWords)}
		}
		p := percentSearch{Subject: s, vague: vagueSearch{Subject: s, table: table}, reader: amountReader(s.Kit)}
		for _, step := range s.Kit.Method.Steps() {
			p.search(readStep(step), step.ID, inStep(step), step)
		}
		for _, trouble := range s.Kit.Troubles {
			p.search(readTrouble(trouble), trouble.ID, "the help with “"+trouble.Title+"”", nil)
		}
		return p.findings
	},
}

// notAPart are words behind a percentage which say that it is no part of a mixture: a
// strength, a fibre, a change, how full or damp something is.
var notAPart = []string{
	"full", "alcohol", "spirit", "vinegar", "acid", "solution", "peroxide", "strength", "proof", "pure", "cotton", "wool", "linen",
	"silk", "polyester", "acrylic", "viscose", "soy", "beeswax", "recycled", "humidity", "more", "less", "extra", "larger", "smaller",
	"bigger", "longer", "shorter", "thicker", "thinner", "off", "power", "heat", "speed", "opacity", "brightness", "grey", "gray",
}

// percentSearch looks for percentages without a base.
type percentSearch struct {
	Subject
	vague    vagueSearch
	reader   quantity.Reader
	findings []diag.Finding
}

func (p *percentSearch) search(text reading, about, where string, step *kit.Step) {
	if !strings.Contains(text.text, "%") && !strings.Contains(text.text, "percent") && !strings.Contains(text.text, "per cent") {
		return
	}
	for _, found := range p.reader.Find(text.text) {
		at := text.at.Part(found.Start, found.End)
		first, last, ok := text.wordsAt(at)
		if !ok || found.Amount.Dimension != quantity.Share || found.Amount.Of != "" || text.link(at) != nil ||
			!p.isPart(text, first, last, found.Amount) {
			continue
		}
		p.findings = append(p.findings, p.finding(found.Amount, onOneLine(at), step, diag.Finding{Where: at, About: about, Found: where}))
	}
}

// isPart says whether words first to last are a part of something that is not named.
func (p *percentSearch) isPart(text reading, first, last int, told quantity.Amount) bool {
	next := text.neighbour(last, 1)
	if next == "percent" || next == "cent" {
		next = text.neighbour(last, 2)
	}
	switch {
	case !told.Nominal.Less(quantity.Whole(1)), slices.Contains(notAPart, next), next == "by" && text.neighbour(last, 2) == "volume",
		!p.vague.isAdding(text, first), isAmountLinked(text, first), p.isInAName(told), p.namesBase(text, last):
		return false
	}
	return true
}

// isAmountLinked says whether a link in the sentence of word i tells an amount.
func isAmountLinked(text reading, i int) bool {
	for _, w := range text.words {
		if w.sentence != text.words[i].sentence {
			continue
		}
		if link := text.link(text.at.Part(w.start, w.end)); link != nil && tells(link.Kind) && link.Phrase.Portion != kit.NoPortion {
			return true
		}
	}
	return false
}

// isInAName: “30 % vinegar” may be what a thing is called.
func (p *percentSearch) isInAName(told quantity.Amount) bool {
	figure := told.Figure().String() + " %"
	for _, name := range thingNames(p.Kit) {
		if strings.Contains(strings.Join(name, " ")+" %", figure) && slices.Contains(name, told.Figure().String()) {
			return true
		}
	}
	return false
}

// baseReach is how many words behind a percentage its base may stand.
const baseReach = 8

// namesBase says whether the sentence goes on to say of what: “2 % fragrance by weight
// of the wax”.
func (p *percentSearch) namesBase(text reading, last int) bool {
	for i := 1; i <= baseReach; i++ {
		if text.neighbour(last, i) != "of" {
			continue
		}
		next := i + 1
		for slices.Contains([]string{"the", "your", "all", "its", "total", "whole"}, text.neighbour(last, next)) {
			next++
		}
		return text.neighbour(last, next) != ""
	}
	return false
}

func (p *percentSearch) finding(told quantity.Amount, written string, step *kit.Step, f diag.Finding) diag.Finding {
	f.Found += " says “" + written + "”, and not of what"
	f.Expected = "an amount, or what it is a part of, such as “" + written + " of the wax”"
	f.Remedies = diag.Fix("write the amount that you take yourself into a link", "name what it is a part of, by weight or by volume")
	if step == nil {
		return f
	}
	for _, run := range p.Kit.Passes() {
		stage := p.Ledger.At(run, step)
		if stage == nil {
			continue
		}
		for i := range stage.Vessels {
			v := &stage.Vessels[i]
			mass := v.Mass()
			if v.Vessel != resolved(run, step.Vessel) || !mass.Known() || mass.Value().Sign() <= 0 {
				continue
			}
			part := show(told.Nominal.Times(mass.Value()), quantity.Mass)
			f.Sum = []string{written + " of what is in " + p.Kit.Called(v.Vessel) + " after the step, " + mass.Show() + ", would be " + part}
			f.Remedies = append(diag.Fix("write the amount into a link, such as "+part), f.Remedies[1:]...)
			return f
		}
	}
	return f
}
