package rules

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/handbook"
	"tallyfold/kit/market"
)

var marketCannotTell = Rule{
	Name:     "market-cannot-tell",
	Severity: diag.ShouldFix,
	Title:    "It cannot be told whether a market asks something of the kit",
	Explanation: `Much of the law goes by what a thing is: a toy, a cosmetic, an art material, a product for
children. The program does not guess that from names. Where kit.yaml does not say, the
requirement is neither held against the kit nor passed over: it is told here.

Write what the thing is, yes or no. If in doubt ask somebody who knows: calling a toy no toy
does not make it one.`,
	Check: func(s Subject) []diag.Finding {
		var all []*openQuestion
		for _, r := range s.rulings() {
			if r.Answer != market.CannotTell || isToldOtherwise(s, r) {
				continue
			}
			at := slices.IndexFunc(all, func(q *openQuestion) bool { return q.first.ToTell == r.ToTell })
			if at < 0 {
				all = append(all, &openQuestion{first: r})
				at = len(all) - 1
			}
			all[at].add(r)
		}
		var findings []diag.Finding
		for _, q := range all {
			finding := diag.Finding{
				Where: s.Kit.Markets[0].Span, About: "markets",
				Found:    "cannot check: " + q.first.Why + q.others(),
				Expected: "what settles whether it is asked",
				Sum:      q.asks, Remedies: diag.Fix(q.first.ToTell),
			}
			if c := q.first.Component; c != nil {
				finding.Where, finding.About = c.IDSpan, c.ID
			}
			findings = append(findings, finding)
		}
		return findings
	},
	NotLookedAt: noMarket,
}

// isToldOtherwise: nothing is filled, though a piece names its container; the rules on the
// steps say why.
func isToldOtherwise(s Subject, r market.Ruling) bool {
	return r.Requirement.Of == handbook.OfFilling && r.Filling == nil && slices.ContainsFunc(s.Kit.Pieces, func(p *kit.Piece) bool { return p.In.Given() })
}

// An openQuestion is something untold, of one thing or several, with all that hangs on it.
type openQuestion struct {
	first market.Ruling
	asks  []string
	names []string
}

func (q *openQuestion) add(r market.Ruling) {
	if line := askedBy(r); !slices.Contains(q.asks, line) {
		q.asks = append(q.asks, line)
	}
	if name := r.About(); name != q.first.About() && !slices.Contains(q.names, name) {
		q.names = append(q.names, name)
	}
}

// others names what the same is untold of.
func (q *openQuestion) others() string {
	if len(q.names) == 0 {
		return ""
	}
	return "; nor is it of " + listed(q.names)
}

// askedBy names who asks, what, and by which source.
func askedBy(r market.Ruling) string {
	return r.Pack.Market + ": " + r.Requirement.Asks + " (" + r.Requirement.Source + ")"
}

// noMarket says so where a kit names none.
func noMarket(s Subject) []string {
	if len(s.Kit.Markets) == 0 {
		return []string{"no market is told"}
	}
	return nil
}
