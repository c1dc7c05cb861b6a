package quantity

import "testing"

func TestFindOpen(t *testing.T) {
	tests := []struct {
		text    string
		written []string
	}{
		{"Add a handful of petals and 20 drops of oil.", []string{"a handful", "20 drops"}},
		{"½ a drachm of cloves, 2 drachms of balsam", []string{"½ a drachm", "2 drachms"}},
		{"from twelve to twenty drops", []string{"twelve to twenty drops"}},
		{"dissolve a tea-cupful of glue, a teacupful of lye", []string{"a tea-cupful", "a teacupful"}},
		{"two wineglassfuls and a pennyworth of bluestone", []string{"two wineglassfuls", "a pennyworth"}},
		{"musk 8 gr., vanilla 1 dr.", []string{"8 gr", "1 dr"}},
		{"one dram and a half of musk", []string{"one dram and a half"}},
		{"heat it to 170 degrees", []string{"170 degrees"}},
		// What has a size is Find's.
		{"2 drachms apothecaries, 3 fluid drachms, 12 grains, a cup of tea", nil},
		{"an infinity of ways, 3 jars", nil},
	}
	for _, test := range tests {
		var got []string
		for _, open := range (Reader{}).FindOpen(test.text) {
			got = append(got, test.text[open.Start:open.End])
			if open.Why == "" || open.Measure == "" {
				t.Errorf("%q: %+v does not say what is open", test.text, open)
			}
		}
		if len(got) != len(test.written) {
			t.Errorf("%q: found %q, want %q", test.text, got, test.written)
			continue
		}
		for i := range got {
			if got[i] != test.written[i] {
				t.Errorf("%q: found %q, want %q", test.text, got, test.written)
			}
		}
	}
	drop := map[string]Amount{"drop": {Dimension: Volume, Nominal: Ratio(5, 100)}}
	if open := (Reader{Measures: drop}).FindOpen("20 drops of oil"); len(open) > 0 {
		t.Errorf("a drop that the kit gives a size is told as open: %+v", open)
	}
	if open := (Reader{Convention: Metric}).FindOpen("2 pints of milk"); len(open) != 1 {
		t.Errorf("a metric pint does not exist, and %d are told as open", len(open))
	}
}

func TestFindLoose(t *testing.T) {
	tests := []struct{ text, loose, careful string }{
		{"Take a pint rose water.", "a pint", ""},
		{"a pound and a half of lard", "a pound and a half", "a pound and a half"},
		{"two or three gallons", "two or three gallons", "three gallons"},
		{"½ a pint rose water", "½ a pint", "½ a pint"},
		{"of 80° C. to 90° C. for", "80° C. to 90° C", "80° C"},
		{"a gill of oil", "a gill", "a gill"},
		{"half a tea-spoonful of alum", "half a tea-spoonful", "half a tea-spoonful"},
		{"to 160° Fahr., and", "160° Fahr", "160° Fahr"},
		{"leave it a fortnight", "a fortnight", "a fortnight"},
		{"a scruple of alum", "a scruple", "a scruple"},
	}
	for _, test := range tests {
		for _, loose := range []bool{true, false} {
			want, got := test.careful, ""
			if loose {
				want = test.loose
			}
			if found := (Reader{Loose: loose}).Find(test.text); len(found) > 0 {
				got = test.text[found[0].Start:found[0].End]
			}
			if got != want {
				t.Errorf("%q, loose %v: found %q, want %q", test.text, loose, got, want)
			}
		}
	}
}
