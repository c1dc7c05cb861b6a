package quantity

import (
	"strings"
	"unicode"
)

// An Accord says how well two tellings of one amount agree.
type Accord int

const (
	// Agree: each can be the other one, rounded as people round.
	Agree Accord = iota
	// Coarse: one is the other rounded, but so much that they differ by a weighable part.
	Coarse
	// Disagree: no rounding makes one of the other.
	Disagree
)

// How far two tellings may be apart. That a converted figure is rounded to match the
// precision of the one it was made of is NIST SP 1038, 4.4; the figures here are
// common practice, no source.
var (
	alwaysSame    = Ratio(2, 1000) // less than a kitchen scale shows
	coarselyApart = Ratio(6, 100)  // a cup told as 250 mL, an ounce as 30 g
	notRounding   = Ratio(1, 4)    // 0.1 oz is no way to tell 2 g
	oven          = Whole(120)     // °C from which on dials are marked in tens
)

// TwoSystems says whether two amounts tell one kind of thing in units that need a
// conversion: metric, pounds and inches, spoons and cups.
func TwoSystems(a, b Amount) bool {
	return alikeInKind(a.Dimension, b.Dimension) && a.Unit.Dimension != 0 && b.Unit.Dimension != 0 &&
		a.Unit.system() != b.Unit.system()
}

func alikeInKind(a, b Dimension) bool {
	switch a {
	case Mass, Volume, Length, Area, Temperature, TemperatureDifference:
		return a == b
	}
	return false
}

// system is a name for the family of a unit.
func (u Unit) system() string {
	switch {
	case u.Household:
		return "spoons"
	case u.metric(), u.Symbol == "K":
		return "metric"
	}
	return "customary"
}

// Told compares two tellings of one amount. They must be of one dimension. Both ends
// of a range are compared where both are told by two; one figure agrees with a range
// that it lies in.
func Told(a, b Amount) Accord {
	switch {
	case a.Across.Sign() > 0 && b.Across.Sign() > 0:
		return max(toldAt(a.side(), b.side(), a.Across, b.Across), toldAt(a.side(), b.side(), a.Along, b.Along))
	case a.Ranged && b.Ranged:
		return max(toldAt(a, b, a.Low, b.Low), toldAt(a, b, a.High, b.High))
	case a.Ranged:
		return toldAt(a, b, within(b.Nominal, a), b.Nominal)
	case b.Ranged:
		return toldAt(a, b, a.Nominal, within(a.Nominal, b))
	}
	return toldAt(a, b, a.Nominal, b.Nominal)
}

// side is a side of an area as an amount of its own, for its unit.
func (a Amount) side() Amount {
	side := a
	side.Dimension, side.Unit = Length, mustUnit(strings.TrimSuffix(a.Unit.Symbol, "²"))
	return side
}

// within is the number of a range nearest to n.
func within(n Number, a Amount) Number { return Larger(a.Low, Smaller(n, a.High)) }

// toldAt compares n, told in the unit of a, with m, told in that of b (base units).
func toldAt(a, b Amount, n, m Number) Accord {
	apart := n.Minus(m).Abs()
	if a.Dimension == Temperature || a.Dimension == TemperatureDifference {
		return degreesApart(a, b, n, m, apart)
	}
	larger := Larger(n.Abs(), m.Abs())
	switch {
	case apart.Cmp(larger.Times(alwaysSame)) <= 0:
		return Agree
	case Larger(a.slackAt(n), b.slackAt(m)).Less(apart), larger.Times(notRounding).Less(apart):
		return Disagree
	case a.Household || b.Household, apart.Cmp(larger.Times(coarselyApart)) <= 0:
		return Agree
	}
	return Coarse
}

// slackAt is how far n base units, told in the unit of the amount, may be from what
// they were rounded from.
func (a Amount) slackAt(n Number) Number {
	unit := a.lastUnit()
	if a.Dimension == Area || a.Dimension == Length {
		unit = a.Unit
	}
	step := a.lastStep()
	slack := step.Times(unit.Factor).Over(Whole(2))
	if figure := unit.FromBase(n); step.Equal(one) && endsRound(figure) && unit.metric() {
		round := Smaller(roundStep(figure).Times(unit.Factor).Over(Whole(2)), n.Abs().Times(coarselyApart))
		slack = Larger(slack, round)
	}
	return slack
}

// lastStep is the worth of the last digit told, in the smallest unit told: 0.1 for
// "2.5", 1/4 for "3 1/4" and for spoons.
func (a Amount) lastStep() Number {
	if a.Household {
		return Ratio(1, 4)
	}
	unit := a.lastUnit()
	figure := unit.FromBase(a.Nominal)
	if strings.ContainsAny(a.Written, "/⁄½⅓⅔¼¾⅛⅜⅝⅞") && !figure.IsWhole() {
		if parts := figure.asRat().Denom(); parts.IsInt64() {
			return one.Over(Whole(parts.Int64()))
		}
	}
	places, ends := figure.decimals()
	if !ends {
		places = 0
	}
	return powerOfTen(-max(places, a.writtenPlaces()))
}

// writtenPlaces is how many digits stand behind the point as written, zeros too.
func (a Amount) writtenPlaces() int {
	at := strings.LastIndexByte(a.Written, '.')
	if at < 0 {
		return 0
	}
	rest := a.Written[at+1:]
	end := strings.IndexFunc(rest, func(r rune) bool { return !unicode.IsDigit(r) })
	if end < 0 {
		end = len(rest)
	}
	return end
}

// endsRound says whether a figure ends with a 0 or a 5, so that it may be rounded.
func endsRound(figure Number) bool {
	return !figure.Abs().Less(Whole(5)) && figure.Over(Whole(5)).IsWhole()
}

func roundStep(figure Number) Number {
	if figure.Over(Whole(10)).IsWhole() {
		return Whole(10)
	}
	return Whole(5)
}

// degreesApart compares temperatures, or differences of them. Whole degrees are told
// to half a degree (NIST SP 1038, 4.4.1.3); figures that both end with 0 or 5 are
// rounded to fives, as 95 °C (200 °F) is, and from 120 °C on dials have tens.
func degreesApart(a, b Amount, n, m, apart Number) Accord {
	figures := [2]Number{a.Unit.FromBase(n), b.Unit.FromBase(m)}
	slack := Larger(a.halfDegree(figures[0]), b.halfDegree(figures[1]))
	if endsRound(figures[0]) && endsRound(figures[1]) || figures[0].IsZero() || figures[1].IsZero() {
		slack = Larger(slack, Whole(2))
		if a.Dimension == TemperatureDifference {
			slack = Ratio(3, 2)
		}
		if oven.Less(n) && a.Dimension == Temperature {
			slack = Whole(5)
		}
	}
	if slack.Less(apart) {
		return Disagree
	}
	return Agree
}

// halfDegree is half the last digit of a figure in °C, at least that of NIST SP 1038.
func (a Amount) halfDegree(figure Number) Number {
	places, _ := figure.decimals()
	half := powerOfTen(-places).Times(a.Unit.Factor).Over(Whole(2))
	if a.Unit.Symbol == "°C" {
		return Larger(half, Ratio(1, 4))
	}
	return half
}
