package proof_test

import (
	"strings"
	"testing"

	"tallyfold/kit/diag"
)

// byRule gives the first finding of a rule.
func byRule(t *testing.T, list diag.List, rule string) diag.Finding {
	t.Helper()
	for _, f := range list {
		if f.Rule == rule {
			return f
		}
	}
	t.Fatalf("no finding of %s in %v", rule, list)
	return diag.Finding{}
}

// A link that is lost misleads the sums further down, and these are told under it.
// What was wrong before it, and what goes by words, is told by itself.
func TestSumsFollowALostLink(t *testing.T) {
	method := strings.ReplaceAll(pouring, "FILL", "180 g")
	method = strings.Replace(method, "Allow [10 minutes]", "Add [20 g of it](tkae:wax) and a splash of oil. Allow [10 minutes]", 1)
	method = strings.Replace(method, "[550 g of wax]", "[500 g of wax]", 1)
	p := of(strings.ReplaceAll(candles, "PACKED", "400 g"), method)
	lost := byRule(t, p.Findings, "unreadable-link")
	if lost.Cause == "" {
		t.Fatal("nothing is told under the lost link")
	}
	if short := byRule(t, p.Findings, "taken-from-empty"); short.Cause != lost.Cause || !short.Follows {
		t.Errorf("the jug runs short and is not told under the lost link: %+v", short)
	}
	if vague := byRule(t, p.Findings, "vague-amount"); vague.Cause != "" {
		t.Errorf("a vague word is told under the lost link: %+v", vague)
	}
	if lost.Follows {
		t.Error("the cause itself follows")
	}
}

// What is found before the step of the lost link does not rest on it.
func TestWhatStandsBeforeALostLinkDoesNotFollow(t *testing.T) {
	method := strings.ReplaceAll(pouring, "FILL", "180 g")
	method = strings.Replace(method, "[550 g of wax]", "[550 g (1 kg) of wax]", 1)
	method = strings.Replace(method, "which takes [10 minutes](work:)", "which takes [10 minutes](wrok:)", 1)
	p := of(strings.ReplaceAll(candles, "PACKED", "560 g"), method)
	byRule(t, p.Findings, "unreadable-link")
	if told := byRule(t, p.Findings, "typed-amount-disagrees"); told.Cause != "" {
		t.Errorf("told under a link that stands after it: %+v", told)
	}
}

// What was told under a finding that comes under another comes with it.
func TestFollowersComeAlong(t *testing.T) {
	method := strings.Replace(strings.ReplaceAll(pouring, "FILL", "180 g"), "step:fill?in=jug", "step:fill?in=jgu", 1)
	p := of(strings.ReplaceAll(candles, "PACKED", "560 g"), method)
	lost := byRule(t, p.Findings, "unknown-target")
	for _, f := range p.Findings {
		if f.Rule != "unknown-target" && f.Severity == diag.MustFix && f.Cause != lost.Cause {
			t.Errorf("told apart: %s: %s", f.Rule, f.Found)
		}
	}
}
