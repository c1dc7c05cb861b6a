package quantity

import "testing"

func TestShowStyles(t *testing.T) {
	ounce, _ := UnitNamed("oz", USCustomary)
	fahrenheit, _ := UnitNamed("°F", USCustomary)
	pounds, _ := UnitNamed("GBP", USCustomary)
	dollars, _ := UnitNamed("USD", USCustomary)
	cup, _ := UnitNamed("cup", Metric)
	for _, c := range []struct {
		n    string
		d    Dimension
		how  []Style
		want string
	}{
		{"1254.3", Mass, nil, "1.254 kg"},
		{"1254", Mass, nil, "1.254 kg"},
		{"12345.6", Mass, nil, "12.35 kg"},
		{"999.6", Mass, nil, "999.6 g"},
		{"999.96", Mass, nil, "1 kg"}, // it would round to 1000 g
		{"570.25", Mass, nil, "570 g"},
		{"0.09999", Mass, nil, "99.99 mg"},
		{"283.49523125", Mass, []Style{In(ounce)}, "10 oz"},
		{"65.5555", Temperature, []Style{In(fahrenheit)}, "150 °F"},
		{"12.5", Money, []Style{In(pounds)}, "£12.50"},
		{"12", Money, []Style{In(pounds)}, "£12"},
		{"12.345", Money, []Style{In(dollars), Language("de")}, "12,34 USD"},
		{"375", Volume, []Style{In(cup)}, "1.5 cups"},
		{"125", Volume, []Style{In(cup)}, "0.5 cup"},
		{"250", Volume, []Style{In(cup), Language("fr")}, "1 tasse"},
		{"96.388", Mass, []Style{Digits(3), Down()}, "96.3 g"},
		{"96.312", Mass, []Style{Digits(3), Up()}, "96.4 g"},
		{"705.37", Mass, []Style{Within(Whole(2))}, "705.4 g"},
		{"705.37", Mass, []Style{Within(Whole(5))}, "705 g"},
		{"705.37", Mass, []Style{Within(Whole(40))}, "710 g"},
		{"1254.3", Mass, []Style{Within(Whole(40))}, "1.25 kg"},
		{"1254.3", Mass, []Style{Within(Number{})}, "1.254 kg"},
		{"1120", Mass, []Style{Language("fr")}, "1,12 kg"},
		{"75600", Duration, nil, "21 h"},
		{"259200", Duration, nil, "3 days"},
		{"259200", Duration, []Style{Language("de")}, "3 Tage"},
		{"90", Duration, nil, "1 min 30 s"},
		{"1213.7", Duration, nil, "20 min"},
		{"1213", Duration, nil, "20 min 13 s"},
		{"1213.7", Duration, []Style{Up()}, "21 min"},
		{"200.4", Duration, nil, "3 min 20 s"},
		{"4000", Duration, []Style{Within(Whole(120))}, "1 h 7 min"},
		{"100", Duration, []Style{Within(Whole(7200))}, "0 min"},
		{"2.5", Duration, nil, "2.5 s"},
		{"5", TemperatureDifference, nil, "5 °C"},
		{"0.7", Proportion, nil, "0.7"},
		{"20", VolumePerMass, nil, "20 mL/g"},
		{"123456", Count, nil, "123456"},
	} {
		if got := Show(parsed(t, c.n), c.d, c.how...); got != c.want {
			t.Errorf("%s %s: %q, want %q", c.n, c.d, got, c.want)
		}
	}
}

// The nominal figure and its tolerance end at the same place (JCGM 100, 7.2.2 and 7.2.6).
func TestShowTolerance(t *testing.T) {
	for _, c := range []struct {
		n, tolerance string
		d            Dimension
		want         string
	}{
		{"705.37", "2", Mass, "705.4 g ± 2 g"},
		{"705.37", "2.3456", Mass, "705.4 g ± 2.3 g"},
		{"705.37", "0", Mass, "705 g"},
		{"1254.3", "5", Mass, "1.254 kg ± 0.005 kg"},
		{"60", "5", Temperature, "60 °C ± 5 °C"},
		{"0.0909", "0.002", Share, "9.09 % ± 0.2 %"},
		{"6", "1", Count, "6 ± 1"},
	} {
		if got := ShowTolerance(parsed(t, c.n), parsed(t, c.tolerance), c.d); got != c.want {
			t.Errorf("%s ± %s: %q, want %q", c.n, c.tolerance, got, c.want)
		}
	}
	fahrenheit, _ := UnitNamed("°F", USCustomary)
	if got := ShowTolerance(Whole(60), Whole(5), Temperature, In(fahrenheit)); got != "140 °F ± 9 °F" {
		t.Errorf("in °F: %q", got) // a tolerance has no 32 to add
	}
}

// The ends go outwards: nothing that can be is left out.
func TestShowRange(t *testing.T) {
	for _, c := range []struct {
		low, high string
		d         Dimension
		want      string
	}{
		{"16.24", "24.56", Mass, "16.24–24.56 g"},
		{"16.2451", "24.5551", Mass, "16.2–24.6 g"},
		{"800", "1254.3", Mass, "0.8–1.255 kg"},
		{"20", "20", Mass, "20 g"},
		{"-5", "5", Temperature, "−5 °C to 5 °C"},
		{"1200", "1500", Duration, "20 min to 25 min"},
		{"1200.5", "4799.5", Duration, "20 min to 1 h 20 min"},
		{"10", "20", Duration, "10–20 s"},
		{"3", "4", Count, "3–4"},
	} {
		if got := ShowRange(parsed(t, c.low), parsed(t, c.high), c.d); got != c.want {
			t.Errorf("%s to %s: %q, want %q", c.low, c.high, got, c.want)
		}
	}
}

// Rounding loses less than one step and never crosses the number the wrong way.
func TestRoundingDirections(t *testing.T) {
	for _, n := range sampleNumbers() {
		for places := -2; places <= 3; places++ {
			step := powerOfTen(-places)
			lower, upper, nearest := n.round(places, down), n.round(places, up), n.round(places, halfEven)
			if n.Less(lower) || upper.Less(n) || !n.Minus(lower).Less(step) || !upper.Minus(n).Less(step) {
				t.Errorf("%v to %d places: %v below, %v above", n, places, lower, upper)
			}
			if step.Less(nearest.Minus(n).Abs().Times(Whole(2))) {
				t.Errorf("%v to %d places: %v is not the nearest", n, places, nearest)
			}
		}
		if n.IsZero() {
			continue
		}
		if leading := n.Abs().Times(powerOfTen(-n.order())); leading.Less(one) || !leading.Less(Whole(10)) {
			t.Errorf("%v has its first digit at ten to the %d", n, n.order())
		}
	}
}
