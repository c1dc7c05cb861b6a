package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

var lidsAndLabels = Rule{
	Name:     "lids-and-labels",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "Lids, labels, wicks or tags are not as many as what they go with",
	Explanation: `Six jars and five lids: the sixth candle gathers dust, and its maker writes to ask.

A component with “one for each: jar” is counted against the jars that the steps fill, or
against the count of the kind of piece it names: what is packed, and where links take or
use it, what they take. A told spare should be beyond that number; more than that which
no link uses should be fixed.

Lids, caps, stoppers, corks and wicks are counted without that key too where a kit fills
one kind of container. That goes by the last word of their names, so it should be fixed.

Pack as many as there are pieces, and a spare where one is easily lost.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, c := range s.Kit.Components {
			if c.OneForEach.Given() && c.Packed.Value.Dimension == quantity.Count {
				findings = append(findings, pairedCounts(s, c)...)
			}
		}
		return append(findings, unpairedClosures(s)...)
	},
	NotLookedAt: func(s Subject) []string {
		for _, c := range s.Kit.Components {
			if c.OneForEach.Given() {
				return nil
			}
		}
		return []string{"no component says that there is one for each"}
	},
}

// A partner is what a component goes with, one to each.
type partner struct {
	name  string
	count quantity.Number
	also  []diag.Place
}

// partnerOf counts the containers filled or the pieces claimed under a key.
func partnerOf(s Subject, key string) (p partner, ok bool) {
	if piece := s.Kit.Piece(key); piece != nil && piece.Count.Given() {
		return partner{piece.String(), piece.Count.Value.Nominal, []diag.Place{{Where: piece.Count.Span, Note: piece.Count.Value.Written + " pieces"}}}, true
	}
	c := s.Kit.Component(key)
	if c == nil || c.Container == nil {
		return p, false
	}
	count, also := fillingsOf(s, c, "")
	if count == 0 {
		if !c.Packed.Given() {
			return p, false
		}
		return partner{c.String(), c.Packed.Value.Nominal.Minus(c.Spare.Value.Nominal), []diag.Place{{Where: c.Packed.Span, Note: c.Packed.Value.Written + " packed"}}}, true
	}
	return partner{c.String(), whole(count), also}, true
}

func pairedCounts(s Subject, c *kit.Component) []diag.Finding {
	p, ok := partnerOf(s, c.OneForEach.Value)
	if !ok {
		return nil
	}
	packed, spare := c.Packed.Value.Nominal, c.Spare.Value.Nominal
	var used quantity.Number
	b := s.Ledger.Balance(c.ID)
	isUsed := b != nil && len(b.Uses) > 0 && b.Used.Known()
	if isUsed {
		used = b.Used.Value()
	}
	n := p.count
	base := diag.Finding{Where: c.Packed.Span, About: c.ID, Cause: packCause(c.ID), Also: append([]diag.Place{{Where: c.OneForEach.Span, Note: "one for each"}}, p.also...)}
	switch {
	case packed.Less(n):
		return []diag.Finding{tooFew(base, c, p, packed, "is packed")}
	case isUsed && used.Less(n):
		base.Where, base.Cause = amountSpan(b.Uses[0].Operation), ""
		return []diag.Finding{tooFew(base, c, p, used, "is used by the steps")}
	case isUsed && n.Less(used):
		base.Where = amountSpan(b.Uses[0].Operation)
		base.Follows = b.Left.Known() && b.Left.Value().Sign() < 0 // told first by packed-too-little
		base.Severity = diag.ShouldFix
		base.Found = c.String() + ": the steps use " + used.String() + " for " + n.String() + " of " + p.name
		base.Expected = "one for each, " + n.String()
		base.Remedies = diag.Fix("use "+n.String()+" in the steps", "take “one for each” out, if more than one goes with each")
		return []diag.Finding{base}
	case packed.Minus(spare).Less(n):
		base.Severity = diag.ShouldFix
		base.Found = c.String() + ": " + packed.String() + " packed, of which " + spare.String() + " to spare, and " + n.String() + " of " + p.name + " need one"
		base.Expected = "a spare beyond one for each"
		base.Sum = []string{packed.String() + " − " + spare.String() + " = " + packed.Minus(spare).String() + " for " + n.String()}
		base.Remedies = diag.Fix("pack "+n.Plus(spare).String(), "tell a smaller spare")
		return []diag.Finding{base}
	case !isUsed && n.Less(packed.Minus(spare)):
		more := packed.Minus(spare).Minus(n)
		base.Severity = diag.ShouldFix
		base.Found = c.String() + ": " + packed.String() + " packed for " + n.String() + " of " + p.name + ", " + more.String() + " too many"
		base.Expected = "one for each, and a told spare"
		base.Remedies = diag.Fix("pack "+n.Plus(spare).String(), "write “spare: "+spare.Plus(more).String()+"” under "+c.ID+" in kit.yaml")
		return []diag.Finding{base}
	}
	return nil
}

func tooFew(f diag.Finding, c *kit.Component, p partner, had quantity.Number, how string) diag.Finding {
	short := p.count.Minus(had)
	f.Found = c.String() + ": " + had.String() + " " + strings.Replace(how, "is", isAre(had), 1) + " for " + p.count.String() + " of " + p.name + ", " + short.String() + " too few"
	f.Expected = "one for each, " + p.count.String()
	f.Sum = []string{p.count.String() + " − " + had.String() + " = " + short.String()}
	f.Remedies = diag.Fix("pack and use "+p.count.String(), "make "+short.String()+" fewer of "+p.name)
	return f
}

func isAre(n quantity.Number) string {
	if n.Equal(quantity.Whole(1)) {
		return "is"
	}
	return "are"
}

// closures are last words of names of which every container needs one.
var closures = []string{"lid", "cap", "stopper", "cork", "wick"}

// closureOf is the word of a name that says it is a closure or a wick, or "".
func closureOf(c *kit.Component) string {
	if noun := singular(headNoun(c.Name)); c.Container == nil && !c.Optional.Value && slices.Contains(closures, noun) {
		return noun
	}
	return ""
}

// unpairedClosures counts closures that name no partner, all of one word together.
func unpairedClosures(s Subject) []diag.Finding {
	only := onlyFilled(s)
	if only == nil || language(s.Kit) != "en" {
		return nil
	}
	n, also := fillingsOf(s, only, "")
	var findings []diag.Finding
	for _, word := range closures {
		var total quantity.Number
		var where source.Span
		about, counted := "", false
		for _, c := range s.Kit.Components {
			if closureOf(c) != word {
				continue
			}
			if c.OneForEach.Given() || c.Packed.Value.Dimension != quantity.Count {
				counted = false
				break
			}
			counted, where, about = true, c.Packed.Span, c.ID
			total = total.Plus(c.Packed.Value.Nominal)
		}
		if counted && total.Less(whole(n)) {
			findings = append(findings, diag.Finding{
				Severity: diag.ShouldFix, Where: where, About: about, Cause: packCause(about),
				Found:    total.String() + " of “" + word + "” packed, and " + whole(n).String() + " of " + only.String() + " filled",
				Expected: "a " + word + " for each",
				Sum:      []string{whole(n).String() + " − " + total.String() + " = " + whole(n).Minus(total).String() + " too few"},
				Remedies: diag.Fix("pack "+whole(n).String(), "write “one for each: …” under "+about+" in kit.yaml, if it goes with something else"),
				Also:     also,
			})
		}
	}
	return findings
}

// onlyFilled is the one kind of container that steps fill, nil where there are more.
func onlyFilled(s Subject) *kit.Component {
	var only *kit.Component
	for _, f := range s.Ledger.Fillings {
		if only != nil && f.Container != only {
			return nil
		}
		only = f.Container
	}
	return only
}
