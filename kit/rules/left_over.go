package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var leftOver = Rule{
	Name:     "left-over",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "Something is left over and the method does not say what for",
	Explanation: `A pan still half full after the last jar has been filled leaves a customer with a
mixture they paid for and no place to put it. So does a bag that is a third full.

A vessel may keep its residue, as told in kit.yaml, and a hundredth of what was made
in it; where no residue is told, a twentieth. More than that is told, with the number
of pieces that it would have filled. From a tenth of the mixture, or a whole piece,
on it must be fixed, from a twentieth it should be; a spoonful less is worth knowing. A
vessel that is never emptied must be spoken of too, and so should more than a fifth that
the steps throw away. What is washed out with “clean:”
counts as left.

What is packed beyond the spare is a surplus. Up to a tenth of the pack is no
finding; more should be fixed: it costs money and raises the question what it is for.

Fill more into each piece, make less, pack a container more, or say with a "left:"
link what is done with the rest.`,
	Check: func(s Subject) []diag.Finding {
		return append(leftInVessels(s), leftInPacks(s)...)
	},
}

// surplusAllowed is the part of a pack that may be left beyond the spare.
var surplusAllowed = quantity.Ratio(1, 10)

func leftInPacks(s Subject) []diag.Finding {
	var findings []diag.Finding
	for _, b := range s.Ledger.Balances {
		c := s.Kit.Component(b.Thing)
		surplus := b.Surplus()
		if b.NeverUsed() || b.LeftSaid != nil || c.Optional.Value || !surplus.Known() || !b.Packed.Known() {
			continue
		}
		allowed := b.Packed.Value().Times(surplusAllowed)
		if isPartOfALot(c, surplus) {
			continue
		}
		if c.Container != nil || isUneven(s.Ledger, c.ID) || surplus.Value().Cmp(allowed) <= 0 {
			continue // containers left empty are told by counts-disagree
		}
		findings = append(findings, surplusIn(s.Kit, c, b, surplus))
	}
	return findings
}

// isPartOfALot: of what comes in skeins or sheets, less than one cannot be packed less.
func isPartOfALot(c *kit.Component, surplus *ledger.Figure) bool {
	return c.Lots.Told() && surplus.Value().Less(c.Lots.Each.Nominal)
}

// isUneven: what does not come out even leaves a rest, which counts-disagree tells.
func isUneven(l *ledger.Ledger, id string) bool {
	for _, snag := range l.Snags {
		if snag.Trouble == ledger.Uneven && snag.Thing == id {
			return true
		}
	}
	return false
}

func surplusIn(k *kit.Kit, c *kit.Component, b *ledger.Balance, surplus *ledger.Figure) diag.Finding {
	enough := b.Packed.Value().Minus(surplus.Value())
	sum := balanceSum(b)
	if b.Spare != nil {
		sum = append(sum, surplus.Sum())
	}
	sum = append(sum, surplus.Show()+" ÷ "+b.Packed.Show()+" packed = "+percent(surplus.Value().Over(b.Packed.Value())))
	return diag.Finding{
		Severity: diag.ShouldFix, Where: c.Packed.Span, About: c.ID,
		Found:    c.String() + ": " + surplus.Show() + " is left over, and no step says what for",
		Expected: "no more than a tenth of the pack left beyond the spare",
		Sum:      lines(sum...),
		Remedies: []diag.Remedy{
			{Do: "pack " + packUp(enough, c) + " instead of " + c.Packed.Value.Written, Changes: repack(k, c, packUp(enough, c))},
			{Do: "write “spare: " + down(b.Left.Value(), c.Packed.Value) + "” under " + c.ID + " in kit.yaml, if it is meant to be left",
				Changes: withSpare(k, c, down(b.Left.Value(), c.Packed.Value))},
		},
		Also: places(k, b.Uses),
	}
}
