package rules

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var packedTooLittle = Rule{
	Name:     "packed-too-little",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "The steps use more of a component than the box holds",
	Explanation: `All steps of all runs are added up and compared with what is packed. Where more is
used than packed, the last person to follow the steps runs out in the middle.

Two units of one amount may differ by a five-hundredth: 454 g from a pack of 1 lb is no
finding.

Where the amount is just enough and a pack on the light side of its tolerance would
run short by more than a hundredth, the finding should be fixed: a spare takes care
of it. Less than that a kitchen scale does not show.

Pack more, take less in a step, or serve fewer runs.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, b := range s.Ledger.Balances {
			if b.Left == nil || !b.Left.Known() {
				continue // told by used-but-not-packed, no-density or no-amount
			}
			low, _ := b.Left.Worst()
			switch {
			case b.Left.Value().Sign() < 0 && !isRounded(b):
				findings = append(findings, shortPack(s.Kit, b))
			case shortAtWorst(b, low):
				findings = append(findings, lightPack(s.Kit, b, low))
			}
		}
		return findings
	},
}

// roundedOff is the part of a pack that two units of one amount may differ by: 454 g
// are taken from a pack of 1 lb (common practice, no source).
var roundedOff = quantity.Ratio(1, 500)

// isRounded says whether a pack is short only by rounding; of things that are
// counted never.
func isRounded(b *ledger.Balance) bool {
	return b.Dimension != quantity.Count && b.Left.Value().Negated().Cmp(b.Packed.Value().Times(roundedOff)) <= 0
}

// noticeable is the part of an amount that a kitchen scale still shows (common
// practice, no source).
var noticeable = quantity.Ratio(1, 100)

func shortAtWorst(b *ledger.Balance, low quantity.Number) bool {
	return b.Used.Value().Times(noticeable).Less(low.Negated())
}

func shortPack(k *kit.Kit, b *ledger.Balance) diag.Finding {
	c := k.Component(b.Thing)
	short := b.Left.Value().Negated()
	finding := shortOf(k, b)
	finding.Follows = isShortByUpTo(b) // told first by up-to-exceeds
	finding.Found = c.String() + ": the steps use " + b.Used.Show() + ", and " + b.Packed.Show() + " is packed, " +
		show(short, b.Dimension) + " too little"
	finding.Sum = lines(append(balanceSum(b), worstCase("what is left", b.Left))...)
	return finding
}

func lightPack(k *kit.Kit, b *ledger.Balance, low quantity.Number) diag.Finding {
	c := k.Component(b.Thing)
	finding := shortOf(k, b)
	finding.Severity = diag.ShouldFix
	finding.Follows = isSpooned(b) // told first by weigh-instead
	finding.Found = c.String() + ": " + b.Packed.Show() + " is just enough, but a light pack runs " +
		show(low.Negated(), b.Dimension) + " short"
	finding.Sum = lines(append(balanceSum(b), worstCase("what is left", b.Left))...)
	return finding
}

// shortOf has what both findings share.
func shortOf(k *kit.Kit, b *ledger.Balance) diag.Finding {
	c := k.Component(b.Thing)
	low, _ := b.Packed.Worst()
	under := b.Packed.Value().Minus(low)
	_, most := b.Used.Worst()
	enough := most.Plus(under)
	remedies := []diag.Remedy{{
		Do:      "pack at least " + packUp(enough, c) + " of " + c.String(),
		Then:    tolerated(under, most.Minus(b.Used.Value()), b.Dimension),
		Changes: repack(k, c, packUp(enough, c)),
	}}
	if fewer := takeLess(k, c, b, under); fewer.Do != "" {
		remedies = append(remedies, fewer)
	}
	cause, follows := packCause(c.ID), false
	if c.Container != nil {
		cause, follows = containersCause(c.ID), true // counts-disagree tells it, run by run
	}
	return diag.Finding{
		Where: c.Packed.Span, About: c.ID, Cause: cause, Follows: follows,
		Expected: "at most what is packed, " + b.Packed.Show() + ", used in all",
		Remedies: remedies, Also: places(k, b.Uses),
	}
}

// tolerated says what a pack is enough for: one that is under by so much, and steps that use
// so much more than is told of them.
func tolerated(under, more quantity.Number, dimension quantity.Dimension) string {
	var told []string
	if !under.IsZero() {
		told = append(told, "a pack is "+show(under, dimension)+" light")
	}
	if more.Sign() > 0 {
		told = append(told, "the steps use "+show(more, dimension)+" more at the ends of what was told")
	}
	if len(told) == 0 {
		return ""
	}
	return "enough even where " + strings.Join(told, " and ")
}

// takeLess says by how much one amount would have to shrink where the same link
// causes all uses.
func takeLess(k *kit.Kit, c *kit.Component, b *ledger.Balance, under quantity.Number) diag.Remedy {
	first := b.Uses[0]
	told, ok := first.Operation.Phrase.Amount()
	if !ok || first.Operation.Phrase.Portion != kit.Exactly {
		return diag.Remedy{Do: "take less in one of the steps"}
	}
	for _, use := range b.Uses {
		if use.Operation != first.Operation {
			return diag.Remedy{Do: "take less in one of the steps"}
		}
	}
	part := b.Packed.Value().Minus(under).Over(b.Used.Value())
	less := told.Nominal.Times(part)
	if b.Dimension == quantity.Count && less.Less(quantity.Whole(1)) {
		return diag.Remedy{}
	}
	return diag.Remedy{
		Do:      "take " + down(less, told) + " instead of " + told.Written + " in " + inStep(first.Step),
		Changes: retell(k, first.Operation, less, false),
	}
}
