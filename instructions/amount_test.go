package instructions

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tallyfold/kit"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// A link that needs an amount and tells none is a finding at the very words.
func TestUnreadableAmounts(t *testing.T) {
	for _, test := range []struct{ destination, text, want string }{
		{"take:water", "a splash of water", `unreadable-amount "a splash of water"`},
		{"take:glycerin", "the glycerin", `unreadable-amount "the glycerin"`},
		{"take:water", "570 mll of water", `unreadable-amount "mll"`},
		{"take:water", "570 of water", `unreadable-amount "of"`},
		{"take:powder", "720 gramms of powder", `unreadable-amount "gramms"`},
		{"take:powder", "two pinches of powder", `unreadable-amount "pinches"`},
		{"take:powder", "80 °C of powder", `unreadable-amount "80 °C"`},
		{"take:powder", "3 minutes", `unreadable-amount "3 minutes"`},
		{"take:powder", "10 g at 60 °C", `unreadable-amount "60 °C"`},
		{"take:powder", "half of the 20 g of powder", `unreadable-amount "20 g"`},
		{"take:water", "one glass of water", `unreadable-amount "one glass"`},
		{"take:powder", "2 %", `unreadable-amount "2 %"`},
		{"take:glycerin", "50 g of 96 % glycerin", `unreadable-amount "96 %"`},
		{"move:cup", "10 g, twice", `unreadable-amount "10 g, twice"`},
		{"fill:jar", "each jar with 50 g, twice", `unreadable-amount "each jar with 50 g, twice"`},
		{"fill:jar", "two of the six jars to 200 g", `unreadable-amount "six jars"`},
		{"fill:jar", "jars 1 to 3 to 200 g", `unreadable-amount "jars 1 to 3 to 200 g"`},
		{"fill:jar", "to within 5 mm of the rim", `unreadable-amount "to within 5 mm of the rim"`},
		{"place:pebbles?into=jar", "3 of the 6 bags", `unreadable-amount "6 bags"`},
		{"again:", "for each of the other jars", `unreadable-amount "for each of the other jars"`},
		{"take:water", "600 g (21 ozz)", `unreadable-amount "21 ozz"`},
		{"take:water", "600 g (600 mll) of water", `unreadable-amount "mll"`},
		{"use:cord", "some cord", `unreadable-amount "some cord"`},
		{"warm:", "gently", `unreadable-amount "gently"`},
		{"warm:", "to 80 g", `unreadable-amount "80 g"`},
		{"warm:", "to 80 degrees", `unreadable-amount "degrees"`},
		{"warm:", "to 80 °C in 5 minutes", `unreadable-amount "5 minutes"`},
		{"warm:", "", `unreadable-amount "[](warm:)"`},
		{"cool:", "to room temperature", `unreadable-amount "to room temperature"`},
		{"work:", "a while", `unreadable-amount "a while"`},
		{"work:", "20 g", `unreadable-amount "20 g"`},
		{"wait:", "overnight", `unreadable-amount "overnight"`},
		{"wait:", "**overnight** or so", `unreadable-amount "overnight** or so"`},
		{"again:", "the same", `unreadable-amount "the same"`},
		{"again:", "as often as you like", `unreadable-amount "as often as you like"`},
		{"again:", "5,000 more times", `unreadable-amount "5,000 more times"`},
		{"again:", "1.5 times", `unreadable-amount "1.5 times"`},
		{"again:", "-2 times", `unreadable-amount "-2 times"`},
		{"work:", "", `unreadable-amount "[](work:)"`},
		{"same:powder", "", `unreadable-amount "[](same:powder)"`},
		{"take:powder", "2 of powder", `unreadable-amount "of"`},
		{"again:", "half a time", `unreadable-amount "half a time"`},
		{"fill:jar", "each jar to 10 mm below the rim", `unreadable-amount "each jar to 10 mm below the rim"`},
		{"fill:jar", "for 3 minutes", `unreadable-amount "3 minutes"`},
		{"same:powder", "the powder", `unreadable-amount "the powder"`},
	} {
		_, found := readStep(t, "["+test.text+"]("+test.destination+")")
		found = without(found, stepWithoutAction)
		if diff := cmp.Diff(test.want, strings.Join(toldFindings(found), " | ")); diff != "" {
			t.Errorf("%s %q: %s", test.destination, test.text, diff)
		}
		for _, f := range found {
			if f.Found == "" || f.Expected == "" || len(f.Remedies) == 0 || f.Remedies[0].Do == "" {
				t.Errorf("an unfinished finding: %+v", f)
			}
		}
	}
}

// The places of amounts are those in the file, through emphasis, characters by
// name, line ends and quotations.
func TestAmountPlaces(t *testing.T) {
	k := read(t, gels)
	for text, want := range map[string]string{
		"[**570 g** of water](take:water)":                        "570 g",
		"[570&nbsp;g of water](take:water)":                       "570&nbsp;g",
		"[&frac12; tsp of powder](take:powder)":                   "&frac12; tsp",
		"[570\r\ng of water](take:water)":                         "570\r\ng",
		"[**570**\r\ng of water](take:water)":                     "570**\r\ng",
		"> Have [570\n> g of water](take:water).":                 "570\n> g",
		"[1\\.5 g of powder](take:powder)":                        "1\\.5 g",
		"[wasser: 570 g, über alles](take:water)":                 "570 g",
		"| a |\n|---|\n| [10 g](take:powder) |":                   "10 g",
		"[10<!-- or 12 --> g of it](take:powder)":                 "10<!-- or 12 --> g",
		"\ufeff# A part\n\n## Try\n\nHere is [10 g](take:powder)": "10 g",
	} {
		if !strings.Contains(text, "## ") {
			text = "## Try\n\n" + text + "\n"
		}
		m, _ := ReadMethod(source.NewFile("method.md", []byte(text)), k, load.Amounts(k))
		var operations []*kit.Operation
		for _, step := range m.Steps() {
			operations = append(operations, step.Operations...)
		}
		if len(operations) != 1 || len(operations[0].Phrase.AmountSpans) != 1 {
			t.Errorf("%q: %d links", text, len(operations))
			continue
		}
		if got := operations[0].Phrase.AmountSpans[0].Text(); got != want {
			t.Errorf("%q: the amount stands at %q, want %q", text, got, want)
		}
	}
}
