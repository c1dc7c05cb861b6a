package market

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/ledger"
)

// A Statement is words that have to be read at a place, whichever markets ask for them.
type Statement struct {
	// Text is in the words of the law, in English; "" where Word or Hazards is told instead.
	Text string
	// Word names the booklet's word for it.
	Word string
	// Hazards: it is what the pack's own hazards are.
	Hazards bool
	// Component or Filling is what it is on, as in a Ruling.
	Component *kit.Component
	Filling   *ledger.Filling
	// Markets ask for it.
	Markets []string
	// TypeHeight is the least height of its letters in mm, 0 for none of its own.
	TypeHeight float64
}

// signalled are the beginnings of statements that warn.
var signalled = []string{"DANGER", "WARNING", "CAUTION", "Caution—", "Warning—"}

// Warns says whether the alert sign belongs before it: it begins with a signal word. Where
// the booklet has the words (Word), the requirement is one that warns.
func (s Statement) Warns() bool {
	return s.Word != "" || slices.ContainsFunc(signalled, func(word string) bool { return strings.HasPrefix(s.Text, word) })
}

// Statements are the words that a place has to bear, each once for each thing that it is on,
// in the order of the markets.
func Statements(k *kit.Kit, l *ledger.Ledger, place handbook.Place) []Statement {
	var all []Statement
	for _, r := range Rulings(k, l) {
		if !r.IsOn(place) || !r.Prints() {
			continue
		}
		one := Statement{
			Text: r.Says, Word: r.Requirement.Word, Hazards: r.Requirement.Tells != "",
			Component: r.Component, Filling: r.Filling, TypeHeight: r.Requirement.TypeHeight,
		}
		at := slices.IndexFunc(all, func(other Statement) bool { return one.sameAs(other) })
		if at < 0 {
			at = len(all)
			all = append(all, one)
		}
		if !slices.Contains(all[at].Markets, r.Pack.Market) {
			all[at].Markets = append(all[at].Markets, r.Pack.Market)
		}
	}
	return all
}

func (s Statement) sameAs(other Statement) bool {
	return s.Text == other.Text && s.Word == other.Word && s.Hazards == other.Hazards && s.Component == other.Component && s.Filling == other.Filling
}
