package rules

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/handbook"
)

var marketNotPrinted = Rule{
	Name:     "market-not-printed",
	Severity: diag.MustFix,
	Title:    "What a market asks to be read somewhere is printed nowhere there",
	Explanation: `Statements of the law stand on a label of the kind that the law names, and many in the
booklet as well. The program prints them there by itself, unless the maker said that no
labels of that kind are wanted.

Only labels that the program prints are looked at. Where yours come from elsewhere, see that
they bear the words, and accept the finding with a word on where they stand.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, kind := range labelKinds {
			said := kind.of(s.Kit.Labels)
			if said.Value != kit.NoLabels {
				continue
			}
			var asks []string
			for _, r := range s.rulings() {
				if line := askedBy(r); r.IsOn(kind.place) && !slices.Contains(asks, line) {
					asks = append(asks, line)
				}
			}
			if len(asks) == 0 {
				continue
			}
			findings = append(findings, diag.Finding{
				Where: said.Span, About: "labels",
				Found:    "no labels are printed for " + kind.called + " (“" + kind.key + ": none”), and what is asked to be read there stands nowhere",
				Expected: "labels that tell it",
				Sum:      asks,
				Remedies: diag.Fix("take “"+kind.key+": none” out, so that they are printed", "if your own labels bear it, accept the finding and say where"),
			})
		}
		return findings
	},
	NotLookedAt: noMarket,
}

// labelKinds are the kinds of label by the place that a requirement names.
var labelKinds = []struct {
	place       handbook.Place
	key, called string
	of          func(kit.Labels) kit.Said[string]
}{
	{handbook.OnBox, "box", "the box", func(l kit.Labels) kit.Said[string] { return l.Box }},
	{handbook.OnBag, "bags", "the bags", func(l kit.Labels) kit.Said[string] { return l.Bags }},
	{handbook.OnContainer, "containers", "the containers", func(l kit.Labels) kit.Said[string] { return l.Containers }},
}
