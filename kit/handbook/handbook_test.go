package handbook

import (
	"slices"
	"strings"
	"testing"

	"tallyfold/kit"
)

// The statements of the UN GHS, Rev. 10, with the signal words of their classes, as listed by
// a chemistry database of the US government; H411 and H412 have none.
func TestStatementsAreThoseOfGHS(t *testing.T) {
	published := map[string][2]string{
		"H225": {"Highly flammable liquid and vapor", "DANGER"}, "H226": {"Flammable liquid and vapor", "WARNING"},
		"H227": {"Combustible liquid", "WARNING"}, "H302": {"Harmful if swallowed", "WARNING"},
		"H304": {"May be fatal if swallowed and enters airways", "DANGER"}, "H314": {"Causes severe skin burns and eye damage", "DANGER"},
		"H315": {"Causes skin irritation", "WARNING"}, "H317": {"May cause an allergic skin reaction", "WARNING"},
		"H318": {"Causes serious eye damage", "DANGER"}, "H319": {"Causes serious eye irritation", "WARNING"},
		"H335": {"May cause respiratory irritation", "WARNING"}, "H336": {"May cause drowsiness or dizziness", "WARNING"},
		"H411": {"Toxic to aquatic life with long lasting effects", "NOTICE"}, "H412": {"Harmful to aquatic life with long lasting effects", "NOTICE"},
	}
	for id, want := range published {
		h, known := Find(id)
		if !known || h.Happens != want[0]+"." || string(h.Signal) != want[1] {
			t.Errorf("%s: %q, %s; published %v", id, h.Happens, h.Signal, want)
		}
	}
	for _, id := range MaterialIDs() {
		if strings.HasPrefix(id, "H") && published[id] == [2]string{} {
			t.Errorf("%s is in no published list here", id)
		}
	}
}

// The caution of 21 CFR 740.17(b), character by character.
func TestFoamingBathCaution(t *testing.T) {
	const published = "Use only as directed. Excessive use or prolonged exposure may cause irritation to skin and urinary tract. Discontinue use if rash, redness, or itching occurs. Consult your physician if irritation persists. Keep out of reach of children."
	if FoamingBathCaution != published {
		t.Errorf("it is %q", FoamingBathCaution)
	}
}

// A row without a source says that it is common practice, and each says what it has to.
func TestRowsAreWhole(t *testing.T) {
	var ids []string
	for _, h := range Hazards() {
		if slices.Contains(ids, h.ID) {
			t.Errorf("%s is there twice", h.ID)
		}
		ids = append(ids, h.ID)
		if h.What == "" || h.Happens == "" || h.When == "" || h.Avoid == "" && h.ID != FoamingBath {
			t.Errorf("%s has a gap: %+v", h.ID, h)
		}
		if !slices.Contains([]kit.Signal{kit.Danger, kit.Warning, kit.CautionWord, kit.Notice}, h.Signal) {
			t.Errorf("%s has the signal word %q", h.ID, h.Signal)
		}
		if known := []string{"read", secondHand, fromMemory, fromPractice}; !slices.Contains(known, h.Known) || h.Source == "" != (h.Known == fromPractice) {
			t.Errorf("%s: source %q, %q", h.ID, h.Source, h.Known)
		}
		for _, language := range []string{"en", "fr", "de", "es", "nl", "it"} {
			if len(h.Answers[language]) == 0 || h.Tools != nil && len(h.Tools[language]) == 0 {
				t.Errorf("%s cannot be known in the language %s", h.ID, language)
			}
		}
	}
}
