package rules

import (
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"tallyfold/instructions"
	"tallyfold/kit"
)

// firstStep reads a kit whose method has one step with this text.
func firstStep(t *testing.T, text string) (*kit.Kit, *kit.Step) {
	t.Helper()
	yaml, err := os.ReadFile("testdata/too-many-actions/clean/kit.yaml")
	if err != nil {
		t.Fatal(err)
	}
	k, _ := instructions.Open(fstest.MapFS{
		"kit.yaml":  {Data: yaml},
		"method.md": {Data: []byte("## [Work](step:working?in=jug)\n\n" + text + "\n")},
	}, "orders")
	return k, k.Method.Steps()[0]
}

func TestOrders(t *testing.T) {
	for _, test := range []struct{ text, want string }{
		{"Press the lid down. It holds.", "press"},
		{"Gently press the lid down, wipe it and turn it over.", "press wipe turn"},
		{"Lay out wax, tape, thread, glue and string.", "lay"},
		{"Wax is soft. Thread burns.", ""},
		{"Take [5 minutes](work:) for it.", ""},
		{"Take [500 g of wax](take:wax) out.", "take"},
		{"If a wick leans, straighten its bar.", "straighten"},
		{"The glue sets while you stir.", ""},
		{"> CAUTION: Wear gloves and hold the jug.\n\nPour it out.", "pour"},
	} {
		k, step := firstStep(t, test.text)
		text := readStep(step)
		var got []string
		for _, one := range orders(k, text) {
			got = append(got, text.words[one.word].text)
		}
		if diff := cmp.Diff(test.want, strings.Join(got, " ")); diff != "" {
			t.Errorf("%q (-want +got):\n%s", test.text, diff)
		}
	}
}

// Listed orders are told one by one, so that they do not crowd a step.
func TestOrdersInLists(t *testing.T) {
	k, step := firstStep(t, "Wash the jars.\n\n1. Fill them\n   and wipe them.\n2. Press the lids on.\n\n- Turn them over.")
	var got []bool
	for _, one := range orders(k, readStep(step)) {
		got = append(got, one.listed)
	}
	if diff := cmp.Diff([]bool{false, true, true, true, true}, got); diff != "" {
		t.Error(diff)
	}
}

// What ends a piece of work, and what only sounds like it.
func TestEndsOfWork(t *testing.T) {
	for _, test := range []struct {
		text string
		ends bool
	}{
		{"Stir it until it is smooth.", true},
		{"Stir it ten times.", true},
		{"Stir it for 5 minutes.", true},
		{"Stir it once more.", false},
		{"Stir it well.", false},
		{"Warm it to 70 degrees.", true},
		{"Turn it over as soon as it sets.", true},
	} {
		_, step := firstStep(t, test.text)
		if got := readStep(step).endsIn(0, ends["en"]); got != test.ends {
			t.Errorf("%q: %v, want %v", test.text, got, test.ends)
		}
	}
}

// Words that name a step are compared by their stems.
func TestStems(t *testing.T) {
	for _, alike := range [][]string{
		{"fill", "fills", "filled", "filling"},
		{"trim", "trimming", "trimmed", "trims"},
		{"press", "pressing", "pressed"},
		{"glaze", "glazing", "glazed"},
		{"wick", "wicks"},
	} {
		for _, word := range alike[1:] {
			if stem(word) != stem(alike[0]) {
				t.Errorf("%s is %s, %s is %s", alike[0], stem(alike[0]), word, stem(word))
			}
		}
	}
	if stem("pour") == stem("press") || stem("melt") == stem("mark") {
		t.Error("stems of different words are one")
	}
}
