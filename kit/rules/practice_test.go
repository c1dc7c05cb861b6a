package rules_test

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
)

// The rows below are common practice, no source, unless a line says otherwise. Each
// is a kit that goes through the whole chain: read, followed, judged.

func TestBaseForEightContainers(t *testing.T) {
	folder := filepath.Join("testdata", "practice", "base-for-eight")
	s, _ := subject(t, folder)
	ounce := quantity.Ratio(28349523125, 1000000000) // NIST Handbook 44, App. C
	left := s.Ledger.Remainders[0].Mass().Value()
	if !left.Equal(ounce.Times(quantity.Whole(12))) {
		t.Errorf("left in the pan: %s g, want 12 oz", left)
	}
	open, _ := judged(t, folder)
	finding := only(t, open, "left-over")
	if finding.Severity != diag.MustFix {
		t.Errorf("severity %s, want must fix: more than a whole piece is left", finding.Severity)
	}
	for _, want := range []string{"18.75 %", "enough for 1.8 more", "52 oz weight of Gel base instead of 64 oz weight"} {
		if !strings.Contains(told(open), want) {
			t.Errorf("want %q in:\n%s", want, told(open))
		}
	}
}

func TestRoomBesideASunkInsert(t *testing.T) {
	folder := filepath.Join("testdata", "practice", "sunk-insert")
	s, _ := subject(t, folder)
	filling := s.Ledger.Fillings[0]
	if room := filling.Room().Value(); !room.Equal(quantity.Whole(185)) {
		t.Errorf("room %s mL, want 185: 250 − 20 − 45", room)
	}
	if free := filling.Free().Value(); !free.IsZero() {
		t.Errorf("free %s mL, want none", free)
	}
	if open, _ := judged(t, folder); len(open) > 0 {
		t.Errorf("a jar that is exactly full is no finding:\n%s", told(open))
	}
}

// A floating body displaces its own weight of the fill (Archimedes): 14 g over
// 1.03 g/mL is 13.592 mL, told as 13.6 mL.
func TestRoomBesideAFloatingInsert(t *testing.T) {
	folder := filepath.Join("testdata", "practice", "floating-insert")
	s, _ := subject(t, folder)
	filling := s.Ledger.Fillings[0]
	takes := filling.Takes(filling.Inserts[0])
	if !takes.Value().Equal(quantity.Whole(14).Over(quantity.Ratio(103, 100))) {
		t.Errorf("displaces %s mL, want 14 g over 1.03 g/mL", takes.Value())
	}
	if off := takes.Value().Minus(quantity.Ratio(136, 10)).Abs(); quantity.Ratio(5, 100).Less(off) {
		t.Errorf("displaces %s, want 13.6 mL to the last digit told", takes.Show())
	}
	if open, _ := judged(t, folder); len(open) > 0 {
		t.Errorf("want no finding:\n%s", told(open))
	}
}

// 64 fl oz at 1.03 g/mL weighs 68.8 oz: 64 × 29.5735295625 mL × 1.03 g/mL ÷
// 28.349523125 g = 68.77 (units: NIST Handbook 44, App. C).
func TestFluidOuncesWeighed(t *testing.T) {
	s, _ := subject(t, filepath.Join("testdata", "practice", "floating-insert"))
	packed := s.Ledger.Balance("base").Packed.Value()
	ounces := packed.Times(quantity.Ratio(103, 100)).Over(quantity.Ratio(28349523125, 1000000000))
	if off := ounces.Minus(quantity.Ratio(688, 10)).Abs(); quantity.Ratio(5, 100).Less(off) {
		t.Errorf("weighs %v oz, want 68.8 to the last digit told", ounces.Float())
	}
}

// only gives the one finding of a rule and fails if there is another.
func only(t *testing.T, list diag.List, rule string) diag.Finding {
	t.Helper()
	i := slices.IndexFunc(list, func(f diag.Finding) bool { return f.Rule == rule })
	if i < 0 || len(list) != 1 {
		t.Fatalf("want one finding, of %s, got:\n%s", rule, told(list))
	}
	return list[i]
}
