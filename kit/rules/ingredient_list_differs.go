package rules

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/label"
)

var ingredientListDiffers = Rule{
	Name:     "ingredient-list-differs",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "The list of ingredients on a pack is not what the steps put in",
	Explanation: `A list of ingredients tells all that is in a cosmetic, the most first. What is at not more
than 1 % may stand in any order behind the rest in the United States (21 CFR 701.3(f)); in
the European Union and the United Kingdom what is at less than 1 % (Regulation (EC)
1223/2009, article 19(1)(g)), and allergens of a fragrance are named from a share of their
own. Colours may stand at the end.

The “ingredient list” of a piece is held against what the steps fill, through blends. Where
two shares overlap either order passes. By which of the two laws goes by “markets”; where
no market is told both are asked. Names are compared as written: whether they are the
names that the law wants is not looked at.

Write the list as the sum says, or leave it out and have the program write it.`,
	Check: func(s Subject) []diag.Finding {
		var all []perRun
		lists := label.Lists(s.Kit, s.Ledger)
		for _, piece := range s.Kit.Pieces {
			if !piece.Listed.Given() {
				continue
			}
			for _, list := range lists {
				if isOfPiece(list.Filling, piece) {
					for _, finding := range heldAgainstList(s.Kit, piece, list) {
						all = append(all, perRun{list.Filling.Run, finding})
					}
				}
			}
		}
		return overRuns(s.Kit, all)
	},
	NotLookedAt: func(s Subject) []string {
		if !slices.ContainsFunc(s.Kit.Pieces, func(p *kit.Piece) bool { return p.Listed.Given() }) {
			return []string{"no piece has an “ingredient list” of its own"}
		}
		return nil
	},
}

func heldAgainstList(k *kit.Kit, piece *kit.Piece, list label.List) []diag.Finding {
	finding := diag.Finding{Where: piece.Listed.Span, About: piece.ID}
	if !list.Told() {
		finding.Found = "cannot check the ingredient list of " + piece.String() + ": " + list.Why
		finding.Expected = "a weight for all that is in it"
		finding.Remedies = diag.Fix("tell the density or the weight that is missing")
		return []diag.Finding{finding}
	}
	var findings []diag.Finding
	for _, form := range forms(k) {
		for _, fault := range list.Faults(piece.Listed.Value, form) {
			one := finding
			one.Found, one.Expected = fault.Found, "the list of what the steps put in, in the order of "+string(form)
			one.Sum = lines(fault.Sum)
			one.Remedies = diag.Fix("write: "+listIn(list, form), "take “ingredient list” out, so that the program writes it")
			if !slices.ContainsFunc(findings, func(other diag.Finding) bool { return other.Found == one.Found }) {
				findings = append(findings, one)
			}
		}
	}
	return findings
}

// forms are the laws that a kit's lists follow.
func forms(k *kit.Kit) []label.Form {
	var all []label.Form
	for _, said := range k.Markets {
		switch {
		case said.Value == "US":
			all = append(all, label.USForm)
		case !slices.Contains(all, label.EUForm):
			all = append(all, label.EUForm)
		}
	}
	if len(all) == 0 {
		return []label.Form{label.USForm, label.EUForm}
	}
	return all
}

func listIn(list label.List, form label.Form) string {
	if form == label.USForm {
		return list.US()
	}
	return list.EU()
}
