package quantity

// Dual tells an amount as written and, in brackets, in the other system: "30 cm
// (11.8 in)", "8 oz weight (227 g)", "150 °F (65.5 °C)". Spoons and cups are told in mL; a
// share, count, time, price or density has no other system and is told once.
// Fluid ounces are those of the convention, US ones where it has none of its own.
//
// The digits follow NIST SP 1038, 4.4: as many as the amount has, one more where the
// converted figure begins with a lesser digit; of mixed units the smallest counts
// ("1 lb 3½ oz" has the three digits of 19.5 oz). Masses and volumes keep three at
// least, as they are weighed and poured exactly: "2 cups" is not 500 mL. A limit keeps one digit more and is
// rounded so that keeping the converted one keeps the limit. Whole degrees Fahrenheit
// become the nearest half degree Celsius.
func Dual(a Amount, c Convention) string {
	to, ok := otherSystem(a, c)
	if !ok {
		return a.String()
	}
	return a.String() + " (" + teller{english, false}.converted(a, to) + ")"
}

// Other tells an amount in the other system alone, in the words of a language; ok is
// false for one that is in the system wished for already, or belongs to none.
func Other(a Amount, metric bool, c Convention, tag string) (text string, ok bool) {
	to, ok := otherSystem(a, c)
	if !ok || a.Unit.metric() == metric {
		return "", false
	}
	return teller{languageFor(tag), DecimalCommaIn(tag)}.converted(a, to), true
}

// converted tells an amount in another unit of the same dimension.
func (t teller) converted(a Amount, to Unit) string {
	told := Amount{Dimension: a.Dimension, Unit: to}
	switch {
	case a.Ranged:
		low, high := matching(a, a.Low, to), matching(a, a.High, to)
		return t.withUnit(told, t.joined(low, high, Unit{Dimension: to.Dimension}), high)
	case a.HasTolerance() && a.Bound != UpTo:
		return Show(a.Nominal, a.Dimension, Language(t.language.tag), In(to), Within(a.Tolerance()))
	}
	n := matching(a, a.Nominal, to)
	text := t.withUnit(told, decimalText(n, max(n.significantDigits()-1-n.order(), 0), halfEven, t.comma), n)
	if bound := t.bound(a.Bound); bound != "" {
		text = bound + " " + text
	}
	return text
}

// matching is n base units in another unit, rounded to match what was written.
func matching(a Amount, n Number, to Unit) Number {
	from := a.lastUnit()
	figure, result := from.FromBase(n), to.FromBase(n)
	const most, weighed = 4, 3
	digits := min(figure.significantDigits(), most)
	if a.Dimension == Mass || a.Dimension == Volume {
		digits = max(digits, weighed)
	}
	switch {
	case a.Dimension == Temperature && figure.IsWhole() && to.Symbol == "°C":
		return halfDegrees(result, a.Bound)
	case a.Dimension == Temperature && figure.IsWhole():
		return result.round(0, safe(a.Bound))
	case a.limit() || a.Bound == UpTo:
		return result.round(result.placesFor(digits+1), safe(a.Bound))
	}
	if result.firstDigit() < figure.firstDigit() && digits < most && figure.significantDigits() >= digits {
		digits++ // NIST SP 1038, 4.4
	}
	return result.round(result.placesFor(digits), halfEven)
}

// halfDegrees: whole degrees Fahrenheit are told to the nearest half degree Celsius
// (NIST SP 1038, 4.4.1.3).
func halfDegrees(celsius Number, bound Bound) Number {
	return celsius.roundTo(Ratio(1, 2), safe(bound))
}

// safe is the direction that cannot break a limit (NIST SP 1038, 4.4.1).
func safe(bound Bound) rounding {
	switch bound {
	case AtMost, Below, UpTo:
		return down
	case AtLeast, Above:
		return up
	}
	return halfEven
}

// otherSystem chooses the unit of the other system.
func otherSystem(a Amount, c Convention) (Unit, bool) {
	size := a.Nominal.Abs()
	metric := a.Unit.row > 0 && a.Unit.metric()
	switch {
	case a.Unit.row == 0:
		return Unit{}, false
	case a.Dimension == Mass && metric:
		return choose(size, pound.Times(Whole(2)), "oz", "lb", c)
	case a.Dimension == Volume && metric:
		return fluidOunceOf(c), true
	case a.Dimension == Length && metric:
		return choose(size, inch.Times(Whole(36)), "in", "ft", c)
	case a.Dimension == Area && metric:
		return choose(size, inch2.Times(Whole(144)), "in²", "ft²", c)
	case a.Dimension == Temperature && metric:
		return choose(size, size.Plus(one), "°F", "°F", c)
	case a.Dimension == Mass:
		return choose(size, Whole(1000), "g", "kg", c)
	case a.Dimension == Volume:
		return choose(size, Whole(1000), "mL", "L", c)
	case a.Dimension == Length:
		return choose(size, Whole(1000), "cm", "m", c)
	case a.Dimension == Area:
		return choose(size, Whole(1000000), "cm²", "m²", c)
	case a.Dimension == Temperature:
		return mustUnit("°C"), true
	}
	return Unit{}, false
}

func choose(size, limit Number, small, large string, c Convention) (Unit, bool) {
	if size.Less(limit) {
		return unitAt(rowOf(small), c)
	}
	return unitAt(rowOf(large), c)
}

// metric says whether the unit is one of the metric system.
func (u Unit) metric() bool {
	switch u.Dimension {
	case Mass, Volume, Length, Area:
		return u.Factor.isPowerOfTen() && !u.Household
	}
	return u.Symbol == "°C"
}

func (n Number) isPowerOfTen() bool {
	return n.Sign() > 0 && n.Equal(powerOfTen(n.order()))
}

// DualNet tells net contents in base units, metric first: "195 g (6.87 oz)", "578 g (1
// lb 4.4 oz)", "500 mL (16.9 fl oz)". Both are cut to three digits and never rounded
// up, so that neither promises more than there is (NIST SP 1038, 4.4.1.2; 16 CFR
// 500.27 cuts its examples so).
func DualNet(n Number, d Dimension) string {
	metric := Show(n, d, Digits(3), Down())
	switch d {
	case Mass:
		return metric + " (" + netOunces(n) + ")"
	case Volume:
		return metric + " (" + Show(n, d, In(fluidOunceOf(USCustomary)), Digits(3), Down()) + ")"
	case Length:
		return metric + " (" + Show(n, d, In(mustUnit("in")), Digits(3), Down()) + ")"
	case Area:
		return metric + " (" + Show(n, d, In(mustUnit("in²")), Digits(3), Down()) + ")"
	}
	return metric
}

// netOunces tells a mass in ounces, from a pound on in pounds and ounces.
func netOunces(n Number) string {
	oz := mustUnit("oz")
	if n.Less(pound) {
		return Show(n, Mass, In(oz), Digits(3), Down())
	}
	ounces := n.Over(ounce)
	ounces = ounces.round(ounces.placesFor(3), down)
	pounds := Whole(ounces.Over(Whole(16)).Int())
	rest := ounces.Minus(pounds.Times(Whole(16)))
	if rest.IsZero() {
		return pounds.String() + " lb"
	}
	return pounds.String() + " lb " + decimalText(rest, 2, down, false) + " oz"
}

func fluidOunceOf(c Convention) Unit {
	if c == USLabel || c == Metric {
		c = USCustomary // a rounded ounce is no ounce to convert into
	}
	unit, _ := unitAt(fluidOunce, c)
	return unit
}
