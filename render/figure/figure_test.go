package figure

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// every figure of the package, at its fullest.
func everyFigure() map[string]Figure {
	return map[string]Figure{
		"gauge": Gauge{
			Title: "Jar <cut> & open", BaseWidth: 60, RimWidth: 70, Height: 80, Level: 0.7, Insert: SunkInsert,
			RimSays: "rim, 280 mL", LevelSays: "190 g, 57 mm high", InsertSays: "pebbles",
		}.Draw(),
		"timeline": Timeline{Title: "The work", EndsSays: "1 day", Rows: []Row{
			{Heading: "Pine", StartSays: "0 min", Says: "1. Melt", LastsSays: "20 min", Minutes: 20},
			{StartSays: "20 min", Says: "Waiting", LastsSays: "24 h", Minutes: 1440, Waiting: true},
		}}.Draw(),
		"pieces": Pieces{Title: "6 candles", Base: 70, Rim: 70, Tall: 80, Level: 0.8, Groups: []Group{
			{Name: "Pine", Says: "3 Pine", Count: 3}, {Name: "Orange", Says: "3 Orange", Count: 3}, {Says: "1 more", Count: 1},
		}}.Draw(),
		"gauge at true size": trueGauge(Gauge{
			Title: "Jar", BaseWidth: 60, RimWidth: 70, Height: 80, Level: 0.7, Insert: SunkInsert,
			RimSays: "rim, 280 mL", LevelSays: "190 g, 57 mm high", InsertSays: "pebbles",
		}),
		"narrow gauge at true size": trueGauge(Gauge{
			Title: "Bottle", BaseWidth: 22, RimWidth: 22, Height: 60, Level: 0.97, RimSays: "rim, 20 mL", LevelSays: "19 mL, 58 mm high",
		}),
		"plate": Plate{
			Title: "What is in the box", Unscaled: "broken outline: not to scale", Lengths: []Length{{10, "10 mm"}, {100, "10 cm"}},
			Items: []Item{
				{Shape: JarShape, Letter: "A", Says: "× 6", Tells: "A, Jar, × 6", Wide: 70, Tall: 73},
				{Shape: BottleShape, Letter: "B", Says: "34 g", Tells: "B, Scent, 34 g", Wide: 28, Tall: 70},
				{Shape: BagShape, Letter: "C", Says: "1 kg", Tells: "C, Wax, 1 kg"}, {Shape: SheetShape, Letter: "D", Says: "× 3", Tells: "D, Label, × 3"},
				{Shape: ReelShape, Letter: "E", Says: "2 m", Tells: "E, Thread, 2 m"}, {Shape: PieceShape, Letter: "AA", Tells: "AA, Needle"},
			},
		}.Draw(),
		"bars": Bars{Title: "Packed, used, left", Rows: []Bar{
			{Letter: "A", Name: "Wax", Says: "1.1 kg of 1.12 kg, 20 g left", Packed: 1120, Used: 1100, Spare: 20},
			{Letter: "B", Name: "Scent", Says: "34 g packed, 6 g too little", Packed: 34, Used: 40}, {Letter: "C", Name: "Tint", Says: "used: cannot tell", Packed: 2, Used: -1},
		}}.Draw(),
		"flow": Flow{
			Title: "From packs to pieces", Places: []Place{{Name: "Wax", Begins: true}, {Name: "Jug"}, {Name: "Jar", Ends: true}, {Name: "kept", Ends: true}},
			Streams: []Stream{{0, 1, 550, "550 g from Wax to Jug"}, {1, 2, 540, "540 g from Jug to Jar"}, {1, 3, 10, "10 g from Jug to kept"}},
		}.Draw(),
		"strip": Strip{Title: "The time of step 4", Stretches: []Stretch{
			{Says: "2 min", Tells: "2 min hands-on", Minutes: 2}, {Says: "wait 5 h", Tells: "wait 5 h", Minutes: 300, Waiting: true},
		}}.Draw(),
		"count": Count{Title: "Makes", Number: "12", Noun: "notebooks"}.Draw(),
	}
}

func TestEveryFigureIsWellFormedAndTellsItself(t *testing.T) {
	for name, figure := range everyFigure() {
		svg := figure.SVG("f1")
		decoder := xml.NewDecoder(strings.NewReader(svg))
		for {
			if _, err := decoder.Token(); errors.Is(err, io.EOF) {
				break
			} else if err != nil {
				t.Fatalf("%s is no well-formed XML: %v\n%s", name, err, svg)
			}
		}
		if figure.Title == "" || figure.Text == "" {
			t.Errorf("%s has no text alternative", name)
		}
		for _, want := range []string{`role="img"`, `aria-labelledby="f1-title f1-text"`, `<title id="f1-title">`, `<desc id="f1-text">`} {
			if !strings.Contains(svg, want) {
				t.Errorf("%s lacks %s", name, want)
			}
		}
		if strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf") {
			t.Errorf("%s has a length that is no number", name)
		}
	}
}

// What is written in a drawing also stands in its text alternative.
func TestTextAlternativeHoldsAllWords(t *testing.T) {
	written := regexp.MustCompile(`<text[^>]*>([^<]*)</text>`)
	for name, figure := range everyFigure() {
		for _, found := range written.FindAllStringSubmatch(figure.SVG("f"), -1) {
			if !strings.Contains(figure.Text, strings.ReplaceAll(found[1], "&amp;", "&")) {
				t.Errorf("%s: %q is drawn but not told in %q", name, found[1], figure.Text)
			}
		}
	}
}

// The gauge is true to scale: a cylinder 70 mm wide and 84 mm high, half full,
// is drawn with its surface at half its height and in the proportion 70 : 84.
func TestGaugeIsToScale(t *testing.T) {
	jar := Gauge{BaseWidth: 70, RimWidth: 70, Height: 84, Level: 0.5}
	base, rim, height := jar.inside()
	if base != rim || math.Abs(base/height-70.0/84) > 1e-9 {
		t.Errorf("drawn %v wide and %v high, want 70 : 84", base, height)
	}
	outline := jarOutline{base: base, rim: rim, height: height}
	corners := regexp.MustCompile(`-?[0-9.]+`).FindAllString(outline.slice(0, 0.5), -1)
	bottom, _ := strconv.ParseFloat(corners[1], 64)
	top, _ := strconv.ParseFloat(corners[3], 64)
	if math.Abs((bottom-top)/height-0.5) > 0.001 {
		t.Errorf("the fill is drawn from %v to %v of %v", bottom, top, height)
	}
}

// A frustum's wall stands in evenly: half-way up it is half-way between.
func TestFrustumWall(t *testing.T) {
	cone := jarOutline{base: 40, rim: 80, height: 100}
	for part, want := range map[float64]float64{0: 20, 0.5: 10, 1: 0} {
		if got := cone.inset(part); got != want {
			t.Errorf("at %v the wall stands in %v, want %v", part, got, want)
		}
	}
}

func TestOverfullStaysInTheJar(t *testing.T) {
	over := Gauge{BaseWidth: 70, RimWidth: 70, Height: 84, Level: 1.4, LevelSays: "too much"}.Draw()
	if over.Height > jarLength+40 || !strings.Contains(over.SVG("x"), "too much") {
		t.Errorf("an overfull jar is drawn %v high", over.Height)
	}
}

// Each piece is drawn once; a row of many is shared out over shelves of like length.
func TestPiecesAreCounted(t *testing.T) {
	for _, counts := range [][]int{{1}, {3, 3}, {6, 6, 6}, {5, 8}, {40}} {
		var pieces Pieces
		total := 0
		for i, count := range counts {
			pieces.Add(strconv.Itoa(i), count)
			total += count
		}
		if got := strings.Count(pieces.Draw().SVG("x"), `class="outline"`); got != total {
			t.Errorf("%v: %d containers drawn, want %d", counts, got, total)
		}
	}
	if got := (Pieces{Groups: []Group{{Count: 500}}}).Draw(); strings.Count(got.SVG("x"), `class="outline"`) != mostDrawn {
		t.Error("five hundred pieces are not cut to what can be told apart")
	}
}

// Long waits are cut with a mark and stay on the page; minutes stay visible.
func TestTimelineRows(t *testing.T) {
	if rowHeight(1) != rowLeast || rowHeight(10_000) != rowMost {
		t.Errorf("rows are %v to %v high", rowHeight(1), rowHeight(10_000))
	}
	if rowHeight(30) >= rowHeight(60) {
		t.Error("an hour is drawn no longer than half an hour")
	}
	long := Timeline{Rows: []Row{{Says: "x", Minutes: 1440, Waiting: true}}}.Draw().SVG("x")
	short := Timeline{Rows: []Row{{Says: "x", Minutes: 60, Waiting: true}}}.Draw().SVG("x")
	if strings.Count(long, `class="tick"`) != strings.Count(short, `class="tick"`)+2 {
		t.Error("a day of waiting has no mark where it is cut")
	}
}

func TestLongNumbersFitTheShelf(t *testing.T) {
	size := regexp.MustCompile(`class="numeral"[^>]* font-size="([0-9.]+)"`)
	for _, number := range []string{"3", "12", "250", "1000"} {
		found := size.FindStringSubmatch(Count{Number: number}.Draw().SVG("x"))
		points, _ := strconv.ParseFloat(found[1], 64)
		if wide := points * digitWide * float64(len(number)); wide > shelfWidth+0.1 {
			t.Errorf("%s is %v wide, more than %v", number, wide, shelfWidth)
		}
	}
}

// Stretches are to one scale: 2, 5 and 2 minutes share the strip as 2 : 5 : 2. Where one
// would be too narrow for its words the longest is cut and marked, and all still fit.
func TestStripIsToScale(t *testing.T) {
	even := Strip{Stretches: []Stretch{{Says: "2 min", Minutes: 20}, {Says: "wait 5 min", Minutes: 50, Waiting: true}, {Says: "2 min", Minutes: 20}}}
	widths, cut := even.widths()
	if cut != -1 || math.Abs(widths[1]/widths[0]-2.5) > 1e-9 || widths[0] != widths[2] {
		t.Errorf("2 : 5 : 2 is drawn as %v, cut at %d", widths, cut)
	}
	uneven := Strip{Stretches: []Stretch{{Says: "5 min", Minutes: 5}, {Says: "3 days", Minutes: 4320, Waiting: true}}}
	widths, cut = uneven.widths()
	if cut != 1 || strings.Count(uneven.Draw().SVG("x"), `class="tick"`) != 2 {
		t.Errorf("three days beside five minutes are drawn as %v, cut at %d", widths, cut)
	}
	for _, s := range []Strip{even, uneven, {Stretches: make([]Stretch, 3)}, {}} {
		widths, _ := s.widths()
		sum := 0.0
		for _, w := range widths {
			sum += w + stripGap
		}
		if sum-stripGap > stripWidth+1e-6 {
			t.Errorf("%v are wider than the strip", widths)
		}
	}
}

func trueGauge(g Gauge) Figure {
	drawn, ok := g.DrawTrue("50 mm: lay a ruler on", 96, 120)
	if !ok {
		panic("it does not fit the page")
	}
	return drawn
}

// millimetres reads where a shape of a class stands, in millimetres of the paper: the
// width that the drawing says it has, over the width of what it is drawn in.
func millimetres(t *testing.T, svg, class string) []float64 {
	t.Helper()
	size := regexp.MustCompile(`viewBox="0 0 ([0-9.]+) ([0-9.]+)" width="([0-9.]+)mm" height="([0-9.]+)mm"`).FindStringSubmatch(svg)
	data := regexp.MustCompile(`class="` + class + `"[^>]* d="([^"]*)"`).FindStringSubmatch(svg)
	if size == nil || data == nil {
		t.Fatalf("no size, or no %s, in %s", class, svg)
	}
	read := func(text string) float64 {
		value, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		return value
	}
	scale := read(size[3]) / read(size[1])
	if other := read(size[4]) / read(size[2]); math.Abs(other/scale-1) > 0.001 {
		t.Errorf("it is drawn %v wide and %v high", scale, other)
	}
	var all []float64
	for _, number := range regexp.MustCompile(`-?[0-9.]+`).FindAllString(data[1], -1) {
		all = append(all, read(number)*scale)
	}
	return all
}

// Heights of cylinders, V = π r² h reckoned by hand: 280 mL in 70 mm are 72.76 mm high and
// 219.1 mL 56.93 mm; 100 mL in 50 mm are 50.93 mm, half of them 25.46 mm.
func TestGaugeAtTrueSize(t *testing.T) {
	for _, jar := range []struct{ wide, brimful, filled, height, level float64 }{
		{70, 280_000, 219_100, 72.76, 56.93}, {50, 100_000, 50_000, 50.93, 25.46},
	} {
		area := math.Pi * jar.wide * jar.wide / 4
		drawn, ok := Gauge{BaseWidth: jar.wide, RimWidth: jar.wide, Height: jar.brimful / area, Level: jar.filled / jar.brimful}.DrawTrue("bar", 96, 120)
		if !ok {
			t.Fatal("it is not drawn")
		}
		svg := drawn.SVG("x")
		fill := millimetres(t, svg, "pale") // bottom left, top left, top right, bottom right
		if got := fill[4] - fill[0]; math.Abs(got-jar.wide) > 0.02 {
			t.Errorf("%v mm wide is drawn %.2f mm wide", jar.wide, got)
		}
		if got := fill[1] - fill[3]; math.Abs(got-jar.level) > 0.03 {
			t.Errorf("the surface is drawn %.2f mm high, want %v", got, jar.level)
		}
		// The walls begin at the rim, and the fill at the base.
		if got := fill[1] - millimetres(t, svg, "outline")[1]; math.Abs(got-jar.height) > 0.03 {
			t.Errorf("the rim is drawn %.2f mm high, want %v", got, jar.height)
		}
		if bar := millimetres(t, svg, "check-bar"); math.Abs(bar[2]-bar[0]-50) > 0.01 || bar[1] != bar[3] {
			t.Errorf("the bar runs from %v", bar)
		}
	}
}

func TestWhatDoesNotFitIsNotAtTrueSize(t *testing.T) {
	for _, g := range []Gauge{
		{}, {BaseWidth: 70, RimWidth: 70}, {BaseWidth: 120, RimWidth: 120, Height: 40}, {BaseWidth: 60, RimWidth: 60, Height: 180},
		{BaseWidth: 30, RimWidth: 30, Height: 60, LevelSays: strings.Repeat("long ", 20)},
	} {
		if drawn, ok := g.DrawTrue("bar", 96, 120); ok {
			t.Errorf("%+v is drawn %v wide", g, drawn.Width)
		}
	}
}

// Everything whose size is known is drawn to one scale, that of the line under it; what
// isn't known has a broken outline, and nothing stands beyond the edge of the page.
func TestPlateIsToScale(t *testing.T) {
	plate := Plate{Lengths: []Length{{10, "10 mm"}, {50, "50 mm"}, {100, "10 cm"}, {1000, "1 m"}}, Unscaled: "broken"}
	for range 9 {
		plate.Items = append(plate.Items, Item{Wide: 70, Tall: 140, Says: "720 g"}, Item{Wide: 35, Tall: 35}, Item{Says: "× 6"})
	}
	scale := plate.scale()
	for i, want := range map[int][2]float64{0: {70, 140}, 1: {35, 35}} {
		wide, tall := plate.drawn(plate.Items[i], scale)
		if math.Abs(wide/scale-want[0]) > 1e-9 || math.Abs(tall/scale-want[1]) > 1e-9 {
			t.Errorf("item %d is drawn %v × %v mm", i, wide/scale, tall/scale)
		}
	}
	svg := plate.Draw().SVG("p")
	if got := strings.Count(svg, `class="thing unscaled"`); got != 18 { // two strokes to a bag
		t.Errorf("%d strokes of nine bags of unknown size are broken", got)
	}
	if !strings.Contains(svg, ">10 cm<") || strings.Contains(svg, ">1 m<") {
		t.Error("the scale is not told in the longest length that has room")
	}
	for _, row := range plate.rows(scale) {
		wide := -plateGap
		for _, at := range row {
			wide += plate.cell(plate.Items[at], scale) + plateGap
		}
		if wide > plateWidth+1e-9 {
			t.Errorf("the row %v is %v wide", row, wide)
		}
	}
	if none := (Plate{Items: []Item{{}}, Lengths: plate.Lengths, Unscaled: "broken"}).Draw(); strings.Contains(none.Text, "mm") || !strings.Contains(none.Text, "broken") {
		t.Errorf("without any size the plate tells %q", none.Text)
	}
	if tiny := (Plate{Items: []Item{{Wide: 4, Tall: 3}}}); tiny.scale() != pointsPerMillimetre {
		t.Errorf("small things are drawn %v points to the millimetre, larger than they are", tiny.scale())
	}
}

// A bar is as long as what is used of what is packed: 15 of 20 are three quarters of it.
// Where more is used than packed the bar is all that is used, and the missing part striped.
func TestBarsAreInProportion(t *testing.T) {
	used := func(row Bar) (float64, int) {
		svg := Bars{Rows: []Bar{row}}.Draw().SVG("b")
		found := regexp.MustCompile(`class="hands" x="0" y="[0-9.]+" width="([0-9.]+)"`).FindStringSubmatch(svg)
		if found == nil {
			return -1, strings.Count(svg, `class="tick"`)
		}
		wide, _ := strconv.ParseFloat(found[1], 64)
		return wide / plateWidth, strings.Count(svg, `class="tick"`)
	}
	for _, test := range []struct {
		row    Bar
		part   float64
		ticks  int
		reason string
	}{
		{Bar{Packed: 20, Used: 15}, 0.75, 0, "three quarters"}, {Bar{Packed: 20, Used: 20}, 1, 0, "all"}, {Bar{Packed: 20, Used: 15, Spare: 2}, 0.75, 1, "the spare is marked"},
		{Bar{Packed: 20, Used: -1}, -1, 0, "not known"}, {Bar{}, -1, 0, "nothing"},
	} {
		if part, ticks := used(test.row); math.Abs(part-test.part) > 0.001 || ticks != test.ticks {
			t.Errorf("%s: drawn %v long with %d strokes", test.reason, part, ticks)
		}
	}
	if part, ticks := used(Bar{Packed: 20, Used: 40}); math.Abs(part-0.5) > 0.001 || ticks < 20 {
		t.Errorf("twice as much as is packed is drawn %v long with %d strokes", part, ticks)
	}
}

// Streams are as broad as they are large, and fill their places exactly; a stream back to
// where something came from before makes no new column.
func TestFlowIsInProportion(t *testing.T) {
	flow := Flow{
		Places:  []Place{{Name: "wax", Begins: true}, {Name: "jug"}, {Name: "pan"}, {Name: "jar", Ends: true}},
		Streams: []Stream{{From: 0, To: 1, Size: 300}, {From: 1, To: 2, Size: 200}, {From: 2, To: 1, Size: 50}, {From: 1, To: 3, Size: 150}, {From: 2, To: 3, Size: 150}},
	}
	if got := flow.ranks(); got[0] != 0 || got[1] != 1 || got[2] != 2 || got[3] != 3 {
		t.Errorf("the places stand in the columns %v", got)
	}
	spots, _ := flow.spots()
	if math.Abs(spots[0].tall/spots[2].tall-300.0/200) > 1e-9 || math.Abs(spots[3].tall-spots[0].tall) > 1e-9 {
		t.Errorf("300, 200 and 300 g are drawn %v, %v and %v high", spots[0].tall, spots[2].tall, spots[3].tall)
	}
	if empty := (Flow{}).Draw(); strings.Contains(empty.SVG("e"), "NaN") {
		t.Error("no streams at all are drawn at no place")
	}
}
