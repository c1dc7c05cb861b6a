package rules_test

import (
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

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
		"PVA is poured":                "write “Pour PVA”",
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
		"With both hands, shake the jar", "Jar and clear up", "Tag it", "Bowl, then fill", "Slowly does it",
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

// namesKit has a thing of each sort that links may name.
const namesKit = `name: Quay names
edition: 1
makes: 1 jar
components:
  wax: {name: Soy wax flakes, also called: Candle grain, packed: 100 g, density: 0.9 g/mL liquid}
  pine: {name: Pine fragrance, packed: 10 mL, density: 0.95 g/mL}
  orange: {name: Orange fragrance, packed: 10 mL, density: 0.95 g/mL}
  tape: {name: Cotton ribbon, packed: 2 m}
  lid-seal: {name: Paper disc, packed: 1}
  jar: {name: Jar, packed: 1, container: {brimful: 200 mL}}
household:
  paper: {name: Newspaper}
tools:
  bowl: {name: Bowl, from: customer, essential: true, holds: 1 L}
runs:
  - {name: Pine, with: {scent: pine}}
`

// named gives what named-otherwise says of a link.
func named(t *testing.T, link string) (diag.Finding, bool) {
	t.Helper()
	return heldAgainst(t, namesKit, "## [Mix](step:mixing?in=bowl)\n\nTake "+link+".\n", "named-otherwise")
}

func TestThingsNamedOtherwise(t *testing.T) {
	for link, found := range map[string]string{
		"[50 g of soya pellets](take:wax)":         "step 1 speaks of “soya pellets” and takes Soy wax flakes, which has no word in common with it",
		"[all of the granules](use:wax)":           "step 1 speaks of “granules” and takes Soy wax flakes, which has no word in common with it",
		"[all of the pine fragrance](take:orange)": "step 1 speaks of “Pine fragrance”, and the link takes Orange fragrance",
		"[40 cm of thread](use:tape)":              "step 1 speaks of “thread” and takes Cotton ribbon, which has no word in common with it",
		"[all of the scent, fragrance](use:tape)":  "step 1 speaks of “scent fragrance” and takes Cotton ribbon, which has no word in common with it",
		"[2 tissues](use:paper)":                   "step 1 speaks of “tissues” and takes Newspaper, which has no word in common with it",
	} {
		if finding, _ := named(t, link); finding.Found != found {
			t.Errorf("%s: found “%s”, want “%s”", link, finding.Found, found)
		}
	}
}

func TestOrdinaryNames(t *testing.T) {
	for _, link := range []string{
		"[50 g of wax flakes](take:wax)", "[50 g of wax](take:wax)", "[50 g of the soy](take:wax)", "[50 g of flake](take:wax)",
		"[50 g of waxflakes](take:wax)", "[50 g of soy-wax](take:wax)", "[50 g of candle grain](take:wax)", "[50 g](take:wax)",
		"[all of it](take:wax)", "[half of the larger bag](take:wax)", "[all of bag A](take:wax)", "[Weigh in 50 g of wax](take:wax)",
		"[Stir all of it in](take:pine)", "[all of the scent](take:scent)", "[all of the perfume, pine](take:scent)",
		"[all of the pine fragrance](take:scent)", "[all of the fragrance](take:orange)", "[all of the orange scent](take:orange)",
		"[all of the colour](take:orange)", "[40 cm of tape](use:tape)", "[40 cm of the ribbon](use:tape)", "[1 disc](use:lid-seal)", "[1 seal](use:lid-seal)",
		"[a sheet of newspaper](use:paper)", "[2 sheets of paper](use:paper)", "[all that is left in the bottle](take:pine)",
		"[the remaining half, slowly](take:pine)", "[](take:wax)", "[50 g of waxy flakes, sifted](take:wax)", "[1 of the discs](use:lid-seal)",
	} {
		if finding, ok := named(t, link); ok {
			t.Errorf("%s: want silence, got:\n%s", link, told(diag.List{finding}))
		}
	}
}

// Wording is judged alike whatever ends a line.
func TestLineEndsMakeNoDifference(t *testing.T) {
	for _, rule := range []string{"hard-to-read", "no-verb-first", "ambiguous-abbreviation", "number-at-sentence-head", "units-mixed",
		"vague-instruction", "named-otherwise", "vague-amount"} {
		files := inMemory(t, filepath.Join("testdata", rule, "fails"))
		want := founds(t, files)
		for _, end := range []string{"\r\n", "\r"} {
			for _, name := range []string{"method.md", "trouble.md"} {
				if file := files[name]; file != nil {
					files[name] = &fstest.MapFile{Data: []byte(strings.NewReplacer("\r\n", end, "\r", end, "\n", end).Replace(string(file.Data)))}
				}
			}
			if diff := cmp.Diff(want, founds(t, files)); diff != "" {
				t.Errorf("%s with %q: %s", rule, end, diff)
			}
		}
	}
}

// founds gives what is found in a kit.
func founds(t *testing.T, files fstest.MapFS) []string {
	t.Helper()
	k, reading := instructions.Open(files, "kit")
	if k == nil {
		t.Fatalf("cannot be read:\n%s", told(reading))
	}
	var all []string
	for _, f := range rules.Check(rules.Subject{Kit: k, Ledger: ledger.Follow(k), Plan: schedule.Of(k)}) {
		all = append(all, f.Rule+": "+f.Found)
	}
	return all
}

// In a language that no list of words is kept for, each rule on wording says that it
// cannot check, and all of them are told under one head.
func TestWordingOfALanguageWithoutLists(t *testing.T) {
	yaml := strings.Replace(wordsKit, "edition: 1", "edition: 1\nlanguage: pl", 1)
	files := fstest.MapFS{"kit.yaml": {Data: []byte(yaml)}, "method.md": {Data: []byte(strings.Replace(wordsMethod, "SENTENCE", "", 1))}}
	k, _ := instructions.Open(files, "kit")
	told := map[string]bool{}
	for _, f := range rules.Check(rules.Subject{Kit: k, Ledger: ledger.Follow(k), Plan: schedule.Of(k)}) {
		if strings.HasPrefix(f.Found, "cannot check: no list of words") {
			told[f.Rule] = f.Cause == "language"
		}
	}
	for _, rule := range []string{"hard-to-read", "no-verb-first", "ambiguous-abbreviation", "number-at-sentence-head",
		"vague-instruction", "named-otherwise", "vague-amount", "tool-not-listed"} {
		if !told[rule] {
			t.Errorf("%s does not say, under one head with the others, that it cannot check", rule)
		}
	}
}
