package rules

import (
	"strings"
	"time"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

// Accept parts the findings into those that are open and those that kit.yaml
// accepts. An entry accepts findings by rule and about; it needs a reason and an
// end. One that has none, is past its end, matches nothing or was accepted on other
// figures gives a finding of its own, and what it spoke of stays open.
func Accept(list diag.List, k *kit.Kit, today time.Time) (open diag.List, accepted []diag.Accepted) {
	if k == nil {
		return list.Sorted(), nil
	}
	matched := map[*kit.Accepted]bool{}
	for _, finding := range list.Sorted() {
		entry := entryFor(finding, k.Accepted)
		switch {
		case entry == nil:
			open = append(open, finding)
		case holds(entry, k, today) && !isAsSeen(entry, finding):
			matched[entry] = true
			open = append(open, finding, onFigures(acceptFiguresChanged, figuresChanged(entry, finding), entry))
		case holds(entry, k, today):
			if !matched[entry] && !entry.Seen.Given() {
				open = append(open, onFigures(acceptWithoutFigures, withoutFigures(k, entry, finding), entry))
			}
			matched[entry] = true
			accepted = append(accepted, diag.Accepted{
				Finding: finding, Because: entry.Because.Value, Until: untilWhen(entry), Entry: entry.Span,
			})
		default:
			matched[entry] = true
			open = append(open, finding)
		}
	}
	hidden := open.MustFix()
	for _, entry := range k.Accepted {
		if !matched[entry] && (hidden || isMisread(entry, list)) {
			continue // what it speaks of may come back once that is put right; or a slip in it has been told
		}
		open = append(open, onEntry(entry, k, today, matched[entry])...)
	}
	return open.Sorted(), accepted
}

// isMisread says whether some finding is about the entry itself.
func isMisread(entry *kit.Accepted, list diag.List) bool {
	for _, finding := range list {
		if entry.Span.Contains(finding.Where) {
			return true
		}
	}
	return false
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

// isAsSeen says whether a finding still says what it said when it was accepted.
func isAsSeen(entry *kit.Accepted, finding diag.Finding) bool {
	squeeze := func(text string) string { return strings.Join(strings.Fields(text), " ") }
	return strings.Contains(squeeze(finding.Found), squeeze(entry.Seen.Value))
}

// onFigures completes what is said of the figures of an entry.
func onFigures(rule Rule, finding diag.Finding, entry *kit.Accepted) diag.Finding {
	finding.Rule, finding.Severity = rule.Name, rule.Severity
	finding.Where, finding.About = entry.Span, entry.Rule.Value
	return finding
}

// isExpired: the last day or edition is over, or none was ever told.
func isExpired(entry *kit.Accepted, k *kit.Kit, today time.Time) bool {
	if !entry.Until.Given() && !entry.Edition.Given() {
		return true
	}
	return isPast(entry, today) || entry.Edition.Given() && entry.Edition.Value < max(1, k.Edition.Value)
}

// untilWhen says how long an entry holds. With a day and an edition, both must not
// be over.
func untilWhen(entry *kit.Accepted) string {
	switch {
	case entry.Until.Given() && entry.Edition.Given():
		return entry.Until.Value + " or edition " + whole(entry.Edition.Value).String() + ", whichever is over first"
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
