package label

import (
	"strings"
	"testing"

	"tallyfold/kit/quantity"
)

// listOf is a list by shares in per mille; a name with "!" is a colour.
func listOf(shares map[string][2]int64) List {
	var l List
	for name, share := range shares {
		plain := strings.TrimSuffix(name, "!")
		l.Ingredients = append(l.Ingredients, Ingredient{
			Name: plain, Low: quantity.Ratio(share[0], 1000), High: quantity.Ratio(share[1], 1000),
			Colour: plain != name, Fragrance: isFragrance(plain),
		})
	}
	return l
}

func exactly1000(shares map[string]int64) List {
	ranged := map[string][2]int64{}
	for name, share := range shares {
		ranged[name] = [2]int64{share, share}
	}
	return listOf(ranged)
}

// The formula of water 70, glycerin 20, surfactant 8, gum 0.8, fragrance 0.6, preservative 0.5
// and colour 0.1 %, with the orders that 21 CFR 701.3(f) lets stand and those that it does not
// (reckoned from the section, read); at exactly 1 % the American and the European rule part
// ("not more than 1 percent", read; "less than 1 %", Regulation (EC) 1223/2009, article
// 19(1)(g), from memory).
func TestStatedOrder(t *testing.T) {
	formula := exactly1000(map[string]int64{"Water": 700, "Glycerin": 200, "Surfactant": 80, "Gum": 8, "Fragrance": 6, "Preservative": 5, "CI 42090!": 1})
	atOne := exactly1000(map[string]int64{"Water": 982, "Gum": 10, "Preservative": 8})
	above := exactly1000(map[string]int64{"Water": 980, "Gum": 12, "Preservative": 8})
	ranged := listOf(map[string][2]int64{"Water": {600, 700}, "Glycerin": {150, 300}, "Salt": {250, 400}})
	for _, test := range []struct {
		why, stated string
		list        List
		us, eu      string
	}{
		{"as it falls", "Water, Glycerin, Surfactant, Gum, Fragrance, Preservative, CI 42090", formula, "", ""},
		{"below 1 % in any order", "Water, Glycerin, Surfactant, Preservative, Gum, Parfum, CI 42090", formula, "", ""},
		{"in other letters", "WATER,  glycerin, surfactant, gum, Parfum (Fragrance), preservative, ci 42090.", formula, "", ""},
		{"glycerin before water", "Glycerin, Water, Surfactant, Gum, Fragrance, Preservative, CI 42090", formula, "Water stands behind Glycerin, and there is more of it", "Water stands behind Glycerin, and there is more of it"},
		{"colour before surfactant", "Water, Glycerin, CI 42090, Surfactant, Gum, Fragrance, Preservative", formula, "Surfactant stands behind CI 42090, and there is more of it; Gum stands behind CI 42090, and there is more of it; Fragrance stands behind CI 42090, and there is more of it; Preservative stands behind CI 42090, and there is more of it", "same"},
		{"gum before surfactant", "Water, Glycerin, Gum, Surfactant, Fragrance, Preservative, CI 42090", formula, "Surfactant stands behind Gum, and there is more of it", "same"},
		{"exactly 1 % in the free group", "Water, Preservative, Gum", atOne, "", "Gum stands behind Preservative, and there is more of it"},
		{"1.2 % in the free group", "Water, Preservative, Gum", above, "Gum stands behind Preservative, and there is more of it", "same"},
		{"left out", "Water, Preservative", above, "Gum is in it, and is not stated", "same"},
		{"not in it", "Water, Gum, Preservative, Silk", above, "Silk is stated, and no step puts it in", "same"},
		{"ranges that overlap", "Water, Glycerin, Salt", ranged, "", ""},
		{"ranges that overlap, the other way", "Water, Salt, Glycerin", ranged, "", ""},
		{"ranges apart", "Salt, Water, Glycerin", ranged, "Water stands behind Salt, and there is more of it", "same"},
	} {
		want := map[Form]string{USForm: test.us, EUForm: test.eu}
		if test.eu == "same" {
			want[EUForm] = test.us
		}
		for form, want := range want {
			var found []string
			for _, fault := range test.list.Faults(test.stated, form) {
				found = append(found, fault.Found)
			}
			if got := strings.Join(found, "; "); got != want {
				t.Errorf("%s, by %s: found %q, want %q", test.why, form, got, want)
			}
		}
	}
}

// An allergen above its share has to be stated in Europe and not in the United States; one
// that is stated is no stranger.
func TestStatedAllergens(t *testing.T) {
	list := exactly1000(map[string]int64{"Water": 994, "Fragrance": 6})
	list.Allergens = []Ingredient{{Name: "Linalool", Low: quantity.Ratio(18, 1_000_000), High: quantity.Ratio(18, 1_000_000)}}
	if faults := list.Faults("Water, Parfum", USForm); len(faults) != 0 {
		t.Errorf("in the United States: %v", faults)
	}
	if faults := list.Faults("Water, Parfum", EUForm); len(faults) != 1 || !strings.Contains(faults[0].Found, "Linalool") {
		t.Errorf("in Europe: %v", faults)
	}
	if faults := list.Faults("Water, Parfum, Linalool", EUForm); len(faults) != 0 {
		t.Errorf("stated: %v", faults)
	}
}
