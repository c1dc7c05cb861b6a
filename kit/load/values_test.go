package load

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

func readFile(t *testing.T, path string) (*kit.Kit, diag.List) {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return Kit(source.NewFile("kit.yaml", text))
}

func readText(text string) (*kit.Kit, diag.List) {
	return Kit(source.NewFile("kit.yaml", []byte(text)))
}

// told writes a value as read and the words it was read from.
func told[T any](s kit.Said[T]) string {
	if a, ok := any(s.Value).(quantity.Amount); ok {
		return fmt.Sprintf("%v %v %v–%v | %s", a.Dimension, a.Nominal, a.Low, a.High, s.Span.Text())
	}
	return fmt.Sprintf("%v | %s", s.Value, s.Span.Text())
}

// TestValues: each key of the file with every key, as read (amounts in base
// units: g, mL, mm, s, °C) and the words of the file it came from.
func TestValues(t *testing.T) {
	k, found := readFile(t, "testdata/every-key.yaml")
	if len(found) > 0 {
		t.Fatal(tell(found))
	}
	wax, scent, tin := k.Component("wax"), k.Component("scent"), k.Component("tin").Container
	shell, bead := k.Component("shell").Insert, k.Component("bead").Insert
	thread := k.Component("thread")
	water, pot, mixture, piece := k.HouseholdItem("water"), k.Tool("pot"), k.Mixture("candle-wax"), k.Piece("candle")
	for _, c := range []struct{ what, got, want string }{
		{"language", told(k.Language), "en-GB | en-GB"},
		{"kitchen", told(k.Kitchen), "metric | metric"},
		{"short measure", told(k.Measures[0].Holds), "volume 0.05 0.05–0.05 | 0.05 mL"},
		{"measure", told(k.Measures[1].Holds), "volume 15 15–15 | 15 mL"},
		{"measure name", told(k.Measures[1].Called), "Blue scoop | Blue scoop"},
		{"name", told(k.Name), "Pour and stitch | Pour and stitch"},
		{"maker", told(k.Maker), "Brindle Quay Workroom | Brindle Quay Workroom"},
		{"page", told(k.Page), "https://example.com/pour-and-stitch?edition=2 | https://example.com/pour-and-stitch?edition=2"},
		{"about", told(k.About), "Two candles in a tin each, and a stitched wrap. | >-\n  Two candles in a tin each,\n  and a stitched wrap."},
		{"edition", told(k.Edition), "2 | 2"},
		{"makes", told(k.Makes), "count 2 2–2 | 2 candles"},
		{"makes noun", k.Makes.Value.Noun, "candles"},
		{"age", told(k.Audience.Age), "12 | 12+"},
		{"skill", told(k.Audience.Skill), "some practice | some practice"},
		{"hands-on", told(k.Time.HandsOn), "time 5400 5400–5400 | 1 h 30 min"},
		{"total", told(k.Time.Total), "time 21600 21600–21600 | 6 h"},
		{"component key", wax.IDSpan.Text(), "wax"},
		{"component name", told(wax.Called), "Soy wax flakes | Soy wax flakes"},
		{"packed", told(wax.Packed), "mass 400 395–405 | 400 g ± 5 g"},
		{"spare", told(wax.Spare), "mass 10 10–10 | 10 g"},
		{"density", told(wax.Density), "density 0.45 0.45–0.45 | 0.45 g/mL loose"},
		{"density state", fmt.Sprint(wax.DensityState == kit.Loose), "true"},
		{"true density", told(wax.TrueDensity), "density 0.93 0.93–0.93 | 0.93 g/mL"},
		{"first share", told(wax.Shares[0]), "share 0.9 0.9–0.9 | at least 90 % of mixture"},
		{"second share", told(wax.Shares[1]), "share 0.97 0–0.97 | at most 97 % of candle-wax"},
		{"share base", wax.Shares[1].Value.Of, "candle-wax"},
		{"share base by name", scent.Shares[0].Value.Of, "wax"},
		{"component withstands", told(wax.Withstands), "temperature 120 120–120 | 120 °C"},
		{"note", told(wax.Note), "the larger of the two bags | the larger of the two bags"},
		{"first caution", told(wax.Cautions[0]), "Hot wax burns skin. | Hot wax burns skin."},
		{"quoted caution", told(wax.Cautions[1]), `Never leave it alone: it can catch fire. | "Never leave it alone: it can catch fire."`},
		{"single caution", told(scent.Cautions[0]), "Keep away from eyes | Keep away from eyes"},
		{"add below", told(scent.AddBelow), "temperature 70 70–70 | 70 °C"},
		{"strands", told(k.Component("thread").Strands), "6 | 6"},
		{"optional", told(k.Component("shell").Optional), "true | yes"},
		{"brimful", told(tin.Brimful), "volume 250 250–250 | 250 mL"},
		{"headspace", told(tin.Headspace), "length 10 10–10 | 10 mm"},
		{"container withstands", told(tin.Withstands), "temperature 95 95–95 | 95 °C"},
		{"cavities", told(tin.Cavities), "1 | 1"},
		{"used again", told(tin.UsedAgain), "false | no"},
		{"insert mass", told(shell.Mass), "mass 12 12–12 | 12 g"},
		{"insert volume", told(shell.Volume), "volume 6 6–6 | 6 mL"},
		{"insert sits", fmt.Sprintf("%v %s", shell.Sits.Value == kit.OnTop, shell.Sits.Span.Text()), "true on top"},
		{"insert floats", fmt.Sprintf("%v %s", bead.Sits.Value == kit.Floats, bead.Sits.Span.Text()), "true yes"},
		{"insert withstands", told(shell.Withstands), "temperature 100 100–100 | 100 °C"},
		{"household amount", told(water.Amount), "volume 1000 1000–1000 | 1 L"},
		{"household density", told(water.Density), "density 0.998 0.998–0.998 | 0.998 g/mL liquid"},
		{"household density state", fmt.Sprint(water.DensityState == kit.Liquid), "true"},
		{"household share", told(water.Shares[0]), "share 0.01 0–0.01 | at most 1 % of mixture"},
		{"household add below", told(water.AddBelow), "temperature 40 40–40 | 40 °C"},
		{"household note", told(water.Note), "for the water bath | for the water bath"},
		{"tool from", fmt.Sprint(pot.From.Value == kit.FromBox, k.Tool("pan").From.Value == kit.FromCustomer), "true true"},
		{"tool essential", told(pot.Essential), "true | yes"},
		{"tool helpful", told(k.Tool("pan").Essential), "false | no"},
		{"tool stands in for", told(k.Tool("pan").StandsInFor[0]), "pot | pot"},
		{"tool holds", told(pot.Holds), "volume 1000 1000–1000 | 1 L"},
		{"tool residue", told(pot.Residue), "mass 4 2–6 | 4 g ± 2 g"},
		{"tool withstands", told(pot.Withstands), "temperature 150 150–150 | 150 °C"},
		{"tool packed", told(pot.Packed), "count 1 1–1 | 1"},
		{"tool note", told(pot.Note), "rinse it with hot water | rinse it with hot water"},
		{"tool reads to", told(k.Tool("scale").ReadsTo), "mass 1 1–1 | 1 g"},
		{"a step of temperature", told(k.Tool("thermometer").ReadsTo), "difference of temperature 1 1–1 | 1 °C"},
		{"tool without a name", told(k.Tool("thermometer").Called), "thermometer | "},
		{"made in", told(mixture.MadeIn), "pot | pot"},
		{"mixture density", told(mixture.Density), "density 0.86 0.86–0.86 | 0.86 g/mL liquid"},
		{"mixture density state", fmt.Sprint(mixture.DensityState == kit.Liquid), "true"},
		{"mixture density when set", told(mixture.SetDensity), "density 0.92 0.92–0.92 | 0.92 g/mL set"},
		{"lots", fmt.Sprint(thread.Lots.Count, " ", thread.Lots.Noun, " ", thread.Lots.Each.Written), "2 skeins 8 m ± 5 cm"},
		{"packed in lots", told(thread.Packed), "length 16000 15900–16100 | 2 skeins of 8 m ± 5 cm"},
		{"one lot, a sheet", told(k.Component("felt").Packed), "area 60000 60000–60000 | 1 sheet of 30 × 20 cm"},
		{"a sheet's sides", k.Component("felt").Lots.Each.Across.String() + " " + k.Component("felt").Lots.Each.Along.String(), "300 200"},
		{"allowance per end", told(thread.EndAllowance), "length 20 20–20 | 2 cm"},
		{"cut margin", told(k.Component("felt").CutMargin), "length 3 3–3 | 3 mm"},
		{"use within", told(k.Component("yarn").UseWithin), "time 1200 1200–1200 | 20 min"},
		{"carries", told(k.Component("yarn").Carries), "share 1.5 1.5–1.5 | 150 %"},
		{"dissolves", k.Component("alum").Dissolves[1].Value.Ratio.Nominal.String() + " of " + k.Component("alum").Dissolves[1].Value.Solvent, "0.22 of water"},
		{"ratio", told(k.Component("alum").Ratios[0]) + " of " + k.Component("alum").Ratios[0].Value.Of, "ratio 0.1 0.08–0.12 | 8–12 g per 100 g of yarn of yarn"},
		{"household ratio", told(water.Ratios[0]), "volume per mass 22.5 15–30 | 15–30 mL per g of yarn"},
		{"evaporates", told(pot.Evaporates) + " of " + pot.Evaporates.Value.Of, "mass 10 5–15 | 10 g ± 5 g of water of water"},
		{"foam", told(pot.Foam), "share 0.2 0.2–0.2 | 20 %"},
		{"mixture residue", told(mixture.Residue), "mass 5 5–5 | 5 g"},
		{"dries out", told(mixture.DriesBy), "share 0 0–0 | 0 %"},
		{"mixture share", told(mixture.Shares[0]), "share 0.99 0.99–0.99 | at least 99 % of mixture"},
		{"piece count", told(piece.Count), "count 2 2–2 | 2"},
		{"piece in", told(piece.In), "tin | tin"},
		{"piece net", told(piece.Net), "mass 195 195–195 | at least 195 g"},
		{"piece of", told(piece.Of), "candle-wax | candle-wax"},
		{"run", k.Runs[0].Span.Text(), "name: Fig\n    with: {perfume: scent}\n    parts: [candles, wrap]"},
		{"run name", told(k.Runs[0].Name), "Fig | Fig"},
		{"role", told(k.Runs[0].With[0].Role), "perfume | perfume"},
		{"role's component", told(k.Runs[0].With[0].Component), "scent | scent"},
		{"run part", told(k.Runs[0].Parts[1]), "wrap | wrap"},
		{"claim", told(k.Claims[1].Says), `Burns 30 hours | "Burns 30 hours"`},
		{"claim shown by", told(k.Claims[1].ShownBy), "trials/burn-test.yaml | trials/burn-test.yaml"},
		{"accepted rule", told(k.Accepted[0].Rule), "left-over | left-over"},
		{"accepted about", told(k.Accepted[0].About), "pot | pot"},
		{"accepted because", told(k.Accepted[0].Because), "a little stays in the pot | a little stays in the pot"},
		{"accepted as seen", told(k.Accepted[0].Seen), "20 g is left over | 20 g is left over"},
		{"accepted until", told(k.Accepted[0].Until), "2027-06-30 | 2027-06-30"},
		{"accepted edition", told(k.Accepted[0].Edition), "3 | 3"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.what, c.got, c.want)
		}
	}
}

// TestDesignExample: the example of a kit.yaml is read whole.
func TestDesignExample(t *testing.T) {
	k, found := readFile(t, "testdata/example.yaml")
	if len(found) > 0 {
		t.Fatal(tell(found))
	}
	if got := k.Language; got.Value != "en" || got.Given() {
		t.Errorf("language %+v, want en unless said", got)
	}
	var letters []string
	for _, c := range k.Components {
		letters = append(letters, c.Letter)
	}
	if got := strings.Join(letters, ""); got != "ABCDEFGH" {
		t.Errorf("letters %s", got)
	}
	if got := k.Component("pebbles").Insert.Sits; got.Value != kit.Sunk || got.Span.Text() != "no" {
		t.Errorf("floats: no is read as %+v", got)
	}
}

func TestLetters(t *testing.T) {
	for i, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 27: "AB", 51: "AZ", 52: "BA", 701: "ZZ", 702: "AAA"} {
		if got := letter(i); got != want {
			t.Errorf("letter(%d) = %s, want %s", i, got, want)
		}
	}
}

// TestReadsOn: mistakes do not keep the rest from being read, whatever their order.
func TestReadsOn(t *testing.T) {
	k, found := readText("components:\n  wax: {packd: 1 g, note: in a bag}\n  jar: {packed: 6, spare: 1}\nmeasures: {scoop: 1 g, drop: 0.05 mL}\nname: Gels\ncolour: red\nmakes: ten\n")
	if len(found) != 3 {
		t.Errorf("%d findings, want 3: unknown packd, bad scoop, unknown colour\n%s", len(found), tell(found))
	}
	if !k.Component("wax").Packed.Given() {
		t.Error("packd was not read as the packed amount that it must be meant for")
	}
	if k.Component("wax").Note.Value != "in a bag" || k.Component("jar").Spare.Value.Nominal.Int() != 1 || !k.Measures[1].Holds.Given() {
		t.Error("the good values around the mistakes were not read")
	}
	if k.Makes.Value.Nominal.Int() != 10 {
		t.Error("number words are amounts")
	}
}

// TestOrderDoesNotCount: language, kitchen and measures say how amounts are read,
// also of those that stand above them.
func TestOrderDoesNotCount(t *testing.T) {
	k, found := readText("name: Gele\nmakes: 6 Gläser\ncomponents:\n  öl: {packed: 1}\n  oel: {packed: \"1,5 L\"}\n  salz: {packed: 2 scoop}\n  zucker: {packed: 1 tbsp}\n" +
		"measures: {scoop: 20 mL}\nkitchen: Australian\nlanguage: de\n")
	if len(found) != 1 || found[0].Rule != BadKeyName {
		t.Errorf("want only the bad key:\n%s", tell(found))
	}
	for id, want := range map[string]int64{"oel": 1500, "salz": 40, "zucker": 20} { // Australian tablespoon: 20 mL
		if got := k.Component(id).Packed.Value.Nominal; got.Cmp(quantity.Whole(want)) != 0 {
			t.Errorf("%s: %v mL, want %d", id, got, want)
		}
	}
}

// TestLineEnds: the same kit with other line ends and a byte order mark reads the
// same, and its findings stand on the same lines.
func TestLineEnds(t *testing.T) {
	text, err := os.ReadFile("testdata/broken/unknown-fields.yaml")
	if err != nil {
		t.Fatal(err)
	}
	lines := func(found diag.List) (all []string) {
		for _, f := range found {
			all = append(all, fmt.Sprint(f.Where.Position().Line, f.Where.Text()))
		}
		return all
	}
	_, found := readText(string(text))
	want := fmt.Sprint(lines(found))
	for why, changed := range map[string]string{
		"as on Windows":           strings.ReplaceAll(string(text), "\n", "\r\n"),
		"as on very old machines": strings.ReplaceAll(string(text), "\n", "\r"),
		"with a byte order mark":  "\ufeff" + string(text),
		"without the last one":    strings.TrimRight(string(text), "\n"),
	} {
		if _, found := readText(changed); fmt.Sprint(lines(found)) != want {
			t.Errorf("%s: %s\nwant %s", why, fmt.Sprint(lines(found)), want)
		}
	}
}
