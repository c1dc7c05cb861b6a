package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var otherKind = Rule{
	Name:     "other-kind",
	Severity: diag.MustFix,
	Title:    "An amount is of another kind than what is packed",
	Explanation: `The box holds metres of thread and a step takes grams of it, or a jar is to be filled to
“3 pieces”. No density helps: the two cannot be compared, so that nobody can say
whether the pack is enough.

Tell the amount in the step the way the thing is packed, or change how it is packed.`,
	Check: func(s Subject) []diag.Finding {
		var all []perRun
		for _, snag := range s.Ledger.Snags {
			if snag.Trouble == ledger.OtherKind && !isUnpacked(s.Kit, snag.Thing) {
				all = append(all, perRun{snag.Run, wrongKind(s.Kit, snag)})
			}
		}
		return overRuns(s.Kit, all)
	},
}

// isUnpacked: what kit.yaml does not say is packed can't be told in another kind;
// used-but-not-packed tells it.
func isUnpacked(k *kit.Kit, id string) bool {
	c := k.Component(id)
	return c != nil && !c.Packed.Given()
}

func wrongKind(k *kit.Kit, snag ledger.Snag) diag.Finding {
	name := k.Called(snag.Thing)
	told := snag.Wanted.Show()
	if amount, ok := snag.Operation.Phrase.Amount(); ok {
		told = amount.Written
	}
	finding := diag.Finding{
		Where: amountSpan(snag.Operation), About: snag.Thing,
		Found:    inStep(snag.Step) + " tells “" + told + "” of " + name,
		Expected: "an amount of the kind that " + name + " is told in",
		Remedies: diag.Fix("tell the amount the way it is packed"),
	}
	c := k.Component(snag.Thing)
	switch {
	case c != nil && c.Container != nil || k.Tool(snag.Thing) != nil:
		finding.Expected = "a weight, a volume or a height"
		finding.Remedies = diag.Fix("tell it in grams or millilitres")
	case c != nil && c.Packed.Given():
		finding.Expected = "an amount " + kindWords[c.Packed.Value.Dimension] + ", as it is packed: " + c.Packed.Value.Written
		finding.Remedies = diag.Fix(
			"tell the amount in "+inStep(snag.Step)+" "+kindWords[c.Packed.Value.Dimension],
			"pack "+name+" "+kindWords[snag.Wanted.Dimension]+" in kit.yaml")
		finding.Also = []diag.Place{{Where: c.Packed.Span, Note: c.Packed.Value.Written + " packed"}}
	}
	return finding
}

// kindWords say how an amount is told.
var kindWords = map[quantity.Dimension]string{
	quantity.Mass: "by weight", quantity.Volume: "by volume", quantity.Count: "by number",
	quantity.Length: "by length", quantity.Area: "by area", quantity.Duration: "in time",
	quantity.Temperature: "as a temperature", quantity.Share: "as a share",
}
