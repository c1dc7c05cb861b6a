package quantity

import (
	"strings"
	"testing"
)

// Literal values, in base units: NIST Handbook 44 (2014), Appendix C, and NIST SP
// 811 (2008), Appendix B.8, both of which mark them as exact.
func TestUnitDefinitions(t *testing.T) {
	for _, c := range []struct {
		unit, want, source string
	}{
		{"inch", "25.4", "HB 44 App. C §4"},
		{"foot", "304.8", "HB 44 App. C §4"},
		{"yard", "914.4", "HB 44 App. C §4"},
		{"sq in", "645.16", "from the inch"},
		{"sq ft", "92903.04", "from the inch"},
		{"sq yd", "836127.36", "from the inch"},
		{"cu in", "16.387064", "HB 44 App. C §4"},
		{"lb", "453.59237", "HB 44 App. C §4"},
		{"oz", "28.349523125", "HB 44 App. C §4"},
		{"oz weight", "28.349523125", "HB 44 App. C §4"},
		{"grain", "0.06479891", "HB 44 App. C §2"},
		{"dram avoirdupois", "1.7718451953125", "HB 44 App. C §2: 1/16 oz"},
		{"troy ounce", "31.1034768", "HB 44 App. C §2: 480 grains"},
		{"gallon", "3785.411784", "HB 44 App. C §4: 231 cubic inches"},
		{"quart", "946.352946", "HB 44 App. C: 57.75 cubic inches"},
		{"pint", "473.176473", "HB 44 App. C: 28.875 cubic inches"},
		{"cup", "236.5882365", "SP 811 B.8: 2.365 882 E+02 mL"},
		{"fl oz", "29.5735295625", "HB 44 App. C: 1.804 687 5 cubic inches"},
		{"tbsp", "14.78676478125", "SP 811 B.8: 1.478 676 E+01 mL"},
		{"tsp", "4.92892159375", "SP 811 B.8: 4.928 922 E+00 mL"},
		{"imperial gallon", "4546.09", "SP 811 B.8"},
		{"imperial quart", "1136.5225", "HB 44 App. C §3"},
		{"imperial pint", "568.26125", "HB 44 App. C §3"},
		{"imperial fl oz", "28.4130625", "SP 811 B.8: 2.841 306 E+01 mL"},
		{"day", "86400", "SP 811 table 6"},
		{"year", "31536000", "SP 811 B.8: year of 365 days"},
	} {
		unit, ok := UnitNamed(c.unit, USCustomary)
		if !ok || unit.Factor.String() != c.want {
			t.Errorf("%s: %v (%v), want %s by %s", c.unit, unit.Factor, ok, c.want, c.source)
		}
	}
}

// 21 CFR 101.9(b)(5)(viii): teaspoon 5 mL, tablespoon 15 mL, cup 240 mL, fluid ounce
// 30 mL. (Its ounce of 28 g is for tables on food, see Convention.) Metric: UCUM
// [tsp_m], [tbs_m], [foz_m]; the cup of 250 mL is common practice. Australian: the
// tablespoon of 20 mL by the general-purpose units database.
func TestConventions(t *testing.T) {
	for _, c := range []struct {
		convention                 Convention
		tsp, tbsp, cup, fluidOunce string
	}{
		{USLabel, "5", "15", "240", "30"},
		{Metric, "5", "15", "250", "30"},
		{Australian, "5", "20", "250", "28.4130625"},
		{Imperial, "5", "15", "284.130625", "28.4130625"},
	} {
		for name, want := range map[string]string{"tsp": c.tsp, "tbsp": c.tbsp, "cup": c.cup, "fl oz": c.fluidOunce} {
			if unit, ok := UnitNamed(name, c.convention); !ok || unit.Factor.String() != want {
				t.Errorf("%s %s: %v (%v), want %s mL", c.convention, name, unit.Factor, ok, want)
			}
		}
	}
	if unit, ok := UnitNamed("pint", Metric); ok {
		t.Errorf("a metric pint was found: %v mL", unit.Factor)
	}
	if unit, ok := UnitNamed("dessertspoon", USCustomary); ok {
		t.Errorf("a US dessertspoon was found: %v mL", unit.Factor)
	}
}

// Structure: 3 tsp = 1 tbsp but 4 in Australia, 16 tbsp = 1 US cup, 2 cups = 1 pint, 16
// fl oz = 1 US pint, 20 fl oz = 1 imperial pint (general-purpose units database).
func TestKitchenStructure(t *testing.T) {
	for _, c := range []struct {
		convention Convention
		count      int64
		small      string
		large      string
	}{
		{USCustomary, 3, "tsp", "tbsp"}, {Metric, 3, "tsp", "tbsp"}, {Imperial, 3, "tsp", "tbsp"}, {Australian, 4, "tsp", "tbsp"},
		{USCustomary, 16, "tbsp", "cup"}, {USLabel, 16, "tbsp", "cup"}, {USCustomary, 2, "cup", "pint"}, {Imperial, 2, "cup", "pint"},
		{USCustomary, 16, "fl oz", "pint"}, {Imperial, 20, "fl oz", "pint"}, {USCustomary, 16, "oz", "lb"}, {USCustomary, 7000, "grain", "lb"},
	} {
		small, _ := UnitNamed(c.small, c.convention)
		large, _ := UnitNamed(c.large, c.convention)
		if !small.Factor.Times(Whole(c.count)).Equal(large.Factor) {
			t.Errorf("%s: %d %s are not 1 %s", c.convention, c.count, c.small, c.large)
		}
	}
}

// Sizes of the usual mix-ups, as shares (calculated from the definitions).
func TestMixUps(t *testing.T) {
	for _, c := range []struct{ wrong, right, want string }{
		{"Australian tbsp", "US tbsp", "0.353"}, {"metric cup", "US cup", "0.057"},
		{"imperial fl oz", "US fl oz", "-0.039"}, {"imperial pint", "US pint", "0.201"},
	} {
		wrong, _ := UnitNamed(c.wrong, USCustomary)
		right, _ := UnitNamed(c.right, USCustomary)
		if got := wrong.Factor.Over(right.Factor).Minus(one).round(3, halfEven).String(); got != c.want {
			t.Errorf("%s for %s: %s, want %s", c.wrong, c.right, got, c.want)
		}
	}
}

func TestConvert(t *testing.T) {
	for _, c := range []struct{ n, from, to, want, source string }{
		{"350", "°F", "°C", "1590/9", "°C = (°F − 32)/1.8, SP 811"},
		{"100", "°C", "°F", "212", "the same"},
		{"-40", "°F", "°C", "-40", "the same"},
		{"1", "kg", "g", "1000", "SI prefix"},
		{"2", "gal", "qt", "8", "HB 44 App. C"},
	} {
		from, _ := UnitNamed(c.from, USCustomary)
		to, _ := UnitNamed(c.to, USCustomary)
		got, err := Convert(parsed(t, c.n), from, to)
		want := parsed(t, strings.Split(c.want, "/")[0])
		if _, below, ok := strings.Cut(c.want, "/"); ok {
			want = want.Over(parsed(t, below))
		}
		if err != nil || !got.Equal(want) {
			t.Errorf("%s %s in %s: %v, %v, want %s by %s", c.n, c.from, c.to, got, err, c.want, c.source)
		}
	}
	for from, to := range map[string]string{"g": "mL", "°C": "K", "£": "€", "cm": "cm²"} {
		a, _ := UnitNamed(from, USCustomary)
		b, _ := UnitNamed(to, USCustomary)
		if n, err := Convert(one, a, b); err == nil {
			t.Errorf("1 %s became %v %s", from, n, to)
		}
	}
	if _, err := Convert(one, Unit{}, Unit{}); err == nil {
		t.Error("a figure without a unit was converted")
	}
}

// Every spelling in the table finds its own row: none belongs to two units.
func TestEverySpellingIsFound(t *testing.T) {
	for i := range table {
		names := append([]string{table[i].Name, table[i].Plural, table[i].Symbol}, table[i].names...)
		for _, name := range append(names, table[i].spellings...) {
			name = strings.TrimPrefix(name, "=")
			unit, ok := UnitNamed(name, Australian) // it has every unit
			if !ok || unit.Symbol != table[i].Symbol {
				t.Errorf("%q is %q (%v), want %q", name, unit.Symbol, ok, table[i].Symbol)
			}
		}
	}
}

func TestUnitNamedMindsCapitals(t *testing.T) {
	for _, name := range []string{"ml", "mL", "g", "G", "Kg", "KG", "OZ", "Grams", "TBSP", "Cup", "Fl. Oz.", "fl oz"} {
		if _, ok := UnitNamed(name, USCustomary); !ok {
			t.Errorf("%q is not found", name)
		}
	}
	for _, name := range []string{"ML", "Ml", "M", "MM", "MG", "S", "T", "t", "c", "C", "F", "gr", "", "g g", "20 g", "of", strings.Repeat("g", 300)} {
		if unit, ok := UnitNamed(name, USCustomary); ok {
			t.Errorf("%q was taken for %s", name, unit.Name)
		}
	}
}

func TestUnits(t *testing.T) {
	for c := USCustomary; c <= Imperial; c++ {
		for _, unit := range Units(c) {
			if unit.Factor.Sign() <= 0 || unit.Dimension == 0 || unit.Name == "" || unit.Plural == "" || unit.Symbol == "" {
				t.Errorf("%s: %+v is incomplete", c, unit)
			}
		}
	}
	if metric, all := len(Units(Metric)), len(Units(USCustomary)); metric >= all {
		t.Errorf("%d metric units, %d US ones: the pint is no metric unit", metric, all)
	}
}
