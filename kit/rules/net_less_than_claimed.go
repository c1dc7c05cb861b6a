package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var netLessThanClaimed = Rule{
	Name:     "net-less-than-claimed",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "A finished piece holds less than its claimed net contents",
	Explanation: `Net contents on a label are a promise about every piece, and in most countries a matter of
law. They are held against what the steps fill into each container, in every run,
without inserts, and after drying where kit.yaml says that the mixture dries out.

A fill that is less as written must be fixed; one that can be less, with every figure at
its bad end, should be: net contents are claimed from the lowest likely fill. Whether
local law allows an average is not checked.

Fill more into each, or claim less.`,
	Check: func(s Subject) []diag.Finding {
		var all []perRun
		for _, piece := range s.Kit.Pieces {
			if !piece.Net.Given() || !piece.In.Given() {
				continue
			}
			for _, f := range s.Ledger.Fillings {
				if isOfPiece(f, piece) {
					if finding, ok := heldAgainstNet(s.Kit, piece, f); ok {
						all = append(all, perRun{f.Run, finding})
					}
				}
			}
		}
		return overRuns(s.Kit, all)
	},
	NotLookedAt: func(s Subject) []string {
		var names []string
		for _, piece := range s.Kit.Pieces {
			if !piece.Net.Given() || !piece.In.Given() {
				names = append(names, piece.String())
			}
		}
		switch {
		case len(s.Kit.Pieces) == 0:
			return []string{"no net contents are claimed"}
		case len(names) > 0:
			return []string{"no net contents in a container are claimed for " + listed(names)}
		}
		return nil
	},
}

// bounded keeps the maker's "at least".
func bounded(like quantity.Amount, amount string) string {
	if like.Bound == quantity.Exactly {
		return amount
	}
	return like.Bound.String() + " " + amount
}

// isOfPiece: the container is the piece's, and what is in it its mixture, if told.
func isOfPiece(f *ledger.Filling, piece *kit.Piece) bool {
	if f.Container.ID != piece.In.Value || f.Empty() || f.Operation == nil {
		return false
	}
	return !piece.Of.Given() || f.Mixture == nil || f.Mixture.ID == piece.Of.Value
}

func heldAgainstNet(k *kit.Kit, piece *kit.Piece, f *ledger.Filling) (diag.Finding, bool) {
	net := piece.Net.Value
	held := f.Dried()
	if net.Dimension == quantity.Volume {
		held = f.Volume()
	}
	if held.Dimension != net.Dimension || !held.Known() {
		return diag.Finding{}, false // what is counted is told by counts-disagree, a missing density by no-density
	}
	low, _ := held.Worst()
	finding := diag.Finding{
		Where: amountSpan(f.Operation), About: piece.ID,
		Expected: net.Written + " in each, as “net” of " + piece.String() + " claims",
		Sum:      lines("in each: "+held.Sum(), worstCase("it", held)),
		Also:     []diag.Place{{Where: piece.Net.Span, Note: "the claim, " + net.Written}},
	}
	switch {
	case held.Value().Less(net.Nominal):
		finding.Found = piece.String() + ": each holds " + held.Show() + ", " + show(net.Nominal.Minus(held.Value()), net.Dimension) + " less than claimed"
	case low.Less(net.Nominal):
		finding.Severity = diag.ShouldFix
		finding.Found = piece.String() + ": each holds " + held.Show() + " as told, but can hold " + show(low, net.Dimension) + " only"
	default:
		return diag.Finding{}, false
	}
	finding.Remedies = []diag.Remedy{
		{Do: "write “net: " + bounded(net, down(quantity.Smaller(low, held.Value()), net)) + "” under " + piece.ID + " in kit.yaml",
			Changes: rewrite(k, piece.Net.Span, bounded(net, down(quantity.Smaller(low, held.Value()), net)))},
		{Do: "fill at least " + up(net.Nominal.Plus(held.Value().Minus(low)), net) + " into each, if there is room"},
	}
	return finding, true
}
