package ledger

import (
	"fmt"
	"math"
	"testing"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// off is a figure with a standard uncertainty: a rectangular one of half width u·√3.
func off(name string, value, u float64) *Figure {
	a := u * math.Sqrt(3)
	return Between(quantity.Proportion, name, quantity.FromFloat(value), quantity.FromFloat(value-a), quantity.FromFloat(value+a))
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if math.Abs(got-want) > within {
		t.Errorf("%s: %v, want %v ± %v", what, got, want, within)
	}
}

// JCGM 100:2008, H.1, calibration of an end gauge, in nm: l = ls + d − ls(δα·θ +
// αs·δθ). Published: l = 50 000 838 nm, u = 32 nm, 34 nm with second-order terms.
func TestEndGaugeOfTheHandbook(t *testing.T) {
	number := quantity.Proportion
	standard := off("standard", 50_000_623, 25)
	found := Plus(number, "difference", off("repeated", 215, 5.8), off("random", 0, 3.9), off("systematic", 0, 6.7))
	expansion, difference := off("αs", 11.5e-6, 2e-6/math.Sqrt(3)), off("δα", 0, 1e-6/math.Sqrt(3))
	temperature, gradient := off("θ", -0.1, 0.41), off("δθ", 0, 0.05/math.Sqrt(3))
	warmth := Plus(number, "", Times(number, "", difference, temperature), Times(number, "", expansion, gradient))
	length := Minus("l", Plus(number, "", standard, found), Times(number, "", standard, warmth))
	near(t, "l, nm", length.Value().Float(), 50_000_838, 0.5)
	near(t, "u, first order", length.Likely(), 31.66, 0.02)
	// The draws know nothing of orders: they hold the second-order terms too.
	near(t, "u, drawn", Draw([]*Figure{length}, 200_000, 5)[0].Standard, 34, 0.4)
}

// JCGM 100:2008, H.2: voltage, current and phase read five times at once, so that
// they err together. Published: R 127.732 Ω, u 0.071; X 219.847 Ω, u 0.295; Z 254.260
// Ω, u 0.236. What errs together shares the figures it rests on.
func TestReadingsThatErrTogether(t *testing.T) {
	readings := [3][5]float64{
		{5.007, 4.994, 5.005, 4.990, 4.999},
		{19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3},
		{1.0456, 1.0438, 1.0468, 1.0428, 1.0433},
	}
	var mean [3]float64
	for i, row := range readings {
		for _, v := range row {
			mean[i] += v / 5
		}
	}
	covariance := func(i, j int) (c float64) {
		for n := range 5 {
			c += (readings[i][n] - mean[i]) * (readings[j][n] - mean[j]) / 20 // n(n−1)
		}
		return c
	}
	for i, u := range []float64{0.0032, 0.0095e-3, 0.00075} {
		near(t, fmt.Sprint("u of reading ", i), math.Sqrt(covariance(i, i)), u, u/50)
	}
	// Lower triangle L with L·Lᵀ = covariance: each reading is its mean and parts of
	// three independent figures of unit uncertainty.
	l00 := math.Sqrt(covariance(0, 0))
	l10 := covariance(1, 0) / l00
	l11 := math.Sqrt(covariance(1, 1) - l10*l10)
	l20 := covariance(2, 0) / l00
	l21 := (covariance(2, 1) - l20*l10) / l11
	l22 := math.Sqrt(covariance(2, 2) - l20*l20 - l21*l21)
	units := []*Figure{off("a", 0, 1), off("b", 0, 1), off("c", 0, 1)}
	number := quantity.Proportion
	reading := func(mean float64, parts ...float64) *Figure {
		all := []*Figure{off("mean", mean, 0)}
		for i, part := range parts {
			all = append(all, Times(number, "", off("part", part, 0), units[i]))
		}
		return Plus(number, "", all...)
	}
	voltage, current := reading(mean[0], l00), reading(mean[1], l10, l11)
	sine, cosine := math.Sincos(mean[2])
	cosPhase := reading(cosine, -sine*l20, -sine*l21, -sine*l22)
	sinPhase := reading(sine, cosine*l20, cosine*l21, cosine*l22)
	impedance := Over(number, "Z", voltage, current)
	resistance, reactance := Times(number, "R", impedance, cosPhase), Times(number, "X", impedance, sinPhase)
	near(t, "R", resistance.Value().Float(), 127.732, 0.0006)
	near(t, "X", reactance.Value().Float(), 219.847, 0.0006)
	near(t, "Z", impedance.Value().Float(), 254.260, 0.0006)
	near(t, "u(R)", resistance.Likely(), 0.071, 0.0006)
	near(t, "u(X)", reactance.Likely(), 0.295, 0.0006)
	near(t, "u(Z)", impedance.Likely(), 0.236, 0.0006)
	// Taken for independent, R would come out more than twice as uncertain.
	alone := Times(number, "", Over(number, "", off("V", mean[0], l00), off("I", mean[1], math.Sqrt(covariance(1, 1)))),
		off("cos", cosine, sine*math.Sqrt(covariance(2, 2))))
	if alone.Likely() < 0.142 {
		t.Errorf("without what they share u(R) is %v", alone.Likely())
	}
}

// A plaster mould of 500 mL at 70 parts of water (0.998 g/mL) to 100 of powder of true
// density 2.65 g/mL takes 464 g of powder and 325 g of water (handbook densities;
// arithmetic: 500 ÷ (1/2.65 + 0.70/0.998) = 463.5 g, and 0.70 of it).
func TestPlasterForAMould(t *testing.T) {
	mould := kit.Container{Brimful: said(t, "500 mL")}
	f := filled(t, mould, nil, "1 g", "1 g/mL")
	f.Mixture = nil
	powder := &material{key: "plaster", name: "plaster", dimension: quantity.Mass, loose: true,
		trueDensity: Written("", said(t, "2.65 g/mL").Value, said(t, "2.65 g/mL").Span)}
	water := &material{key: "water", name: "water", dimension: quantity.Mass,
		density: Written("", said(t, "0.998 g/mL").Value, said(t, "0.998 g/mL").Span)}
	one := func(m *material, text string) portion {
		return portion{m, Written("", said(t, text).Value, said(t, text).Span)}
	}
	f.portions = []portion{one(powder, "464 g"), one(water, "325 g")}
	near(t, "volume, mL", f.Volume().Value().Float(), 500, 1)
	near(t, "free, mL", f.Free().Value().Float(), 0, 1)
	exact := 500 / (1/2.65 + 0.70/0.998)
	near(t, "powder, g", exact, 464, 0.6)
	near(t, "water, g", 0.70*exact, 325, 0.6)
	if ratio := f.Ratio(quantity.Proportion, "water", "plaster").Value().Float(); math.Abs(ratio-0.70) > 0.001 {
		t.Errorf("ratio %v, want 70 : 100", ratio)
	}
}

// A frustum of radii 4 and 3 cm and 10 cm height holds 387.46 mL (geometry); its
// heights and volumes turn into each other, as do those of the other shapes.
func TestHeightsTurnIntoVolumesAndBack(t *testing.T) {
	whole := quantity.Whole
	frustum := kit.Shape{Form: kit.Cone, Widths: []quantity.Number{whole(60), whole(80)}, Tall: whole(100)}
	volume, _ := VolumeTo(frustum, whole(100))
	near(t, "frustum, mL", volume.Float(), 387.46, 0.005)
	shapes := []kit.Shape{
		frustum,
		{Form: kit.Cylinder, Widths: []quantity.Number{whole(70)}},
		{Form: kit.Cylinder, Widths: []quantity.Number{whole(70)}, Tall: whole(100)},
		{Form: kit.Box, Widths: []quantity.Number{whole(70), whole(50)}, Tall: whole(100)},
		{Form: kit.Sphere, Widths: []quantity.Number{whole(100)}},
		{Form: kit.Table, Levels: []kit.Level{{Height: whole(10), Volume: whole(20)}, {Height: whole(60), Volume: whole(200)}, {Height: whole(100), Volume: whole(300)}}},
	}
	for _, shape := range shapes {
		for _, h := range []int64{0, 1, 7, 33, 60, 99, 100} {
			v, ok := VolumeTo(shape, whole(h))
			if !ok {
				t.Fatalf("form %d has no volume to %d mm", shape.Form, h)
			}
			back, ok := HeightAt(shape, v)
			if !ok {
				t.Fatalf("form %d has no height at %s mL", shape.Form, v)
			}
			near(t, fmt.Sprintf("form %d at %d mm", shape.Form, h), back.Float(), float64(h), 0.001)
		}
		if shape.Tall.Sign() > 0 {
			if _, ok := HeightAt(shape, whole(100_000)); ok {
				t.Errorf("form %d was filled above its rim", shape.Form)
			}
		}
	}
}

// 190 g at 0.87 g/mL are 218.4 mL: in a cylinder of 70 mm 56.75 mm high, with a sunk
// insert of 1.5 mL 57.14 mm (geometry). Set at 0.92 g/mL it is 206.5 mL, 5.4 % less
// (arithmetic: 1 − 0.87/0.92), and stands at 54.05 mm.
func TestFillHeightHotAndSet(t *testing.T) {
	shape := kit.Said[kit.Shape]{Value: kit.Shape{Form: kit.Cylinder, Widths: []quantity.Number{quantity.Whole(70)}, Tall: quantity.Whole(75)}}
	f := filled(t, kit.Container{Inside: shape}, &kit.Insert{Volume: said(t, "1.5 mL")}, "190 g", "0.87 g/mL")
	f.Mixture.SetDensity = said(t, "0.92 g/mL")
	square := math.Pi / 4 * 70 * 70 / 1000
	near(t, "from the base", f.Height().Value().Float(), (190/0.87+1.5)/square, 0.001)
	near(t, "from the rim", f.FromRim().Value().Float(), 75-(190/0.87+1.5)/square, 0.001)
	near(t, "when set", f.SetHeight().Value().Float(), (190/0.92+1.5)/square, 0.001)
	near(t, "draws together by", f.Shrinks().Value().Float(), 1-0.87/0.92, 1e-9)
	f.Mixture.SetDensity = kit.Said[quantity.Amount]{}
	if f.SetHeight().Known() || f.Shrinks().Known() {
		t.Error("a set height was told without a density of the set mixture")
	}
}

// A height's ends are those of its volume: 0.86 to 0.88 g/mL.
func TestFillHeightHasTheWorstCase(t *testing.T) {
	shape := kit.Said[kit.Shape]{Value: kit.Shape{Form: kit.Cylinder, Widths: []quantity.Number{quantity.Whole(70)}}}
	f := filled(t, kit.Container{Inside: shape}, nil, "190 g", "0.86–0.88 g/mL")
	square := math.Pi / 4 * 70 * 70 / 1000
	low, high := f.Height().Worst()
	near(t, "lowest", low.Float(), 190/0.88/square, 0.001)
	near(t, "highest", high.Float(), 190/0.86/square, 0.001)
	if f.FromRim().Known() {
		t.Error("a distance from the rim was told of a shape without height")
	}
}

// Bulk densities of one US cup (236.5882365 mL, NIST SP 811 B.8) of the same powder by
// how it is filled in: flour 4, 4.25 and 5 oz (units database), corn starch 0.54 loose
// to 0.63 tight (FAO/INFOODS density database 2.0). A cup is a range of grams.
func TestACupOfPowderByHowItIsFilled(t *testing.T) {
	cup := said(t, "1 cup")
	for _, c := range []struct {
		powder, density string
		low, high       float64
	}{
		{"flour, sifted to scooped", "0.479–0.599 g/mL loose", 4 * 28.349523125, 5 * 28.349523125},
		{"corn starch, loose to tight", "0.54–0.63 g/mL loose", 127.8, 149.1},
	} {
		text := c.density[:len(c.density)-len(" loose")]
		m := &material{key: "powder", name: c.powder, dimension: quantity.Mass, loose: true,
			density: Written("density", said(t, text).Value, said(t, text).Span)}
		grams, trouble := m.inPackDimension(Written("cup", cup.Value, cup.Span))
		low, high := grams.Worst()
		if trouble != "" {
			t.Fatal(trouble)
		}
		near(t, c.powder+", least", low.Float(), c.low, 0.3)
		near(t, c.powder+", most", high.Float(), c.high, 0.3)
	}
}

// Archimedes by the level: a coin of 0.830 mL (8.630 g in air, 7.800 g in water, a
// physics textbook's exercise) lifts water in a cylinder of 30 mm by 0.830/(π/4·30²) mm.
func TestASunkCoinLiftsTheLevel(t *testing.T) {
	shape := kit.Said[kit.Shape]{Value: kit.Shape{Form: kit.Cylinder, Widths: []quantity.Number{quantity.Whole(30)}}}
	with := filled(t, kit.Container{Inside: shape}, &kit.Insert{Volume: said(t, "0.830 mL")}, "50 g", "1 g/mL")
	without := filled(t, kit.Container{Inside: shape}, nil, "50 g", "1 g/mL")
	lift := with.Height().Value().Float() - without.Height().Value().Float()
	near(t, "lift, mm", lift, 0.830*1000/(math.Pi/4*900), 0.001)
	near(t, "density of the coin", 8.630/0.830, 10.40, 0.005)
}
