package label_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit/label"
	"tallyfold/kit/ledger"
)

const threeJars = `name: Three jars
makes: 3 balms
components:
  butter: {name: Shea butter, packed: PACKED, density: 0.9 g/mL}
  jar: {name: Jar, packed: 3, container: {brimful: 200 mL}}
tools:
  pan: {name: Pan, from: customer, essential: true, holds: 1 L}
mixtures:
  balm: {name: Balm, made in: pan, density: DENSITY}
pieces:
  pot: {name: Balm pot, count: 3, in: jar, of: balm, NET}
`

const threeJarsMethod = `## [Fill](step:fill?in=pan)

Put [all of the butter](take:butter) into the pan and fill FILL.
`

func nets(t *testing.T, packed, net, fill string) []label.Net {
	t.Helper()
	replaced := strings.NewReplacer("PACKED", packed, "NET", net, "FILL", fill, "DENSITY", "0.9 g/mL").Replace
	k, found := instructions.Open(fstest.MapFS{
		"kit.yaml":  {Data: []byte(strings.ReplaceAll(replaced(threeJars), ", }", "}"))},
		"method.md": {Data: []byte(replaced(threeJarsMethod))},
	}, "jars")
	if k == nil {
		t.Fatal(found)
	}
	return label.Nets(k, ledger.Follow(k))
}

// The sums are by hand. 300 g ± 6 g in three jars are 98 to 102 g each, all alike likely:
// 39 of 40 hold at least 98 g + 4 g / 40 = 98.1 g (JCGM 101:2008, 6.4.2, a rectangular
// distribution). 98.1 g = 3.460 oz and is cut to 3.46 oz (NIST SP 1038, 4.4.1.2).
func TestLowestLikelyFill(t *testing.T) {
	for _, c := range []struct {
		name, packed, net, fill string
		want                    string
		short                   bool
	}{
		{"an exact fill is what it says", "300 g", "", "[each of 3 jars to 100 g](fill:jar)", "100 g · 3.52 oz", false},
		{"the lowest likely, not the average", "300 g ± 6 g", "", "[3 jars equally](fill:jar)", "98.1 g · 3.46 oz", false},
		{"a smaller claim stands", "300 g ± 6 g", "net: at least 95 g", "[3 jars equally](fill:jar)", "95 g · 3.35 oz", false},
		{"a larger claim is not printed", "300 g ± 6 g", "net: 100 g", "[3 jars equally](fill:jar)", "98.1 g · 3.46 oz", true},
		{"by volume where the claim is", "300 g", "net: 105 mL", "[each of 3 jars to 100 g](fill:jar)", "105 mL · 3.55 fl oz", false},
	} {
		all := nets(t, c.packed, c.net, c.fill)
		if len(all) != 1 {
			t.Fatalf("%s: %d net contents", c.name, len(all))
		}
		net := all[0]
		if got := label.State(net.Declared, net.Dimension, "en").String(); got != c.want || net.Short != c.short || !net.Told() || net.Sum == "" {
			t.Errorf("%s: %s, short %v, sum %q, want %s; %s", c.name, got, net.Short, net.Sum, c.want, net.Why)
		}
	}
}

// What is claimed in another kind of unit than the fill can be told in is said, not guessed.
func TestNetContentsThatCannotBeTold(t *testing.T) {
	all := nets(t, "300 mL", "net: 100 cm²", "[3 jars equally](fill:jar)")
	if len(all) != 1 || all[0].Told() || all[0].Why == "" {
		t.Errorf("%+v", all)
	}
}
