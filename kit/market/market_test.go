package market_test

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/ledger"
	"tallyfold/kit/market"
)

// opened is a kit with some lines of kit.yaml beside what each test needs, and one jar that
// is filled with all of what is called base.
func opened(t *testing.T, lines string) (*kit.Kit, *ledger.Ledger) {
	t.Helper()
	k, found := instructions.Open(fstest.MapFS{
		"kit.yaml":  {Data: []byte("name: Trial\nedition: 1\nmakes: 1 jar\n" + lines)},
		"method.md": {Data: []byte("## [Fill](step:fill-it?in=bowl)\n\nTip [all of the base](take:base) into [the bowl](vessel:bowl). Fill [all of it](fill:jar).\n")},
	}, "trial")
	if k == nil || found.MustFix() {
		t.Fatal(found)
	}
	return k, ledger.Follow(k)
}

// things are the components and tools of every test, with further keys for the base.
func things(base string) string {
	return "components:\n  base: {name: Base, packed: 200 g, density: 1 g/mL" + base + "}\n" +
		"  jar: {name: Jar, packed: 1, container: {brimful: 300 mL}}\n" +
		"tools:\n  bowl: {name: Bowl, from: customer, holds: 1 L}\npieces:\n  pot: {name: Pot, count: 1, in: jar}\n"
}

// ruling gives that of a requirement, of the base where it is one of packs.
func ruling(t *testing.T, lines, of, requirement string) market.Ruling {
	t.Helper()
	k, l := opened(t, "markets: ["+of+"]\n"+lines)
	for _, r := range market.Rulings(k, l) {
		if r.Requirement.ID == requirement && (r.Component == nil || r.Component.ID == "base") {
			return r
		}
	}
	t.Fatalf("there is no requirement %s in %s", requirement, of)
	return market.Ruling{}
}

// Every condition and fact that a pack names is one that there is; and each condition is
// used by some pack.
func TestPacksUseWhatThereIs(t *testing.T) {
	conditions, facts := market.Names()
	used := map[string]bool{}
	for _, pack := range handbook.Packs() {
		for _, r := range pack.Requirements {
			for _, condition := range r.Applies {
				name := strings.TrimPrefix(condition, "not ")
				used[name] = true
				if !slices.Contains(conditions, name) {
					t.Errorf("%s, %s: there is no condition %q", pack.Market, r.ID, name)
				}
			}
			for _, fact := range r.Needs {
				used["fact "+fact] = true
				if !slices.Contains(facts, fact) {
					t.Errorf("%s, %s: there is no fact %q", pack.Market, r.ID, fact)
				}
			}
		}
	}
	for _, name := range conditions {
		if !used[name] {
			t.Errorf("no pack asks for the condition %q", name)
		}
	}
	for _, name := range facts {
		if !used["fact "+name] {
			t.Errorf("no pack needs the fact %q", name)
		}
	}
}

func TestWhatIsAsked(t *testing.T) {
	flash := func(at string) string { return "sold as: other\n" + things(", flash point: "+at) }
	toy := func(age, size string) string {
		return "sold as: other\naudience: {age: " + age + ", skill: beginner, toy: yes}\n" + things(", size: "+size)
	}
	for _, test := range []struct {
		why, lines, market, requirement string
		want                            market.Answer
	}{
		// 21 CFR 740.17(b): not on products labelled as intended for use exclusively by adults.
		{"bath foam from 17 on", "audience: {age: 17+, skill: beginner}\n" + things(", hazards: foaming-bath"), "US", "foaming-bath", market.Asked},
		{"bath foam from 18 on", "audience: {age: 18+, skill: beginner}\n" + things(", hazards: foaming-bath"), "US", "foaming-bath", market.NotAsked},
		{"bath foam, no age told", things(", hazards: foaming-bath"), "US", "foaming-bath", market.Asked},
		{"no bath foam", things(""), "US", "foaming-bath", market.NotAsked},

		// 16 CFR 1500.3(c)(6): extremely flammable up to 20 °F, flammable above it and below
		// 100 °F, combustible from 100 to 150 °F.
		{"20 °F", flash("20 °F"), "US", "flammable-extremely", market.Asked},
		{"20 °F", flash("20 °F"), "US", "flammable", market.NotAsked},
		{"21 °F", flash("21 °F"), "US", "flammable-extremely", market.NotAsked},
		{"99 °F", flash("99 °F"), "US", "flammable", market.Asked},
		{"100 °F", flash("100 °F"), "US", "flammable", market.NotAsked},
		{"100 °F", flash("100 °F"), "US", "combustible", market.Asked},
		{"150 °F", flash("150 °F"), "US", "combustible", market.Asked},
		{"151 °F", flash("151 °F"), "US", "combustible", market.NotAsked},
		{"37.8 °C is 100.04 °F", flash("37.8 °C"), "US", "combustible", market.Asked},

		// 16 CFR 1500.19(b)(1): small parts from three to under six; (a)(2) and (b)(3): balls
		// that pass a hole of 1.75 in (44.45 mm), to under eight.
		{"small part at 2", toy("2+", "sphere 20 mm wide"), "US", "no-small-parts-under-3", market.Asked},
		{"small part at 3", toy("3+", "sphere 20 mm wide"), "US", "choking-small-parts", market.Asked},
		{"small part at 5", toy("5+", "sphere 20 mm wide"), "US", "choking-small-parts", market.Asked},
		{"small part at 6", toy("6+", "sphere 20 mm wide"), "US", "choking-small-parts", market.NotAsked},
		{"ball at 7", toy("7+", "sphere 44.4 mm wide"), "US", "choking-small-ball", market.Asked},
		{"ball at 8", toy("8+", "sphere 44.4 mm wide"), "US", "choking-small-ball", market.NotAsked},
		{"large ball at 7", toy("7+", "sphere 44.5 mm wide"), "US", "choking-small-ball", market.NotAsked},
		{"toy not told", "sold as: other\naudience: {age: 5+, skill: beginner}\n" + things(", size: sphere 20 mm wide"), "US", "choking-small-parts", market.CannotTell},
		{"toy not told, no age", "sold as: other\n" + things(", size: sphere 20 mm wide"), "US", "choking-small-parts", market.CannotTell},
		{"no toy", "sold as: other\naudience: {age: 5+, skill: beginner, toy: no}\n" + things(", size: sphere 20 mm wide"), "US", "choking-small-parts", market.NotAsked},
		// Directive 2009/48/EC, article 2: for play by children under fourteen.
		{"13+", "audience: {age: 13+, skill: beginner}\n" + things(""), "EU", "toy-marking", market.CannotTell},
		{"14+", "audience: {age: 14+, skill: beginner}\n" + things(""), "EU", "toy-marking", market.NotAsked},
		// 15 U.S.C. 2052(a)(2): primarily for children of twelve or younger.
		{"12+", "audience: {age: 12+, skill: beginner}\n" + things(""), "US", "tracking", market.CannotTell},
		{"13+", "audience: {age: 13+, skill: beginner}\n" + things(""), "US", "tracking", market.NotAsked},
		{"8+, said no", "audience: {age: 8+, skill: beginner, for children: no}\n" + things(""), "US", "tracking", market.NotAsked},

		// 16 CFR 1500.14(b): methanol from 4 %, the glycols, toluene, xylene, petroleum
		// distillates and turpentine from 10 %.
		{"3.9 % methanol", things(", ingredients: [3.9 % Methanol]"), "US", "special-substances", market.NotAsked},
		{"4 % methanol", things(", ingredients: [4 % Methanol]"), "US", "special-substances", market.Asked},
		{"up to 10 % turpentine", things(", ingredients: [5–10 % Turpentine]"), "US", "special-substances", market.Asked},
		{"polyethylene glycol", things(", ingredients: [50 % Polyethylene glycol]"), "US", "special-substances", market.NotAsked},
		{"named so", things(", also called: Gum, label name: Pure gum turpentine"), "US", "special-substances", market.Asked},

		// 16 CFR 1500.14(b)(8): art materials, never cosmetics.
		{"cosmetic", "sold as: rinse-off cosmetic\n" + things(""), "US", "art-review", market.NotAsked},
		{"not told", "sold as: other\n" + things(""), "US", "art-review", market.CannotTell},
		{"told", "sold as: other\n" + things(", art material: yes"), "US", "art-review", market.Asked},
		{"told, not looked at", "sold as: other\n" + things(", art material: yes"), "US", "art-conforms", market.CannotTell},
		{"nothing to warn of", "sold as: other\n" + things(", art material: yes, review: {day: 2026-01-10, by: Dr Reed}"), "US", "art-warning", market.NotAsked},

		{"not told what it is sold as", things(""), "EU", "responsible-cosmetic", market.CannotTell},
		{"candle", "sold as: candle\n" + things(""), "UK", "candle-fire", market.Asked},
		{"a warning of the GHS", "sold as: other\n" + things(", hazards: H319"), "EU", "hazardous-pack", market.Asked},
		{"no signal word", "sold as: other\n" + things(", hazards: H412"), "EU", "hazardous-pack", market.NotAsked},
	} {
		if r := ruling(t, test.lines, test.market, test.requirement); r.Answer != test.want || r.Why == "" || r.Answer == market.CannotTell && r.ToTell == "" {
			t.Errorf("%s: %s of %s is %v (%s; to do: %s), want %v", test.why, test.requirement, test.market, r.Answer, r.Why, r.ToTell, test.want)
		}
	}
}

func TestWhatIsMissing(t *testing.T) {
	cosmetic := "sold as: leave-on cosmetic\nmaker: Quay\n"
	for _, test := range []struct {
		why, lines, market, requirement, missing string
	}{
		{"no address", cosmetic + things(""), "US", "firm-cosmetic", "no address with a state and a ZIP code is told"},
		{"no ZIP code", cosmetic + "labels: {address: \"3 Quay Lane, Brindle\"}\n" + things(""), "US", "firm-cosmetic", "no address with a state and a ZIP code is told"},
		{"with ZIP code", cosmetic + "labels: {address: \"3 Quay Lane, Brindle, OR 97103-0001\"}\n" + things(""), "US", "firm-cosmetic", ""},
		{"the seller's ZIP code", cosmetic + "labels: {distributed by: \"Mill, 9 Mill Street, Brindle, OR 97103\"}\n" + things(""), "US", "firm-cosmetic", ""},
		{"nobody in the Union", cosmetic + things(""), "EU", "responsible-cosmetic", "it is not told who answers for it in the European Union"},
		{"no durability", cosmetic + things(""), "EU", "durability-cosmetic", "it is not told how long it keeps"},
		{"durability", cosmetic + "labels: {keeps: 24 months}\n" + things(""), "EU", "durability-cosmetic", ""},
		{"no lot", cosmetic + "labels: {lot: no}\n" + things(""), "UK", "batch-cosmetic", "the labels have no room for a lot number (“lot: no”)"},
		{"allergens", cosmetic + things(", counts as: fragrance"), "EU", "ingredients", "which allergens Base brings is not told"},
		{"allergens told", cosmetic + things(", counts as: fragrance, allergens: [1 % Linalool]"), "EU", "ingredients", ""},
		{"no review", "sold as: other\n" + things(", art material: yes"), "US", "art-review", "no toxicologist's look at the recipe of Base is told"},
	} {
		r := ruling(t, test.lines, test.market, test.requirement)
		if r.Answer != market.Asked {
			t.Errorf("%s: it is not asked: %s", test.why, r.Why)
		}
		var found []string
		for _, missing := range r.Missing {
			found = append(found, missing.Found)
			if missing.Write == "" {
				t.Errorf("%s: it does not say what to write", test.why)
			}
		}
		if got := strings.Join(found, "; "); got != test.missing {
			t.Errorf("%s: missing is %q, want %q", test.why, got, test.missing)
		}
	}
}

// 16 CFR 1500.14(b)(8): the outer pack names the materials in it that bear a warning, and a
// material that bears one says what the toxicologist found.
func TestWarningsOfArtMaterials(t *testing.T) {
	lines := "sold as: other\nmaker: Quay\nlabels: {address: \"3 Quay Lane, Brindle, OR 97103\", contact: Tel. 555 0100}\n" +
		things(", art material: yes, review: {day: 2026-01-10, by: Dr Reed, warns: May cause lung damage.}")
	k, l := opened(t, "markets: US\n"+lines)
	said := func(place handbook.Place) []string {
		var all []string
		for _, s := range market.Statements(k, l, place) {
			all = append(all, s.Text)
		}
		return all
	}
	const outer = "WARNING: Contains: Base that may be harmful if misused. Read cautions on individual containers carefully. Keep out of the reach of children."
	if got := said(handbook.OnBox); !slices.Equal(got, []string{outer}) {
		t.Errorf("the box says %q", got)
	}
	if got := said(handbook.OnBag); !slices.Equal(got, []string{"Conforms to ASTM D-4236", "WARNING: May cause lung damage.", "Not for use by children."}) {
		t.Errorf("the bag says %q", got)
	}
	if got := said(handbook.InBooklet); !slices.Equal(got, []string{"Conforms to ASTM D-4236", "WARNING: May cause lung damage."}) {
		t.Errorf("the booklet says %q", got)
	}
}

// A statement that two markets ask for is printed once, and a conformance that nobody found
// never.
func TestStatementsOnce(t *testing.T) {
	k, l := opened(t, "markets: [EU, UK]\nsold as: candle\n"+things(""))
	all := market.Statements(k, l, handbook.OnContainer)
	if len(all) != 1 || all[0].Word != "market-candle" || !slices.Equal(all[0].Markets, []string{"EU", "UK"}) || !all[0].Warns() {
		t.Errorf("the statements are %+v", all)
	}
	k, l = opened(t, "markets: US\nsold as: other\n"+things(", art material: yes"))
	if all := market.Statements(k, l, handbook.OnBag); len(all) != 0 {
		t.Errorf("without a look it says %+v", all)
	}
}

// A warning is printed though the firm's telephone number is missing, which is told by itself.
func TestWarnsThoughAFactIsMissing(t *testing.T) {
	k, l := opened(t, "markets: US\nsold as: other\n"+things(", art material: yes, review: {day: 2026-01-10, by: Dr Reed, warns: May cause lung damage.}"))
	var said []string
	for _, s := range market.Statements(k, l, handbook.OnBag) {
		said = append(said, s.Text)
	}
	if !slices.Contains(said, "Not for use by children.") {
		t.Errorf("the bag says %q", said)
	}
}

// A cosmetic that is filled into nothing has no label: that is told, not passed over.
func TestNothingToReadItOn(t *testing.T) {
	lines := strings.Replace("sold as: rinse-off cosmetic\n"+things(""), "pieces:\n  pot: {name: Pot, count: 1, in: jar}\n", "", 1)
	if r := ruling(t, lines, "US", "ingredients"); r.Answer != market.CannotTell || !strings.Contains(r.Why, "no step fills") {
		t.Errorf("it is %v: %s", r.Answer, r.Why)
	}
}

func TestMarketsWithoutPack(t *testing.T) {
	k, l := opened(t, "markets: [CA, US]\nsold as: other\n"+things(", art material: no"))
	if all := market.Unpacked(k); len(all) != 1 || all[0].Value != "CA" {
		t.Errorf("without a pack are %v", all)
	}
	for _, r := range market.Rulings(k, l) {
		if r.Pack.Market != "US" {
			t.Errorf("%s was looked at", r.Pack.Market)
		}
	}
}
