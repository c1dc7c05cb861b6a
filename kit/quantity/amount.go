package quantity

// An Amount is what a maker wrote for a quantity. All numbers are in the base unit
// of its dimension, so amounts of one dimension can be added and compared. The
// zero Amount is no amount: its Dimension is none.
type Amount struct {
	Dimension Dimension
	// Nominal is the figure told; of a range it is the middle. Low and High are the
	// ends that it may have, both included:
	//
	//	20 g ± 1 g                 20, 19, 21
	//	30–40 g                    35, 30, 40, Ranged
	//	up to 5 g, at most 5 g,
	//	below 5 g                  5, 0, 5
	//	at least 5 g, above 5 g    5, 5, 5 with no upper end known, see Ends
	//	below 60 °C                60, 60, 60 with no lower end known
	//	about 20 min               20, 20, 20: how near is not told
	Nominal, Low, High Number
	// Ranged: told by its two ends.
	Ranged bool
	Bound  Bound
	// Unit is the unit as written, the first one of "2 lb 3 oz". A count has none.
	Unit Unit
	// Noun is what is counted, as written: "jars", "6-strand lengths"; "" when bare.
	Noun string
	// Household: told in spoons, cups or one of the kit's own measures.
	Household bool
	// Fill says how a spoon is filled, in English: level, heaped, rounded, scant,
	// packed, loose; "" when not said.
	Fill string
	// Of is the base of a share or ratio as written, without its article: the
	// "mixture" of "2 % of the mixture".
	Of string
	// PlainOunce: told in "oz" alone, read as a weight here. See OunceReadings.
	PlainOunce bool
	// Across and Along are the sides in mm of an area told as "30 × 20 cm", and Slack
	// is the tolerance in mm of both; 0 for other areas.
	Across, Along, Slack Number
	// Written is the text as the maker wrote it.
	Written string

	// parts are the rows of the smaller units in "2 lb 3 oz".
	parts [2]int16
}

// Tolerance is half the width between Low and High; 0 where neither a tolerance nor
// a range was told. A limit (at most, below, …) is no tolerance.
func (a Amount) Tolerance() Number {
	if !a.HasTolerance() {
		return Number{}
	}
	return a.High.Minus(a.Low).Over(Whole(2))
}

// HasTolerance says whether the amount may differ from Nominal in a way that was told.
func (a Amount) HasTolerance() bool { return !a.limit() && !a.Low.Equal(a.High) }

func (a Amount) limit() bool {
	return a.Bound == AtMost || a.Bound == AtLeast || a.Bound == Below || a.Bound == Above
}

// Ends gives the ends of the amount and says which are known. Nothing but a
// temperature goes below nothing, so "at most 5 g" has both ends and "at least 5 g"
// has no upper one. Below and Above do not include the end they name.
func (a Amount) Ends() (low, high Number, hasLow, hasHigh bool) {
	hasLow, hasHigh = true, true
	switch a.Bound {
	case AtLeast, Above:
		hasHigh = false
	case AtMost, Below, UpTo:
		hasLow = a.Dimension != Temperature
	}
	return a.Low, a.High, hasLow, hasHigh
}

// Allows says whether n base units keep to the bound, range or tolerance. An
// "about" allows anything: how near is not told.
func (a Amount) Allows(n Number) bool {
	switch a.Bound {
	case About:
		return !a.HasTolerance() || !n.Less(a.Low) && !a.High.Less(n)
	case Below:
		return n.Less(a.Nominal)
	case Above:
		return a.Nominal.Less(n)
	}
	low, high, hasLow, hasHigh := a.Ends()
	return (!hasLow || !n.Less(low)) && (!hasHigh || !high.Less(n))
}

// Range is the closed ends of the amount.
func (a Amount) Range() Range { return Range{a.Low, a.High} }

// Figure is Nominal in the unit as written: 1.5 for "1 1/2 cups".
func (a Amount) Figure() Number { return a.in(a.Nominal) }

// in tells n base units in the unit as written.
func (a Amount) in(n Number) Number {
	if a.Unit.Dimension == 0 {
		return n
	}
	return a.Unit.FromBase(n)
}

// Equal says whether two amounts say the same, in the same units; how they were
// Written does not count.
func (a Amount) Equal(b Amount) bool {
	numbers := a.Nominal.Equal(b.Nominal) && a.Low.Equal(b.Low) && a.High.Equal(b.High) &&
		a.Across.Equal(b.Across) && a.Along.Equal(b.Along) && a.Slack.Equal(b.Slack)
	words := a.Noun == b.Noun && a.Fill == b.Fill && a.Of == b.Of
	return numbers && words && a.Dimension == b.Dimension && a.Ranged == b.Ranged && a.Bound == b.Bound &&
		a.Household == b.Household && a.PlainOunce == b.PlainOunce &&
		a.Unit.equal(b.Unit) && a.parts == b.parts
}

func (u Unit) equal(v Unit) bool {
	return u.Symbol == v.Symbol && u.Dimension == v.Dimension && u.Household == v.Household &&
		u.Factor.Equal(v.Factor) && u.Offset.Equal(v.Offset)
}

// OunceReadings gives both readings of a plain ounce: by weight, and by volume
// under a convention. Of any other amount both are the amount itself.
func (a Amount) OunceReadings(c Convention) (weight, fluid Amount) {
	if !a.PlainOunce {
		return a, a
	}
	weight, fluid = a, a
	weight.PlainOunce, fluid.PlainOunce = false, false
	weight.Unit, _ = unitAt(weightOunce, c)
	fluid.Unit, _ = unitAt(fluidOunce, c)
	fluid.Dimension = Volume
	for _, n := range []*Number{&fluid.Nominal, &fluid.Low, &fluid.High} {
		*n = fluid.Unit.ToBase(a.Unit.FromBase(*n))
	}
	return weight, fluid
}

var fluidOunce = rowOf("fl oz")

// AsDifference takes a reading for a difference: 9 °F is then 5 °C.
func (a Amount) AsDifference() Amount {
	for _, n := range []*Number{&a.Nominal, &a.Low, &a.High} {
		*n = n.Minus(a.Unit.Offset)
	}
	if a.Bound == AtMost || a.Bound == Below || a.Bound == UpTo {
		a.Low = Number{}
	}
	a.Dimension, a.Unit.Dimension = TemperatureDifference, TemperatureDifference
	a.Unit.Offset, a.Unit.row = Number{}, 0
	return a
}
