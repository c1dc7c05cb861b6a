package rules_test

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/rules"
	"tallyfold/kit/schedule"
)

// One kit written three times, wholly in one language each, checks clean, save what
// cannot be checked in the language, and its
// ledger and times are the same to the last digit.
func TestTwinsInThreeLanguages(t *testing.T) {
	want := ""
	for _, tag := range []string{"en", "de", "fr"} {
		folder := filepath.Join("testdata", "practice", "twin-"+tag)
		open, _ := judged(t, folder)
		for _, finding := range open {
			// Some rules on wording keep their lists of words in English only so far.
			if finding.About != "language" || !strings.HasPrefix(finding.Found, "cannot check: no list of words") {
				t.Errorf("%s: want no finding, got:\n%s", tag, told(diag.List{finding}))
			}
		}
		s, _ := subject(t, folder)
		got := account(s)
		if want == "" {
			want = got
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s differs from its English twin:\n%s", tag, diff)
		}
	}
	if strings.Count(want, "\n") < 30 {
		t.Errorf("the account is too short to show anything:\n%s", want)
	}
}

// The translations of an example, followed instead of its method, have its ledger and
// its times to the last digit.
func TestTranslationsOfAnExampleHaveItsLedger(t *testing.T) {
	s, _ := subject(t, filepath.Join("..", "..", "examples", "drawer-sachets"))
	if len(s.Kit.Translations) < 2 {
		t.Fatalf("%d translations", len(s.Kit.Translations))
	}
	for _, translation := range s.Kit.Translations {
		k := *s.Kit
		k.Method = translation.Method
		got := account(rules.Subject{Kit: &k, Ledger: ledger.Follow(&k), Plan: schedule.Of(&k)})
		if diff := cmp.Diff(account(s), got); diff != "" {
			t.Errorf("%s: %s", translation.Language, diff)
		}
	}
}

// account writes everything that was reckoned of a kit with all digits and without a
// word of the maker's.
func account(s rules.Subject) string {
	var b strings.Builder
	figure := func(f *ledger.Figure) string {
		if f == nil || !f.Known() {
			return "unknown"
		}
		low, high := f.Worst()
		return fmt.Sprintf("%v (%v to %v)", f.Value().Rat(), low.Rat(), high.Rat())
	}
	for _, e := range s.Ledger.Entries {
		fmt.Fprintf(&b, "%s %s %s: %s from %q to %q %s at %s\n", e.Step.ID, e.Operation.Kind, e.Move, e.Thing, e.From, e.To, figure(e.Amount), figure(e.Temperature))
	}
	for _, balance := range s.Ledger.Balances {
		fmt.Fprintf(&b, "%s packed %s used %s left %s\n", balance.Thing, figure(balance.Packed), figure(balance.Used), figure(balance.Left))
	}
	for _, f := range s.Ledger.Fillings {
		fmt.Fprintf(&b, "filled %d of %s with %s, %s free\n", f.Count, f.Container.ID, figure(f.Mass()), figure(f.Free()))
	}
	for _, r := range s.Ledger.Remainders {
		fmt.Fprintf(&b, "remains %s\n", figure(r.Mass()))
	}
	for _, line := range s.Plan.Lines {
		fmt.Fprintf(&b, "%s starts %s, work %s, wait %s, beside %s\n", line.Step.ID, figure(line.Start), figure(line.Work), figure(line.Wait), figure(line.Beside))
	}
	fmt.Fprintf(&b, "work %s, in all %s\n", figure(s.Plan.HandsOn), figure(s.Plan.Total))
	return b.String()
}
