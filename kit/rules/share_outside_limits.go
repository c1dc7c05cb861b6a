package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var shareOutsideLimits = Rule{
	Name:     "share-outside-limits",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "A component makes up more or less of a mixture than its limits allow",
	Explanation: `A fragrance above the share its supplier allows may burn skin; a gelling powder below its
share does not set. The share is reckoned by weight, in every run, of the base that the
limit names: the whole mixture as it leaves its vessel, a named mixture, or one other
component. A premix in a cup is not yet the mixture.

Where the share is within its limit as told, but goes over it by more than a tenth when
every figure is at its bad end, the finding should be fixed.

Change the amount, or look up the limit once more. Where a density is missing the share
cannot be checked; no-density tells it.`,
	Check: func(s Subject) []diag.Finding {
		var all []perRun
		for _, l := range limits(s.Kit) {
			for _, m := range l.mixtures(s) {
				if finding, ok := l.hold(s, m); ok {
					all = append(all, perRun{m.run, finding})
				}
			}
		}
		return overRuns(s.Kit, all)
	},
	NotLookedAt: func(s Subject) []string {
		return untoldFor("no limit on a share is told for ", s, func(c *kit.Component) bool {
			return len(c.Shares) == 0 && c.IsMaterial()
		})
	},
}

// bearable is how far over a limit the worst case may go before it is told.
var bearable = quantity.Ratio(1, 10)

// hold holds one limit against one mixture.
func (l limit) hold(s Subject, m limited) (diag.Finding, bool) {
	if !m.share.Known() {
		return diag.Finding{}, false // told by no-density
	}
	if way := l.outside(m.share.Value()); way != within {
		finding := l.finding(s, m, way)
		if _, told := l.upToEntry(s, m); told {
			finding.Cause, finding.Follows = shareCause(l.thing), true
		}
		return finding, true
	}
	low, high := m.share.Worst()
	for _, worst := range []quantity.Number{low, high} {
		if way := l.farOutside(worst); way != within {
			finding := l.finding(s, m, way)
			finding.Severity = diag.ShouldFix
			if _, _, _, spooned := l.spoonedOut(s, m); spooned {
				finding.Cause, finding.Follows = shareCause(l.thing), true
			}
			finding.Found = s.Kit.Called(l.thing) + " is " + percent(m.share.Value()) + " of " + m.base +
				" as told, but can be " + percent(worst) + " where every figure is at its bad end"
			finding.Remedies = diag.Fix(
				"weigh "+s.Kit.Called(l.thing)+" more exactly, and write the smaller tolerance into kit.yaml",
				"change the amount a little, away from the limit")
			return finding, true
		}
	}
	return diag.Finding{}, false
}

func (l limit) finding(s Subject, m limited, way side) diag.Finding {
	name := s.Kit.Called(l.thing)
	finding := diag.Finding{
		Where: l.told.Span, About: l.thing,
		Found:    name + " is " + l.percentBeside(m.share.Value(), way) + " of " + m.base,
		Expected: l.told.Value.Written,
		Sum:      lines("share: "+m.share.Sum(), m.baseSum(), worstCase("the share", m.share)),
		Also:     []diag.Place{{Where: l.told.Span, Note: "the limit, " + l.told.Value.Written}},
	}
	if entry := lastTaken(s.Ledger, m.run, l.thing); entry != nil {
		finding.Where = amountSpan(entry.Operation)
		if c := s.Kit.Component(l.thing); c != nil && isWholePack(entry) {
			finding.Where = c.Packed.Span
			finding.Also = append(finding.Also, diag.Place{Where: amountSpan(entry.Operation), Note: "taken here, " + inStep(entry.Step)})
		}
		if remedy, ok := l.remedy(s, m, entry, way); ok {
			finding.Remedies = append(finding.Remedies, remedy)
		}
	}
	finding.Remedies = append(finding.Remedies, diag.Remedy{Do: "ask the supplier whether another limit holds for this use"})
	return finding
}

// percentBeside tells a share so that it can be told from the figure of the limit.
func (l limit) percentBeside(share quantity.Number, way side) string {
	edge := percent(l.edge(way))
	switch {
	case percent(share) != edge, l.edge(way).Equal(share):
		return percent(share)
	case way == tooHigh:
		return "a little more than " + edge
	}
	return "a little less than " + edge
}

// isWholePack: the words take what the pack holds, so that the pack is the cause.
func isWholePack(entry *ledger.Entry) bool {
	phrase := entry.Operation.Phrase
	return phrase.Portion == kit.AllOf || phrase.Portion == kit.RestOf || entry.Operation.Text == ""
}

// remedy is the amount that would just do.
func (l limit) remedy(s Subject, m limited, entry *ledger.Entry, way side) (diag.Remedy, bool) {
	edge := l.edge(way)
	mass, ok := m.massAt(edge)
	if !ok || mass.Sign() <= 0 {
		return diag.Remedy{}, false
	}
	had := m.contents.MassOf(l.thing)
	if !had.Known() || had.Value().Sign() <= 0 {
		return diag.Remedy{}, false
	}
	// One of several takings changes with the whole; what is told is this one.
	amount := entry.Amount.Value().Times(mass).Over(had.Value())
	like := likePacked(s.Kit, l.thing, entry.Amount.Dimension)
	fits := up(amount, like)
	if way == tooHigh {
		fits = down(amount, like)
	}
	name := s.Kit.Called(l.thing)
	then := "then it is " + percent(edge) + " at most"
	if way == tooLow {
		then = "then it is " + percent(edge) + " at least"
	}
	if isWholePack(entry) && s.Kit.Component(l.thing) != nil {
		c := s.Kit.Component(l.thing)
		changes := repack(s.Kit, c, fits)
		if !entry.Amount.Value().Equal(c.Packed.Value.Nominal) {
			changes = nil // the pack serves several runs or steps
		}
		return diag.Remedy{Changes: changes, Do: "change the pack of " + name + " so that " + inStep(entry.Step) + " takes " + fits + " instead of " + entry.Amount.Show(), Then: then}, true
	}
	return diag.Remedy{
		Do: "take " + fits + " of " + name + " instead of " + entry.Amount.Show() + " in " + inStep(entry.Step), Then: then,
		Changes: l.retaken(s.Kit, entry, amount, way),
	}, true
}

// retaken tells the amount that just does in the unit of its link.
func (l limit) retaken(k *kit.Kit, entry *ledger.Entry, amount quantity.Number, way side) []diag.Change {
	told, ok := entry.Operation.Phrase.Amount()
	if !ok || entry.Amount.Value().IsZero() || entry.Operation.Phrase.Portion != kit.Exactly {
		return nil
	}
	fits := told.Nominal.Times(amount).Over(entry.Amount.Value())
	return retell(k, entry.Operation, fits, way == tooLow)
}

// lastTaken is the last entry of a run that took a thing from its pack.
func lastTaken(l *ledger.Ledger, run *kit.Run, thing string) *ledger.Entry {
	var last *ledger.Entry
	for i, e := range l.Entries {
		if e.Run == run && e.Thing == thing && e.Move == ledger.Taken {
			last = &l.Entries[i]
		}
	}
	return last
}
