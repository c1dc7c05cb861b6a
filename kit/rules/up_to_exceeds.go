package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var upToExceeds = Rule{
	Name:     "up-to-exceeds",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "An “up to” may be more than the pack, the limit or the room",
	Explanation: `“Up to 5 g of tint” allows 5 g to everybody. So its upper end is what all sums count: it
must be there in the pack for every run, keep to the limits on shares, and fit into the
container. Nobody means 5 g by silence; somebody will take 5 g all the same.

This finding stands before that of packed-too-little, share-outside-limits or
container-overfull, since the words are where it is put right.

Write a smaller upper end, or pack more.`,
	Check: func(s Subject) []diag.Finding {
		findings := upToBeyondPack(s)
		findings = append(findings, upToBeyondLimit(s)...)
		return append(findings, upToBeyondRoom(s)...)
	},
}

// isUpTo says whether a link tells its amount as “up to”, and gives it.
func isUpTo(o *kit.Operation) (quantity.Amount, bool) {
	told, ok := o.Phrase.Amount()
	return told, ok && o.Phrase.Portion == kit.Exactly && told.Bound == quantity.UpTo
}

// upToUses are the takings from a pack that were told as “up to”, and their sum.
func upToUses(b *ledger.Balance) (uses []ledger.Entry, sum quantity.Number) {
	for _, use := range b.Uses {
		if _, ok := isUpTo(use.Operation); ok && use.Amount.Known() {
			uses = append(uses, use)
			sum = sum.Plus(use.Amount.Value())
		}
	}
	return uses, sum
}

// isShortByUpTo says whether a pack is too small only for the upper ends.
func isShortByUpTo(b *ledger.Balance) bool {
	_, sum := upToUses(b)
	return sum.Sign() > 0 && b.Left.Known() && b.Left.Value().Sign() < 0 && b.Left.Value().Plus(sum).Sign() >= 0
}

func upToBeyondPack(s Subject) []diag.Finding {
	var findings []diag.Finding
	for _, b := range s.Ledger.Balances {
		if b.Left == nil || !isShortByUpTo(b) || isRounded(b) {
			continue
		}
		uses, sum := upToUses(b)
		told, _ := isUpTo(uses[0].Operation)
		short := b.Left.Value().Negated()
		name := s.Kit.Called(b.Thing)
		fits := down(told.Nominal.Times(sum.Minus(short)).Over(sum), told)
		finding := upToFinding(uses[0].Operation, uses[0].Step, b.Thing)
		finding.Cause = packCause(b.Thing)
		finding.Found += ": with its upper end the steps use " + b.Used.Show() + " of " + name + ", and " + b.Packed.Show() + " is packed"
		finding.Expected = "an upper end that the pack has, in every run"
		finding.Sum = lines(append([]string{"counted is the upper end, " + show(told.High, told.Dimension)}, balanceSum(b)...)...)
		finding.Remedies = []diag.Remedy{
			{Do: "write “up to " + fits + "”"},
			{Do: "pack at least " + up(b.Used.Value(), s.Kit.Component(b.Thing).Packed.Value) + " of " + name},
		}
		finding.Also = append(finding.Also, diag.Place{Where: s.Kit.Component(b.Thing).Packed.Span, Note: b.Packed.Show() + " packed"})
		findings = append(findings, finding)
	}
	return findings
}

func upToFinding(o *kit.Operation, step *kit.Step, about string) diag.Finding {
	return diag.Finding{
		Where: amountSpan(o), About: about,
		Found: inStep(step) + " tells “" + onOneLine(amountSpan(o)) + "”",
	}
}

// upToBeyondLimit: the upper end makes a share too high.
func upToBeyondLimit(s Subject) []diag.Finding {
	var all []perRun
	for _, l := range limits(s.Kit) {
		for _, m := range l.mixtures(s) {
			entry, ok := l.upToEntry(s, m)
			if !ok {
				continue
			}
			told, _ := isUpTo(entry.Operation)
			finding := upToFinding(entry.Operation, entry.Step, l.thing)
			name := s.Kit.Called(l.thing)
			finding.Cause = shareCause(l.thing)
			finding.Found += ": with its upper end " + name + " is " + percent(m.share.Value()) + " of " + m.base
			finding.Expected = l.told.Value.Written
			finding.Sum = lines("counted is the upper end, "+show(told.High, told.Dimension), "share: "+m.share.Sum(), m.baseSum())
			finding.Remedies = diag.Fix("look up the limit once more")
			if fits, ok := l.fittingUpTo(m, told); ok {
				finding.Remedies = append(diag.Fix("write “up to "+fits+"”"), finding.Remedies...)
			}
			finding.Also = []diag.Place{{Where: l.told.Span, Note: "the limit, " + l.told.Value.Written}}
			all = append(all, perRun{m.run, finding})
		}
	}
	return overRuns(s.Kit, all)
}

// upToEntry is the taking told as “up to” that makes a share too high.
func (l limit) upToEntry(s Subject, m limited) (*ledger.Entry, bool) {
	entry := lastTaken(s.Ledger, m.run, l.thing)
	if entry == nil || !m.share.Known() || l.outside(m.share.Value()) != tooHigh {
		return nil, false
	}
	_, ok := isUpTo(entry.Operation)
	return entry, ok
}

// fittingUpTo is the upper end that just keeps the limit, in the unit told.
func (l limit) fittingUpTo(m limited, told quantity.Amount) (string, bool) {
	mass, ok := m.massAt(l.edge(tooHigh))
	had := m.contents.MassOf(l.thing)
	if !ok || mass.Sign() <= 0 || !had.Known() || had.Value().Sign() <= 0 {
		return "", false
	}
	return down(told.Nominal.Times(mass).Over(had.Value()), told), true
}

// shareCause groups what too large a share of a thing brings about.
func shareCause(id string) string { return "share " + id }

// upToBeyondRoom: the upper end of a fill does not fit into its container.
func upToBeyondRoom(s Subject) []diag.Finding {
	var all []perRun
	for _, f := range s.Ledger.Fillings {
		told, ok := isUpTo(f.Operation)
		if f.Operation.Kind != kit.Fill || !ok || !isOverRoom(f) {
			continue
		}
		part := f.Room().Value().Over(f.Volume().Value())
		finding := upToFinding(f.Operation, f.Step, f.Container.ID)
		finding.Cause = roomCause(f.Container.ID)
		finding.Found += ": with its upper end each " + f.Container.String() + " gets " + f.Volume().Show() + ", and has room for " + f.Room().Show()
		finding.Expected = "an upper end that the container has room for"
		finding.Sum = lines(append([]string{"counted is the upper end, " + show(told.High, told.Dimension)}, roomSum(f)...)...)
		finding.Remedies = diag.Fix("write “up to "+down(told.Nominal.Times(part), told)+"”", "use a larger container")
		finding.Also = roomPlaces(f)
		all = append(all, perRun{f.Run, finding})
	}
	return overRuns(s.Kit, all)
}

// isOverRoom says whether a fill is more than its container has room for.
func isOverRoom(f *ledger.Filling) bool {
	room, volume := f.Room(), f.Volume()
	if !room.Known() || !volume.Known() || room.Value().Sign() <= 0 {
		return false
	}
	return volume.Value().Minus(room.Value()).Cmp(room.Value().Times(rounding)) > 0
}

// roomCause groups what too full a container brings about.
func roomCause(id string) string { return "room " + id }
