package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"tallyfold/kit/load"
	"tallyfold/kit/proof"
	"tallyfold/kit/rules"
)

// tell explains one rule.
func (o *checkOptions) tell(name string) error {
	if rule, ok := rules.Named(name); ok {
		return o.explanation(rule.Name, rule.Severity.String(), rule.Title, rule.Explanation)
	}
	for _, rule := range proof.ReadingRules() {
		if rule.Name == name {
			return o.explanation(rule.Name, "reading the files", rule.Title, rule.Explanation)
		}
	}
	return fmt.Errorf("there is no rule %q; the rules are: %s", name, strings.Join(namesOf(judgingRules(), proof.ReadingRules()), ", "))
}

func (o *checkOptions) explanation(name, weight, title, text string) error {
	_, err := fmt.Fprintf(o.out, "%s (%s)\n%s\n\n%s\n", name, weight, title, text)
	return err
}

// judgingRules are the rules that a kit is held against when it has been read.
func judgingRules() []rules.Rule { return slices.Concat(rules.All, rules.OnAccepting) }

func namesOf(judging []rules.Rule, reading []load.Rule) []string {
	var names []string
	for _, rule := range judging {
		names = append(names, rule.Name)
	}
	for _, rule := range reading {
		names = append(names, rule.Name)
	}
	return names
}

func completeRules(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return namesOf(judgingRules(), proof.ReadingRules()), cobra.ShellCompDirectiveNoFileComp
}

func completeFolders(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return nil, cobra.ShellCompDirectiveFilterDirs
}
