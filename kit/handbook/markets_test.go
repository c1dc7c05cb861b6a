package handbook

import (
	"slices"
	"strings"
	"testing"
	"time"

	"tallyfold/kit/quantity"
)

// lawStatements are those that the law gives to the letter, as read in shared copies of the
// Code of Federal Regulations; of 16 CFR 1500.19 the words are from memory and from a stored
// list of code that gives them the same.
var lawStatements = map[string]string{
	"foaming-bath":        "Caution—Use only as directed. Excessive use or prolonged exposure may cause irritation to skin and urinary tract. Discontinue use if rash, redness, or itching occurs. Consult your physician if irritation persists. Keep out of reach of children.",
	"art-conforms":        "Conforms to ASTM D-4236",
	"art-outer-pack":      "WARNING: Contains: {warned materials} that may be harmful if misused. Read cautions on individual containers carefully. Keep out of the reach of children.",
	"choking-small-parts": "WARNING: CHOKING HAZARD—Small parts. Not for children under 3 yrs.",
	"choking-small-ball":  "WARNING: CHOKING HAZARD—Toy contains a small ball. Not for children under 3 yrs.",
	"choking-marble":      "WARNING: CHOKING HAZARD—Toy contains a marble. Not for children under 3 yrs.",
	"choking-balloon":     "WARNING: CHOKING HAZARD—Children under 8 yrs. can choke or suffocate on uninflated or broken balloons. Adult supervision required. Keep uninflated balloons from children. Discard broken balloons at once.",
}

func TestStatementsOfTheLawToTheLetter(t *testing.T) {
	pack, _ := PackFor("US")
	for id, want := range lawStatements {
		at := slices.IndexFunc(pack.Requirements, func(r Requirement) bool { return r.ID == id })
		if at < 0 || pack.Requirements[at].Says != want {
			t.Errorf("%s does not say %q", id, want)
		}
	}
}

// Every requirement can be read by people: what, under which conditions, from where, how it
// is known; and it does something: it prints, needs, holds a table or is left to the maker.
func TestPacksAreWhole(t *testing.T) {
	var markets []string
	for _, pack := range Packs() {
		markets = append(markets, pack.Market)
		if pack.LookedAt.Before(time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)) {
			t.Errorf("%s was looked at on %v", pack.Market, pack.LookedAt)
		}
		var ids []string
		for _, r := range pack.Requirements {
			if slices.Contains(ids, r.ID) {
				t.Errorf("%s: %s is there twice", pack.Market, r.ID)
			}
			ids = append(ids, r.ID)
			if !slices.Contains([]string{OfKit, OfPack, OfFilling}, r.Of) {
				t.Errorf("%s: %s is of %q", pack.Market, r.ID, r.Of)
			}
			for _, place := range r.On {
				if !slices.Contains([]Place{OnBox, OnBag, OnContainer, InBooklet}, place) {
					t.Errorf("%s: %s is on %q", pack.Market, r.ID, place)
				}
			}
			if prints := r.Says != "" || r.Word != "" || r.Tells != ""; prints && len(r.On) == 0 || !prints && len(r.Needs) == 0 && r.Yours == "" && len(r.Least) == 0 {
				t.Errorf("%s: %s prints nowhere, or asks nothing", pack.Market, r.ID)
			}
			if r.Tells != "" && r.Tells != "hazards" {
				t.Errorf("%s: %s tells %q", pack.Market, r.ID, r.Tells)
			}
			for _, known := range strings.Split(r.Known, ";")[:1] {
				if !strings.HasPrefix(known, "read") && !strings.HasPrefix(known, fromMemory) {
					t.Errorf("%s: %s is known by %q", pack.Market, r.ID, r.Known)
				}
			}
		}
	}
	if !slices.Equal(markets, []string{"EU", "UK", "US"}) {
		t.Errorf("the markets are %v", markets)
	}
}

func TestPackGrowsOld(t *testing.T) {
	pack := Pack{LookedAt: time.Date(2026, 11, 26, 0, 0, 0, 0, time.UTC)}
	if pack.Old(time.Date(2027, 11, 26, 23, 0, 0, 0, time.UTC)) || !pack.Old(time.Date(2027, 11, 27, 0, 0, 0, 0, time.UTC)) {
		t.Error("a pack holds for a year to the day")
	}
}

// The points of Directive 76/211/EEC, annex I, as reckoned from its table, read 2nd hand;
// those of NIST Handbook 133, table 2-5, are from memory but for 113 g, read 2nd hand.
func TestShortfalls(t *testing.T) {
	for market, points := range map[string]map[string]string{
		"EU": {"5": "0.45", "50": "4.5", "75": "4.5", "150": "6.75", "250": "9", "400": "12", "750": "15", "2000": "30"},
		"UK": {"50": "4.5", "400": "12"},
		"US": {"30": "3", "36": "3.6", "113": "7.2", "454": "19.9"},
	} {
		pack, _ := PackFor(market)
		at := slices.IndexFunc(pack.Requirements, func(r Requirement) bool { return r.ID == "pack-tolerance" })
		for labelled, want := range points {
			n, _ := quantity.ParseNumber(labelled)
			w, _ := quantity.ParseNumber(want)
			if got, known := pack.Requirements[at].ShortfallOf(n); !known || !got.Equal(w) {
				t.Errorf("%s: %s g may be %s g short, want %s", market, labelled, got, want)
			}
		}
		if _, known := pack.Requirements[at].ShortfallOf(quantity.Whole(1_000_000)); known {
			t.Errorf("%s tells what its table does not", market)
		}
	}
}

func TestReadPackSaysWhatIsWrong(t *testing.T) {
	const head = "Market: XX\nName: X\nLooked-At: 2026-11-26\nNot-Covered: all\n\n"
	const good = "Requirement: one\nAsks: a\nOf: kit\nApplies: any kit\nYours: y\nSource: s\nDated: d\nKnown: read\n"
	if _, err := ReadPack("xx.txt", "# a note\n"+head+good); err != nil {
		t.Fatal(err)
	}
	for text, says := range map[string]string{
		"Market: XX\n":                           "xx.txt: paragraph 1: Name is missing",
		"no key\n":                               "paragraph 1 is not made of lines",
		strings.Replace(head, "2026", "x", 1):    "Looked-At is \"x-11-26\"",
		head + "Requirement: one\n":              "paragraph 2: Asks is missing",
		head + good + "Colour: red\n":            "Colour is no key of a pack",
		head + good + "Asks: b\n":                "Asks stands there twice",
		head + good + "Least: up to 3 lb: 5 g\n": "“up to 3 lb: 5 g” under Least",
	} {
		if _, err := ReadPack("xx.txt", text); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: the error is %v, want %q", text, err, says)
		}
	}
}

func FuzzReadPack(f *testing.F) {
	for _, name := range []string{"US.txt", "EU.txt", "UK.txt"} {
		text, err := marketFiles.ReadFile("markets/" + name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text))
	}
	f.Fuzz(func(t *testing.T, text string) {
		pack, err := ReadPack("fuzz.txt", text)
		if err != nil {
			return
		}
		for _, r := range pack.Requirements {
			if r.ID == "" || r.Source == "" {
				t.Errorf("a requirement without name or source: %+v", r)
			}
		}
	})
}
