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

// Innocent oddities: words that look like a fault to one rule or another and are none.
// Nothing at all may be found. They are common practice, no source.

// odditiesKit has a thing of each sort that the oddities speak of.
const odditiesKit = `name: Quay oddities
edition: 1
makes: 3 jars
audience: {age: 12+, skill: beginner}
components:
  oil: {name: Almond oil, also called: nut oil, packed: 303 mL, spare: 3 mL, density: 0.91 g/mL}
  wick: {name: No. 10 wick, packed: 4, spare: 1}
  wool: {name: 2-ply wool, packed: 3 m}
  sheet: {name: A4 sheet, packed: 1}
  needle: {name: Size 24 needle, packed: 1, optional: yes}
  jar: {name: Jar, packed: 3, container: {brimful: 200 mL}}
household:
  water: {name: Tap water}
tools:
  bowl: {name: Bowl, from: customer, essential: true, holds: 1 L, residue: 1 g}
  clamp: {name: C clamp, from: customer, essential: false}
`

const odditiesMethod = `## [Mix](step:mixing?in=bowl)

Pour [300 mL of the oil](take:oil) into [the bowl](vessel:bowl). Lay [the A4 sheet](use:sheet) under it. Hold it with
[a C clamp](tool:clamp), if you have one. SENTENCE

## [Fill](step:filling?in=bowl)

Fill [each of 3 jars to 91 g](fill:jar). Hang [one No. 10 wick](place:wick?into=jar) in each. Tie [3 m of the wool](use:wool) round them.
Thread [1 needle](use:needle) if you like. All of it takes [25 minutes](work:).
`

func TestInnocentOddities(t *testing.T) {
	for _, sentence := range []string{
		"", "Go back to step 3 of the leaflet.", "See [step 2](step:filling) for the rest.", "Take the size 24 needle out of its paper.",
		"The 2-ply wool is for later.", "Work on it over several evenings.", "Rinse your hands with tap water.", "Tap water will do.", "All of the oil should look clear.",
		"The No. 10 wick comes next.", "Set the A4 sheet straight.", "It has a 1920s style.", "Follow the drawing in Fig. 3 closely.",
		"Read page 4 first.", "Wear an old T-shirt.", "Keep bag T for later.", "The vitamin C in it is harmless.", "It is a 3D shape.",
		"The 24-hour clock is used here.", "Use the rest [in step 2](step:filling).", "Some of the bubbles will rise.", "Take your time.",
		"Stir it slowly, little by little.", "The oil came to this quay in the 1800s.", "Turn it now, not later!", "Why? So that it is even.",
		"It smells of 4711 flowers and of rain.", "Look at the sheet, e.g. at its edge, and go on.", "Turn the bowl by 90°.",
		"The jars are No. 1, No. 2 and No. 3.", "Leave a margin of 6 mm.", "Round it to the nearest gram.", "A and B are letters of bags.",
		"Mr. Punch would approve of it. Would you?", "It lies between 20 and 25 °C in most kitchens.", "One in three sheets curls.",
		"(This is normal.)", "“Enough is enough,” as they say.", "It keeps for a long time.", "After a while the bubbles rise.",
		"Count to ten, then go on.", "Half of all tables are not level.", "Now and then a 2 × 4 is called a plank.", "The 1st jar is yours.",
		"Hold it in the middle, not at the top.", "Do not taste it.", "See what you like best.", "Part 2 of the leaflet has more to read.",
		"Version 1.2 of this sheet is the newest.", "A third hand would help.", "It takes a while.", "The second jar is the best.", "Reach for the nut oil.",
		"The 300 mL of nut oil (273 g) half fill the bowl.",
	} {
		if list := oddityFindings(t, sentence); list != "" {
			t.Errorf("%q: want silence, got:\n%s", sentence, list)
		}
	}
}

// oddityFindings tells all that is found of the kit with one more sentence.
func oddityFindings(t *testing.T, sentence string) string {
	t.Helper()
	files := fstest.MapFS{
		"kit.yaml":  {Data: []byte(odditiesKit)},
		"method.md": {Data: []byte(strings.Replace(odditiesMethod, "SENTENCE", sentence, 1))},
	}
	k, reading := instructions.Open(files, "oddities")
	if k == nil {
		t.Fatalf("%s: cannot be read:\n%s", sentence, told(reading))
	}
	return told(append(reading, rules.Check(rules.Subject{Kit: k, Ledger: ledger.Follow(k), Plan: schedule.Of(k)})...))
}
