package adopt

import (
	"slices"
	"strings"

	"tallyfold/instructions"
	"tallyfold/kit/quantity"
	"tallyfold/kit/rules"
)

// ask gathers what the leaflet leaves open.
func (a *Adoption) ask(r *reading) {
	a.askProposals()
	a.askWords(r)
	slices.SortStableFunc(a.Questions, func(p, q Question) int { return p.Start - q.Start })
	a.Questions = append(a.Questions, r.unread...)
	a.askWhole(r)
}

func (a *Adoption) question(start, end int, asks, advice string) {
	covered := slices.ContainsFunc(a.Questions, func(q Question) bool { return q.Start < end && start < q.End })
	if !covered {
		a.Questions = append(a.Questions, Question{start, end, oneLine(a.text[start:end]), asks, advice})
	}
}

// askProposals asks about what was recognised and could not be settled.
func (a *Adoption) askProposals() {
	for _, p := range a.Proposals {
		if p.Open == "" || p.Accepted {
			continue
		}
		advice := "write it so that no doubt is left, or link it by hand"
		var ways []string
		for _, other := range p.Alternatives {
			ways = append(ways, other.Meaning)
		}
		if len(ways) > 0 {
			advice = "say which: " + strings.Join(ways, "; or ")
		}
		a.question(p.Start, p.End, p.Open, advice)
	}
}

// askWords asks about phrases that leave something to the reader, by the lists of the rules.
func (a *Adoption) askWords(r *reading) {
	for _, at := range rules.VagueAmounts(a.text, language) {
		end := at.End
		if i := r.wordAt(at.End); strings.HasSuffix(a.text[at.Start:at.End], " of") && i < len(r.words) {
			end = r.words[i].End
		}
		a.question(at.Start, end, "how much is that?", "write an amount that can be measured")
	}
	for _, open := range r.openPhrases {
		asks, advice := "how does one see it, and how long does it take?", "say what to look for, or how long"
		switch {
		case open.Heat:
			asks, advice = "how hot is that?", "write a temperature, or what to look for"
		case open.Place:
			asks, advice = "which, or where?", "name it"
		}
		a.question(open.Start, open.End, asks, advice)
	}
	for _, at := range instructions.RestPhrases(a.text, language) {
		linked := slices.ContainsFunc(a.Proposals, func(p *Proposal) bool {
			return p.Accepted && p.Start <= at[0] && at[1] <= p.End && (p.Kind == Amount || p.Kind == Cue)
		})
		if !linked {
			a.question(at[0], at[1], "the rest of what?", "write “the rest of the wax”, with the name it has in kit.yaml")
		}
	}
	a.askSame(r)
}

// askSame asks about "the same of storax": a figure that is told by pointing.
func (a *Adoption) askSame(r *reading) {
	for i := 0; i+2 < len(r.words); i++ {
		if r.words[i].Text == "the" && r.words[i+1].Text == "same" && r.words[i+2].Text == "of" {
			a.question(r.words[i].Start, r.words[i+2].End, "the same as what?", "write the amount once more")
		}
	}
	for i := 0; i+2 < len(r.words); i++ {
		if r.words[i].Text == "for" && (r.words[i+1].Text == "several" || r.words[i+1].Text == "some") && r.words[i+2].Text == "hours" {
			a.question(r.words[i].Start, r.words[i+2].End, "how long is that?", "write a time, or what to look for")
		}
	}
}

// askWhole asks what no place of the leaflet tells.
func (a *Adoption) askWhole(r *reading) {
	whole := func(asks, advice string) { a.Questions = append(a.Questions, Question{Asks: asks, Advice: advice}) }
	if a.Title == "" {
		whole("what is the kit called?", "write name: in kit.yaml")
	}
	if a.Makes.Said == "" {
		whole("how many pieces does it make?", "write makes: in kit.yaml")
	}
	if !slices.ContainsFunc(a.Proposals, func(p *Proposal) bool { return p.Kind == StepStart && p.Accepted }) {
		whole("where does a step begin? Nothing was recognised in which something happens", "put a heading “## …” before each step")
	} else if slices.ContainsFunc(a.Proposals, func(p *Proposal) bool { return p.Kind == StepStart && p.Start == p.End }) {
		whole("what are the steps called? Headings such as “Step 1” were added", "give each a title that says what is done")
	}
	for _, t := range a.Things {
		a.askThing(t, whole)
	}
	var names []string
	for _, t := range a.Tools {
		if !t.Box {
			names = append(names, t.Name)
		}
	}
	if len(names) > 0 {
		whole("who brings "+strings.Join(names, ", ")+"? The leaflet does not tell, and customer was written", "write from: box in kit.yaml where you pack it")
	}
	if !a.options.Told && slices.ContainsFunc(a.Proposals, (*Proposal).isKitchen) {
		whole("whose pints and spoons are meant? They were read as "+a.options.Kitchen.String(), "say --kitchen imperial or another, or write kitchen: in kit.yaml")
	}
}

func (a *Adoption) askThing(t *Thing, whole func(asks, advice string)) {
	taken := slices.ContainsFunc(a.Proposals, func(p *Proposal) bool {
		return p.Kind == Amount && slices.ContainsFunc(p.Names, func(n Name) bool { return n.Key == t.Key })
	})
	switch {
	case t.Household:
		whole("is "+t.Name+" from the customer's own tap? It was taken for that", "move "+t.Key+" to components in kit.yaml if you pack it")
	case t.Packed == "":
		whole("how much of "+t.Name+" is packed, and does it come in the box at all?", "write packed: under "+t.Key+" in kit.yaml, or move it to household")
	case !taken:
		whole("how much of "+t.Name+" goes in, and in which step? The list says "+t.Packed+", and no step tells an amount",
			"write the amount in the step, or “all of the "+t.Name+"”")
	}
}

// isKitchen says whether an amount depends on whose measures are meant.
func (p *Proposal) isKitchen() bool {
	if !p.known || p.amount.Dimension != quantity.Volume {
		return false
	}
	imperial, ok := quantity.UnitNamed(p.amount.Unit.Symbol, quantity.Imperial)
	return ok && !imperial.Factor.Equal(p.amount.Unit.Factor)
}
