package quantity

import "testing"

// Dual declarations printed in regulations, all of them rounded down: 16 CFR 500.27(a)
// and (c), and 16 CFR 500.16(a) for lengths.
func TestDualNet(t *testing.T) {
	for _, c := range []struct {
		told   string
		metric string
	}{
		{"3.4 oz", "96.3 g"},     // 500.27(a): 96.388 g
		{"1 lb 4.4 oz", "578 g"}, // 500.27(a): 578.33 g
		{"2 oz", "56.6 g"},       // 500.27(c): 56.699 g
		{"4 oz", "113 g"},        // 500.27(c): 113.398 g
		{"20 oz", "566 g"},       // 500.27(c): 566.99 g
		{"17 in", "43.1 cm"},     // 500.16(a): 43.18 cm
		{"20 in", "50.8 cm"},     // 500.16(a)
		{"12 in", "30.4 cm"},     // 500.16(a): 30.48 cm
		{"8 in", "20.3 cm"},      // 500.16(a): 20.32 cm
		{"3 in", "7.62 cm"},      // 500.16(a)
		{"9.7 in", "24.6 cm"},    // 500.27(a): 24.638 cm
		{"8.2 in", "20.8 cm"},    // 500.27(a): 20.828 cm
	} {
		a := mustRead(t, Reader{}, c.told)
		to := mustUnit("g")
		if a.Dimension == Length {
			to = mustUnit("cm")
		}
		if got := Show(a.Nominal, a.Dimension, In(to), Digits(3), Down()); got != c.metric {
			t.Errorf("%s: %q, want %q", c.told, got, c.metric)
		}
	}
	for _, c := range []struct {
		told, want string
	}{
		{"195 g", "195 g (6.87 oz)"}, // 6.8784 oz, calculated from the ounce of Handbook 44
		{"1 lb 4.4 oz", "578 g (1 lb 4.4 oz)"},
		{"500 mL", "500 mL (16.9 fl oz)"}, // 16.907 fl oz: 1 mL is 0.03381402 fl oz, Handbook 44
	} {
		a := mustRead(t, Reader{}, c.told)
		if got := DualNet(a.Nominal, a.Dimension); got != c.want {
			t.Errorf("%s: %q, want %q", c.told, got, c.want)
		}
	}
}

// NIST SP 1038 (2006): 4.4 for the digits, 4.4.1 for limits, 4.4.1.3 for whole degrees.
func TestDual(t *testing.T) {
	for _, c := range []struct {
		told, want string
	}{
		{"8 ft", "8 ft (2.4 m)"},                               // 4.4
		{"150 °F", "150 °F (65.5 °C)"},                         // 4.4.1.3
		{"120 °F", "120 °F (49 °C)"},                           // 4.4.1.3
		{"at least 10 ft", "at least 10 ft (at least 3.05 m)"}, // 4.4.1: not 3 m
		{"10.1 ft", "10.1 ft (3.08 m)"},                        // 4.4.1.1: 3.07848 m before rounding
		{"36 ft", "36 ft (11 m)"},                              // SP 811 B.7.2: 10.9728 m
		{"1 lb 3½ oz", "1 lb 3½ oz (553 g)"},                   // 4.4: 19.5 oz has three digits; 552.8157… g
		{"at most 5 g", "at most 5 g (at most 0.1763 oz)"},     // 0.17636… oz, calculated from Handbook 44
		{"80–85 °C", "80–85 °C (176–185 °F)"},                  // °F = 1.8 °C + 32
		{"8 oz weight", "8 oz weight (227 g)"},                 // 226.796185 g
		{"6 jars", "6 jars"},
		{"2 %", "2 %"},
	} {
		if got := Dual(mustRead(t, Reader{}, c.told), USCustomary); got != c.want {
			t.Errorf("%s: %q, want %q", c.told, got, c.want)
		}
	}
}
