package quantity

// A Style changes how Show tells a number.
type Style func(*style)

type style struct {
	unit      Unit
	tolerance Number
	digits    int
	how       rounding
	language  *language
	comma     bool
}

// Within shows no digit that a tolerance (half the width, in base units, of whatever
// is shown) makes worthless: two significant digits of the tolerance where it begins
// with 1 or 2, else one (JCGM 100, 7.2.6 allows two at most). 0 is no tolerance.
func Within(tolerance Number) Style { return func(s *style) { s.tolerance = tolerance.Abs() } }

// In tells the number in a given unit, which must be of the dimension shown.
func In(u Unit) Style { return func(s *style) { s.unit = u } }

// Digits shows so many significant digits.
func Digits(n int) Style { return func(s *style) { s.digits = n } }

// Down rounds towards less, as a promise of contents or an upper limit must be.
func Down() Style { return func(s *style) { s.how = down } }

// Up rounds towards more, as a lower limit or an amount to pack must be.
func Up() Style { return func(s *style) { s.how = up } }

// Comma tells decimals with a comma.
func Comma() Style { return func(s *style) { s.comma = true } }

// Language tells decimals and the words for days in a language ("fr").
func Language(tag string) Style {
	return func(s *style) {
		s.language = languageFor(tag)
		s.comma = DecimalCommaIn(tag)
	}
}

// Show tells n base units of a dimension for people to read: "705 g", "1.25 kg",
// "12 mL", "85 °C", "1 h 20 min", "9.09 %", "6". Money is told without a currency
// unless In gives one.
//
// A number of at most four significant digits is shown as it is. Others are rounded
// to three, though up to four where that is still a whole gram, millilitre or
// millimetre: 1254.3 g is "1.254 kg". Ties go to the even digit (NIST SP 811, B.7.1).
func Show(n Number, d Dimension, how ...Style) string {
	s := styled(how)
	if d == Duration && s.unit.Dimension == 0 && !n.Abs().Less(Whole(60)) {
		return s.clock(n)
	}
	unit := s.unitFor(n, d)
	return s.with(s.figure(n, unit, s.places(n, unit)), unit)
}

// ShowTolerance tells a number with its tolerance: "705 g ± 2 g".
func ShowTolerance(n, tolerance Number, d Dimension, how ...Style) string {
	if tolerance.IsZero() {
		return Show(n, d, how...)
	}
	s := styled(how)
	s.tolerance = tolerance.Abs()
	unit := s.unitFor(n, d)
	places := s.places(n, unit)
	offset := unit
	offset.Offset = Number{} // the tolerance of a temperature is a difference
	return s.with(s.figure(n, unit, places), unit) + " ± " + s.with(s.figure(s.tolerance, offset, places), unit)
}

// ShowRange tells two ends in one unit, "16.2–24.6 g", the lower one rounded down and
// the upper one up, so that nothing that can be is left out.
func ShowRange(low, high Number, d Dimension, how ...Style) string {
	s := styled(how)
	if d == Duration && s.unit.Dimension == 0 && !high.Less(Whole(60)) {
		lower, upper := s, s
		lower.how, upper.how = down, up
		return joinEnds(lower.clock(low), upper.clock(high))
	}
	unit := s.unitFor(Larger(low.Abs(), high.Abs()), d)
	places := s.places(Larger(low.Abs(), high.Abs()), unit)
	lower, upper := s, s
	lower.how, upper.how = down, up
	from, to := lower.figure(low, unit, places), upper.figure(high, unit, places)
	switch {
	case from == to:
		return s.with(from, unit)
	case low.Sign() < 0:
		return s.with(from, unit) + " to " + s.with(to, unit)
	}
	return s.with(from+"–"+to, unit)
}

func joinEnds(from, to string) string {
	if from == to {
		return from
	}
	return from + " to " + to
}

func styled(how []Style) style {
	s := style{language: english}
	for _, change := range how {
		change(&s)
	}
	return s
}

// scale lists the units of a dimension, each with the number of base units from
// which on the next is used.
var scale = map[Dimension][]step{
	Mass:                  {{Ratio(1, 10), mustUnit("mg")}, {Whole(1000), mustUnit("g")}, {Number{}, mustUnit("kg")}},
	Volume:                {{Whole(1000), mustUnit("mL")}, {Number{}, mustUnit("L")}},
	Length:                {{Whole(100), mustUnit("mm")}, {Whole(1000), mustUnit("cm")}, {Number{}, mustUnit("m")}},
	Area:                  {{Whole(100), mustUnit("mm²")}, {Whole(1000000), mustUnit("cm²")}, {Number{}, mustUnit("m²")}},
	Temperature:           {{Number{}, mustUnit("°C")}},
	TemperatureDifference: {{Number{}, unit(TemperatureDifference, one, "°C", "degree Celsius", "degrees Celsius")}},
	Duration:              {{Number{}, mustUnit("s")}},
	Share:                 {{Number{}, mustUnit("%")}},
	Density:               {{Number{}, unit(Density, one, "g/mL", "gram per millilitre", "grams per millilitre")}},
	VolumePerMass:         {{Number{}, unit(VolumePerMass, one, "mL/g", "millilitre per gram", "millilitres per gram")}},
}

type step struct {
	below Number // 0: no end
	unit  Unit
}

func mustUnit(symbol string) Unit {
	unit, ok := unitAt(rowOf(symbol), Metric)
	if !ok {
		panic("quantity: no unit " + symbol)
	}
	return unit
}

var bare = Unit{Factor: one}

// unitFor chooses the unit for a number; one that would round up to the next unit
// is told in that.
func (s *style) unitFor(n Number, d Dimension) Unit {
	steps := scale[d]
	switch {
	case s.unit.Dimension != 0:
		return s.unit
	case len(steps) == 0:
		u := bare
		u.Dimension = d
		return u
	case n.IsZero() && d == Mass:
		return steps[1].unit
	}
	for _, step := range steps {
		if step.below.IsZero() {
			return step.unit
		}
		shown := step.unit.FromBase(n.Abs())
		rounded := step.unit.ToBase(shown.round(s.places(n.Abs(), step.unit), s.how))
		if n.Abs().Less(step.below) && rounded.Less(step.below) {
			return step.unit
		}
	}
	return steps[len(steps)-1].unit
}

// places is how many decimal places n is shown with in the unit.
func (s *style) places(n Number, u Unit) int {
	const plain, most = 3, 4
	shown := u.FromBase(n)
	switch {
	case s.digits > 0:
		return shown.placesFor(s.digits)
	case s.tolerance.Sign() > 0:
		tolerance := s.tolerance.Over(u.Factor)
		if tolerance.firstDigit() <= 2 {
			return tolerance.placesFor(2)
		}
		return tolerance.placesFor(1)
	case u.Dimension == Money:
		return 2
	}
	if digits := shown.significantDigits(); digits <= most {
		return max(shown.placesFor(digits), 0)
	}
	places := max(shown.placesFor(plain), 0)
	switch u.Dimension {
	case Mass, Volume, Length:
		return max(places, min(shown.placesFor(most), u.Factor.order()))
	}
	return places
}

func (s *style) figure(n Number, u Unit, places int) string {
	if u.Dimension == Money && places == 2 {
		return withCents(u.FromBase(n), s)
	}
	return decimalText(u.FromBase(n), places, s.how, s.comma)
}

// withCents tells money: whole, or with both digits of the cents.
func withCents(n Number, s *style) string {
	rounded := n.round(2, s.how)
	text := decimalText(rounded, 2, s.how, s.comma)
	if rounded.IsWhole() {
		return text
	}
	if tenths := rounded.Times(Whole(10)); tenths.IsWhole() {
		return text + "0"
	}
	return text
}

// with puts the unit to a figure.
func (s *style) with(figure string, u Unit) string {
	switch {
	case u.Symbol == "":
		return figure
	case u.isMoneySign():
		return u.Symbol + figure
	}
	return figure + " " + s.language.unitName(u, figure != "1" && figure != "0.5" && figure != "0.25")
}
