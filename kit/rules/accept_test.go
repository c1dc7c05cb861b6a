package rules_test

import (
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"tallyfold/instructions"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/rules"
	"tallyfold/kit/schedule"
)

// acceptKit leaves a fifth of the oil in its bottle: a left-over about oil.
const acceptKit = `name: Quay oil
edition: 3
makes: 1 jar
components:
  oil: {name: Almond oil, packed: 100 mL, density: 0.91 g/mL}
  jar: {name: Jar, packed: 1, container: {brimful: 200 mL}}
tools:
  bowl: {name: Bowl, from: customer, essential: true, holds: 1 L, residue: 1 g}
accept:
  - ENTRY
`

const acceptMethod = `## [Mix](step:mixing?in=bowl)

Pour [80 mL of oil](take:oil) into [the bowl](vessel:bowl).

## [Fill](step:filling?in=bowl)

Fill [the jar](fill:jar) in [5 minutes](work:).
`

func accepting(t *testing.T, entry string, day time.Time) (open diag.List, accepted []diag.Accepted) {
	t.Helper()
	return accept(t, strings.Replace(acceptKit, "ENTRY", entry, 1), acceptMethod, day)
}

func accept(t *testing.T, kitYAML, method string, day time.Time) (open diag.List, accepted []diag.Accepted) {
	t.Helper()
	files := fstest.MapFS{"kit.yaml": {Data: []byte(kitYAML)}, "method.md": {Data: []byte(method)}}
	k, reading := instructions.Open(files, "kit")
	if k == nil {
		t.Fatalf("cannot be read:\n%s", told(reading))
	}
	found := rules.Check(rules.Subject{Kit: k, Ledger: ledger.Follow(k), Plan: schedule.Of(k)})
	return rules.Accept(append(reading, found...), k, day)
}

func TestAccepting(t *testing.T) {
	for _, c := range []struct {
		why, entry string
		open       string // rules that stay open, worst first
		accepted   int
	}{
		{"seen as something else", "{rule: left-over, about: oil, because: for a second try, until: 2026-02-01, seen: 5 mL}", "accept-figures-changed left-over", 0},
		{"whatever it says", "{rule: left-over, about: oil, because: for a second try, until: 2026-02-01}", "accept-without-figures", 1},
		{"a day to come", "{rule: left-over, about: oil, because: for a second try, until: 2026-02-01, seen: 20 mL}", "", 1},
		{"today is the last day", "{rule: left-over, about: oil, because: for a second try, until: 2026-01-15, seen: 20 mL}", "", 1},
		{"yesterday was the last day", "{rule: left-over, about: oil, because: for a second try, until: 2026-01-14}", "accept-expired left-over", 0},
		{"this edition is the last", "{rule: left-over, about: oil, because: for a second try, edition: 3, seen: 20 mL}", "", 1},
		{"the edition before was the last", "{rule: left-over, about: oil, because: for a second try, edition: 2}", "accept-expired left-over", 0},
		{"a day to come, but an edition past", "{rule: left-over, about: oil, because: for a second try, until: 2026-02-01, edition: 2}", "accept-expired left-over", 0},
		{"another thing", "{rule: left-over, about: jar, because: for a second try, edition: 3}", "left-over accept-matches-nothing", 0},
		{"another rule", "{rule: no-amount, about: oil, because: for a second try, edition: 3}", "left-over accept-matches-nothing", 0},
	} {
		open, accepted := accepting(t, c.entry, today)
		var names []string
		for _, finding := range open {
			checkFinding(t, finding)
			names = append(names, finding.Rule)
		}
		if got := inOrder(names); got != inOrder(strings.Fields(c.open)) || len(accepted) != c.accepted {
			t.Errorf("%s: open %q, accepted %d; want %q, %d", c.why, got, len(accepted), c.open, c.accepted)
		}
	}
}

// inOrder joins names so that only which they are matters.
func inOrder(names []string) string {
	counts := map[string]int{}
	for _, name := range names {
		counts[name]++
	}
	var all []string
	for _, rule := range everyRule() {
		for range counts[rule.Name] {
			all = append(all, rule.Name)
		}
		delete(counts, rule.Name)
	}
	for name := range counts {
		all = append(all, name+"?")
	}
	return strings.Join(all, " ")
}

func TestAcceptedSaysWhyAndUntilWhen(t *testing.T) {
	_, accepted := accepting(t, "{rule: left-over, about: oil, because: for a second try, until: 2026-02-01}", today)
	if len(accepted) != 1 {
		t.Fatalf("want one accepted finding, got %v", accepted)
	}
	var told strings.Builder
	if err := diag.WriteAccepted(&told, accepted, diag.Style{}); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"left-over", "oil", "for a second try", "2026-02-01"} {
		if !strings.Contains(told.String(), want) {
			t.Errorf("%q does not tell %q", told.String(), want)
		}
	}
}

// With a day and an edition it is told which of the two is over, with its sum.
func TestExpiredSaysWhichEndIsOver(t *testing.T) {
	for _, c := range []struct{ entry, found, sum string }{
		{"until: 2026-01-14, edition: 3", "was accepted until 2026-01-14, which is over", "judged as of 2026-01-15"},
		{"until: 2026-02-01, edition: 2", "was accepted until edition 2, which is over", "the kit is edition 3"},
	} {
		open, _ := accepting(t, "{rule: left-over, about: oil, because: for a second try, "+c.entry+"}", today)
		for _, f := range open {
			if f.Rule == "accept-expired" && (!strings.HasSuffix(f.Found, c.found) || f.Sum[0] != c.sum) {
				t.Errorf("%s: %q, %q", c.entry, f.Found, f.Sum)
			}
		}
	}
	_, accepted := accepting(t, "{rule: left-over, about: oil, because: for a second try, until: 2026-02-01, edition: 3}", today)
	if len(accepted) != 1 || accepted[0].Until != "2026-02-01 or edition 3, whichever is over first" {
		t.Errorf("accepted %v", accepted)
	}
}

func TestNoKitAcceptsNothing(t *testing.T) {
	list := diag.List{{Rule: "left-over", Severity: diag.MustFix, Found: "a kit that could not be read"}}
	if open, accepted := rules.Accept(list, nil, today); len(open) != 1 || len(accepted) != 0 {
		t.Errorf("want the finding open, got %v and %v", open, accepted)
	}
}
