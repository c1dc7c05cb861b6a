package faults_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"tallyfold/kit/diag"
	"tallyfold/kit/proof"
	"tallyfold/kit/rules"
	"tallyfold/kit/source"
)

func lineOf(at source.Span) string {
	if !at.Known() {
		return ""
	}
	return fmt.Sprintf("%s:%d", at.File.Name, at.Position().Line)
}

func toldShortly(f diag.Finding) string {
	return f.Rule + " at " + lineOf(f.Where) + ": " + f.Found
}

func sortedKeys(lines map[string]bool) []string { return slices.Sorted(maps.Keys(lines)) }

func oneIf(is bool) int {
	if is {
		return 1
	}
	return 0
}

// faultTable tells recall and false alarms by kind, and every miss.
func faultTable(tallies []tally) string {
	var b strings.Builder
	b.WriteString("# What is found of single faults\n\n" +
		"Written by `UPDATE_GOLDEN=1 go test ./kit/proof/faults`, shown by `make faults`; DEVELOPERS.md tells how to\n" +
		"add a kind. Each kit is one of `examples/`, or a near miss beside a rule, with one fault. False alarms: kits in\n" +
		"which something is told that the fault does not bring about. Told apart: kits in which what it does bring about\n" +
		"is told by itself, and not under its cause. Harmless: the same edit where the sums, reckoned again from the\n" +
		"texts alone, say that nothing follows from it; it must be passed over in silence.\n\n" +
		"| kind of fault | rule meant | kits | found | at its line | right sum | false alarms | told apart | harmless, silent |\n" +
		"|---|---|---|---|---|---|---|---|---|\n")
	var all tally
	for _, one := range tallies {
		fmt.Fprintf(&b, "| %s | `%s` | %d | %s | %s | %s | %d | %d | %s |\n", one.kind.name, one.kind.rule, one.kits,
			share(one.found, one.kits), share(one.placed, one.kits), share(one.summed, one.kits), one.falseAlarms, one.apart, ofHarmless(one))
		all.kits, all.found, all.placed, all.summed = all.kits+one.kits, all.found+one.found, all.placed+one.placed, all.summed+one.summed
		all.harmless, all.silent, all.falseAlarms = all.harmless+one.harmless, all.silent+one.silent, all.falseAlarms+one.falseAlarms
		all.apart += one.apart
		all.misses = append(all.misses, one.misses...)
	}
	fmt.Fprintf(&b, "| all %d kinds | | %d | %s | %s | %s | %d | %d | %s |\n", len(tallies), all.kits,
		share(all.found, all.kits), share(all.placed, all.kits), share(all.summed, all.kits), all.falseAlarms, all.apart, ofHarmless(all))
	if rest := unmeant(tallies); len(rest) > 0 {
		b.WriteString("\n## Rules that no kind means yet\n\n" + strings.Join(rest, ", ") + "\n")
	}
	if len(all.misses) > 0 {
		b.WriteString("\n## Missed so far\n\n")
		for _, miss := range all.misses {
			b.WriteString("- " + miss + "\n")
		}
	}
	return b.String()
}

func share(n, of int) string {
	if n == of {
		return "all"
	}
	return fmt.Sprintf("%d (%d %%)", n, 100*n/of)
}

func ofHarmless(one tally) string {
	if one.harmless == 0 {
		return ""
	}
	return fmt.Sprintf("%d of %d", one.silent, one.harmless)
}

// unmeant are the rules that none of the kinds is for.
func unmeant(tallies []tally) []string {
	var rest []string
	for _, rule := range append(proof.RuleNames(), onAccepting()...) {
		if !slices.ContainsFunc(tallies, func(one tally) bool { return one.kind.rule == rule }) {
			rest = append(rest, "`"+rule+"`")
		}
	}
	return rest
}

func onAccepting() []string {
	var names []string
	for _, rule := range rules.OnAccepting {
		names = append(names, rule.Name)
	}
	return names
}
