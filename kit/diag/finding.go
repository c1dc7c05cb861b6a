// Package diag holds findings: what a rule or a reader of files has to say to
// the maker, and how a list of them is printed.
//
// A finding is data. Text for people and JSON for programs are two files beside
// this one; the workbench page shows the same list.
package diag

import (
	"slices"
	"strings"

	"tallyfold/kit/source"
)

// Severity says how much a finding weighs. The zero value is no severity, so
// that a rule which forgets it is caught.
type Severity int

const (
	// MustFix: no booklet is made while it stands, save a marked draft.
	MustFix Severity = iota + 1
	// ShouldFix: a customer will stumble over it.
	ShouldFix
	// WorthKnowing: nothing is wrong yet.
	WorthKnowing
)

// String gives the words printed for people.
func (s Severity) String() string {
	switch s {
	case MustFix:
		return "must fix"
	case ShouldFix:
		return "should fix"
	case WorthKnowing:
		return "worth knowing"
	}
	return "no severity"
}

// A Finding is one thing a rule has to say.
type Finding struct {
	// Rule is the rule's name: lower-case words joined by hyphens.
	Rule     string
	Severity Severity
	// Where is the place that causes it.
	Where source.Span
	// About is the name (key) of what it concerns: a component, tool, vessel, step
	// or claim. A maker accepts a finding by rule and about.
	About string
	// Found and Expected are whole phrases without a full stop. Found begins with
	// "cannot check" where the rule lacks what it needs.
	Found, Expected string
	// Sum shows the arithmetic, a line each. Empty where there is nothing to reckon.
	Sum []string
	// Remedies are ways out, best first, each an order to the maker.
	Remedies []Remedy
	// Also lists the other places that take part.
	Also []Place
	// Cause groups findings that one mistake brings about: those with the same
	// cause are told once, the others under it. Empty stands alone.
	Cause string
	// Follows: it is told under another finding of the same cause, never above it.
	Follows bool
}

// cannotCheck begins what was found where something is missing that the rule needs.
const cannotCheck = "cannot check"

// CannotCheck says whether the finding tells that something could not be checked,
// rather than that it is wrong.
func (f Finding) CannotCheck() bool { return strings.HasPrefix(f.Found, cannotCheck) }

// A Remedy is one way out of a finding.
type Remedy struct {
	// Do says what to do, as an order.
	Do string
	// Then says what follows from it, where that has been worked out.
	Then string
	// Changes are what it changes in the files, where it is so exact that it can be
	// made. None of their places overlap.
	Changes []Change
	// Tried says what came of making the changes and judging the kit anew; "" where
	// that was not done.
	Tried string
}

// A Change puts New in the place of what stands at Where; an empty place is where New
// is put in.
type Change struct {
	Where source.Span
	New   string
}

// A Place is a further place that takes part in a finding.
type Place struct {
	Where source.Span
	// Note says what stands there ("120 g, step 2").
	Note string
}

// Fix is the short way to write remedies that need no consequence told.
func Fix(orders ...string) []Remedy {
	remedies := make([]Remedy, len(orders))
	for i, order := range orders {
		remedies[i] = Remedy{Do: order}
	}
	return remedies
}

// A List is findings in the order they are told.
type List []Finding

// Sorted gives the list worst first, then by place and rule, each finding once.
func (l List) Sorted() List {
	sorted := slices.Clone(l)
	slices.SortStableFunc(sorted, compare)
	return slices.CompactFunc(sorted, func(a, b Finding) bool { return compare(a, b) == 0 && a.Found == b.Found })
}

// compare orders findings by weight, place, rule and what they are about.
func compare(a, b Finding) int {
	switch {
	case a.Severity != b.Severity:
		return int(a.Severity) - int(b.Severity)
	case a.Where.Before(b.Where):
		return -1
	case b.Where.Before(a.Where):
		return 1
	case a.Rule != b.Rule:
		return strings.Compare(a.Rule, b.Rule)
	}
	return strings.Compare(a.About, b.About)
}

// Count says how many findings of one severity the list holds.
func (l List) Count(severity Severity) int {
	n := 0
	for _, f := range l {
		if f.Severity == severity {
			n++
		}
	}
	return n
}

// MustFix says whether something must be fixed before a booklet is made.
func (l List) MustFix() bool { return l.Count(MustFix) > 0 }
