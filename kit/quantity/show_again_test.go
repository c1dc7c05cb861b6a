package quantity

import (
	"strings"
	"testing"
)

// shownSizes are from a few milligrams to tonnes, with digits that must be rounded.
var shownSizes = []string{
	"0.00123456", "0.04", "0.099951", "0.1", "0.333333", "0.9995", "0.99951", "1", "1.25", "2.71828", "9.9949", "9.9951", "12.345",
	"28.349523125", "99.951", "99.96", "100", "101.25", "236.5882365", "705", "999.4", "999.51", "1000", "1254.3", "2050", "9999.5",
	"12345.678", "99951", "123456.789", "999951", "1234567.89",
}

// What Show tells is read again as the number, within half of the last digit shown,
// and rounding down or up errs to one side only, by less than one digit.
func TestShowIsReadAgain(t *testing.T) {
	for _, size := range shownSizes {
		n := parsed(t, size)
		for _, d := range []Dimension{Mass, Volume, Count, Length, Area, Temperature, Share, Density, VolumePerMass} {
			for _, comma := range []bool{false, true} {
				how := []Style{}
				if comma {
					how = append(how, Comma())
				}
				checkShown(t, n, d, comma, Show(n, d, how...), 0)
				checkShown(t, n, d, comma, Show(n, d, append(how, Down())...), -1)
				checkShown(t, n, d, comma, Show(n, d, append(how, Up())...), 1)
			}
		}
	}
}

// checkShown compares by the last digit shown; side is where a rounding may err.
func checkShown(t *testing.T, n Number, d Dimension, comma bool, text string, side int) {
	t.Helper()
	a := mustRead(t, Reader{DecimalComma: comma}, text)
	if a.Dimension != d {
		t.Errorf("%v as a %v: %q is a %v", n, d, text, a.Dimension)
	}
	decimals := 0
	if _, behind, ok := strings.Cut(strings.Fields(text)[0], map[bool]string{true: ",", false: "."}[comma]); ok {
		decimals = len(behind)
	}
	digit := powerOfTen(-decimals)
	if d != Count {
		digit = digit.Times(a.Unit.Factor)
	}
	off := a.Nominal.Minus(n)
	switch {
	case side == 0 && digit.Less(off.Abs().Times(Whole(2))),
		side != 0 && (off.Sign() == -side || !off.Abs().Less(digit)):
		t.Errorf("%v as a %v: %q is off by %v (rounding to side %d)", n, d, text, off.Float(), side)
	}
}

// Times are told to the second below ten minutes and whenever they are whole, else
// to the minute below two days and to the hour above.
func TestShownTimeIsReadAgain(t *testing.T) {
	for text, within := range map[string]int64{
		"60": 0, "61": 0, "3599": 0, "3600": 0, "4800": 0, "86399": 0, "172800": 0, "281700": 0, "31536000": 0,
		"59.7": 1, "599.4": 1, "600.5": 30, "7199.9": 30, "172799.5": 30, "172800.5": 1800, "999999.5": 1800,
	} {
		n := parsed(t, text)
		shown := Show(n, Duration)
		if off := mustRead(t, Reader{}, shown).Nominal.Minus(n).Abs(); Whole(within).Less(off) {
			t.Errorf("%s s: %q is off by %v s", text, shown, off.Float())
		}
	}
}

// A range shown holds all of the range meant, and a tolerance shown is a tolerance.
func TestShownRangeHoldsAll(t *testing.T) {
	for _, ends := range [][2]string{{"16.2345", "24.5678"}, {"0.5", "1200"}, {"999.6", "1000.4"}, {"5", "5.5"}, {"0", "3"}} {
		low, high := parsed(t, ends[0]), parsed(t, ends[1])
		for _, d := range []Dimension{Mass, Volume, Length, Temperature, Share} {
			text := ShowRange(low, high, d)
			if a := mustRead(t, Reader{}, text); low.Less(a.Low) || a.High.Less(high) {
				t.Errorf("%v to %v as a %v: %q", low, high, d, text)
			}
		}
	}
	a := mustRead(t, Reader{}, ShowTolerance(parsed(t, "705.3"), parsed(t, "2.2"), Mass))
	if got := a.Tolerance(); got.Less(Whole(2)) || Whole(3).Less(got) {
		t.Errorf("± 2.2 g is shown as ± %v g", got)
	}
}

// What Household tells in cups and spoons adds up to the volume and the error told.
func TestHouseholdIsReadAgain(t *testing.T) {
	for c := USCustomary; c <= Imperial; c++ {
		for _, size := range shownSizes {
			volume := parsed(t, size)
			text, off, ok := Household(volume, c)
			if !ok {
				continue
			}
			var sum Number
			for _, part := range strings.Split(text, " + ") {
				sum = sum.Plus(mustRead(t, Reader{Convention: c}, part).Nominal)
			}
			if !sum.Equal(volume.Times(one.Plus(off))) {
				t.Errorf("%s %s mL: %q is %v mL, not off by %v", c, size, text, sum.Float(), off.Float())
			}
			// Half of a quarter teaspoon, or the hundredth that cups alone may be off.
			teaspoon, _ := UnitNamed("tsp", c)
			most := Larger(teaspoon.Factor.Over(Whole(8)), volume.Over(Whole(100)))
			if most.Less(sum.Minus(volume).Abs()) {
				t.Errorf("%s %s mL: %q is %v mL", c, size, text, sum.Float())
			}
		}
	}
}
