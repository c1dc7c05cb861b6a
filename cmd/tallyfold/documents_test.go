package main

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/proof"
	"tallyfold/kit/rules"
	"tallyfold/kit/schedule"
)

// SAFETY.md promises a rule for each hazard it lists: each must exist.
func TestSafetyNamesRulesThatExist(t *testing.T) {
	text, err := os.ReadFile("../../SAFETY.md")
	if err != nil {
		t.Fatal(err)
	}
	named := regexp.MustCompile("`([a-z]+(?:-[a-z]+)+)`").FindAllStringSubmatch(string(text), -1)
	if len(named) < 5 {
		t.Fatalf("only %d rules are named", len(named))
	}
	for _, name := range named {
		if !slices.Contains(proof.RuleNames(), name[1]) {
			t.Errorf("SAFETY.md names %q, and there is no such rule", name[1])
		}
	}
}

// Nothing printed may say that a kit meets a law.
func TestNoTextPromisesCompliance(t *testing.T) {
	word := regexp.MustCompile(`(?i)\bcompliant\b|\bcomplies with\b|\bis safe\b|\bsafe to use\b`)
	for _, rule := range rules.All {
		if at := word.FindString(rule.Title + " " + rule.Explanation); at != "" {
			t.Errorf("rule %s says %q", rule.Name, at)
		}
	}
	for _, name := range proof.ReadingRules() {
		if at := word.FindString(name.Title + " " + name.Explanation); at != "" {
			t.Errorf("rule %s says %q", name.Name, at)
		}
	}
}

// The kit that README.md shows is a real one: read from there, it checks clean.
func TestTheKitOfTheReadmeChecksClean(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	folder := fstest.MapFS{
		"kit.yaml":   {Data: []byte(indented(t, string(text), "name: Windowsill lanterns"))},
		"method.md":  {Data: []byte(indented(t, string(text), "## [Melt the wax]"))},
		"trouble.md": {Data: []byte("## [A sunken top](trouble:hole)\n\nA hole beside the wick. Pour in what you kept.\n")},
	}
	k, found := instructions.Open(folder, "lanterns")
	if k != nil {
		l := ledger.Follow(k)
		found = append(found, rules.Check(rules.Subject{Kit: k, Ledger: l, Plan: schedule.Of(k)})...)
	}
	for _, f := range found.Sorted() {
		if f.Severity != diag.WorthKnowing {
			t.Errorf("%s at line %d of %s: %s", f.Rule, f.Where.Position().Line, f.Where.File.Name, f.Found)
		}
	}
}

// indented gives the indented block of a document that begins with a text.
func indented(t *testing.T, document, begins string) string {
	t.Helper()
	_, after, found := strings.Cut(document, "    "+begins)
	if !found {
		t.Fatalf("no block begins with %q", begins)
	}
	lines := []string{begins}
	for i, line := range strings.Split(after, "\n") {
		switch {
		case i == 0:
			lines[0] += line
		case line == "" || strings.HasPrefix(line, "    "):
			lines = append(lines, strings.TrimPrefix(line, "    "))
		default:
			return strings.Join(lines, "\n")
		}
	}
	return strings.Join(lines, "\n")
}
