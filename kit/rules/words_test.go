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

const wordsKit = `name: Quay words
edition: 1
makes: 1 jar
components:
  oil: {name: Almond oil, packed: 100 mL, density: 0.91 g/mL}
  jar: {name: Jar, packed: 1, container: {brimful: 200 mL}}
tools:
  bowl: {name: Bowl, from: customer, essential: true, holds: 1 L, residue: 1 g}
`

const wordsMethod = `## [Mix](step:mixing?in=bowl)

Pour [all of the oil](take:oil) into [the bowl](vessel:bowl). SENTENCE

## [Fill](step:filling?in=bowl)

Fill [the jar](fill:jar) in [5 minutes](work:).
`

// said gives what the rules say of a method with one more sentence, by rule.
func said(t *testing.T, sentence string) map[string]diag.Finding {
	t.Helper()
	files := fstest.MapFS{
		"kit.yaml":  {Data: []byte(wordsKit)},
		"method.md": {Data: []byte(strings.Replace(wordsMethod, "SENTENCE", sentence, 1))},
	}
	k, reading := instructions.Open(files, "words")
	if k == nil || len(reading) > 0 {
		t.Fatalf("%s: cannot be read:\n%s", sentence, told(reading))
	}
	found := map[string]diag.Finding{}
	for _, f := range rules.Check(rules.Subject{Kit: k, Ledger: ledger.Follow(k), Plan: schedule.Of(k)}) {
		found[f.Rule] = f
	}
	return found
}

func TestVaguePhrases(t *testing.T) {
	for sentence, phrase := range map[string]string{
		"Add a good splash of vinegar.":                        "a good",
		"Pour in plenty of warm water.":                        "plenty of",
		"Brush on a generous coat.":                            "a generous",
		"Then stir in some of the oil.":                        "some of",
		"Drip a few drops onto the wood.":                      "a few drops",
		"Add a bit of starch.":                                 "a bit of",
		"Pour in enough water to cover it.":                    "enough",
		"Sweeten it to taste.":                                 "to taste",
		"Add more water as needed.":                            "as needed",
		"Throw in a handful of petals.":                        "a handful of",
		"Fill the mould until it is nearly full.":              "nearly full",
		"Pour the rest into the mould to just below the rim.":  "just below the rim",
		"Whisk in a little vinegar.":                           "a little",
		"Use lots of salt.":                                    "lots of",
		"Add several spoons of salt.":                          "several",
		"Put in the right amount of salt.":                     "the right amount",
		"Add a couple of spoons of salt.":                      "a couple of",
		"Now add some salt.":                                   "some",
		"Scent it with a dash of vinegar.":                     "a dash of",
		"Spoon as much in as you like.":                        "as you like",
		"Add some more\nvinegar.":                              "some",
		"Be generous with the salt, and stir it in.":           "Be generous with",
		"Take a generous handful of the petals and drop them.": "a generous",
	} {
		finding, ok := said(t, sentence)["vague-amount"]
		if !ok || finding.Where.Text() != phrase {
			t.Errorf("%q: want “%s” told, got “%s”", sentence, phrase, finding.Where.Text())
		}
	}
}

func TestPhrasesThatAreNotVague(t *testing.T) {
	for _, sentence := range []string{
		"Take plenty of time.",
		"Leave plenty of room round the bowl.",
		"Add the salt a little at a time.",
		"Stir a little longer.",
		"Wait a few minutes, then a few more.",
		"Stir until it is thick enough to hold a line.",
		"Let it get cool enough to touch.",
		"Leave enough room under the rim.",
		"Use some force on the lid.",
		"It begins to taste of almonds.",
		"Do not taste it. Some people like it warm.",
		"With a bit of practice it takes a minute.",
		"Some of the bubbles will rise, and some of the colour may fade.",
		"Add a good splash (15 mL) of vinegar.",
		"You have enough oil for one jar.",
		"Several makers told us that they like it.",
		"Go round several times with a few short strokes.",
		"Stir for a couple of minutes.",
		"Leave a generous margin on all sides.",
		"It dries a little lighter than it looks.",
		"There is some left for later.",
		"Add it slowly, little by little, and with some care.",
		"Turn it a few degrees.",
		"The bowl looks nearly full now.",
		"Wipe it off if needed.",
		"Scrape out as much as you can.",
	} {
		if finding, ok := said(t, sentence)["vague-amount"]; ok {
			t.Errorf("%q: want silence, got:\n%s", sentence, told(diag.List{finding}))
		}
	}
}

func TestToolsInProse(t *testing.T) {
	for sentence, tool := range map[string]string{
		"Beat it with a whisk.":                         "whisk",
		"Whisk it well.":                                "Whisk",
		"Warm it in the microwave.":                     "microwave",
		"Cut the cord with sharp scissors.":             "scissors",
		"Check it with a thermometer.":                  "thermometer",
		"Set a small funnel on the jar.":                "funnel",
		"Pour it through a fine sieve.":                 "sieve",
		"Tap it with a hammer.":                         "hammer",
		"Press the cloth with a hot iron.":              "iron",
		"Bake it in the oven.":                          "oven",
		"Roll it out with the rolling pin.":             "rolling pin",
		"Run it through the food processor.":            "food processor",
		"Draw a line along the ruler.":                  "ruler",
		"Fix it with the glue gun.":                     "glue gun",
		"Measure it in the measuring jug.":              "measuring jug",
		"Blend it smooth with the blender on low.":      "blender",
		"Lift it out with tweezers, not with the hand.": "tweezers",
	} {
		finding, ok := said(t, sentence)["tool-not-listed"]
		if !ok || finding.Where.Text() != tool {
			t.Errorf("%q: want “%s” told, got “%s”", sentence, tool, finding.Where.Text())
		}
	}
}

func TestWordsThatAreNoTools(t *testing.T) {
	for _, sentence := range []string{
		"The iron oxide gives it its red.",
		"A cast iron stove holds the heat.",
		"You need no oven and no whisk for this.",
		"Stir it, never with a blender.",
		"Take it out without tweezers.",
		"Stir with a spoon, or a whisk.",
		"It smells of pine needles and hammered copper.",
		"Scale the drawing up. Follow step 3 and keep the receipt.",
		"Wear oven gloves.",
		"The jar is not microwave safe.",
		"Whisk away the crumbs with your hand.",
		"Thread a size 24 needle with 2-ply wool.",
	} {
		if finding, ok := said(t, sentence)["tool-not-listed"]; ok {
			t.Errorf("%q: want silence, got:\n%s", sentence, told(diag.List{finding}))
		}
	}
}

func TestAmountsTypedInProse(t *testing.T) {
	for _, sentence := range []string{
		"Use the 80 mL of oil.",
		"The almond oil (2 fl oz) is all there is.",
		"Warm the 50 g of oil in the sun first.",
	} {
		if _, ok := said(t, sentence)["typed-amount-disagrees"]; !ok {
			t.Errorf("%q: want a finding", sentence)
		}
	}
	for _, sentence := range []string{
		"Use the 100 mL of oil.",
		"The 91 g of oil feel warm.",
		"The almond oil (3.4 fl oz) is all there is.",
		"Never warm more than 500 mL of oil.",
		"Stand it in 3 cm of water.",
		"Stir every 5 minutes, and 20 times in all.",
		"Heat it by 10 °C.",
	} {
		if finding, ok := said(t, sentence)["typed-amount-disagrees"]; ok {
			t.Errorf("%q: want silence, got:\n%s", sentence, told(diag.List{finding}))
		}
	}
}
