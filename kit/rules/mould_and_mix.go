package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var mouldAndMix = Rule{
	Name:     "mould-and-mix",
	Severity: diag.ShouldFix,
	Sums:     true,
	Title:    "A mould and what is poured into it do not go together",
	Explanation: `A mould is measured in millilitres and plaster, wax or resin in grams; between them stands
the density of the mix. Poured by weight, a cavity may end up half full, which makes
another piece than the picture shows. Too full is told by container-overfull.

A cavity that gets less than three quarters of its room should be fixed. Where a piece
claims its net contents by volume, what is left of the fill once it has shrunk must be as
much: by “shrinks”, or by the densities of the liquid and the set mix. Where kit.yaml has
both, they must agree to a hundredth.

Weigh in the room times the density, and claim what the set piece has.`,
	Check: func(s Subject) []diag.Finding {
		var all []perRun
		for _, f := range s.Ledger.Fillings {
			if !isMould(f.Container.Container) || !f.Room().Known() || !f.Volume().Known() || len(f.Parts()) == 0 {
				continue
			}
			if finding, ok := halfFull(f); ok {
				all = append(all, perRun{f.Run, finding})
			}
			if finding, ok := claimsUnshrunk(s.Kit, f); ok {
				all = append(all, perRun{f.Run, finding})
			}
		}
		return append(overRuns(s.Kit, all), shrinksTwice(s.Kit)...)
	},
	NotLookedAt: func(s Subject) []string {
		for _, f := range s.Ledger.Fillings {
			if isMould(f.Container.Container) {
				return nil
			}
		}
		return []string{"no step fills a mould"}
	},
}

// isMould: it has cavities, or is used again.
func isMould(c *kit.Container) bool { return c.Cavities.Value > 1 || c.UsedAgain.Value }

// wellFilled is the part of its room that a cavity should get (common practice, no
// source).
var wellFilled = quantity.Ratio(3, 4)

func halfFull(f *ledger.Filling) (diag.Finding, bool) {
	room, volume := f.Room().Value(), f.Volume().Value()
	if room.Sign() <= 0 || room.Times(wellFilled).Cmp(volume) <= 0 {
		return diag.Finding{}, false
	}
	finding := fillFinding(f, f.Volume())
	finding.Found = "each cavity of " + f.Container.String() + " gets " + f.Volume().Show() + ", which is " +
		quantity.Show(volume.Over(room), quantity.Share, quantity.Digits(2)) + " of its room"
	finding.Expected = "about " + f.Room().Show() + " in each, or at least three quarters of it"
	if set, ok := finished(f); ok {
		finding.Sum = append(finding.Sum, "finished: "+set.Sum())
	}
	if dense := f.Density(); dense.Known() {
		mass := ledger.Times(quantity.Mass, "", f.Room(), dense)
		finding.Sum = append(finding.Sum, "full: "+mass.Sum())
		finding.Remedies = diag.Fix("weigh " + down(mass.Value(), quantity.Amount{Dimension: quantity.Mass}) + " into each")
	}
	finding.Remedies = append(finding.Remedies, diag.Remedy{Do: "fill fewer cavities, or use a smaller mould"})
	return finding, true
}

// finished is the volume of one piece once it has set; ok only where kit.yaml says how
// the mix shrinks.
func finished(f *ledger.Filling) (*ledger.Figure, bool) {
	switch {
	case f.Mixture == nil:
		return nil, false
	case f.Mixture.SetDensity.Given():
		return f.SetVolume(), f.SetVolume().Known()
	case f.Mixture.ShrinksBy.Given():
		shrinks := ledger.Written("lost as it sets", f.Mixture.ShrinksBy.Value, f.Mixture.ShrinksBy.Span)
		return ledger.Minus("finished", f.Volume(), ledger.Times(quantity.Volume, "lost as it sets", f.Volume(), shrinks)), true
	}
	return nil, false
}

// claimsUnshrunk: the piece promises a volume that it no longer has when it has set.
func claimsUnshrunk(k *kit.Kit, f *ledger.Filling) (diag.Finding, bool) {
	set, ok := finished(f)
	if !ok {
		return diag.Finding{}, false
	}
	for _, piece := range k.Pieces {
		net := piece.Net
		isShort := f.Volume().Value().Less(net.Value.Nominal) // told by net-less-than-claimed
		if !isOfPiece(f, piece) || net.Value.Dimension != quantity.Volume || isShort || set.Value().Cmp(net.Value.Nominal) >= 0 {
			continue
		}
		return diag.Finding{
			Severity: diag.MustFix, Where: net.Span, About: piece.ID,
			Found:    piece.String() + " claims “" + net.Value.Written + "”, and is " + set.Show() + " once it has set",
			Expected: "at most what the finished piece has, " + set.Show(),
			Sum:      lines("fill: "+f.Volume().Sum(), "finished: "+set.Sum()),
			Remedies: diag.Fix("write “net: at least "+down(set.Value(), net.Value)+"”", "pour more, if the cavity has room"),
			Also:     []diag.Place{{Where: amountSpan(f.Operation), Note: "filled here, " + inStep(f.Step)}},
		}, true
	}
	return diag.Finding{}, false
}

// sameShrinking is how far two tellings of a shrinkage may be apart.
var sameShrinking = quantity.Ratio(1, 100)

// shrinksTwice: “shrinks” and the two densities tell the same thing.
func shrinksTwice(k *kit.Kit) []diag.Finding {
	var findings []diag.Finding
	for _, m := range k.Mixtures {
		if !m.ShrinksBy.Given() || !m.SetDensity.Given() || !m.Density.Given() || m.SetDensity.Value.Nominal.Sign() <= 0 {
			continue
		}
		liquid, set := m.Density.Value.Nominal, m.SetDensity.Value.Nominal
		by := quantity.Whole(1).Minus(liquid.Over(set))
		if by.Minus(m.ShrinksBy.Value.Nominal).Abs().Cmp(sameShrinking) <= 0 {
			continue
		}
		shown := quantity.Show(by, quantity.Share, quantity.Digits(2))
		findings = append(findings, diag.Finding{
			Where: m.ShrinksBy.Span, About: m.ID,
			Found:    m.String() + " shrinks by “" + m.ShrinksBy.Value.Written + "”, and by its densities by " + shown,
			Expected: "one figure",
			Sum:      []string{"1 − " + show(liquid, quantity.Density) + " ÷ " + show(set, quantity.Density) + " = " + shown},
			Remedies: diag.Fix("take “shrinks” out: the densities say it", "weigh the set mix again, and put its density right"),
			Also:     []diag.Place{{Where: m.SetDensity.Span, Note: "the density when set"}, {Where: m.Density.Span, Note: "the density as filled"}},
		})
	}
	return findings
}
