package rules

import (
	"fmt"

	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var piecesDoNotFit = Rule{
	Name:     "pieces-do-not-fit",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "The pieces to cut out do not fit on the sheets that are packed",
	Explanation: `Pieces can add up to less than a sheet and still not fit on it. They are laid out on the
sheets at their smallest, with the cut margin on every side; they may be turned, and
cuts go from edge to edge. For pieces of one size that is nearly always the best there
is. For several sizes a few orders are tried, and a cleverer layout may exist: the
finding then should be fixed, or a layout drawn for the customer.

Where the sides of a sheet are not told, this cannot be checked.

Pack a sheet more or a larger one, cut smaller pieces, or narrow the margin.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, c := range s.Ledger.Cuttings {
			if c.Unknown != "" || c.Placed < c.Wanted() && !isShort(s.Ledger, c) {
				findings = append(findings, notLaidOut(c))
			}
		}
		return findings
	},
	NotLookedAt: func(s Subject) []string {
		if len(s.Ledger.Cuttings) > 0 {
			return nil
		}
		return []string{"no step cuts pieces out of a sheet"}
	},
}

// isShort: where the area itself is too small, packed-too-little tells it.
func isShort(l *ledger.Ledger, c *ledger.Cutting) bool {
	b := l.Balance(c.Component.ID)
	return b.Left.Known() && b.Left.Value().Sign() < 0
}

func notLaidOut(c *ledger.Cutting) diag.Finding {
	finding := diag.Finding{
		Where: amountSpan(c.Pieces[len(c.Pieces)-1].Operation), About: c.Component.ID,
		Expected: fmt.Sprintf("all %d pieces on what is packed, %s", c.Wanted(), c.Component.Packed.Value.Written),
		Also:     []diag.Place{{Where: c.Component.Packed.Span, Note: "packed"}},
	}
	if c.Unknown != "" {
		finding.Severity = diag.ShouldFix
		finding.Found = "cannot check whether the pieces fit on " + c.Component.String() + ": " + c.Unknown
		finding.Remedies = diag.Fix("write the sides of one sheet under " + c.Component.ID + " in kit.yaml: “packed: 2 sheets of 30 × 40 cm”")
		return finding
	}
	finding.Found = fmt.Sprintf("%s: a place was found for %d of %d pieces", c.Component, c.Placed, c.Wanted())
	finding.Sum = pieceSums(c)
	if sizes(c) > 1 {
		finding.Severity = diag.ShouldFix
	}
	short := c.Wanted() - c.Placed
	onEach := max(1, c.Placed/c.Sheets)
	finding.Remedies = []diag.Remedy{
		{Do: fmt.Sprintf("pack %d sheets instead of %d", c.Sheets+(short+onEach-1)/onEach, c.Sheets)},
		{Do: "cut smaller pieces, or cut them from a larger sheet"},
	}
	if sizes(c) > 1 {
		finding.Remedies = append(finding.Remedies, diag.Remedy{Do: "draw a layout that works, show it in the step, and accept this finding"})
	}
	return finding
}

func sizes(c *ledger.Cutting) int {
	seen := map[string]bool{}
	for _, p := range c.Pieces {
		seen[p.Across.String()+" "+p.Along.String()] = true
	}
	return len(seen)
}

func pieceSums(c *ledger.Cutting) []string {
	side := func(n quantity.Number) string { return show(n, quantity.Length) }
	sums := []string{fmt.Sprintf("each sheet at its smallest: %s × %s, %d of them", side(c.Across), side(c.Along), c.Sheets)}
	for _, p := range c.Pieces {
		sums = append(sums, fmt.Sprintf("%d × (%s × %s) with margins, %s", p.Count, side(p.Across), side(p.Along), inStep(p.Step)))
	}
	return lines(sums...)
}
