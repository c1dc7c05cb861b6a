package rules_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit/ledger"
	"tallyfold/kit/rules"
	"tallyfold/kit/schedule"
)

// Heat reaches a thing in more ways than by a fill: each row puts 75 °C wax somewhere.
func TestWhatMeetsHeat(t *testing.T) {
	const head = `
name: Quay candles
makes: 3 candles
components:
  wax: {name: Soy wax, packed: 591 g, density: 0.90 g/mL liquid}
  wick: {name: Wick, packed: 3, withstands: 70 °C, insert: {mass: 2 g, volume: 1 mL, floats: no}}
  jar: {name: Glass jar, packed: 3, container: {brimful: 250 mL, headspace: 20 mL}}
tools:
  jug: {name: Jug, from: box, essential: true, holds: 1 L, withstands: 80 °C}
  cup: {name: Cup, from: customer, essential: true, holds: 1 L, withstands: 60 °C}
`
	const melt = "## [Melt](step:melt?in=jug)\n\nTip [all of the wax](take:wax) into [the jug](vessel:jug) and warm it [to 75 °C](warm:).\n"
	for _, c := range []struct{ does, want string }{
		{"## [Pour](step:pour?in=cup)\n\nPour [all of it](move:jug) into [the cup](vessel:cup).\n", "Cup meets 75 °C in step 2"},
		{"## [Warm](step:more?in=jug)\n\nWarm it [by 20 °C](warm:) more.\n", "Jug meets 95 °C in step 2"},
		{"## [Fill](step:fill?in=jug)\n\nStand [one wick](place:wick?into=jar) in each jar. Fill [each of 3 jars to 195 g](fill:jar).\n", "Wick meets 75 °C in step 2"},
		{"## [Cool](step:cool?in=jug)\n\nCool it [by 20 °C](cool:). Pour [all of it](move:jug?into=cup) into [the cup](vessel:cup).\n", ""},
	} {
		folder := fstest.MapFS{"kit.yaml": {Data: []byte(head)}, "method.md": {Data: []byte(melt + "\n" + c.does)}}
		k, found := instructions.Open(folder, "heat")
		if k == nil {
			t.Fatal(told(found))
		}
		var hot []string
		for _, f := range rules.Check(rules.Subject{Kit: k, Ledger: ledger.Follow(k), Plan: schedule.Of(k)}) {
			if f.Rule == "poured-too-hot" {
				hot = append(hot, f.Found)
				checkFinding(t, f)
			}
		}
		if got := strings.Join(hot, "; "); got != c.want {
			t.Errorf("%s: %q, want %q", c.does, got, c.want)
		}
	}
}
