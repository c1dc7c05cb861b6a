package labels

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/label"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/templates"
)

// example opens one of the example kits.
func example(t *testing.T, name string) *kit.Kit {
	t.Helper()
	k, found := instructions.Open(os.DirFS("../../examples/"+name), name)
	if k == nil || found.MustFix() {
		t.Fatalf("%s can't be read: %v", name, found)
	}
	return k
}

// plainCandles is an example without markets, so that its labels bear no statement and have
// room on the usual sheets.
func plainCandles(t *testing.T) *kit.Kit {
	t.Helper()
	k := example(t, "harbour-candles")
	k.Markets, k.Labels.Bags = nil, kit.Said[string]{}
	return k
}

func made(t *testing.T, k *kit.Kit, options Options) *Set {
	t.Helper()
	set, err := Make(k, ledger.Follow(k), templates.Shipped(), options)
	if err != nil {
		t.Fatal(err)
	}
	return set
}

// page is the HTML of one kind, without the faces and the look.
func page(t *testing.T, set *Set, kind string) string {
	t.Helper()
	for _, d := range set.Documents {
		if d.Kind == kind {
			html, err := d.HTML()
			if err != nil {
				t.Fatal(err)
			}
			return regexp.MustCompile(`(?s)<style>.*</style>\n`).ReplaceAllString(string(html), "")
		}
	}
	t.Fatalf("no labels of the kind %s: %v", kind, set.Misfits)
	return ""
}

// What all labels of the examples say and where, each kind on its usual sheet.
func TestGolden(t *testing.T) {
	folders, err := filepath.Glob("../../examples/*/kit.yaml")
	if err != nil || len(folders) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	for _, folder := range folders {
		name := filepath.Base(filepath.Dir(folder))
		set := made(t, example(t, name), Options{})
		for _, misfit := range set.Misfits {
			t.Errorf("%s: %s", name, misfit)
		}
		for _, d := range set.Documents {
			got, file := page(t, set, d.Kind), filepath.Join("testdata", name+"-"+d.Kind+".html")
			if os.Getenv("UPDATE_GOLDEN") != "" {
				if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(string(want), got); diff != "" {
				t.Errorf("%s: %s", file, diff)
			}
		}
	}
}

var article = regexp.MustCompile(`<article class="[^"]*" style="left:([0-9.]+)mm;top:([0-9.]+)mm`)

// The first label of a sheet partly used stands where the first free one is, and what does
// not go on it comes on the next. Places reckoned by hand: 3 across, 8 down of 70 × 37 mm,
// the first at 0 and 0.5 mm.
func TestStartAndKits(t *testing.T) {
	set := made(t, plainCandles(t), Options{Kinds: []string{"bags"}, Start: 5, Kits: 2})
	d := set.Documents[0]
	if d.Labels != 24 || d.Sheets != 2 {
		t.Errorf("%d labels on %d sheets, want 2 × 12 on 2", d.Labels, d.Sheets)
	}
	at := article.FindAllStringSubmatch(page(t, set, "bags"), -1)
	if len(at) != 24 {
		t.Fatalf("%d labels are printed", len(at))
	}
	for number, want := range map[int][2]string{0: {"70", "37.5"}, 1: {"140", "37.5"}, 19: {"140", "259.5"}, 20: {"0", "0.5"}, 23: {"0", "37.5"}} {
		if at[number][1] != want[0] || at[number][2] != want[1] {
			t.Errorf("label %d at %s, %s mm, want %s", number+1, at[number][1], at[number][2], want)
		}
	}
}

// A nudge moves everything.
func TestNudge(t *testing.T) {
	k := plainCandles(t)
	k.Labels.Nudge.Value = kit.Nudge{Right: quantity.Whole(1), Down: quantity.Ratio(-1, 4)}
	at := article.FindStringSubmatch(page(t, made(t, k, Options{Kinds: []string{"bags"}}), "bags"))
	if at[1] != "1" || at[2] != "0.25" {
		t.Errorf("the first label is at %s, %s", at[1], at[2])
	}
}

// What has no room is told with the label, the text, by how much and a way out; nothing is
// cut off.
func TestNoRoom(t *testing.T) {
	k := plainCandles(t)
	k.Components[1].Cautions[0].Value = strings.Repeat("May irritate skin and eyes. ", 12)
	set := made(t, k, Options{Kinds: []string{"bags"}})
	if len(set.Misfits) != 1 {
		t.Fatalf("%d misfits: %v", len(set.Misfits), set.Misfits)
	}
	told := set.Misfits[0].String()
	for _, want := range []string{"the bag label B, Pine fragrance", "May irritate", "mm more height", "--sheet a4-", "fewer words"} {
		if !strings.Contains(told, want) {
			t.Errorf("%q says nothing of %q", told, want)
		}
	}
	_, offered, _ := strings.Cut(told, "--sheet ")
	offered, _, _ = strings.Cut(offered, ",")
	grid, known := label.GridNamed(offered)
	if !known {
		t.Fatalf("the sheet %q is not known", offered)
	}
	if set := made(t, k, Options{Kinds: []string{"bags"}, Grid: grid}); len(set.Misfits) > 0 {
		t.Errorf("the sheet that is offered has no room either: %v", set.Misfits)
	}

	k.Components[2].Called.Value = strings.Repeat("Orangenblüten", 9)
	set = made(t, k, Options{Kinds: []string{"bags"}})
	if len(set.Misfits) != 2 || !strings.Contains(set.Misfits[1].String(), "mm too wide") {
		t.Errorf("a word wider than the label: %v", set.Misfits)
	}
}

// What the supplier's sheet says to do stands on the bag, under the cautions.
func TestFirstAidStandsOnTheBag(t *testing.T) {
	k := plainCandles(t)
	k.Components[1].FirstAid = kit.Said[string]{Value: "Rinse eyes with water.", Span: k.Components[1].Cautions[0].Span}
	if html := page(t, made(t, k, Options{Kinds: []string{"bags"}}), "bags"); strings.Count(html, "warns\"") < 3 || !strings.Contains(html, "Rinse eyes with water.") {
		t.Error(html)
	}
}

// A text over several lines, or with a narrow space, is set all the same.
func TestSpacesAreSetPlainly(t *testing.T) {
	k := example(t, "harbour-candles")
	k.Labels.Address.Value = "3 Quay Lane,\n  Brindle\u202fQuay"
	if html := page(t, made(t, k, Options{Kinds: []string{"box"}}), "box"); !strings.Contains(html, "3 Quay Lane, Brindle\u00a0Quay") {
		t.Error(html)
	}
}

// Letters that the faces lack cannot be measured, and that is said.
func TestLettersLacking(t *testing.T) {
	k := example(t, "harbour-candles")
	k.Components[0].Called.Value = "Soy 蠟"
	set := made(t, k, Options{Kinds: []string{"bags"}})
	if len(set.Misfits) != 1 || !strings.Contains(set.Misfits[0].String(), "letters whose width is not known here (蠟)") {
		t.Errorf("%v", set.Misfits)
	}
}

// Net contents are printed as high as the panel asks for: a cylinder 2 in wide and 4 in
// high has 10.05 in², so that letters are 1/8 in high (21 CFR 701.13), whatever else
// must shrink; and they lie in the bottom 30 % (701.13).
func TestNetContentsAreLargeEnough(t *testing.T) {
	k := plainCandles(t)
	for _, c := range k.Components {
		if c.ID == "jar" {
			c.Container.Inside.Value = kit.Shape{Form: kit.Cylinder, Widths: []quantity.Number{quantity.Ratio(508, 10)}, Tall: quantity.Ratio(1016, 10)}
		}
	}
	for _, name := range []string{"a4-99x68", "a4-99x57", "letter-4x3.33"} {
		grid, _ := label.GridNamed(name)
		m, err := newMaker(k, ledger.Follow(k), templates.Shipped(), Options{})
		if err != nil {
			t.Fatal(err)
		}
		d, misfits := m.lay(kinds[1], grid, containerLabels(m, grid))
		if len(misfits) > 0 {
			t.Errorf("%s: %v", name, misfits)
			continue
		}
		for _, one := range d.labels {
			last := one.lines[len(one.lines)-1]
			height := last.size * 25.4 / 72 * m.faces[last.face].XHeight
			if !strings.HasPrefix(last.text, "Net wt") || height < 25.4/8-1e-6 || last.top < 0.7*grid.Tall-0.05 {
				t.Errorf("%s: “%s” is %.2f mm high and begins at %.1f mm of %.1f", name, last.text, height, last.top, grid.Tall)
			}
		}
	}
}

// A draft is marked on every label.
func TestDraft(t *testing.T) {
	html := page(t, made(t, example(t, "pocket-notebooks"), Options{Draft: true}), "bags")
	if labels, marks := strings.Count(html, "<article"), strings.Count(html, "DRAFT, not for sale"); labels != marks {
		t.Errorf("%d labels, %d marks", labels, marks)
	}
}

// The calibration sheet has a frame for every place and both rulers.
func TestCalibration(t *testing.T) {
	k := example(t, "drawer-sachets")
	documents, err := Calibration(k, ledger.Follow(k), templates.Shipped(), Options{Kinds: []string{"bags"}, Language: "fr"})
	if err != nil || len(documents) != 1 {
		t.Fatal(documents, err)
	}
	html, err := documents[0].CalibrationHTML()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"Feuille de réglage pour a4-70x37", "--long:50mm", "--long:50.8mm", fmt.Sprintf(">%d</p>", 24)} {
		if !strings.Contains(string(html), want) {
			t.Errorf("%q is not there", want)
		}
	}
	if frames := strings.Count(string(html), "<p class=\"frame"); frames != 24 {
		t.Errorf("%d frames", frames)
	}
}

// Who reads in the United States has letter paper; a language that the kit lacks is told.
func TestPaperAndLanguage(t *testing.T) {
	k := plainCandles(t)
	if set := made(t, k, Options{Language: "en-US"}); set.Documents[0].Grid.Paper != label.Letter {
		t.Error("en-US is printed on A4")
	}
	if _, err := Make(k, ledger.Follow(k), templates.Shipped(), Options{Language: "it"}); err == nil || !strings.Contains(err.Error(), "method.it.md") {
		t.Errorf("Italian: %v", err)
	}
}
