package quantity

// A row is a unit together with the ways to write it. To add a unit, add a row;
// its names in other languages stand in the file of each language, by Symbol.
type row struct {
	Unit
	// each is the factor by convention, where there is more than one; 0 where the
	// convention has no such unit.
	each *[conventions]Number
	// spellings holds symbols and abbreviations valid in every language. Those
	// beginning with '=' must be written just so, as another case would make
	// another unit: "m" is a metre, "M" a million.
	spellings []string
	// names holds further English names beside Name and Plural.
	names []string
	// chain: units of the same chain may follow each other in one amount, "2 lb 3 oz".
	chain chain
	// plainOunce marks the ounce that may mean a weight or a volume.
	plainOunce bool
}

type chain int8

const (
	alone chain = iota
	metricMass
	poundsAndOunces
	metricVolume
	kitchen
	metricLength
	yardsAndInches
	clock
)

// Definitions, exact all of them. Sources: NIST Handbook 44 Appendix C (pound,
// inch, gallon of 231 cubic inches), NIST SP 811 B.8 (imperial gallon, year of
// 365 days), 21 CFR 101.9(b)(5)(viii) (label measures).
var (
	one        = Whole(1)
	pound      = Ratio(45359237, 100000)
	ounce      = pound.Over(Whole(16))
	inch       = Ratio(254, 10)
	inch2      = inch.Times(inch)
	inch3      = inch2.Times(inch).Over(Whole(1000)) // mL
	usGallon   = inch3.Times(Whole(231))
	imperial   = Ratio(454609, 100)
	impFluid   = imperial.Over(Whole(160))
	usFluid    = usGallon.Over(Whole(128))
	degreeF    = Ratio(5, 9)
	day        = Whole(24 * 60 * 60)
	yearOfDays = day.Times(Whole(365))
)

// usOr spreads a share of the US gallon and the other conventions over a row.
func usOr(part int64, label, metric, australian, imperial Number) *[conventions]Number {
	return &[conventions]Number{usGallon.Over(Whole(part)), label, metric, australian, imperial}
}

var (
	teaspoons     = usOr(768, Whole(5), Whole(5), Whole(5), Whole(5))
	tablespoons   = usOr(256, Whole(15), Whole(15), Whole(20), Whole(15))
	cups          = usOr(16, Whole(240), Whole(250), Whole(250), imperial.Over(Whole(16)))
	fluidOunces   = usOr(128, Whole(30), Whole(30), impFluid, impFluid)
	pints         = usOr(8, usGallon.Over(Whole(8)), Number{}, imperial.Over(Whole(8)), imperial.Over(Whole(8)))
	quarts        = usOr(4, usGallon.Over(Whole(4)), Number{}, imperial.Over(Whole(4)), imperial.Over(Whole(4)))
	gallons       = usOr(1, usGallon, Number{}, imperial, imperial)
	gills         = usOr(32, usGallon.Over(Whole(32)), Number{}, imperial.Over(Whole(32)), imperial.Over(Whole(32)))
	fluidDrams    = usOr(1024, Whole(30).Over(Whole(8)), Whole(30).Over(Whole(8)), impFluid.Over(Whole(8)), impFluid.Over(Whole(8)))
	dessertspoons = &[conventions]Number{{}, {}, Whole(10), Whole(10), Whole(10)} // not a US measure
)

func unit(d Dimension, factor Number, symbol, name, plural string) Unit {
	return Unit{Name: name, Plural: plural, Symbol: symbol, Dimension: d, Factor: factor}
}

// spoon is a household measure; its factor comes with the convention.
func spoon(symbol, name, plural string) Unit {
	u := unit(Volume, Number{}, symbol, name, plural)
	u.Household = true
	return u
}

// fixedSpoon is a household measure that names its convention.
func fixedSpoon(factor Number, name, plural string) Unit {
	u := unit(Volume, factor, name, name, plural)
	u.Household = true
	return u
}

func fahrenheit() Unit {
	u := unit(Temperature, degreeF, "°F", "degree Fahrenheit", "degrees Fahrenheit")
	u.Offset = Whole(-32).Times(degreeF)
	return u
}

// table is filled in unit_rows.go.
var table = append(append(append(append([]row{}, massRows...), volumeRows...), sizeRows...), otherRows...)

// rowOf finds a row by symbol; for the package's own use with symbols that exist.
func rowOf(symbol string) int {
	for i := range table {
		if table[i].Symbol == symbol {
			return i
		}
	}
	return -1
}
