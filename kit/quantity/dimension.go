package quantity

// A Dimension is the kind of thing that is measured. Numbers without a unit are
// in the base unit of their dimension, named beside each. The zero value is no
// dimension, so that one that was forgotten is noticed.
type Dimension int

const (
	Mass                  Dimension = iota + 1 // g
	Volume                                     // mL
	Count                                      // 1
	Length                                     // mm
	Area                                       // mm²
	Temperature                                // °C, a reading on a thermometer
	TemperatureDifference                      // °C, between two readings
	Duration                                   // s
	Money                                      // one of the currency, which is the unit
	Share                                      // 1, so 2 % is 1/50
	Density                                    // g/mL
	VolumePerMass                              // mL/g
	Proportion                                 // 1, of two like things: 70 : 100 is 7/10
)

// String names the dimension in words that fit behind "a" or "the".
func (d Dimension) String() string {
	names := [...]string{
		"unknown measure", "mass", "volume", "count", "length", "area", "temperature",
		"difference of temperature", "time", "sum of money", "share", "density",
		"volume per mass", "ratio",
	}
	if d < 0 || int(d) >= len(names) {
		return names[0]
	}
	return names[d]
}

// A Convention says which spoons, cups and pints are meant. Weights and lengths
// are the same under all of them: a scale knows only one ounce. (The nutrition
// rule of USLabel also has an ounce of 28 g, for tables on food; no scale shows it.)
type Convention int

const (
	// USCustomary: a teaspoon is 1/768 of the US gallon of 231 cubic inches (NIST
	// Handbook 44, Appendix C).
	USCustomary Convention = iota
	// USLabel: 5, 15 and 240 mL, fluid ounce 30 mL (21 CFR 101.9(b)(5)(viii)). Pint,
	// quart and gallon stay the customary ones, which that rule does not touch.
	USLabel
	// Metric: 5, 15 and 250 mL, fluid ounce 30 mL (the metric kitchen measures of
	// UCUM, with the cup in common use); pints do not exist.
	Metric
	// Australian: 5, 20 and 250 mL, the rest imperial.
	Australian
	// Imperial: 5 and 15 mL, the cup half an imperial pint, fluid ounce 1/160 of the
	// gallon of 4.54609 L (NIST SP 811, B.8).
	Imperial
)

const conventions = int(Imperial) + 1

// String names the convention as people say it.
func (c Convention) String() string {
	names := [conventions]string{"US customary", "US label", "metric", "Australian", "imperial"}
	if !c.known() {
		return "unknown convention"
	}
	return names[c]
}

func (c Convention) known() bool { return c >= 0 && int(c) < conventions }

// A Bound says on which side of the figure told an amount may lie.
type Bound int

const (
	Exactly Bound = iota
	AtMost        // the figure or less
	AtLeast       // the figure or more
	Below         // less than the figure, not the figure itself
	Above         // more than the figure, not the figure itself
	UpTo          // anything from nothing to the figure
	About         // near the figure; how near is not told
)

// String is the English for it, as it stands before a figure; "" for Exactly.
func (b Bound) String() string {
	if b <= Exactly || b > About {
		return ""
	}
	return english.bounds[b][0]
}
