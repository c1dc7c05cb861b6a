package rules_test

import (
	"slices"
	"strings"
	"testing"

	"tallyfold/kit/diag"
)

// runsKit has three runs; LIGHT is the density of the oil of the last.
const runsKit = `name: Quay oils
edition: 1
makes: 6 bottles
components:
  almond: {name: Almond oil, packed: 190 g, density: 0.91 g/mL}
  olive: {name: Olive oil, packed: 190 g, density: 0.91 g/mL}
  jojoba: {name: Jojoba oil, packed: 190 g, density: LIGHT g/mL}
  bottle: {name: Bottle, packed: 6, container: {brimful: 100 mL}}
tools:
  bowl: {name: Bowl, from: customer, essential: true, holds: 1 L}
runs:
  - {name: Almond, with: {oil: almond}}
  - {name: Olive, with: {oil: olive}}
  - {name: Jojoba, with: {oil: jojoba}}
`

const runsMethod = `## [Mix](step:mixing?in=bowl)

Pour [all of the oil](take:oil) into [the bowl](vessel:bowl).

## [Fill](step:filling?in=bowl)

Fill [each of 2 bottles to 95 g](fill:bottle) in [5 minutes](work:). Wash [the bowl](clean:bowl).
`

func runs(t *testing.T, density, method string) diag.List {
	t.Helper()
	open, _ := accept(t, strings.Replace(runsKit, "LIGHT", density, 1), method, today)
	return open
}

func TestEqualFindingsOfRunsAreToldOnce(t *testing.T) {
	finding := only(t, runs(t, "0.91", runsMethod), "container-overfull")
	if !strings.HasSuffix(finding.Found, ", in every run") {
		t.Errorf("want “in every run” at the end of %q", finding.Found)
	}
}

func TestOnlyTheRunsConcernedAreNamed(t *testing.T) {
	finding := only(t, runs(t, "0.97", runsMethod), "container-overfull")
	if !strings.HasSuffix(finding.Found, ", in runs Almond and Olive") {
		t.Errorf("want both runs named at the end of %q", finding.Found)
	}
}

func TestAnotherFigureInAnotherRunIsToldBeside(t *testing.T) {
	finding := only(t, runs(t, "0.89", runsMethod), "container-overfull")
	if !strings.HasSuffix(finding.Found, ", in runs Almond and Olive") {
		t.Errorf("want both equal runs named at the end of %q", finding.Found)
	}
	if !slices.ContainsFunc(finding.Sum, func(line string) bool { return strings.Contains(line, "in run Jojoba") }) {
		t.Errorf("want a line on run Jojoba in %q", finding.Sum)
	}
}

func TestMoreContainersThanThereAre(t *testing.T) {
	method := strings.Replace(runsMethod, "each of 2 bottles to 95 g", "each of 3 bottles to 63 g", 1)
	open := runs(t, "0.97", method)
	i := slices.IndexFunc(open, func(f diag.Finding) bool { return f.Rule == "counts-disagree" && f.About == "bottle" })
	if i < 0 || !strings.Contains(open[i].Found, "3 of Bottle, and there are 2 for this run") {
		t.Fatalf("want a finding on three bottles of two, got:\n%s", told(open))
	}
	if open[i].Cause == "" || open[i].Sum[0] != "6 packed, shared over the runs, gives 2 for one" {
		t.Errorf("want the sum and a cause, got:\n%s", told(diag.List{open[i]}))
	}
}
