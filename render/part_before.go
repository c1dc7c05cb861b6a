package render

import (
	"fmt"
	"slices"
	"strings"

	"tallyfold/kit"
)

// beforeView gathers the cautions.
type beforeView struct {
	Intro    string
	Cautions []gatheredCaution
	Supplied []suppliedCaution
	// Statements are those that the law of a market gives or asks for.
	Statements []string
	// Gathered says of all hazards together what to wear, where to work and who is there.
	Gathered []fact
	// Aid is what to do if something goes wrong: of the hazards, then of the suppliers.
	Aid []string
	// Emergency is whom to call, "" to be written in by the customer.
	Emergency string
	// Guarded says that there is any hazard at all.
	Guarded bool
	Age     int
}

// gatheredCaution is a caution of the method with the steps that repeat it.
type gatheredCaution struct{ Word, Text, Where string }

// suppliedCaution is what the supplier says of some bags.
type suppliedCaution struct{ Bags, Text string }

func beforeValues(a *assembly) any {
	view := beforeView{Cautions: a.gatheredCautions(), Supplied: a.suppliedCautions(), Intro: a.wordsOf("before-you-start")}
	view.Statements = a.statements()
	view.Guarded = len(a.hazards) > 0
	view.Gathered, view.Aid, view.Emergency = a.gathered(), a.aid(), escape(a.kit.Emergency.Value)
	if a.kit.Audience.Age.Given() {
		view.Age = a.kit.Audience.Age.Value
	}
	return view
}

// gatheredCautions lists every caution of the method once, the gravest first,
// in the order of the steps.
func (a *assembly) gatheredCautions() []gatheredCaution {
	type place struct {
		caution kit.Caution
		where   []string
	}
	var all []*place
	add := func(caution kit.Caution, where string) {
		for _, p := range all {
			if p.caution.Text == caution.Text && p.caution.Signal == caution.Signal {
				p.where = append(p.where, where)
				return
			}
		}
		all = append(all, &place{caution, []string{where}})
	}
	for i, part := range a.kit.Method.Parts {
		for _, caution := range part.Cautions {
			title := escape(part.Title)
			if title == "" {
				title = a.say("method")
			}
			add(caution, fmt.Sprintf("[%s](#%s)", title, partAnchor(i)))
		}
		for _, step := range part.Steps {
			for _, caution := range a.cautioned(step) {
				add(caution, fmt.Sprintf("[%s](#%s)", a.say("step", "number", step.Number), stepAnchor(step)))
			}
		}
	}
	slices.SortStableFunc(all, func(x, y *place) int {
		return slices.Index(signals, strings.ToLower(string(x.caution.Signal))) - slices.Index(signals, strings.ToLower(string(y.caution.Signal)))
	})
	var gathered []gatheredCaution
	for _, p := range all {
		gathered = append(gathered, gatheredCaution{
			Word: a.signalWord(p.caution.Signal), Text: cautionText(p.caution.Text), Where: strings.Join(p.where, ", "),
		})
	}
	return gathered
}

// cautionText writes the paragraphs of a caution as lines of a quotation.
func cautionText(text string) string {
	var paragraphs []string
	for _, paragraph := range strings.Split(text, "\n\n") {
		paragraphs = append(paragraphs, escape(paragraph))
	}
	return indent(strings.Join(paragraphs, "\n\n"), "", "> ")
}

// suppliedCautions tells the supplier's warnings, bags with the same ones together.
func (a *assembly) suppliedCautions() []suppliedCaution {
	type warned struct {
		text, letters string
		names         []string
	}
	var all []*warned
	for _, c := range a.kit.Components {
		var lines []string
		for _, caution := range c.Cautions {
			lines = append(lines, escape(caution.Value))
		}
		text := strings.Join(lines, " ")
		if text == "" {
			continue
		}
		at := slices.IndexFunc(all, func(w *warned) bool { return w.text == text })
		if at < 0 {
			at = len(all)
			all = append(all, &warned{text: text})
		}
		all[at].letters = strings.TrimSpace(all[at].letters + " " + a.bag(c.ID))
		all[at].names = append(all[at].names, escape(c.String()))
	}
	var supplied []suppliedCaution
	for _, w := range all {
		supplied = append(supplied, suppliedCaution{
			Bags: w.letters, Text: a.say("supplied-of", "things", strings.Join(w.names, ", "), "text", w.text),
		})
	}
	return supplied
}

// partAnchor is the id of a part's section.
func partAnchor(index int) string { return fmt.Sprintf("part-%d", index+1) }
