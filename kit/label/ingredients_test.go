package label_test

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit/label"
	"tallyfold/kit/ledger"
)

// listOf follows a kit of one bottle that takes all of some components, each a line of
// kit.yaml, and gives its list of ingredients.
func listOf(t *testing.T, soldAs string, components ...string) label.List {
	t.Helper()
	var yaml, take strings.Builder
	yaml.WriteString("name: One bottle\nmakes: 1 bottle\nsold as: " + soldAs + "\ncomponents:\n")
	for _, line := range components {
		yaml.WriteString("  " + line + "\n")
		key, _, _ := strings.Cut(line, ":")
		take.WriteString("Put [all of the " + key + "](take:" + key + ") into the bowl.\n")
	}
	yaml.WriteString("  bottle: {name: Bottle, packed: 1, container: {brimful: 2 L}}\ntools:\n  bowl: {name: Bowl, from: customer, holds: 3 L}\n")
	k, found := instructions.Open(fstest.MapFS{
		"kit.yaml":  {Data: []byte(yaml.String())},
		"method.md": {Data: []byte("## [Mix](step:mix?in=bowl)\n\n" + take.String() + "Fill [all of it](fill:bottle).\n")},
	}, "bottle")
	if k == nil || found.MustFix() {
		t.Fatal(found)
	}
	lists := label.Lists(k, ledger.Follow(k))
	if len(lists) != 1 {
		t.Fatalf("%d lists", len(lists))
	}
	return lists[0]
}

// The formula is a worked one: water 70, glycerin 20, surfactant 8, gum 0.8, fragrance 0.6,
// preservative 0.5, colour 0.1. Valid orders by 21 CFR 701.3(f) have the first three by
// falling share, the next three in any order, the colour last.
func TestUSOrder(t *testing.T) {
	formula := []string{
		"dye: {name: CI 42090, packed: 0.1 g}", "gum: {name: Xanthan gum, packed: 0.8 g}", "water: {name: Water, packed: 70 g}",
		"scent: {name: Harbour scent, packed: 0.6 g, counts as: fragrance}", "glycerin: {name: Glycerin, packed: 20 g}",
		"keeper: {name: Preservative, packed: 0.5 g}", "soap: {name: Surfactant, packed: 8 g}",
	}
	list := listOf(t, "rinse-off cosmetic", formula...)
	if want := "Water, Glycerin, Surfactant, Xanthan gum, Fragrance, Preservative, CI 42090"; list.US() != want {
		t.Errorf("US: %s", list.US())
	}
	if want := "Water, Glycerin, Surfactant, Xanthan gum, Parfum, Preservative, CI 42090"; list.EU() != want {
		t.Errorf("EU: %s", list.EU())
	}
	// A blend brings its parts, and its water joins the water (order is by share in what is
	// filled; common practice, from memory): 30 g of a paste that is 80 % water and 20 %
	// clay make 24 g of water and 6 g of clay. 12 g of oil come between.
	blend := listOf(t, "leave-on cosmetic", "paste: {name: Clay paste, packed: 30 g, ingredients: [20 % Kaolin, 80 % Water]}",
		"oil: {name: Sweet oil, packed: 12 g, label name: Prunus amygdalus dulcis oil}", "water: {name: Water, packed: 1 g}")
	if want := "Water, Prunus amygdalus dulcis oil, Kaolin"; blend.US() != want || len(blend.Unsure) > 0 {
		t.Errorf("through a blend: %s, unsure %v", blend.US(), blend.Unsure)
	}
	if sum := blend.Ingredients[0].Sum; !strings.Contains(sum, "69.8 % of Clay paste × 80 %") || !strings.Contains(sum, "2.33 %") {
		t.Errorf("the sum of the water is %q", sum)
	}
}

// At exactly 1.0 % an ingredient stands in the free group of 21 CFR 701.3(f)(2), "not more
// than 1 percent"; at 1.2 % it does not, and goes before what has less.
func TestOnePercent(t *testing.T) {
	exactly := listOf(t, "leave-on cosmetic", "water: {name: Water, packed: 98.5 g}", "a: {name: Allantoin, packed: 1 g}", "z: {name: Zinc salt, packed: 0.5 g}")
	for _, one := range exactly.Ingredients {
		if one.Name == "Allantoin" && one.High.Float() != 0.01 {
			t.Errorf("Allantoin is %v of it", one.High.Float())
		}
	}
	if len(exactly.Unsure) > 0 {
		t.Errorf("unsure of %v", exactly.Unsure)
	}
	above := listOf(t, "leave-on cosmetic", "z: {name: Zinc salt, packed: 1.1 g}", "a: {name: Allantoin, packed: 1.2 g}", "water: {name: Water, packed: 97.7 g}")
	if want := "Water, Allantoin, Zinc salt"; above.US() != want {
		t.Errorf("above one percent: %s", above.US())
	}
}

// Ranges that overlap leave the order open, and that is said.
func TestUnsureOrder(t *testing.T) {
	list := listOf(t, "leave-on cosmetic", "base: {name: Base, packed: 100 g, ingredients: [60–70 % Water, 10–20 % Glycerin, 15–18 % Alcohol]}")
	if len(list.Unsure) != 1 || list.Unsure[0].String() != "Alcohol (15–18 %) or Glycerin (10–20 %)" {
		t.Errorf("unsure of %v in %s", list.Unsure, list.US())
	}
}

// A wide range may reach past more than its neighbour; what cannot reach 1 % stands behind
// in any order and leaves nothing open (21 CFR 701.3(f)(2)).
func TestUnsureBeyondNeighbours(t *testing.T) {
	list := listOf(t, "leave-on cosmetic", "base: {name: Base, packed: 100 g, ingredients: [5–60 % Water, 20 % Glycerin, 10 % Alcohol, 0.2–0.9 % Gum, 0.3–0.5 % Salt]}")
	var got []string
	for _, pair := range list.Unsure {
		got = append(got, pair.First.Name+" "+pair.Second.Name)
	}
	if want := []string{"Water Glycerin", "Water Alcohol"}; !slices.Equal(got, want) {
		t.Errorf("unsure of %v, want %v", got, want)
	}
}

// What reaches 1 % and does not pass it may stand anywhere in the United States (“not more
// than 1 percent”, 21 CFR 701.3(f)(2), read); in Europe only what is less than 1 % (article
// 19(1)(g), from memory).
func TestUnsureInEuropeAlone(t *testing.T) {
	list := listOf(t, "leave-on cosmetic", "base: {name: Base, packed: 100 g, ingredients: [97 % Water, 0.8–1 % Gum, 0.9–1.2 % Salt]}")
	if len(list.Unsure) != 1 || !list.Unsure[0].EUOnly || list.Unsure[0].String() != "Salt (0.9–1.2 %) or Gum (0.8–1 %), by the European rule alone" {
		t.Errorf("unsure of %v", list.Unsure)
	}
}

// 0.6 % of a fragrance with 0.3 % of an allergen in it makes 0.0018 %: named in what stays
// on the skin (above 0.001 %), not in what is rinsed off (0.01 %); Regulation (EC)
// 1223/2009, annex III (read, 2nd hand). Without a breakdown it can't be told.
func TestAllergens(t *testing.T) {
	scent := "scent: {name: Scent, packed: 0.6 g, counts as: fragrance, allergens: 0.3 % Linalool}"
	for soldAs, want := range map[string]string{
		"leave-on cosmetic": "Water, Parfum, Linalool", "rinse-off cosmetic": "Water, Parfum",
	} {
		list := listOf(t, soldAs, "water: {name: Water, packed: 99.4 g}", scent)
		if list.EU() != want {
			t.Errorf("%s: %s", soldAs, list.EU())
		}
		if soldAs == "leave-on cosmetic" && (len(list.Allergens) != 1 || list.Allergens[0].High.Float() != 0.000018) {
			t.Errorf("%v", list.Allergens)
		}
	}
	untold := listOf(t, "leave-on cosmetic", "water: {name: Water, packed: 99.4 g}", "scent: {name: Scent, packed: 0.6 g, counts as: fragrance}")
	if len(untold.AllergensUntold) != 1 || untold.AllergensUntold[0] != "Scent" {
		t.Errorf("untold: %v", untold.AllergensUntold)
	}
}

func TestListWithoutWeights(t *testing.T) {
	list := listOf(t, "leave-on cosmetic", "water: {name: Water, packed: 90 g}", "oil: {name: Oil, packed: 10 mL}")
	if list.Told() || !strings.Contains(list.Why, "cannot be told") {
		t.Errorf("told: %q, %s", list.Why, list.US())
	}
}

// What a kit makes is reckoned from what its packs bear: 8 g of an eye irritant and 0.3 g of
// what damages eyes in 100 g come to H319 (10 × 0.3 + 8 = 11 ≥ 10), and a sensitiser at
// 0.1 % to H317, at less to none (29 CFR 1910.1200, appendix A.3 and A.4; read).
func TestClassifications(t *testing.T) {
	for sensitiser, want := range map[string]string{"0.1 g": "H317", "0.09 g": ""} {
		var yaml strings.Builder
		yaml.WriteString("name: One bottle\nmakes: 1 bottle\ncomponents:\n")
		take := ""
		for _, line := range []string{
			"light: {name: Light, packed: 8 g, hazards: H319}", "grave: {name: Grave, packed: 0.3 g, hazards: H318}",
			"sens: {name: Scent, packed: " + sensitiser + ", hazards: H317}",
			"rest: {name: Rest, packed: " + map[string]string{"0.1 g": "91.6 g", "0.09 g": "91.61 g"}[sensitiser] + "}",
		} {
			yaml.WriteString("  " + line + "\n")
			key, _, _ := strings.Cut(line, ":")
			take += "Put [all of the " + key + "](take:" + key + ") in.\n"
		}
		yaml.WriteString("  bottle: {name: Bottle, packed: 1, container: {brimful: 2 L}}\ntools:\n  bowl: {name: Bowl, from: customer, holds: 3 L}\n")
		k, found := instructions.Open(fstest.MapFS{
			"kit.yaml":  {Data: []byte(yaml.String())},
			"method.md": {Data: []byte("## [Mix](step:mix?in=bowl)\n\n" + take + "Fill [all of it](fill:bottle).\n")},
		}, "bottle")
		if k == nil {
			t.Fatal(found)
		}
		all := label.Classifications(k, ledger.Follow(k))
		if len(all) != 1 || len(all[0].Classes) != 3 {
			t.Fatalf("%+v", all)
		}
		if skin, eyes, allergy := all[0].Classes[0], all[0].Classes[1], all[0].Classes[2]; skin.Statement != "" || eyes.Statement != "H319" || allergy.Statement != want {
			t.Errorf("%s: skin %+v, eyes %+v, allergy %+v", sensitiser, skin, eyes, allergy)
		}
		if sum := all[0].Classes[1].Sum; !strings.Contains(sum, "10 × 0.3 % + 8 % = 11 %") {
			t.Errorf("the sum is %q", sum)
		}
	}
}
