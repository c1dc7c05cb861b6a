package handbook

import (
	"strconv"
	"strings"
	"testing"

	"tallyfold/kit/quantity"
)

// The table is held against figures that stand elsewhere: Kell's formula for water
// (J. Chem. Eng. Data 20, 1975, 97), and the relative densities of Codex CXS 33 (olive) and
// CXS 210 (coconut), read second hand.
func TestDensitiesAgainstOtherTables(t *testing.T) {
	kell := func(c float64) float64 {
		return (999.83952 + 16.945176*c - 7.9870401e-3*c*c - 46.170461e-6*c*c*c + 105.56302e-9*c*c*c*c - 280.54253e-12*c*c*c*c*c) /
			(1 + 16.879850e-3*c) / 1000
	}
	for _, row := range []struct {
		name      string
		low, high float64
	}{
		{"Tap water", kell(25), kell(15)},
		{"Olive oil, refined", 0.910, 0.918},
		{"Coconut oil", 0.908, 0.924},
	} {
		found := DensitiesOf(row.name)
		if len(found) != 1 {
			t.Errorf("%s: %d rows, want one", row.name, len(found))
			continue
		}
		if offered := figure(t, found[0].Offered); offered < row.low-0.0006 || offered > row.high+0.0006 {
			t.Errorf("%s: %g is offered, not from %g to %g", row.name, offered, row.low, row.high)
		}
	}
}

func TestDensitiesAreWhole(t *testing.T) {
	known := map[string]bool{"read": true, "read (2nd hand)": true, "from memory": true, "common practice, no source": true}
	for _, d := range Densities() {
		offered, low, high := figure(t, d.Offered), figure(t, d.Low), figure(t, d.High)
		if low > offered || offered > high {
			t.Errorf("%s %s: %g does not lie from %g to %g", d.Material, d.State, offered, low, high)
		}
		if !known[d.Known] {
			t.Errorf("%s: %q does not say how it is known", d.Material, d.Known)
		}
		amount, err := quantity.Reader{}.Amount(strings.TrimSuffix(d.Offered, " "+d.State))
		if err != nil || amount.Dimension != quantity.Density {
			t.Errorf("%s: %q is no density: %v", d.Material, d.Offered, err)
		}
	}
}

func TestDensitiesOfNames(t *testing.T) {
	for _, row := range []struct{ name, first string }{
		{"Soy wax flakes", "0.90 g/mL set"},
		{"Baking soda", "1.0 g/mL loose"},
		{"Sea-salt", "1.22 g/mL loose"},
		{"Epsom salt", "0.95 g/mL loose"},
		{"Salted caramel scent", ""},
		{"", ""},
	} {
		first := ""
		if found := DensitiesOf(row.name); len(found) > 0 {
			first = found[0].Offered
		}
		if first != row.first {
			t.Errorf("%q: %q, want %q", row.name, first, row.first)
		}
	}
}

func figure(t *testing.T, text string) float64 {
	t.Helper()
	number, _, _ := strings.Cut(text, " ")
	f, err := strconv.ParseFloat(number, 64)
	if err != nil {
		t.Fatalf("%q begins with no figure", text)
	}
	return f
}
