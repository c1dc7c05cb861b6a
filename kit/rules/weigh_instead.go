package rules

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var weighInstead = Rule{
	Name:     "weigh-instead",
	Severity: diag.ShouldFix,
	Sums:     true,
	Title:    "A spoon is too rough a measure for what is packed or allowed",
	Explanation: `A spoon holds a volume, and of a loose powder that may be more or less by weight: the
density in kit.yaml has two ends, and a heaped spoon holds up to two and a half level
ones. Where the light end is below the limit on the share of a mixture, the heavy end
above it, or the heavy end more than what is packed, only a scale will do.

Looked at are amounts told in spoons, cups or measures of the kit's own, of things that
have a density with two ends or are taken in heaped or rounded spoons. All else is
taken as told, so that the spoon alone is to blame. An end that lies within a twentieth
of a limit is no finding.

Weigh it instead, pack more, or put a measure into the box that holds just enough.`,
	Check: func(s Subject) []diag.Finding {
		findings := spoonedBeyondLimits(s)
		for _, beyond := range spoonedBeyondPack(s) {
			if !slices.ContainsFunc(findings, func(f diag.Finding) bool { return f.Where == beyond.Where }) {
				findings = append(findings, beyond)
			}
		}
		return findings
	},
}

// spoonfuls are how many level spoons a spoon may hold that is filled otherwise
// (common practice, no source).
var spoonfuls = map[string][2]quantity.Number{
	"heaped":  {quantity.Ratio(5, 4), quantity.Ratio(5, 2)},
	"rounded": {quantity.Whole(1), quantity.Ratio(7, 4)},
	"scant":   {quantity.Ratio(3, 4), quantity.Whole(1)},
}

// A spooned is all that one thing is taken of by the spoon, in the dimension it is
// packed in: as counted, and the ends that it may have.
type spooned struct {
	last               *ledger.Entry
	nominal, low, high quantity.Number
}

// spoonedFrom adds up the entries of a thing that were told in spoons; ok only where
// their mass or volume spreads.
func spoonedFrom(entries []ledger.Entry) (all spooned, ok bool) {
	for i, e := range entries {
		told, isTold := e.Operation.Phrase.Amount()
		if !isTold || !told.Household || e.Operation.Phrase.Portion != kit.Exactly || told.Bound == quantity.UpTo || !e.Amount.Known() {
			continue
		}
		low, high := e.Amount.Worst()
		if many, is := spoonfuls[told.Fill]; is {
			low, high = low.Times(many[0]), high.Times(many[1])
		}
		all.last = &entries[i]
		all.nominal = all.nominal.Plus(e.Amount.Value())
		all.low, all.high = all.low.Plus(low), all.high.Plus(high)
	}
	return all, all.last != nil && all.low.Less(all.high)
}

// hold tells how much the spoons hold.
func (a spooned) hold(d quantity.Dimension) string { return quantity.ShowRange(a.low, a.high, d) }

func spoonedBeyondPack(s Subject) []diag.Finding {
	var findings []diag.Finding
	for _, b := range s.Ledger.Balances {
		all, ok := spoonedFrom(b.Uses)
		if !ok || b.Left == nil || !b.Left.Known() || b.Left.Value().Sign() < 0 {
			continue // packed-too-little tells a pack that is too small as told
		}
		short := all.high.Minus(all.nominal).Minus(b.Left.Value())
		if short.Cmp(b.Packed.Value().Times(aboutAllows)) <= 0 {
			continue
		}
		finding := spoonFinding(s.Kit, b.Thing, all, b.Dimension)
		finding.Cause = packCause(b.Thing)
		finding.Found += ", and " + b.Packed.Show() + " is packed"
		finding.Expected = "an amount that the pack has in every kitchen"
		finding.Sum = []string{
			"heaviest: " + show(all.high, b.Dimension) + " in all steps, " + show(short, b.Dimension) + " more than is there for it",
		}
		finding.Remedies = append(finding.Remedies, diag.Remedy{
			Do: "pack at least " + up(b.Packed.Value().Plus(short), s.Kit.Component(b.Thing).Packed.Value) + " of " + s.Kit.Called(b.Thing)})
		finding.Also = append(finding.Also, diag.Place{Where: s.Kit.Component(b.Thing).Packed.Span, Note: b.Packed.Show() + " packed"})
		findings = append(findings, finding)
	}
	return findings
}

// isSpooned says whether spoons alone can make a pack too small.
func isSpooned(b *ledger.Balance) bool {
	all, ok := spoonedFrom(b.Uses)
	return ok && b.Packed.Value().Times(aboutAllows).Less(all.high.Minus(all.nominal).Minus(b.Left.Value()))
}

func spoonFinding(k *kit.Kit, thing string, all spooned, d quantity.Dimension) diag.Finding {
	o, name := all.last.Operation, k.Called(thing)
	told, _ := o.Phrase.Amount()
	finding := diag.Finding{
		Where: amountSpan(o), About: thing,
		Found: inStep(all.last.Step) + " tells “" + onOneLine(amountSpan(o)) + "” of " + name + ", which is " + spread(all, d),
	}
	weight := down(all.last.Amount.Value(), quantity.Amount{Dimension: d})
	finding.Remedies = []diag.Remedy{{
		Do:   "weigh it instead: [" + weight + " of " + name + "](" + string(o.Kind) + ":" + o.Target + ")",
		Then: onOneLine(amountSpan(o)) + " may be " + spread(all, d),
	}}
	if density, _ := density(k, thing); density.Given() {
		finding.Also = []diag.Place{{Where: density.Span, Note: "the density, " + density.Value.Written}}
	}
	if _, filled := spoonfuls[told.Fill]; filled {
		finding.Remedies = append(finding.Remedies, diag.Remedy{Do: "tell level spoons"})
	}
	return finding
}

// spread tells the ends of what the last taking holds.
func spread(all spooned, d quantity.Dimension) string {
	one, _ := spoonedFrom([]ledger.Entry{*all.last})
	return one.hold(d)
}

func spoonedBeyondLimits(s Subject) []diag.Finding {
	var all []perRun
	for _, l := range limits(s.Kit) {
		for _, m := range l.mixtures(s) {
			if finding, ok := l.spooned(s, m); ok {
				all = append(all, perRun{m.run, finding})
			}
		}
	}
	return overRuns(s.Kit, all)
}

// spooned holds a limit against the ends of what the spoons of a thing hold.
func (l limit) spooned(s Subject, m limited) (diag.Finding, bool) {
	spoons, way, ends, ok := l.spoonedOut(s, m)
	if !ok {
		return diag.Finding{}, false
	}
	b := s.Ledger.Balance(l.thing)
	finding := spoonFinding(s.Kit, l.thing, spoons, b.Dimension)
	finding.Cause = shareCause(l.thing)
	finding.Found += ", and so " + percent(ends[0]) + " to " + percent(ends[1]) + " of " + m.base
	finding.Expected = l.told.Value.Written
	finding.Sum = lines(l.window(s.Kit, m, way))
	finding.Sum = append(finding.Sum, "as counted: "+m.share.Sum())
	finding.Also = append(finding.Also, diag.Place{Where: l.told.Span, Note: "the limit, " + l.told.Value.Written})
	return finding, true
}

// window tells between which masses the limit allows the thing here.
func (l limit) window(k *kit.Kit, m limited, way side) string {
	if low, high := l.edge(tooLow), l.edge(tooHigh); l.told.Value.Bound == quantity.Exactly && low.Less(high) {
		from, okLow := m.massAt(low)
		to, okHigh := m.massAt(high)
		if okLow && okHigh {
			return "the limit means " + quantity.ShowRange(from, to, quantity.Mass) + " of " + k.Called(l.thing) + " here"
		}
	}
	mass, ok := m.massAt(l.edge(way))
	if !ok || mass.Sign() <= 0 {
		return ""
	}
	word := map[side]string{tooLow: "at least ", tooHigh: "at most "}[way]
	return "the limit means " + word + show(mass, quantity.Mass) + " of " + k.Called(l.thing) + " here"
}

// spoonedOut says whether a share is within its limit as told and outside at an end of
// its spoons; ends are the two shares.
func (l limit) spoonedOut(s Subject, m limited) (spoons spooned, way side, ends [2]quantity.Number, ok bool) {
	b := s.Ledger.Balance(l.thing)
	had := m.contents.MassOf(l.thing)
	if b == nil || !m.share.Known() || !had.Known() || had.Value().Sign() <= 0 || l.outside(m.share.Value()) != within {
		return spoons, within, ends, false
	}
	var here []ledger.Entry
	for _, use := range b.Uses {
		if use.Run == m.run {
			here = append(here, use)
		}
	}
	spoons, ok = spoonedFrom(here)
	if !ok || b.Dimension != quantity.Mass || spoons.nominal.Sign() <= 0 {
		return spoons, within, ends, false
	}
	for i, end := range []quantity.Number{spoons.low, spoons.high} {
		ends[i] = m.shareAt(had.Value(), had.Value().Plus(end.Minus(spoons.nominal)))
	}
	for _, share := range ends {
		if way := l.clearlyOutside(share); way != within {
			return spoons, way, ends, true
		}
	}
	return spoons, within, ends, false
}

// shareAt is what the share would be if the thing had another mass (g).
func (m limited) shareAt(had, has quantity.Number) quantity.Number {
	base := m.mass.Value()
	if m.whole {
		base = base.Plus(has.Minus(had))
	}
	if base.Sign() <= 0 {
		return m.share.Value()
	}
	return has.Over(base)
}

// clearlyOutside leaves out what is within a twentieth of the edge.
func (l limit) clearlyOutside(share quantity.Number) side {
	way := l.outside(share)
	if way == within {
		return within
	}
	edge := l.edge(way)
	return sideOf(edge.Times(aboutAllows).Less(share.Minus(edge).Abs()), way)
}
