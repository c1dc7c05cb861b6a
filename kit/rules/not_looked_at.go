package rules

import (
	"tallyfold/kit"
)

// untoldFor names the components that lack something, in one phrase.
func untoldFor(what string, s Subject, lacks func(*kit.Component) bool) []string {
	var names []string
	for _, c := range s.Kit.Components {
		if lacks(c) {
			names = append(names, c.String())
		}
	}
	if len(names) == 0 {
		return nil
	}
	return []string{what + listed(names)}
}
