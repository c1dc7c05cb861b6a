package render

import (
	"fmt"
	"slices"
	"strings"

	"tallyfold/kit/diag"
)

// answers tells what became of each rule. A rule that had nothing to be held
// against was not asked; that is never told as nothing found.
func (r Report) answers() []reportRule {
	var all []reportRule
	for _, rule := range r.Rules {
		answer := r.answer(rule)
		if !rule.Reading && !r.wasFollowed() {
			answer = "not asked"
		}
		all = append(all, reportRule{plainWords(rule.Name), plainWords(rule.Title), answer})
	}
	return all
}

func (r Report) answer(rule Asked) string {
	found, unchecked, accepted := 0, 0, 0
	for _, f := range r.Findings {
		switch {
		case f.Rule != rule.Name:
		case f.CannotCheck():
			unchecked++
		default:
			found++
		}
	}
	for _, a := range r.Accepted {
		if a.Rule == rule.Name {
			accepted++
		}
	}
	var parts []string
	add := func(n int, what string) {
		if n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, what))
		}
	}
	add(found, "found")
	add(accepted, "accepted")
	add(unchecked, "could not be checked")
	switch {
	case len(parts) > 0:
		return strings.Join(parts, ", ")
	case rule.Reading && r.Kit == nil:
		return "nothing found in what could be read"
	case len(rule.NotLookedAt) > 0:
		return "nothing found, as far as it looked"
	}
	return "nothing found"
}

// unchecked tells what could not be checked and why: what a rule said so of, what
// could not be read, and everything where no steps could be followed.
func (r Report) unchecked() []string {
	var all []string
	if !r.wasFollowed() {
		all = append(all, "None of the rules on the steps was asked: there are no steps that could be followed. "+
			"What was found says which file is missing or cannot be read.")
	}
	told := slices.Clone(r.Findings)
	for _, a := range r.Accepted {
		told = append(told, a.Finding)
	}
	unread := 0
	for _, f := range told.Sorted() {
		switch {
		case f.CannotCheck():
			all = append(all, joined(placeWords(f.Where), plainWords(f.Found), f.Sum))
		case f.Severity == diag.MustFix && r.isReading(f.Rule):
			unread++
		}
	}
	if unread > 0 && r.wasFollowed() {
		all = append(all, "What could not be read, as told above, is missing in every sum.")
	}
	return append(all, r.documents()...)
}

// joined is a line of what could not be checked, with what rests on it.
func joined(place, found string, sum []string) string {
	line := found
	if place != "" {
		line = place + ": " + found
	}
	if len(sum) > 0 {
		line += "; " + plainWords(strings.Join(sum, "; "))
	}
	return line
}

func (r Report) isReading(name string) bool {
	for _, rule := range r.Rules {
		if rule.Name == name {
			return rule.Reading
		}
	}
	return false
}

// documents tells the claims that rest on a file, which is not opened.
func (r Report) documents() []string {
	if r.Kit == nil {
		return nil
	}
	var all []string
	for _, claim := range r.Kit.Claims {
		if by := claim.ShownBy.Value; strings.ContainsAny(by, "./") {
			all = append(all, plainWords("The claim “"+claim.Says.Value+"” rests on "+by+", which was not opened."))
		}
	}
	return all
}

// notLookedAt tells what rules passed over in this kit.
func (r Report) notLookedAt() []string {
	if !r.wasFollowed() {
		return nil
	}
	var all []string
	for _, rule := range r.Rules {
		for _, phrase := range rule.NotLookedAt {
			all = append(all, plainWords(rule.Name)+": "+plainWords(phrase))
		}
	}
	return all
}
