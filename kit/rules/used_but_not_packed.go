package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
)

var usedButNotPacked = Rule{
	Name:     "used-but-not-packed",
	Severity: diag.MustFix,
	Title:    "A step uses a component that is not packed",
	Explanation: `A step takes, places or fills something that kit.yaml knows as a component, but nothing
of it is packed: the amount is missing, or it is nothing. The customer looks for it in
the box in vain, and nothing that rests on it can be added up.

Say how much is packed, or make it a household item if the customer brings it.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, b := range s.Ledger.Balances {
			c := s.Kit.Component(b.Thing)
			if b.NeverUsed() || c.Packed.Given() && c.Packed.Value.Nominal.Sign() > 0 {
				continue
			}
			findings = append(findings, notPacked(s.Kit, c, b))
		}
		return findings
	},
}

func notPacked(k *kit.Kit, c *kit.Component, b *ledger.Balance) diag.Finding {
	first := b.Uses[0]
	where, found := c.IDSpan, "kit.yaml does not say how much "+c.String()+" is packed"
	if c.Packed.Given() {
		where, found = c.Packed.Span, "none of "+c.String()+" is packed"
	}
	remedy := "write “packed: …” under " + c.ID + " in kit.yaml, with the amount in the box"
	if told, ok := first.Operation.Phrase.Amount(); ok {
		remedy = "write “packed: …” under " + c.ID + " in kit.yaml; " + inStep(first.Step) + " takes " + told.Written
	}
	return diag.Finding{
		Where: where, About: c.ID, Cause: packCause(c.ID),
		Found:    found + ", and " + inStep(first.Step) + " uses it",
		Expected: "a packed amount for everything that a step uses from the box",
		Remedies: diag.Fix(remedy, "move "+c.ID+" to household in kit.yaml, if the customer brings it"),
		Also:     usePlaces(b.Uses),
	}
}

// usePlaces lists where a thing is used, each link once, without amounts.
func usePlaces(uses []ledger.Entry) []diag.Place {
	var all []diag.Place
	seen := map[*kit.Operation]bool{}
	for _, use := range uses {
		if !seen[use.Operation] {
			all = append(all, diag.Place{Where: amountSpan(use.Operation), Note: "used in " + inStep(use.Step)})
		}
		seen[use.Operation] = true
	}
	return all
}
