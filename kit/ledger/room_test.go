package ledger

import (
	"math"
	"testing"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// said wraps an amount as if it had been written in kit.yaml.
func said(t *testing.T, text string) kit.Said[quantity.Amount] {
	t.Helper()
	amount, err := quantity.Reader{}.Amount(text)
	if err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	return kit.Said[quantity.Amount]{Value: amount, Span: source.NewFile("kit.yaml", []byte(text)).Span(0, len(text))}
}

// filled gives a container with an insert, filled with a mixture of known density.
func filled(t *testing.T, c kit.Container, insert *kit.Insert, mass, density string) *Filling {
	t.Helper()
	mixture := &kit.Mixture{Density: said(t, density)}
	wax := &material{key: "wax", name: "wax", dimension: quantity.Mass}
	f := &Filling{
		Contents: Contents{
			Vessel: "jar", Mixture: mixture,
			portions: []portion{{wax, Written("fill", said(t, mass).Value, source.Span{})}},
		},
		Container: &kit.Component{Name: kit.Name{ID: "jar"}, Container: &c},
		Count:     1,
	}
	if insert != nil {
		f.Inserts = []PlacedInsert{{Component: &kit.Component{Name: kit.Name{ID: "insert"}, Insert: insert}, Count: 1}}
	}
	return f
}

// A 250 mL container with 20 mL headspace and a sunk insert of 45 mL takes 185 mL
// (common practice, no source).
func TestRoomLessHeadspaceAndSunkInsert(t *testing.T) {
	f := filled(t, kit.Container{Brimful: said(t, "250 mL"), Headspace: said(t, "20 mL")},
		&kit.Insert{Volume: said(t, "45 mL")}, "185 g", "1 g/mL")
	if room := f.Room(); room.Value().Cmp(quantity.Whole(185)) != 0 {
		t.Errorf("room is %s", room.Sum())
	}
	if free := f.Free(); !free.Known() || free.Value().Sign() != 0 {
		t.Errorf("free is %s", free.Sum())
	}
}

// Archimedes, On Floating Bodies I, 5: a floating body displaces its own weight of
// the fluid. 14 g in 1.03 g/mL displaces 14/1.03 = 13.59 mL.
func TestFloatingInsertDisplacesItsOwnMass(t *testing.T) {
	f := filled(t, kit.Container{Brimful: said(t, "250 mL")},
		&kit.Insert{Mass: said(t, "14 g"), Sits: kit.Said[kit.Sitting]{Value: kit.Floats}}, "100 g", "1.03 g/mL")
	takes := f.Takes(f.Inserts[0])
	if takes.Value().Cmp(quantity.Whole(1400).Over(quantity.Whole(103))) != 0 {
		t.Errorf("it takes %s, want 1400/103 mL", takes.Sum())
	}
	if math.Abs(takes.Value().Float()-13.6) > 0.05 {
		t.Errorf("it takes %v mL, the handbook row says 13.6", takes.Value().Float())
	}
}

func TestInsertsThatTakeNoRoomOrOnlyTheirOwn(t *testing.T) {
	container := kit.Container{Brimful: said(t, "200 mL")}
	onTop := filled(t, container, &kit.Insert{Sits: kit.Said[kit.Sitting]{Value: kit.OnTop}}, "100 g", "1 g/mL")
	if onTop.Room().Value().Cmp(quantity.Whole(200)) != 0 {
		t.Errorf("what rests on top took room: %s", onTop.Room().Sum())
	}
	flooded := filled(t, container, &kit.Insert{Volume: said(t, "5 mL"), Sits: kit.Said[kit.Sitting]{Value: kit.Flooded}}, "100 g", "1 g/mL")
	if flooded.Room().Value().Cmp(quantity.Whole(195)) != 0 {
		t.Errorf("an open insert takes only its own material: %s", flooded.Room().Sum())
	}
	missing := filled(t, container, &kit.Insert{}, "100 g", "1 g/mL")
	if missing.Room().Known() {
		t.Error("an insert without volume was taken for one of no volume")
	}
}

func widths(all ...int64) []quantity.Number {
	numbers := make([]quantity.Number, len(all))
	for i, n := range all {
		numbers[i] = quantity.Whole(n)
	}
	return numbers
}

// The volumes of solids are checked against a sum of thin slices (Simpson's rule,
// exact for these shapes), which shares no formula with the code.
func TestShapesAgainstASumOfSlices(t *testing.T) {
	for _, c := range []struct {
		why    string
		shape  kit.Shape
		height int64
		area   func(h float64) float64 // mm² at height h
	}{
		{"cylinder 68 mm wide", kit.Shape{Form: kit.Cylinder, Widths: widths(68)}, 65,
			func(float64) float64 { return math.Pi * 34 * 34 }},
		{"cone 60 mm at the base, 72 mm at the rim, 80 mm tall",
			kit.Shape{Form: kit.Cone, Widths: widths(60, 72), Tall: quantity.Whole(80)}, 55,
			func(h float64) float64 { r := 30 + 6*h/80; return math.Pi * r * r }},
		{"box 60 by 40 mm", kit.Shape{Form: kit.Box, Widths: widths(60, 40)}, 30,
			func(float64) float64 { return 2400 }},
		{"sphere 50 mm wide", kit.Shape{Form: kit.Sphere, Widths: widths(50), Tall: quantity.Whole(50)}, 35,
			func(h float64) float64 { return math.Pi * (625 - (h-25)*(h-25)) }},
	} {
		got, ok := VolumeTo(c.shape, quantity.Whole(c.height))
		h := float64(c.height)
		want := h / 6 * (c.area(0) + 4*c.area(h/2) + c.area(h)) / 1000
		if !ok || math.Abs(got.Float()-want) > 1e-9*want {
			t.Errorf("%s to %d mm: %v mL (ok %v), want %v", c.why, c.height, got.Float(), ok, want)
		}
	}
	// A whole sphere is 4/3 π r³, and nothing is taller than itself.
	ball, _ := VolumeTo(kit.Shape{Form: kit.Sphere, Widths: widths(50), Tall: quantity.Whole(50)}, quantity.Whole(50))
	if want := 4.0 / 3 * math.Pi * 25 * 25 * 25 / 1000; math.Abs(ball.Float()-want) > 1e-9 {
		t.Errorf("a whole sphere is %v mL, want %v", ball.Float(), want)
	}
	if _, ok := VolumeTo(kit.Shape{Form: kit.Cone, Widths: widths(60, 72), Tall: quantity.Whole(80)}, quantity.Whole(81)); ok {
		t.Error("a level above the rim was told")
	}
}

func TestTableOfLevels(t *testing.T) {
	shape := kit.Shape{Form: kit.Table, Levels: []kit.Level{
		{Height: quantity.Whole(10), Volume: quantity.Whole(30)},
		{Height: quantity.Whole(30), Volume: quantity.Whole(110)},
	}}
	for height, want := range map[int64]int64{0: 0, 5: 15, 10: 30, 20: 70, 30: 110} {
		if got, ok := VolumeTo(shape, quantity.Whole(height)); !ok || got.Cmp(quantity.Whole(want)) != 0 {
			t.Errorf("at %d mm: %v (ok %v), want %d mL", height, got, ok, want)
		}
	}
	if _, ok := VolumeTo(shape, quantity.Whole(31)); ok {
		t.Error("a level above the table was told")
	}
}

// A headspace told as a height takes the uppermost part of the shape: in a
// cylinder 70 mm wide, 10 mm are π·35²·10 mm³ = 38.48 mL.
func TestHeadspaceAsHeight(t *testing.T) {
	container := kit.Container{
		Brimful: said(t, "280 mL"), Headspace: said(t, "10 mm"),
		Inside: kit.Said[kit.Shape]{Value: kit.Shape{Form: kit.Cylinder, Widths: widths(70)}},
	}
	room := filled(t, container, nil, "100 g", "0.87 g/mL").Room()
	if want := 280 - math.Pi*35*35*10/1000; math.Abs(room.Value().Float()-want) > 1e-9 {
		t.Errorf("room is %v mL, want %v", room.Value().Float(), want)
	}
	container.Inside = kit.Said[kit.Shape]{}
	if filled(t, container, nil, "100 g", "0.87 g/mL").Room().Known() {
		t.Error("a headspace as a height was reckoned without a shape")
	}
}
