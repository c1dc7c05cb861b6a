package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var countsDisagree = Rule{
	Name:     "counts-disagree",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "Pieces claimed, containers packed and containers filled are not the same number",
	Explanation: `What the box claims to make, what the steps fill and what is packed must be one number.
A jar that stays empty, or a seventh piece for which there is no jar, is the first
thing that a customer notices.

Compared are: “makes” with the kinds of piece, and with packs of the same name (“2 skeins
of 50 g”); both with the containers that the steps
fill over all runs; the containers filled with those packed, less a told spare; and
things that are to be shared out equally with the containers they go into. Moulds that
are used again count as often as they are filled.

Put the number right where it is wrong.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		findings = append(findings, claimAgainstPieces(s.Kit)...)
		findings = append(findings, piecesAgainstFillings(s)...)
		findings = append(findings, claimAgainstFillings(s)...)
		findings = append(findings, claimAgainstLots(s.Kit)...)
		for i := range findings {
			if cause := filledFromNothing(s, findings[i].Cause); cause != "" {
				findings[i].Cause, findings[i].Follows = cause, true
			}
		}
		findings = append(findings, containersLeftEmpty(s)...)
		return append(findings, countSnags(s)...)
	},
}

// filledFromNothing is the cause of fills that came from an empty vessel, where the
// containers of a cause are among what they filled: then none of them counts.
func filledFromNothing(s Subject, containers string) string {
	for _, snag := range s.Ledger.Snags {
		if snag.Trouble == ledger.Empty && snag.Operation.Kind == kit.Fill && containers == containersCause(resolved(snag.Run, snag.Operation.Target)) {
			return vesselCause(snag.Thing)
		}
	}
	return ""
}

func claimAgainstPieces(k *kit.Kit) []diag.Finding {
	if len(k.Pieces) == 0 || !k.Makes.Given() {
		return nil
	}
	var total quantity.Number
	var also []diag.Place
	line := ""
	for _, piece := range k.Pieces {
		if !piece.Count.Given() {
			return nil
		}
		total = total.Plus(piece.Count.Value.Nominal)
		also = append(also, diag.Place{Where: piece.Count.Span, Note: piece.Count.Value.Written + " of " + piece.String()})
		if line != "" {
			line += " + "
		}
		line += piece.Count.Value.Nominal.String() + " (" + piece.String() + ")"
	}
	if total.Equal(k.Makes.Value.Nominal) {
		return nil
	}
	return []diag.Finding{{
		Where: k.Makes.Span, About: "makes",
		Found:    "“makes: " + k.Makes.Value.Written + "”, and “pieces” says " + total.String(),
		Expected: "one number",
		Sum:      lines(sumOfPieces(k, line+" = "+total.String())),
		Remedies: []diag.Remedy{
			{Do: "write “makes: " + total.String() + " " + k.Makes.Value.Noun + "”", Changes: rewrite(k, k.Makes.Span, total.String()+" "+k.Makes.Value.Noun)},
			{Do: "put the count of one kind of piece right"}},
		Also: also,
	}}
}

// sumOfPieces is a line only where there is something to add up.
func sumOfPieces(k *kit.Kit, line string) string {
	if len(k.Pieces) < 2 {
		return ""
	}
	return line
}

// piecesAgainstFillings holds each kind of piece against the containers it is in.
func piecesAgainstFillings(s Subject) []diag.Finding {
	var findings []diag.Finding
	for _, piece := range s.Kit.Pieces {
		c := s.Kit.Component(piece.In.Value)
		if c == nil || c.Container == nil || !piece.Count.Given() {
			continue
		}
		count, also := fillingsOf(s, c, piece.Of.Value)
		if whole(count).Equal(piece.Count.Value.Nominal) {
			continue
		}
		findings = append(findings, diag.Finding{
			Where: piece.Count.Span, About: piece.ID, Cause: containersCause(c.ID),
			Found:    piece.String() + ": " + piece.Count.Value.Nominal.String() + " claimed, and the steps fill " + whole(count).String() + " of " + c.String(),
			Expected: "as many as the steps fill",
			Sum:      fillingSum(s.Kit, c, piece.Of.Value, s.Ledger),
			Remedies: []diag.Remedy{
				{Do: "write “count: " + whole(count).String() + "” under " + piece.ID + " in kit.yaml", Changes: rewrite(s.Kit, piece.Count.Span, whole(count).String())},
				{Do: "fill " + piece.Count.Value.Nominal.String() + " in the steps"}},
			Also: also,
		})
	}
	return findings
}

// fillingsOf counts the containers of a kind that hold a mixture; "" is any.
func fillingsOf(s Subject, c *kit.Component, mixture string) (count int, also []diag.Place) {
	if mixture == "" {
		count = filled(s.Ledger, c)
	}
	seen := map[*kit.Operation]bool{}
	for _, f := range s.Ledger.Fillings {
		if f.Container != c || mixture != "" && (f.Mixture == nil || f.Mixture.ID != mixture) {
			continue
		}
		if mixture != "" {
			count += f.Count
		}
		if !seen[f.Operation] {
			also = append(also, diag.Place{Where: amountSpan(f.Operation), Note: "filled here, " + inStep(f.Step)})
		}
		seen[f.Operation] = true
	}
	return count, also
}

func fillingSum(k *kit.Kit, c *kit.Component, mixture string, l *ledger.Ledger) []string {
	var sum []string
	for _, f := range l.Fillings {
		if f.Container != c || mixture != "" && (f.Mixture == nil || f.Mixture.ID != mixture) {
			continue
		}
		line := inStep(f.Step) + " fills " + whole(f.Count).String()
		if name := runName(k, f.Run); name != "" {
			line += " (" + name + ")"
		}
		sum = append(sum, line)
	}
	return sum
}

// claimAgainstFillings is for kits without kinds of piece: all containers filled
// must be the number claimed, or those of one kind where a kit fills several.
func claimAgainstFillings(s Subject) []diag.Finding {
	k := s.Kit
	if len(k.Pieces) > 0 || !k.Makes.Given() {
		return nil
	}
	total, last := 0, (*kit.Component)(nil)
	var sum []string
	var also []diag.Place
	for _, c := range k.Components {
		if c.Container == nil {
			continue
		}
		count, at := fillingsOf(s, c, "")
		if count == 0 {
			continue
		}
		if whole(count).Equal(k.Makes.Value.Nominal) {
			return nil
		}
		total, last = total+count, c
		sum, also = append(sum, fillingSum(k, c, "", s.Ledger)...), append(also, at...)
	}
	if total == 0 || whole(total).Equal(k.Makes.Value.Nominal) {
		return nil
	}
	return []diag.Finding{{
		Where: k.Makes.Span, About: "makes", Cause: containersCause(last.ID),
		Found:    "“makes: " + k.Makes.Value.Written + "”, and the steps fill " + whole(total).String(),
		Expected: "as many as the steps fill",
		Sum:      append(sum, whole(total).String()+" filled in all"),
		Remedies: []diag.Remedy{
			{Do: "write “makes: " + whole(total).String() + " " + k.Makes.Value.Noun + "”", Changes: rewrite(k, k.Makes.Span, whole(total).String()+" "+k.Makes.Value.Noun)},
			{Do: "fill " + k.Makes.Value.Nominal.String() + " in the steps"}},
		Also: also,
	}}
}

// claimAgainstLots is for what is dyed or finished as it is packed: “makes: 2 skeins”
// from “packed: 2 skeins of 50 g”.
func claimAgainstLots(k *kit.Kit) []diag.Finding {
	if len(k.Pieces) > 0 || !k.Makes.Given() {
		return nil
	}
	linked, total := linkedKeys(k), 0
	var first *kit.Component
	for _, c := range k.Components {
		if !c.Lots.Told() || !linked[c.ID] || singular(c.Lots.Noun) != singular(k.Makes.Value.Noun) {
			continue
		}
		if total += c.Lots.Count; whole(c.Lots.Count).Equal(k.Makes.Value.Nominal) {
			return nil
		}
		if first == nil {
			first = c
		}
	}
	if first == nil || whole(total).Equal(k.Makes.Value.Nominal) {
		return nil
	}
	return []diag.Finding{{
		Where: k.Makes.Span, About: "makes",
		Found:    "“makes: " + k.Makes.Value.Written + "”, and " + whole(total).String() + " are packed: " + first.Packed.Value.Written + " of " + first.String(),
		Expected: "as many as are packed",
		Remedies: diag.Fix(
			"write “makes: "+whole(total).String()+" "+k.Makes.Value.Noun+"”",
			"pack "+k.Makes.Value.Nominal.String()+" of them"),
		Also: []diag.Place{{Where: first.Packed.Span, Note: first.Packed.Value.Written + " packed"}},
	}}
}

func containersLeftEmpty(s Subject) []diag.Finding {
	var findings []diag.Finding
	for _, c := range s.Kit.Components {
		count := 0
		if c.Container != nil {
			count = filled(s.Ledger, c)
		}
		empty := emptyContainers(s, c)
		if count == 0 || empty == 0 {
			continue
		}
		_, also := fillingsOf(s, c, "")
		findings = append(findings, diag.Finding{
			Where: c.Packed.Span, About: c.ID, Cause: containersCause(c.ID),
			Found:    c.String() + ": " + c.Packed.Value.Nominal.String() + " packed, " + whole(count).String() + " filled, so " + whole(empty).String() + " stay empty",
			Expected: "as many packed as are filled, and a told spare",
			Sum:      append(fillingSum(s.Kit, c, "", s.Ledger), whole(count+empty).String()+" − "+whole(count).String()+" = "+whole(empty).String()+" empty"),
			Remedies: []diag.Remedy{
				{Do: "fill all of them, or pack " + whole(empty).String() + " fewer", Changes: repack(s.Kit, c, up(c.Packed.Value.Nominal.Minus(whole(empty)), c.Packed.Value))},
				{Do: "write “spare: " + whole(empty).String() + "” under " + c.ID + " in kit.yaml, if they are meant as spares", Changes: withSpare(s.Kit, c, whole(empty).String())}},
			Also: also,
		})
	}
	return findings
}

func countSnags(s Subject) []diag.Finding {
	var all []perRun
	for _, snag := range s.Ledger.Snags {
		switch snag.Trouble {
		case ledger.NotEnoughContainers:
			all = append(all, perRun{snag.Run, notEnough(s, snag)})
		case ledger.Uneven:
			all = append(all, perRun{snag.Run, uneven(s, snag)})
		}
	}
	return overRuns(s.Kit, all)
}

func notEnough(s Subject, snag ledger.Snag) diag.Finding {
	c := s.Kit.Component(snag.Thing)
	finding := diag.Finding{
		Where: amountSpan(snag.Operation), About: snag.Thing, Cause: containersCause(snag.Thing),
		Found:    inStep(snag.Step) + " works on " + snag.Wanted.Value().String() + " of " + c.String() + ", and there are " + snag.Had.Value().String() + " for this run",
		Expected: "at most " + snag.Had.Value().String(),
		Remedies: diag.Fix("pack more of "+c.String(), "fill "+snag.Had.Value().String()+" instead"),
		Also:     []diag.Place{{Where: c.Packed.Span, Note: c.Packed.Value.Written + " packed"}},
	}
	if len(s.Kit.Runs) > 1 && !c.Container.UsedAgain.Value {
		finding.Sum = []string{c.Packed.Value.Written + " packed, shared over the runs, gives " + snag.Had.Value().String() + " for one"}
	}
	return finding
}

func uneven(s Subject, snag ledger.Snag) diag.Finding {
	name := s.Kit.Called(snag.Thing)
	containers := snag.Had.Value().String()
	each := snag.Wanted.Value().Over(snag.Had.Value()).Int()
	even := quantity.Whole(max(1, each)).Times(snag.Had.Value())
	return diag.Finding{
		Where: amountSpan(snag.Operation), About: snag.Thing,
		Found:    inStep(snag.Step) + " shares " + snag.Wanted.Value().String() + " of " + name + " over " + containers + " containers, which does not come out even",
		Expected: "a number that can be shared equally over " + containers,
		Sum:      []string{snag.Wanted.Value().String() + " ÷ " + containers + " leaves a remainder"},
		Remedies: diag.Fix(
			"place "+even.String()+" instead",
			"say how many go into each: [one of "+name+"](place:"+snag.Operation.Target+") in each"),
	}
}
