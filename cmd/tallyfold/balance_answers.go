package main

import (
	"fmt"

	"tallyfold/kit/ledger"
)

// answers prints every uncertain figure that matters three ways, and what each way is.
func (b *balancePrinter) answers() {
	answers := b.ledger.Answers()
	if len(answers) == 0 {
		return
	}
	b.heading("HOW CLOSELY IT IS KNOWN")
	b.line("  As written takes each figure as it stands. The worst case takes every pack, scale and")
	b.line("  spoon at its bad end at once; the same one errs the same way wherever it is used. The")
	b.line("  likely range holds 19 of 20 kits: each tolerance counts as equally likely from end to")
	b.line("  end (JCGM 100), checked by %d kits made on paper (JCGM 101); a star marks where", ledger.Drawings)
	b.line("  those draws decide.")
	b.table.Flush()
	b.line("\t\tas written\tworst case\tlikely")
	for _, a := range answers {
		star := ""
		if a.Drawn {
			star = " *"
		}
		b.line("  %s\t%s\t%s\t%s\t%s%s", a.Sort, a.About, a.Figure.Show(), a.Worst(), a.Likely(), star)
	}
	b.table.Flush()
	for _, a := range answers {
		if a.MayFail() {
			b.line("  %s, %s: %s.", a.About, a.Sort, a.Sentence())
		}
	}
}

// solutions prints how strong each solution is against what its solvent takes up.
func (b *balancePrinter) solutions() {
	solutions := b.ledger.Solutions()
	if len(solutions) == 0 {
		return
	}
	b.heading("SOLUTIONS (between the maker's points on a straight line: a model)")
	for _, s := range solutions {
		b.line("  step %d%s\t%s in %s\t%s\ttakes up %s", s.Step.Number, inBrackets(s.Run.Name.Value),
			s.Solute, b.called(s.Solvent), s.Strength.Sum(), s.Takes.Show())
	}
}

// cuttings prints how many of the pieces find a place on their sheets.
func (b *balancePrinter) cuttings() {
	if len(b.ledger.Cuttings) == 0 {
		return
	}
	b.heading("CUT OUT")
	for _, c := range b.ledger.Cuttings {
		told := fmt.Sprintf("%d of %d pieces find a place, margins counted, cut from edge to edge", c.Placed, c.Wanted())
		if c.Unknown != "" {
			told = "cannot tell: " + c.Unknown
		}
		b.line("  %s\t%s", c.Component, told)
	}
}

// choices says what this balance follows where the customer has a choice.
func (b *balancePrinter) choices() {
	others := ledger.Choosings(b.kit)
	if len(others) == 0 {
		return
	}
	b.heading("CHOICES")
	b.line("  The first of every choice is followed above, and every optional thing is used. Checked too:")
	for _, other := range others {
		b.line("  %s", other.Tell(b.kit))
	}
}
