package quantity

import (
	"errors"
	"math/big"
	"strings"
	"testing"
)

// number reads what a test expects: "12", "0.5" or "5/9".
func number(t *testing.T, text string) Number {
	t.Helper()
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		t.Fatalf("%q is no number", text)
	}
	return FromRat(r)
}

func mustRead(t *testing.T, r Reader, text string) Amount {
	t.Helper()
	a, err := r.Amount(text)
	if err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	return a
}

// The figures in base units follow from the definitions in NIST SP 811 B.8 and
// Handbook 44 App. C (see TestUnitDefinitions): 1 lb = 453.59237 g and so on. In
// want, one figure is told exactly; three are the figure and its two ends.
func TestAmount(t *testing.T) {
	for _, c := range []struct {
		text, want string
		dimension  Dimension
		unit       string
		bound      Bound
	}{
		{"1.2 kg ± 10 g", "1200 1190 1210", Mass, "kg", Exactly},
		{"62 g ± 1 g", "62 61 63", Mass, "g", Exactly},
		{"62 g +/- 1 g", "62 61 63", Mass, "g", Exactly},
		{"62 ± 1 g", "62 61 63", Mass, "g", Exactly},
		{"500 g ± 2 %", "500 490 510", Mass, "g", Exactly},
		{"85 °C ± 2 °C", "85 83 87", Temperature, "°C", Exactly},
		{"50 °F ± 9 °F", "10 5 15", Temperature, "°F", Exactly},
		{"20 % ± 1 %", "0.2 0.19 0.21", Share, "%", Exactly},
		{"2 lb 3 oz ± 1 oz", "992.233309375 963.88378625 1020.5828325", Mass, "lb", Exactly},

		{"30–40 g", "35 30 40", Mass, "g", Exactly},
		{"30-40 g", "35 30 40", Mass, "g", Exactly},
		{"30 to 40 g", "35 30 40", Mass, "g", Exactly},
		{"30 g to 40 g", "35 30 40", Mass, "g", Exactly},
		{"from 30 to 40 g", "35 30 40", Mass, "g", Exactly},
		{"between 30 and 40 g", "35 30 40", Mass, "g", Exactly},
		{"about 30–40 g", "35 30 40", Mass, "g", About},
		{"800 g–1 kg", "900 800 1000", Mass, "g", Exactly},
		{"80–85 °C", "82.5 80 85", Temperature, "°C", Exactly},
		{"-5 to 5 °C", "0 -5 5", Temperature, "°C", Exactly},
		{"0.50–0.70 g/mL", "0.6 0.5 0.7", Density, "g/mL", Exactly},
		{"20 to 25 jars", "22.5 20 25", Count, "", Exactly},

		{"at most 2 %", "0.02 0 0.02", Share, "%", AtMost},
		{"20 g or less", "20 0 20", Mass, "g", AtMost},
		{"max. 20 g", "20 0 20", Mass, "g", AtMost},
		{"≤ 20 g", "20 0 20", Mass, "g", AtMost},
		{"at least 70 °C", "70", Temperature, "°C", AtLeast},
		{"70 °C or more", "70", Temperature, "°C", AtLeast},
		{"min 5 g", "5", Mass, "g", AtLeast},
		{"below 60 °C", "60", Temperature, "°C", Below},
		{"less than 5 g", "5 0 5", Mass, "g", Below},
		{"above 60 °C", "60", Temperature, "°C", Above},
		{"up to 1 tsp", "4.92892159375 0 4.92892159375", Volume, "tsp", UpTo},
		{"about 20 min", "1200", Duration, "min", About},
		{"~20 min", "1200", Duration, "min", About},

		{"1 1/2 cups", "354.88235475", Volume, "cup", Exactly},
		{"1-1/2 cups", "354.88235475", Volume, "cup", Exactly},
		{"1½ cups", "354.88235475", Volume, "cup", Exactly},
		{"1 ½ cups", "354.88235475", Volume, "cup", Exactly},
		{"one and a half cups", "354.88235475", Volume, "cup", Exactly},
		{"½ cup", "118.29411825", Volume, "cup", Exactly},
		{"1/3 cup", "78.8627455", Volume, "cup", Exactly},
		{"half a cup", "118.29411825", Volume, "cup", Exactly},
		{"a quarter teaspoon", "1.2322303984375", Volume, "tsp", Exactly},
		{"a quarter of a teaspoon", "1.2322303984375", Volume, "tsp", Exactly},
		{"six teaspoons", "29.5735295625", Volume, "tsp", Exactly},
		{"twenty-five grams", "25", Mass, "g", Exactly},
		{"half an hour", "1800", Duration, "h", Exactly},
		{"an hour and a half", "5400", Duration, "h", Exactly},
		{"a dozen", "12", Count, "", Exactly},
		{"two dozen jars", "24", Count, "", Exactly},

		{"2 lb 3 oz", "992.233309375", Mass, "lb", Exactly},
		{"1 h 20 min", "4800", Duration, "h", Exactly},
		{"1h20", "4800", Duration, "h", Exactly},
		{"4 ft 2 in", "1270", Length, "ft", Exactly},
		{`4' 2"`, "1270", Length, "ft", Exactly},

		{"6", "6", Count, "", Exactly},
		{"6 jars", "6", Count, "", Exactly},
		{"900 cm²", "90000", Area, "cm²", Exactly},
		{"30 × 20 cm", "60000", Area, "cm²", Exactly},
		{"30 x 20 cm", "60000", Area, "cm²", Exactly},
		{"30 cm by 200 mm", "60000", Area, "cm²", Exactly},
		{"30 × 20 cm ± 1 cm", "60000 55100 65100", Area, "cm²", Exactly},
		{"1,200 g", "1200", Mass, "g", Exactly},
		{"1\u00a0200 g", "1200", Mass, "g", Exactly},
		{"1\u2009200\u00a0g", "1200", Mass, "g", Exactly},
		{"1\u202f200\u202f000 g", "1200000", Mass, "g", Exactly},
		{".5 g", "0.5", Mass, "g", Exactly},
		{"140 °F", "60", Temperature, "°F", Exactly},
		{"−5 °C", "-5", Temperature, "°C", Exactly},
		{"by 9 °F", "5", TemperatureDifference, "°F", Exactly},
		{"by at most 9 °F", "5 0 5", TemperatureDifference, "°F", AtMost},
		{"by 5 K", "5", TemperatureDifference, "K", Exactly},
		{"£12.50", "12.5", Money, "£", Exactly},
		{"12.50 €", "12.5", Money, "€", Exactly},
		{"£12–15", "13.5 12 15", Money, "£", Exactly},
		{"2 %", "0.02", Share, "%", Exactly},
		{"8 oz weight", "226.796185", Mass, "oz weight", Exactly},
		{"8 oz by weight", "226.796185", Mass, "oz weight", Exactly},
		{"8 fl oz", "236.5882365", Volume, "fl oz", Exactly},
		{"8 fl. oz.", "236.5882365", Volume, "fl oz", Exactly},
		{"5 heaped tsp", "24.64460796875", Volume, "tsp", Exactly},
		{"level teaspoon", "4.92892159375", Volume, "tsp", Exactly},
		{"20 mL per g", "20", VolumePerMass, "mL/g", Exactly},
		{"0.92 kg/L", "0.92", Density, "kg/L", Exactly},
		{"70 : 100", "0.7", Proportion, ": 100", Exactly},
		{"5 g per 100 g", "0.05", Proportion, "g per 100 g", Exactly},
	} {
		a, err := Reader{}.Amount(c.text)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		ends := strings.Fields(c.want)
		if len(ends) == 1 {
			ends = []string{ends[0], ends[0], ends[0]}
		}
		told := a.Nominal.Equal(number(t, ends[0])) && a.Low.Equal(number(t, ends[1])) && a.High.Equal(number(t, ends[2]))
		if !told || a.Dimension != c.dimension || a.Unit.Symbol != c.unit || a.Bound != c.bound {
			t.Errorf("%q: %v, %v to %v, a %v in %q, bound %q", c.text, a.Nominal, a.Low, a.High, a.Dimension, a.Unit.Symbol, a.Bound)
		}
		if a.Written != c.text {
			t.Errorf("%q: written is %q", c.text, a.Written)
		}
	}
}

// What is told beside the figures.
func TestAmountWords(t *testing.T) {
	for _, c := range []struct{ text, noun, fill, of string }{
		{"6 jars", "jars", "", ""},
		{"6 jar lids", "jar lids", "", ""},
		{"6 6-strand lengths", "6-strand lengths", "", ""},
		{"5 heaped tsp", "", "heaped", ""},
		{"2 tsp level", "", "level", ""},
		{"1 firmly packed cup", "", "packed", ""},
		{"at most 2 % of mixture", "", "", "mixture"},
		{"2 % of the mixture by weight", "", "", "mixture"},
		{"2 % by weight of the finished mixture", "", "", "finished mixture"},
		{"2 % of part-1", "", "", "part-1"},
		{"2 % of the part-1 by weight", "", "", "part-1"},
		{"2 % of wax-2b", "", "", "wax-2b"},
		{"2 % of the maker's wax", "", "", "maker's wax"},
		{"20 mL per g of fibre", "", "", "fibre"},
	} {
		if a := mustRead(t, Reader{}, c.text); a.Noun != c.noun || a.Fill != c.fill || a.Of != c.of {
			t.Errorf("%q: noun %q, fill %q, of %q", c.text, a.Noun, a.Fill, a.Of)
		}
	}
	if a := mustRead(t, Reader{}, "30 × 20 cm ± 1 cm"); a.Across.String() != "300" || a.Along.String() != "200" || a.Slack.String() != "10" {
		t.Errorf("the sides are %v by %v mm ± %v mm", a.Across, a.Along, a.Slack)
	}
	if household, plain := mustRead(t, Reader{}, "1 tsp").Household, mustRead(t, Reader{}, "5 mL").Household; !household || plain {
		t.Errorf("household: a teaspoon %v, 5 mL %v", household, plain)
	}
}

func TestDecimalComma(t *testing.T) {
	comma := Reader{DecimalComma: true}
	for text, want := range map[string]string{
		"1,5 kg": "1500", "1.500 g": "1500", "1.500,5 g": "1500.5", "0,25–0,75 g": "0.5", "1\u202f200,5 g": "1200.5",
	} {
		if a := mustRead(t, comma, text); !a.Nominal.Equal(number(t, want)) {
			t.Errorf("%q: %v g, want %s", text, a.Nominal, want)
		}
	}
	for _, text := range []string{"1.5 g", "1,5,5 g", "1,5.500 g"} {
		if a, err := comma.Amount(text); err == nil {
			t.Errorf("%q with a decimal comma was read as %v g", text, a.Nominal)
		}
	}
}

// Handbook 44 App. C: the ounce is 28.349523125 g, the US fluid ounce 29.5735295625 mL,
// and SP 811 B.8 has the imperial one of 28.4130625 mL.
func TestPlainOunce(t *testing.T) {
	for convention, want := range map[Convention]string{USCustomary: "59.147059125", USLabel: "60", Imperial: "56.826125"} {
		a := mustRead(t, Reader{Convention: convention}, "2 oz")
		weight, fluid := a.OunceReadings(convention)
		if !a.PlainOunce || weight.PlainOunce || fluid.PlainOunce {
			t.Errorf("%s: plain ounce %v, %v, %v", convention, a.PlainOunce, weight.PlainOunce, fluid.PlainOunce)
		}
		if weight.Dimension != Mass || weight.Nominal.String() != "56.69904625" || weight.Unit.Symbol != "oz weight" {
			t.Errorf("%s: the weight is %v %v", convention, weight.Nominal, weight.Dimension)
		}
		if fluid.Dimension != Volume || fluid.Nominal.String() != want || fluid.Unit.Symbol != "fl oz" {
			t.Errorf("%s: the volume is %v %v, want %s", convention, fluid.Nominal, fluid.Dimension, want)
		}
	}
	for _, text := range []string{"2 oz weight", "2 fl oz", "1 lb 2 oz", "2 g"} {
		a := mustRead(t, Reader{}, text)
		if weight, fluid := a.OunceReadings(USCustomary); a.PlainOunce || !weight.Equal(a) || !fluid.Equal(a) {
			t.Errorf("%q has two readings", text)
		}
	}
}

// An own measure carries its tolerance along: 3 drops of 0.05 mL ± 0.01 mL.
func TestOwnMeasure(t *testing.T) {
	drop := mustRead(t, Reader{}, "0.05 mL ± 0.01 mL")
	r := Reader{Measures: map[string]Amount{"drop": drop, "wax melter scoop": mustRead(t, Reader{}, "80 g")}}
	for text, want := range map[string]Range{
		"3 drops":                 {Ratio(12, 100), Ratio(18, 100)},
		"a drop":                  {Ratio(4, 100), Ratio(6, 100)},
		"20–30 drops":             {Ratio(8, 10), Ratio(18, 10)},
		"2 wax melter scoops":     Exact(Whole(160)),
		"half a wax melter scoop": Exact(Whole(40)),
	} {
		if a := mustRead(t, r, text); !a.Low.Equal(want.Low) || !a.High.Equal(want.High) || !a.Household {
			t.Errorf("%q: %v to %v, want %v to %v", text, a.Low, a.High, want.Low, want.High)
		}
	}
}

func TestAllows(t *testing.T) {
	for _, c := range []struct{ text, inside, outside string }{
		{"20 g ± 1 g", "19 20 21", "18.99 21.01"},
		{"30–40 g", "30 40", "29 41"},
		{"20 g", "20", "19 21"},
		{"at most 5 g", "0 5", "5.01"},
		{"up to 5 g", "0 5", "5.01"},
		{"below 5 g", "0 4.99", "5"},
		{"at least 5 g", "5 500", "4.99"},
		{"above 5 g", "5.01 500", "5"},
		{"about 5 g", "4 5 6", ""},
		{"about 5–6 g", "5 6", "4 7"},
		{"at most 60 °C", "-20 60", "61"},
		{"below 60 °C", "-20 59", "60"},
		{"at least 70 °C", "70 90", "69"},
	} {
		a := mustRead(t, Reader{}, c.text)
		for _, n := range strings.Fields(c.inside) {
			if !a.Allows(number(t, n)) {
				t.Errorf("%q does not allow %s", c.text, n)
			}
		}
		for _, n := range strings.Fields(c.outside) {
			if a.Allows(number(t, n)) {
				t.Errorf("%q allows %s", c.text, n)
			}
		}
	}
}

func TestDifference(t *testing.T) {
	for text, want := range map[string]string{"5 °C": "5", "9 °F": "5", "by 9 °F": "5", "9–18 °F": "7.5", "5 K": "5"} {
		if a, err := (Reader{}).Difference(text); err != nil || a.Dimension != TemperatureDifference || !a.Nominal.Equal(number(t, want)) {
			t.Errorf("%q: %v %v, %v", text, a.Nominal, a.Dimension, err)
		}
	}
	if a, err := (Reader{}).Difference("5 g"); err == nil {
		t.Errorf("5 g was read as a %v", a.Dimension)
	}
}

func TestSolubility(t *testing.T) {
	s, err := Reader{}.Solubility("5 g per 100 g of water at 20 °C")
	if err != nil || !s.Ratio.Nominal.Equal(Ratio(5, 100)) || s.Solvent != "water" || !s.At.Nominal.Equal(Whole(20)) {
		t.Errorf("%v of %q at %v, %v", s.Ratio, s.Solvent, s.At, err)
	}
	for _, text := range []string{"5 g", "5 g per 100 g", "5 g per 100 g of water", "5 g per 100 g of water at 20 g", "5 % of water at 20 °C"} {
		if _, err := (Reader{}).Solubility(text); err == nil {
			t.Errorf("%q was read as a solubility", text)
		}
	}
}

func asError(t *testing.T, text string, err error) *Error {
	t.Helper()
	var told *Error
	if !errors.As(err, &told) {
		t.Fatalf("%q: the error is %v", text, err)
	}
	return told
}
