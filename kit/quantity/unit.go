package quantity

// A Unit is one row of the closed table of units, one of the kit's own measures,
// or one unit per another ("g/mL").
type Unit struct {
	// Name is the full English name of one ("gram"), Plural that of several.
	Name, Plural string
	// Symbol is what stands behind a figure ("g"). Where it equals Name, as with
	// "cup", several are told by Plural.
	Symbol    string
	Dimension Dimension
	// Factor is how many base units one of it is.
	Factor Number
	// Offset is added after multiplying by Factor; only °F has one.
	Offset Number
	// Low and High are the ends of Factor for an own measure that a maker gave a
	// tolerance; both 0 for all others.
	Low, High Number
	// Household is true for spoons, cups and drops, which are told by eye.
	Household bool

	// row is the place in the table of units plus one; 0 for units not in it.
	row int16
}

// UnitNamed finds a unit by any of its English names or symbols ("mL",
// "millilitres", "fl oz"). Capitals matter only where they change the meaning.
// It is false for what is no unit under this convention, such as a metric pint.
func UnitNamed(name string, c Convention) (Unit, bool) {
	if len(name) > MaxText {
		return Unit{}, false
	}
	p := Reader{Convention: c}.parser(name, false)
	unit, next, ok := p.tableUnit(0)
	return unit, ok && next == len(p.tokens)
}

// Units is the table under a convention, in an order fit for printing. Units
// that the convention does not have are left out.
func Units(c Convention) []Unit {
	units := make([]Unit, 0, len(table))
	for i := range table {
		if unit, ok := unitAt(i, c); ok {
			units = append(units, unit)
		}
	}
	return units
}

// unitAt is the unit in a row of the table under a convention.
func unitAt(row int, c Convention) (Unit, bool) {
	unit := table[row].Unit
	if each := table[row].each; each != nil && c.known() {
		unit.Factor = each[c]
	}
	unit.row = int16(row) + 1
	return unit, !unit.Factor.IsZero()
}

// ToBase tells n of the unit in base units of its dimension.
func (u Unit) ToBase(n Number) Number { return n.Times(u.Factor).Plus(u.Offset) }

// FromBase tells n base units in this unit. Only for units that UnitNamed, Units
// or an Amount gave: the zero Unit is no unit and panics.
func (u Unit) FromBase(n Number) Number { return n.Minus(u.Offset).Over(u.Factor) }

// Convert tells n of one unit in another of the same dimension. Money converts
// only into its own currency. The error is an *Error in plain words.
func Convert(n Number, from, to Unit) (Number, error) {
	switch {
	case from.Factor.IsZero() || to.Factor.IsZero():
		return Number{}, &Error{Found: "a figure without a unit", Expected: "a unit to convert from and one to convert to"}
	case from.Dimension != to.Dimension:
		return Number{}, &Error{
			Found:    "a " + from.Dimension.String() + " (" + from.Symbol + ")",
			Expected: "a " + to.Dimension.String() + ", as it is to be told in " + to.Symbol,
			Hint:     conversionHint(from.Dimension, to.Dimension),
		}
	case from.Dimension == Money && from.Symbol != to.Symbol:
		return Number{}, &Error{
			Found: from.Name, Expected: to.Name,
			Hint: "rates between currencies change daily; tell all prices of a kit in one",
		}
	}
	return to.FromBase(from.ToBase(n)), nil
}

func conversionHint(from, to Dimension) string {
	switch {
	case from == Mass && to == Volume || from == Volume && to == Mass:
		return "a density joins mass and volume; give one"
	case from == Temperature && to == TemperatureDifference || from == TemperatureDifference && to == Temperature:
		return "a reading (to 60 °C) and a difference (by 5 °C) are not the same thing"
	}
	return ""
}

// isPlainOunce: the ounce that may be a weight or a volume.
func (u Unit) isPlainOunce() bool { return u.row > 0 && table[u.row-1].plainOunce }

// ends is how a figure in the unit spreads for an own measure with a tolerance.
func (u Unit) ends(n Number) (low, high Number) {
	if u.Low.IsZero() && u.High.IsZero() {
		return u.ToBase(n), u.ToBase(n)
	}
	return n.Times(u.Low), n.Times(u.High)
}

// per is one unit told per so many of another, where that is something that kits
// reckon with.
func (u Unit) per(n Number, other Unit) (Unit, bool) {
	dimension, ok := quotients[[2]Dimension{u.Dimension, other.Dimension}]
	if !ok || n.Sign() <= 0 {
		return Unit{}, false
	}
	of, ofSymbol := other.Name, "/"+other.Symbol
	if !n.Equal(one) {
		of = n.String() + " " + other.Plural
		ofSymbol = " per " + n.String() + " " + other.Symbol
	}
	each := n.Times(other.Factor)
	return Unit{
		Name: u.Name + " per " + of, Plural: u.Plural + " per " + of, Symbol: u.Symbol + ofSymbol,
		Dimension: dimension, Factor: u.Factor.Over(each),
		Household: u.Household || other.Household,
	}, true
}

var quotients = map[[2]Dimension]Dimension{
	{Mass, Volume}:   Density,
	{Volume, Mass}:   VolumePerMass,
	{Mass, Mass}:     Proportion,
	{Volume, Volume}: Proportion,
}
