package instructions

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tallyfold/kit"
)

// toldPhrase shows a phrase as a line: portion, amounts in base units, and what
// else it says.
func toldPhrase(p kit.Phrase) string {
	words := []string{map[kit.Portion]string{
		kit.NoPortion: "none", kit.Exactly: "exactly", kit.AllOf: "all", kit.RestOf: "rest", kit.FractionOf: "part",
	}[p.Portion]}
	if p.Portion == kit.FractionOf {
		words = append(words, p.Fraction.Rat().RatString())
	}
	for i, a := range p.Amounts {
		words = append(words, fmt.Sprintf("%s=%q", a.Nominal, p.AmountSpans[i].Text()))
	}
	for _, says := range []struct {
		is   bool
		word string
	}{{p.OfPack, "of-pack"}, {p.Each, "each"}, {p.To, "to"}, {p.InAll, "in-all"}, {p.About, "about"}, {p.By, "by"}} {
		if says.is {
			words = append(words, says.word)
		}
	}
	if p.EachCount > 0 {
		words = append(words, fmt.Sprintf("each-count:%d", p.EachCount))
	}
	if p.Count > 0 {
		words = append(words, fmt.Sprintf("count:%d", p.Count))
	}
	return strings.Join(words, " ")
}

// How much the words of a link say. The amounts are shown in base units: g, mL,
// mm, s, °C (NIST SP 811: 1 lb is 453.59237 g, 1 oz 28.349523125 g, 1 US cup
// 236.5882365 mL, 1 US teaspoon 4.92892159375 mL).
func TestPhrases(t *testing.T) {
	for _, test := range []struct{ destination, text, want string }{
		{"take:water", "720 g", `exactly 720="720 g"`},
		{"take:water", "720 g of water", `exactly 720="720 g"`},
		{"take:water", "**720 g** of *water*", `exactly 720="720 g"`},
		{"take:water", "1 1/2 cups", `exactly 354.88235475="1 1/2 cups"`},
		{"take:glycerin", "six teaspoons of glycerin", `exactly 29.5735295625="six teaspoons"`},
		{"take:powder", "a teaspoon of powder", `exactly 4.92892159375="a teaspoon"`},
		{"take:powder", "half a teaspoon", `exactly 2.464460796875="half a teaspoon"`},
		{"take:scent", "12 drops", `exactly 0.6="12 drops"`},
		{"take:powder", "half of the powder", `part 1/2`},
		{"take:powder", "half the powder", `part 1/2`},
		{"take:powder", "half of it", `part 1/2`},
		{"take:powder", "one half of what is left", `part 1/2`},
		{"take:powder", "a third of the pack", `part 1/3 of-pack`},
		{"take:powder", "two thirds of the gelling powder", `part 2/3`},
		{"take:powder", "three quarters of the powder bag", `part 3/4 of-pack`},
		{"take:powder", "1/2 of the pack", `part 1/2 of-pack`},
		{"take:powder", "½ of the powder", `part 1/2`},
		{"take:powder", "half a bag", `part 1/2 of-pack`},
		{"take:powder", "half the bag", `part 1/2 of-pack`},
		{"take:powder", "50 % of the pack", `part 1/2 of-pack`},
		{"take:powder", "25 % of it", `part 1/4`},
		{"take:powder", "2 % of the glycerin", `exactly 0.02="2 % of the glycerin"`},
		{"take:powder", "half of the powder (10 g)", `part 1/2 10="10 g"`},
		{"take:powder", "10 g (half of the powder)", `part 1/2 10="10 g"`},
		{"take:powder", "10 g, half of the pack", `part 1/2 10="10 g" of-pack`},
		{"take:scent", "all of the scent", `all`},
		{"take:scent", "all the scent", `all`},
		{"take:scent", "the whole bottle of scent", `all`},
		{"take:scent", "all of the scent (12 mL)", `all 12="12 mL"`},
		{"take:scent", "12 mL of scent, all of it", `all 12="12 mL"`},
		{"take:powder", "the rest of the powder", `rest`},
		{"take:powder", "the remaining powder", `rest`},
		{"take:powder", "what is left of the powder", `rest`},
		{"take:powder", "what’s left of the powder", `rest`},
		{"take:powder", "the rest of the powder (about 10 g)", `rest 10="about 10 g" about`},
		{"take:powder", "10 g in all", `exactly 10="10 g" in-all`},
		{"take:powder", "up to 1 tsp", `exactly 4.92892159375="up to 1 tsp"`},
		{"take:powder", "at most 5 g", `exactly 5="at most 5 g"`},
		{"take:powder", "about 10 g", `exactly 10="about 10 g" about`},
		{"take:powder", "around 10 g", `exactly 10="10 g" about`},
		{"take:powder", "~10 g", `exactly 10="~10 g" about`},
		{"take:powder", "10–12 g", `exactly 11="10–12 g"`},
		{"take:powder", "10 g ± 0.5 g", `exactly 10="10 g ± 0.5 g"`},
		{"take:water", "600 g (1 lb 5 oz)", `exactly 600="600 g" 595.339985625="1 lb 5 oz"`},
		{"take:water", "600 g / 600 mL", `exactly 600="600 g" 600="600 mL"`},
		{"take:powder", "2 g for each jar", `exactly 2="2 g" each`},
		{"take:powder", "2 g per jar", `exactly 2="2 g" each`},
		{"take:powder", "2 g for each of 3 jars", `exactly 2="2 g" each each-count:3 count:3`},
		{"take:powder", "2 g each", `exactly 2="2 g" each`},
		{"take:pebbles", "two bags of pebbles", `exactly 2="two bags"`},
		{"take:pebbles", "2 of the bags", `exactly 2="2"`},
		{"take:pebbles", "two of them", `exactly 2="two"`},
		{"take:pebbles", "both bags", `none count:2`},
		{"take:pebbles", "all 6 bags", `all 6="6 bags"`},
		{"take:pebbles", "the remaining two", `rest 2="two"`},
		{"take:pebbles", "a bag of pebbles", `none`},
		{"use:foil", "30 cm of foil", `exactly 300="30 cm"`},
		{"use:foil", "some foil", `none`},
		{"use:cord", "two lengths of 40 cm", `exactly 400="40 cm" each each-count:2 count:2`},
		{"use:cord", "2 lengths of cord, 40 cm each", `exactly 400="40 cm" each each-count:2 count:2`},
		{"take:powder", "10 g twice", `exactly 10="10 g" each each-count:2 count:2`},
		{"take:powder", "3 × 2 g", `exactly 2="2 g" each each-count:3 count:3`},
		{"take:powder", "the other half", `rest`},
		{"take:powder", "the second half of the powder", `rest`},
		{"take:powder", "the remaining third", `rest`},
		{"take:powder", "the last two thirds of it", `rest`},
		{"take:powder", "half of it (50 %)", `part 1/2`},
		{"take:powder", "10 g from bag 2", `exactly 10="10 g"`},
		{"place:pebbles?into=jar", "2 into each jar", `exactly 2="2" each`},
		{"fill:jar", "the first jar to 200 g", `exactly 200="200 g" to count:1`},
		{"fill:jar", "a jar to 200 g", `exactly 200="200 g" to count:1`},
		{"fill:jar", "the jar to 200 g", `exactly 200="200 g" to`},
		{"fill:jar", "all of it, shared between the 3 jars", `all count:3`},
		{"use:cord", "40 cm of cord for each jar", `exactly 400="40 cm" each`},
		{"use:label", "one label", `exactly 1="one label"`},
		{"use:label", "the label", `none`},
		{"move:cup", "all of it", `all`},
		{"move:cup", "the mix", `none`},
		{"move:cup", "half of it", `part 1/2`},
		{"move:cup", "a quarter of the mix", `part 1/4`},
		{"move:cup", "100 g of it", `exactly 100="100 g"`},
		{"place:pebbles?into=jar", "one bag of pebbles", `exactly 1="one bag"`},
		{"place:pebbles?into=jar", "one bag in each of 3 jars", `exactly 1="one bag" each each-count:3 count:3`},
		{"place:pebbles?into=jar", "a bag of pebbles", `none`},
		{"place:pebbles?into=jar", "two bags per jar", `exactly 2="two bags" each`},
		{"fill:jar", "each of 3 jars to 200 g", `exactly 200="200 g" each to each-count:3 count:3`},
		{"fill:jar", "each of the three jars to 200 g", `exactly 200="200 g" each to each-count:3 count:3`},
		{"fill:jar", "each jar with 90 g", `exactly 90="90 g" each`},
		{"fill:jar", "3 jars to 200 g", `exactly 200="200 g" to count:3`},
		{"fill:jar", "three jars, each to 200 g", `exactly 200="200 g" each to count:3`},
		{"fill:jar", "3 jars with 200 g each", `exactly 200="200 g" each count:3`},
		{"fill:jar", "both jars to 200 g", `exactly 200="200 g" to count:2`},
		{"fill:jar", "the remaining two to 180 g", `exactly 180="180 g" to count:2`},
		{"fill:jar", "the other two jars to 180 g", `exactly 180="180 g" to count:2`},
		{"fill:jar", "two of the jars to 180 g", `exactly 180="180 g" to count:2`},
		{"fill:jar", "each of the remaining jars to 180 g", `exactly 180="180 g" each to`},
		{"fill:jar", "all the jars to 200 g", `exactly 200="200 g" each to`},
		{"fill:jar", "all 3 jars to 200 g", `exactly 200="200 g" each to count:3`},
		{"fill:jar", "each jar to about 200 g", `exactly 200="about 200 g" each to about`},
		{"fill:jar", "about 200 g each", `exactly 200="about 200 g" each about`},
		{"fill:jar", "to 180–200 g", `exactly 190="180–200 g" to`},
		{"fill:jar", "each to 180 to 200 g", `exactly 190="180 to 200 g" each to`},
		{"fill:jar", "up to 200 g", `exactly 200="up to 200 g"`},
		{"fill:jar", "each jar to 200 g (7 oz)", `exactly 200="200 g" 198.446661875="7 oz" each to`},
		{"fill:jar", "to 50 mm", `exactly 50="50 mm" to`},
		{"fill:jar", "the jars", `none`},
		{"fill:jar", "the jars with all of it", `all`},
		{"fill:jar", "the jar with the rest", `rest`},
		{"fill:jar", "half of it", `part 1/2`},
		{"warm:", "to 80–85 °C", `exactly 82.5="80–85 °C"`},
		{"warm:", "to about 80 °C (176 °F)", `exactly 80="about 80 °C" 80="176 °F" about`},
		{"warm:", "by 5 °C", `exactly 5="by 5 °C" by`},
		{"cool:", "below 60 °C", `exactly 60="below 60 °C"`},
		{"cool:", "by 10–15 °C", `exactly 12.5="by 10–15 °C" by`},
		{"cool:", "to 60 °C or less", `exactly 60="60 °C or less"`},
		{"work:", "3 minutes", `exactly 180="3 minutes"`},
		{"work:", "for about three minutes", `exactly 180="about three minutes" about`},
		{"work:", "3 minutes, twice", `exactly 180="3 minutes" each each-count:2 count:2`},
		{"work:", "3 × 10 minutes", `exactly 600="10 minutes" each each-count:3 count:3`},
		{"work:", "half an hour", `exactly 1800="half an hour"`},
		{"work:", "2 minutes for each jar", `exactly 120="2 minutes" each`},
		{"work:", "20 minutes, stirring every 5 minutes", `exactly 1200="20 minutes"`},
		{"wait:", "an hour", `exactly 3600="an hour"`},
		{"wait:", "1 h 20 min", `exactly 4800="1 h 20 min"`},
		{"wait:set", "2 hours or more", `exactly 7200="2 hours or more"`},
		{"wait:set", "8–12 hours", `exactly 36000="8–12 hours"`},
		{"again:", "the same five more times", `none count:5`},
		{"again:", "twice more", `none count:2`},
		{"again:", "do it once more", `none count:1`},
		{"again:", "3 more times", `none count:3`},
		{"again:", "three times", `none count:3`},
		{"again:", "the other five jars", `none count:5`},
		{"again:", "the remaining two", `none count:2`},
		{"again:", "the same again", `none count:1`},
		{"left:pan", "about 10 g", `exactly 10="about 10 g" about`},
		{"left:pan", "what is left", `rest`},
		{"cue:", "a skin forms at 40 °C", `exactly 40="40 °C"`},
		{"cue:", "steam rises", `none`},
		{"same:powder", "20.5 g", `exactly 20.5="20.5 g"`},
		{"same:jar", "6 jars", `exactly 6="6 jars"`},
		{"same:jar", "all 6 jars", `all 6="6 jars"`},
	} {
		step, found := readStep(t, "["+test.text+"]("+test.destination+")")
		for _, f := range without(found, stepWithoutAction) {
			t.Errorf("%s %q: %s: %s", test.destination, test.text, f.Rule, f.Found)
		}
		if len(step.Operations) != 1 {
			t.Fatalf("%q: %d links", test.text, len(step.Operations))
		}
		if diff := cmp.Diff(test.want, toldPhrase(step.Operations[0].Phrase)); diff != "" {
			t.Errorf("%s %q: %s", test.destination, test.text, diff)
		}
	}
}
