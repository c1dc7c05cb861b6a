package rules

import (
	"time"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

// An Accepted is a finding that the maker has decided to live with.
type Accepted struct {
	diag.Finding
	// Because is the maker's reason.
	Because string
	// Until says how long it holds: "2027-06-30" (that day included) or "edition 2".
	Until string
}

// String tells it in a line for the end of a check.
func (a Accepted) String() string {
	return a.Rule + " (" + a.About + "): " + a.Found + "; because " + a.Because + ", until " + a.Until
}

// Accept parts the findings into those that are open and those that kit.yaml
// accepts. An entry accepts findings by rule and about; it needs a reason and an
// end. One that has none, is past its end or matches nothing gives a finding of
// its own, and what it spoke of stays open.
func Accept(list diag.List, k *kit.Kit, today time.Time) (open diag.List, accepted []Accepted) {
	if k == nil {
		return list.Sorted(), nil
	}
	matched := map[*kit.Accepted]bool{}
	for _, finding := range list.Sorted() {
		entry := entryFor(finding, k.Accepted)
		switch {
		case entry == nil:
			open = append(open, finding)
		case holds(entry, k, today):
			matched[entry] = true
			accepted = append(accepted, Accepted{finding, entry.Because.Value, untilWhen(entry)})
		default:
			matched[entry] = true
			open = append(open, finding)
		}
	}
	for _, entry := range k.Accepted {
		open = append(open, onEntry(entry, k, today, matched[entry])...)
	}
	return open.Sorted(), accepted
}

// entryFor is the first entry that speaks of a finding, or nil.
func entryFor(finding diag.Finding, entries []*kit.Accepted) *kit.Accepted {
	for _, entry := range entries {
		if entry.Rule.Value == finding.Rule && entry.About.Value == finding.About {
			return entry
		}
	}
	return nil
}

// holds says whether an entry has a reason and its end has not come.
func holds(entry *kit.Accepted, k *kit.Kit, today time.Time) bool {
	return entry.Because.Value != "" && !isExpired(entry, k, today)
}

// isExpired: the last day or edition is over, or none was ever told.
func isExpired(entry *kit.Accepted, k *kit.Kit, today time.Time) bool {
	if !entry.Until.Given() && !entry.Edition.Given() {
		return true
	}
	if entry.Until.Given() && entry.Until.Value < today.Format(time.DateOnly) {
		return true
	}
	return entry.Edition.Given() && entry.Edition.Value < max(1, k.Edition.Value)
}

func untilWhen(entry *kit.Accepted) string {
	switch {
	case entry.Until.Given():
		return entry.Until.Value
	case entry.Edition.Given():
		return "edition " + whole(entry.Edition.Value).String()
	}
	return "no end"
}

// onEntry is what there is to say of an entry itself, one thing at most.
func onEntry(entry *kit.Accepted, k *kit.Kit, today time.Time, matched bool) diag.List {
	var finding diag.Finding
	var rule Rule
	switch {
	case !matched:
		rule, finding = acceptMatchesNothing, matchesNothing(entry)
	case entry.Because.Value == "":
		rule, finding = acceptWithoutReason, withoutReason(entry)
	case isExpired(entry, k, today):
		rule, finding = acceptExpired, expired(entry, k, today)
	default:
		return nil
	}
	finding.Rule, finding.Severity = rule.Name, rule.Severity
	finding.Where, finding.About = entry.Span, entry.Rule.Value
	return diag.List{finding}
}

// told names what an entry accepts: "left-over of pan".
func told(entry *kit.Accepted) string {
	if entry.About.Value == "" {
		return entry.Rule.Value
	}
	return entry.Rule.Value + " of " + entry.About.Value
}
