// Package rules judges a kit: what a stranger, an inspector and a reviewer would
// find in it later, the maker is told now.
//
// A rule reads a kit, its ledger and its plan of time. It opens no file, looks at
// no clock and knows no other rule. Each has a file of its own, called like the
// rule, and a folder in testdata with a kit that it fails and one that comes near
// and must stay silent. All lists them.
//
// How much a finding weighs: what sends a customer wrong must be fixed. Where a
// rule goes by words rather than figures, or nothing but waste follows, its
// finding should be fixed. What cannot be checked is told, never passed over; it
// weighs as much as what it might hide.
//
// The other files hold what several rules share: runs.go tells a finding once for
// all runs, measure.go finds amounts that can be weighed, reading.go, orders.go,
// ends.go and words_*.go read prose, wording.go its sentences, tellings.go the amounts
// in it, things.go names things, drained.go and past.go say why a vessel runs dry,
// carried.go follows what clings to one, backing.go has the figures behind claims,
// demands.go what a step asks of people, not_looked_at.go names what a rule had to pass
// over, causes.go puts what follows under its cause, accept.go sets aside what a maker has
// accepted, pairs.go finds amounts told in two units, gauges.go what a kit has to measure
// with.
package rules

import (
	"sync"
	"time"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/hazard"
	"tallyfold/kit/ledger"
	"tallyfold/kit/market"
	"tallyfold/kit/schedule"
)

// A Subject is what rules judge.
type Subject struct {
	Kit    *kit.Kit
	Ledger *ledger.Ledger
	Plan   schedule.Plan
	// Today is the day that is judged as of. The zero time is no day: what goes by one is
	// then not looked at.
	Today time.Time

	shared *shared
}

// shared is what several rules ask for, reckoned once for all of them.
type shared struct {
	hazards func() []hazard.Action
	rulings func() []market.Ruling
}

// sharing is the subject with what its rules share.
func (s Subject) sharing() Subject {
	s.shared = &shared{
		hazards: sync.OnceValue(func() []hazard.Action { return hazard.In(s.Kit, s.Ledger) }),
		rulings: sync.OnceValue(func() []market.Ruling { return market.Rulings(s.Kit, s.Ledger) }),
	}
	return s
}

// hazards are the actions of the steps that can hurt someone.
func (s Subject) hazards() []hazard.Action {
	if s.shared == nil {
		s = s.sharing()
	}
	return s.shared.hazards()
}

// rulings are what the markets of the kit ask.
func (s Subject) rulings() []market.Ruling {
	if s.shared == nil {
		s = s.sharing()
	}
	return s.shared.rulings()
}

// A Rule is one thing that can be wrong with a kit.
type Rule struct {
	// Name in lower-case words joined by hyphens. It never changes its meaning.
	Name string
	// Severity of its findings where a finding does not say another.
	Severity diag.Severity
	// Sums says that it adds up over steps, so that an action which is lost before
	// may mislead it: what it finds then is told under the finding of that.
	Sums bool
	// Title says in one line what is wrong.
	Title string
	// Explanation says why it matters and how to put it right, in paragraphs.
	Explanation string
	// Check gives the findings. Name and Severity need not be filled in.
	Check func(Subject) []diag.Finding
	// NotLookedAt tells what the rule passes over because kit.yaml may leave a figure
	// out, in phrases such as "no limit of heat is told for Jar". A report of the
	// check shows it, so that nothing found is not read as all looked at. Nil for a
	// rule that has what it needs in every kit, or whose findings say what is missing.
	NotLookedAt func(Subject) []string
}

// Check holds all rules against a kit: worst first, each finding once.
func Check(s Subject) diag.List {
	s = s.sharing()
	var list diag.List
	for _, rule := range All {
		list = append(list, rule.check(s)...)
	}
	tellCauses(s, list)
	return list.Sorted()
}

func (r Rule) check(s Subject) diag.List {
	findings := r.Check(s)
	for i := range findings {
		findings[i].Rule = r.Name
		if findings[i].Severity == 0 {
			findings[i].Severity = r.Severity
		}
	}
	return findings
}

// Named finds a rule by its name, those on accepted findings included.
func Named(name string) (Rule, bool) {
	for _, list := range [][]Rule{All, OnAccepting} {
		for _, rule := range list {
			if rule.Name == name {
				return rule, true
			}
		}
	}
	return Rule{}, false
}
