package kit

import "testing"

func TestThingsAreFoundByKey(t *testing.T) {
	k := &Kit{
		Components: []*Component{{Name: Name{ID: "wax", Called: Said[string]{Value: "Soy wax"}}}},
		Household:  []*Household{{Name: Name{ID: "water"}}},
		Tools:      []*Tool{{Name: Name{ID: "jug"}}},
		Mixtures:   []*Mixture{{Name: Name{ID: "blend"}}},
		Pieces:     []*Piece{{Name: Name{ID: "candle"}}},
		Runs: []*Run{
			{With: []Binding{{Role: Said[string]{Value: "scent"}, Component: Said[string]{Value: "pine"}}}},
			{Parts: []Said[string]{{Value: "finish"}}},
		},
	}
	for _, key := range []string{"wax", "water", "jug", "blend", "candle"} {
		if _, ok := k.Named(key); !ok {
			t.Errorf("%q is not found", key)
		}
	}
	if k.Called("wax") != "Soy wax" || k.Called("water") != "water" || k.Called("nothing") != "nothing" {
		t.Error("called by the wrong name")
	}
	if k.Component("jug") != nil || k.Tool("wax") != nil {
		t.Error("a thing was found among another sort of things")
	}
	if !k.IsRole("scent") || k.IsRole("wax") {
		t.Error("roles are mistaken")
	}
	if !k.Runs[0].Follows(&Part{ID: "pour"}) || k.Runs[1].Follows(&Part{ID: "pour"}) || !k.Runs[1].Follows(&Part{ID: "finish"}) {
		t.Error("a run follows the wrong parts")
	}
	if len((&Kit{}).Passes()) != 1 {
		t.Error("a kit without runs is followed once")
	}
}
