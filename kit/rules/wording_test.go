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

func TestAmbiguousAbbreviations(t *testing.T) {
	for sentence, place := range map[string]string{
		"Add 2 T of salt.":                         "2 T",
		"Then add 2 t salt.":                       "2 t",
		"Pour in 1 c. water.":                      "1 c",
		"Pour in 2 C warm water.":                  "2 C",
		"It takes 5 gr of salt.":                   "5 gr",
		"Warm the oven to 180°.":                   "180°",
		"Heat it to 60 degrees and stir.":          "60 degrees",
		"See [it takes 2 T more](step:filling).":   "2 T",
		"> NOTICE: Never add more than 1 t of it.": "1 t",
	} {
		if strings.HasPrefix(sentence, ">") {
			sentence = "\n\n" + sentence + "\n"
		}
		finding, ok := said(t, sentence)["ambiguous-abbreviation"]
		if !ok || finding.Where.Text() != place {
			t.Errorf("%q: want “%s” told, got “%s”", sentence, place, finding.Where.Text())
		}
	}
	for _, sentence := range []string{
		"Take bag T, then bag 2 C.", "Vitamin C and 80 °C are fine.", "It is a T-shirt, or 2 T-shirts.", "Set 2 C clamps on it.",
		"Turn it by 45 degrees.", "Turn the warm bowl to 45 °C.", "Warm it to 75 C.", "Heat it to 60 degrees Celsius.",
		"Add 1 tbsp and 2 tsp of oil.", "Follow step 2. C is the last bag.", "Weigh 4 oz of salt.", "It takes 2 cups.", "A size 10 T fits.",
		"Turn it by 180° and go on.", "Tilt the warm bowl to 45 degrees.",
	} {
		if finding, ok := said(t, sentence)["ambiguous-abbreviation"]; ok {
			t.Errorf("%q: want silence, got:\n%s", sentence, told(diag.List{finding}))
		}
	}
}

func TestVagueInstructions(t *testing.T) {
	for sentence, phrase := range map[string]string{
		"Let it stand for a while.":                         "for a while",
		"Warm it over medium heat.":                         "medium heat",
		"Stir it until it is done.":                         "until it is done",
		"Stir until [it is ready](cue:).":                   "until [it is ready",
		"Put it in a hot oven for [5 minutes](wait:).":      "hot oven",
		"Fix the lid in the right place.":                   "the right place",
		"Cut the card to a suitable size.":                  "a suitable size",
		"Leave it in a warm place.":                         "a warm place",
		"Trim the edge where necessary.":                    "where necessary",
		"Warm it to the right temperature.":                 "the right temperature",
		"Let it dry for some time. Then wait [1 h](wait:).": "for some time",
	} {
		finding, ok := said(t, sentence)["vague-instruction"]
		if !ok || finding.Where.Text() != phrase {
			t.Errorf("%q: want “%s” told, got “%s”", sentence, phrase, finding.Where.Text())
		}
	}
	for _, sentence := range []string{
		"After a while the bubbles rise.", "It takes a while, so be patient.", "Once in a while, look into the bowl.",
		"Stir for a while, until no lumps show.", "Let it stand for some time (10 minutes).", "Wait a few minutes.",
		"Warm it over low heat, until [small bubbles rise](cue:).", "Set the stove to medium heat. Warm it [to 40 °C](warm:).",
		"Warm it over medium heat until it smokes.", "Let it stand until it is ready to pour.", "Leave it in a warm place, such as a windowsill.",
		"Leave it overnight in a cool, dark place.", "Stir for a while, [5 minutes](work:) or so.", "It keeps for a long time.",
		"Put it in the right place on the card.", "Leave it in a warm place (25 °C).", "Cut it to the right length: 40 mm.",
		"Wait until it is done dripping.", "Do it with gentle hands.", "Turn the stove to low.", "The right temperature is 40 °C.",
	} {
		if finding, ok := said(t, sentence)["vague-instruction"]; ok {
			t.Errorf("%q: want silence, got:\n%s", sentence, told(diag.List{finding}))
		}
	}
}
