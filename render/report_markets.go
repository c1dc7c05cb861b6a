package render

import (
	"strings"
	"time"

	"tallyfold/kit/handbook"
	"tallyfold/kit/market"
)

// reportMarket is one market with what it asks and what came of that.
type reportMarket struct {
	Name, LookedAt, NotCovered string
	Rows                       []reportRequirement
}

type reportRequirement struct{ Asks, Of, Answer, Source string }

// markets tells what each market of the kit asks: what is printed, what is missing, what is
// left to the maker, what cannot be told. What is not asked is not listed.
func (r Report) markets() []reportMarket {
	if r.Kit == nil || r.Ledger == nil {
		return nil
	}
	var all []reportMarket
	for _, said := range r.Kit.Markets {
		pack, known := handbook.PackFor(said.Value)
		if !known {
			all = append(all, reportMarket{Name: plainWords(said.Value), NotCovered: "everything: there are no requirements for it, and nothing was looked at"})
			continue
		}
		one := reportMarket{
			Name: plainWords(pack.Market + ", " + pack.Name), LookedAt: pack.LookedAt.Format(time.DateOnly), NotCovered: plainWords(pack.NotCovered),
		}
		if pack.Old(r.AsOf) {
			one.LookedAt += ", more than a year ago"
		}
		for _, ruling := range market.Against(pack, r.Kit, r.Ledger) {
			if ruling.Answer != market.NotAsked {
				one.add(ruling)
			}
		}
		all = append(all, one)
	}
	return all
}

// add puts a ruling to those of its requirement that came to the same.
func (m *reportMarket) add(ruling market.Ruling) {
	row := reportRequirement{
		Asks: plainWords(ruling.Requirement.Asks), Of: plainWords(ruling.About()), Answer: plainWords(answered(ruling)),
		Source: plainWords(ruling.Requirement.Source + ", of " + ruling.Requirement.Dated + "; " + ruling.Requirement.Known),
	}
	for i := range m.Rows {
		if known := &m.Rows[i]; known.Asks == row.Asks && known.Answer == row.Answer && known.Source == row.Source {
			known.Of = strings.Trim(known.Of+", "+row.Of, ", ")
			return
		}
	}
	m.Rows = append(m.Rows, row)
}

func answered(r market.Ruling) string {
	if r.Answer == market.CannotTell {
		return "cannot be told: " + r.Why
	}
	var parts []string
	for _, missing := range r.Missing {
		parts = append(parts, "missing: "+missing.Found)
	}
	if len(r.Missing) == 0 && len(r.Requirement.On) > 0 {
		var places []string
		for _, place := range r.Requirement.On {
			places = append(places, string(place))
		}
		parts = append(parts, "told for: "+strings.Join(places, ", "))
	}
	if len(r.Requirement.Least) > 0 {
		parts = append(parts, "the tolerance of the pack was held against the table; the average was not weighed")
	}
	if r.Requirement.Yours != "" {
		parts = append(parts, "left to the maker: "+r.Requirement.Yours)
	}
	if len(parts) == 0 {
		parts = append(parts, "the facts that it needs are told")
	}
	return strings.Join(parts, "; ")
}
