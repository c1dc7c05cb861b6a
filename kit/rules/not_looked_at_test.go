package rules_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tallyfold/kit/rules"
)

// What a rule passes over for want of a figure is named; what it has a figure for is
// not.
func TestNotLookedAt(t *testing.T) {
	for _, c := range []struct{ why, rule, kit, want string }{
		{"limits of heat that are not told", "poured-too-hot", "../../examples/harbour-candles",
			"no limit of heat is told for Soy wax flakes, Green tint flakes, Amber tint flakes and Cotton wick on a metal foot; " +
				"no limit of heat is told for the vessels Saucepan"},
		{"nothing is heated", "poured-too-hot", "../../examples/drawer-sachets", "no step warms anything"},
		{"shares that are not told", "share-outside-limits", "../../examples/drawer-sachets",
			"no limit on a share is told for Dried lavender and Dried orange peel"},
		{"nothing is weighed", "share-outside-limits", "../../examples/pocket-notebooks", ""},
		{"nothing is filled", "container-overfull", "../../examples/pocket-notebooks", "no step fills a container"},
		{"jars are filled", "container-overfull", "../../examples/harbour-candles", ""},
		{"net contents of some pieces", "net-less-than-claimed", "../../examples/pocket-notebooks", "no net contents in a container are claimed for Notebook"},
		{"net contents are claimed", "net-less-than-claimed", "../../examples/harbour-candles", ""},
		{"nothing dissolves", "does-not-dissolve", "../../examples/harbour-candles", "no component tells how much of it dissolves"},
		{"something dissolves", "does-not-dissolve", filepath.Join("testdata", "does-not-dissolve", "clean"), ""},
		{"no ratio", "ratio-outside-limits", "../../examples/harbour-candles", "no ratio of two things is told"},
		{"a ratio", "ratio-outside-limits", filepath.Join("testdata", "ratio-outside-limits", "clean"), ""},
		{"nothing is cut out", "pieces-do-not-fit", "../../examples/harbour-candles", "no step cuts pieces out of a sheet"},
		{"pieces are cut out", "pieces-do-not-fit", filepath.Join("testdata", "pieces-do-not-fit", "clean"), ""},
		{"no translation", "translation-stale", "../../examples/harbour-candles", "the method has no translation"},
		{"a translation", "translation-differs", "../../examples/drawer-sachets", ""},
		{"steps of few words", "hard-to-read", filepath.Join("testdata", "hard-to-read", "fails"), "too short to measure, less than 40 words: step 1 and step 3"},
		{"what is in the bags", "bags-look-alike", "../../examples/drawer-sachets",
			"it is not told what is seen in the bag of Dried lavender, Orris-root powder, Dried orange peel and Cedar shavings"},
		{"powders that may clump", "powder-without-rate", filepath.Join("testdata", "bags-look-alike", "clean"),
			"it is not told whether these powders clump: Washing soda, Citric acid, Starch, Sea salt and Sugar"},
		{"powders that do", "powder-without-rate", filepath.Join("testdata", "powder-without-rate", "clean"), ""},
		{"what stays behind", "tool-not-free", filepath.Join("testdata", "tool-not-free", "clean"), "no residue is told for Small bowl"},
		{"files behind claims", "claim-not-backed", filepath.Join("testdata", "claim-not-backed", "clean"), "what stands in trials/burn.yaml is not read"},
		{"no claims", "claim-not-backed", filepath.Join("testdata", "powder-without-rate", "clean"), "kit.yaml lists no claim"},
		{"no age", "age-does-not-match", filepath.Join("testdata", "skill-does-not-match", "clean"), "no age is told"},
		{"an age", "age-does-not-match", "../../examples/harbour-candles", ""},
		{"no skill", "skill-does-not-match", filepath.Join("testdata", "age-does-not-match", "clean"), "no skill is told"},
		{"inserts without measures", "insert-does-not-fit", "../../examples/harbour-candles", "neither width nor height is told for Cotton wick on a metal foot"},
		{"inserts with measures", "insert-does-not-fit", filepath.Join("testdata", "insert-does-not-fit", "clean"), ""},
		{"all vessels say what they hold", "vessel-too-small", "../../examples/drawer-sachets", ""},
		{"a mixture does not say how it flows", "too-thick-or-thin", "../../examples/harbour-candles",
			"no mixture that tells how it flows is filled into a container that tells how it opens"},
		{"it does", "too-thick-or-thin", filepath.Join("testdata", "too-thick-or-thin", "clean"), ""},
		{"no price", "price-does-not-divide", "../../examples/harbour-candles", "no price is told"},
		{"prices", "price-does-not-divide", filepath.Join("testdata", "price-does-not-divide", "clean"), ""},
		{"nothing goes with anything", "lids-and-labels", "../../examples/drawer-sachets", "no component says that there is one for each"},
		{"lids go with jars", "lids-and-labels", filepath.Join("testdata", "lids-and-labels", "clean"), ""},
		{"no mould", "mould-and-mix", "../../examples/harbour-candles", "no step fills a mould"},
		{"a mould", "mould-and-mix", filepath.Join("testdata", "mould-and-mix", "clean"), ""},
		{"both times are claimed", "time-claimed-too-short", "../../examples/harbour-candles", ""},
		{"no time is claimed", "time-claimed-too-short", "no time",
			"no hands-on time is claimed; no total time is claimed"},
	} {
		if c.kit == "no time" {
			c.kit = withoutTime(t)
		}
		s, _ := subject(t, c.kit)
		rule, _ := rules.Named(c.rule)
		if got := strings.Join(rule.NotLookedAt(s), "; "); got != c.want {
			t.Errorf("%s: %q, want %q", c.why, got, c.want)
		}
	}
}

// withoutTime is a kit folder that claims no time.
func withoutTime(t *testing.T) string {
	t.Helper()
	folder := t.TempDir()
	kit := strings.Replace(acceptKit, "accept:\n  - ENTRY\n", "", 1)
	for name, text := range map[string]string{"kit.yaml": kit, "method.md": acceptMethod} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return folder
}
