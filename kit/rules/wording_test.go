package rules_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/rules"
	"tallyfold/kit/schedule"
)

// titled gives what no-verb-first says of a title of the second step.
func titled(t *testing.T, title string) (diag.Finding, bool) {
	t.Helper()
	method := strings.Replace(strings.Replace(wordsMethod, "SENTENCE", "", 1), "[Fill]", "["+title+"]", 1)
	return heldAgainst(t, wordsKit, method, "no-verb-first")
}

// heldAgainst gives the finding of one rule on a kit, if there is one.
func heldAgainst(t *testing.T, kitText, method, rule string) (diag.Finding, bool) {
	t.Helper()
	files := fstest.MapFS{"kit.yaml": {Data: []byte(kitText)}, "method.md": {Data: []byte(method)}}
	k, reading := instructions.Open(files, "words")
	if k == nil || len(reading) > 0 {
		t.Fatalf("%s\ncannot be read:\n%s", method, told(reading))
	}
	for _, f := range rules.Check(rules.Subject{Kit: k, Ledger: ledger.Follow(k), Plan: schedule.Of(k)}) {
		if f.Rule == rule {
			return f, true
		}
	}
	return diag.Finding{}, false
}

func TestTitlesWithoutAnOrder(t *testing.T) {
	for title, remedy := range map[string]string{
		"Preparation":                  "write what is done and to what, such as “Prepare …”",
		"The oil is poured":            "write “Pour the oil”",
		"Jars are filled and closed":   "begin the title with what is to be done",
		"The jar will be shaken well":  "write “Shake the jar well”",
		"Oil is stirred into the bowl": "write “Stir oil into the bowl”",
		"Final assembly":               "write what is done and to what, such as “Finish …”",
		"The jars":                     "begin the title with what is to be done",
		"Oil preparation":              "write what is done and to what, such as “Prepare …”",
		"Day 2":                        "begin the title with what is to be done",
		"Step 3: The lids":             "begin the title with what is to be done",
		"Materials":                    "begin the title with what is to be done",
		"Your first jar":               "begin the title with what is to be done",
		"Safety":                       "begin the title with what is to be done",
		"Decoration of the jar":        "write what is done and to what, such as “Decorate …”",
		"Fills the jar":                "begin the title with what is to be done",
	} {
		finding, ok := titled(t, title)
		if !ok {
			t.Errorf("%q: want a finding", title)
			continue
		}
		if finding.Remedies[0].Do != remedy || finding.Where.Text() != title {
			t.Errorf("%q at “%s”: to do “%s”, want “%s”", title, finding.Where.Text(), finding.Remedies[0].Do, remedy)
		}
	}
}

func TestTitlesWithAnOrder(t *testing.T) {
	for _, title := range []string{
		"Fill", "Fill the jars", "Let the jars rest", "Now pour the oil", "Carefully tip it in", "Step 2: fill the jars", "2. Fill it",
		"Melting the wax", "Filling", "How to fill a jar", "When the oil is warm, pour it", "Once the jars are filled, close them",
		"Don't touch the jars", "To finish, tie the bow", "First, wash the jars", "Jiggle the jars", "Zhuzh it up", "Wax the thread",
		"Check alignment", "Cut and fold", "Oil the board", "Day one: fill the jars", "Pour, then wait", "Label", "Press", "Dress the dolls",
		"Clean-up and rest", "Time to pour", "You fill the jars", "Before you start", "Gently warm the oil", "Set aside", "Finishing touches",
		"Ensure ventilation", "Wait until the oil is warmed", "Trim and label", "Ready?", "Have the jars filled", "Leave to set",
		"With both hands, shake the jar", "Slowly does it",
	} {
		if finding, ok := titled(t, title); ok {
			t.Errorf("%q: want silence, got:\n%s", title, told(diag.List{finding}))
		}
	}
}
