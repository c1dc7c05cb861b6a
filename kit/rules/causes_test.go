package rules_test

import (
	"slices"
	"strings"
	"testing"

	"tallyfold/kit/diag"
)

// causesKit is a kit that checks clean with causesMethod.
const causesKit = `name: Quay sachets
edition: 1
makes: 4 sachets
components:
  lavender: {name: Lavender, packed: 40 g, density: 0.15 g/mL loose, true density: 1 g/mL}
  peel: {name: Orange peel, packed: 20 g, density: 0.3 g/mL loose, true density: 1 g/mL}
  cedar: {name: Cedar shavings, packed: 20 g, density: 0.1 g/mL loose, true density: 1 g/mL}
  bag: {name: Cotton bag, packed: 4, container: {brimful: 200 mL}}
tools:
  bowl: {name: Bowl, from: customer, essential: true, holds: 3 L}
pieces:
  sachet: {name: Sachet, count: 4, in: bag}
runs:
  - {name: Peel, with: {extra: peel}}
  - {name: Cedar, with: {extra: cedar}}
`

const mixing = `## [Mix](step:mixing?in=bowl)

Tip [half of the pack of lavender](take:lavender) and [all of the extra](take:extra) into [the bowl](vessel:bowl) and mix them for [5 minutes](work:).

`

const filling = `## [Fill](step:filling?in=bowl)

Share [all of it out over 2 bags](fill:bag) in [5 minutes](work:).

`

const wiping = `## [Wipe](step:wiping?in=bowl)

Wipe [the bowl](clean:bowl) in [1 minute](work:).
`

// heads are the findings that stand by themselves: those that follow from another
// stand under it.
func heads(list diag.List) []string {
	causes := map[string]bool{}
	for _, f := range list {
		causes[f.Cause] = causes[f.Cause] || !f.Follows
	}
	var rules []string
	for _, f := range list {
		if !f.Follows || f.Cause == "" || !causes[f.Cause] {
			rules = append(rules, f.Rule)
		}
	}
	slices.Sort(rules)
	return slices.Compact(rules)
}

func TestOneMistakeIsToldOnce(t *testing.T) {
	for _, test := range []struct{ why, yaml, method, want string }{
		{"as it should be", causesKit, mixing + filling + wiping, ""},
		{"filled before it is mixed", causesKit, filling + mixing + wiping, "used-before-made"},
		{"not wiped between two mixtures", causesKit, mixing + filling, "tool-not-free"},
		{"a role that one run does not give", strings.Replace(causesKit, ", with: {extra: cedar}", "", 1), mixing + filling + wiping, "role-without-component"},
	} {
		t.Run(test.why, func(t *testing.T) {
			open, _ := accept(t, test.yaml, test.method, today)
			if got := strings.Join(heads(open), " "); got != test.want {
				t.Errorf("told: %s, want %s\n%s", got, test.want, told(open))
			}
		})
	}
}
