package main

import (
	"fmt"
	"strings"

	"tallyfold/kit/handbook"
	"tallyfold/kit/market"
	"tallyfold/templates"
)

// words tells a ruling.
func (p *proved) words(r market.Ruling) toldRule {
	told := toldRule{
		Requirement: r.Requirement.ID, Asks: r.Requirement.Asks, Says: r.Says, Why: []string{r.Why},
		Yours: r.Requirement.Yours, ToTell: r.ToTell, Source: sourceOfRequirement(r.Requirement),
	}
	if name := r.About(); name != "" {
		told.Of = []string{name}
	}
	if r.Answer != market.Asked {
		told.Says, told.Yours = "", ""
		return told
	}
	if r.Requirement.Word != "" {
		if words, err := templates.Shipped().Words(templates.SourceLanguage); err == nil {
			told.Says = words.Say(r.Requirement.Word)
		}
	}
	if r.Requirement.Tells != "" {
		told.Says = "signal word and hazards of the pack"
	}
	for _, place := range r.Requirement.On {
		told.On = append(told.On, p.placeWords(place))
	}
	for _, missing := range r.Missing {
		told.Missing = append(told.Missing, missing.Found+"; "+missing.Write)
	}
	return told
}

// placeWords names a place, and says where no label of its kind is printed.
func (p *proved) placeWords(place handbook.Place) string {
	labels := p.Kit.Labels
	kind := map[handbook.Place]string{handbook.OnBox: labels.Box.Value, handbook.OnBag: labels.Bags.Value, handbook.OnContainer: labels.Containers.Value}[place]
	if kind == "none" {
		return "the label of the " + string(place) + " (not printed here: none are wanted)"
	}
	if place == handbook.InBooklet {
		return "the booklet"
	}
	return "the label of the " + string(place)
}

func (m toldMarket) write(out *strings.Builder) {
	if m.Name == "" {
		fmt.Fprintf(out, "%s\n\nNot covered: %s.\n\n", m.Market, m.NotCovered)
		return
	}
	old := ""
	if m.Old {
		old = ", more than a year ago"
	}
	fmt.Fprintf(out, "%s, %s (requirements last looked at on %s%s)\n", m.Market, m.Name, m.LookedAt, old)
	section(out, "Asked", m.Asked)
	section(out, "Cannot be told", m.CannotTell)
	if len(m.NotAsked) > 0 {
		out.WriteString("\nNot asked\n")
		for _, r := range m.NotAsked {
			fmt.Fprintf(out, "  %s: %s\n", r.Requirement, strings.Join(r.Why, "; "))
		}
	}
	fmt.Fprintf(out, "\nNot covered: %s.\n\n", m.NotCovered)
}

func section(out *strings.Builder, head string, all []toldRule) {
	if len(all) == 0 {
		return
	}
	fmt.Fprintf(out, "\n%s\n", head)
	for _, r := range all {
		fmt.Fprintf(out, "  %s: %s\n", r.Requirement, r.Asks)
		for _, row := range []struct{ name, says string }{
			{"of", strings.Join(r.Of, ", ")},
			{"because", strings.Join(r.Why, "; ")},
			{"says", r.Says},
			{"read on", strings.Join(r.On, ", ")},
			{"missing", strings.Join(r.Missing, "\n             ")},
			{"to do", r.ToTell},
			{"yours", r.Yours},
			{"source", r.Source},
		} {
			if row.says != "" {
				fmt.Fprintf(out, "    %-8s %s\n", row.name, row.says)
			}
		}
	}
}
