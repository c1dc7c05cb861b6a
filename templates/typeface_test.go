package templates

import (
	"testing"
)

// Both families can be measured in all weights; an empty text has no width, a longer one
// more, and what is lacking is said.
func TestTypefaces(t *testing.T) {
	for _, c := range []struct{ family, weight string }{{"Booklet Text", "400"}, {"Booklet Text", "600"}, {"Booklet Label", "400"}, {"Booklet Label", "700"}} {
		face, err := Shipped().Typeface(c.family, c.weight)
		if err != nil {
			t.Fatal(err)
		}
		one, lacking := face.Width("Wachsschmelze à 12 €")
		if len(lacking) > 0 || one < 5 || one > 15 {
			t.Errorf("%v: %.2f, lacking %q", c, one, lacking)
		}
		if two, _ := face.Width("Wachsschmelze à 12 €Wachsschmelze à 12 €"); two < 1.999*one || two > 2.001*one {
			t.Errorf("%v: twice the text is %.3f, not twice %.3f", c, two, one)
		}
		if extended, lacking := face.Width("Šáļ"); len(lacking) > 0 || extended <= 0 {
			t.Errorf("%v: letters of the second file: %.2f, lacking %q", c, extended, lacking)
		}
		if _, lacking := face.Width("a蠟b"); len(lacking) != 1 || lacking[0] != '蠟' {
			t.Errorf("%v: lacking %q", c, lacking)
		}
		if face.XHeight < 0.4 || face.XHeight > 0.6 || face.CapHeight < 0.6 || face.CapHeight > 0.8 {
			t.Errorf("%v: heights %.3f and %.3f", c, face.XHeight, face.CapHeight)
		}
	}
	if _, err := Shipped().Typeface("Booklet Label", "900"); err == nil {
		t.Error("a weight that is not there is measured")
	}
}

// FuzzMeasurable: no file makes the reader panic or take more than it may.
func FuzzMeasurable(f *testing.F) {
	data, err := Shipped().File("fonts/label-bold-latin.woff2")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(data)
	f.Add(data[:60])
	f.Add([]byte("wOF2"))
	f.Fuzz(func(t *testing.T, woff []byte) {
		if plain, err := measurable(woff); err == nil && len(plain) < 12 {
			t.Errorf("a font of %d bytes", len(plain))
		}
	})
}
