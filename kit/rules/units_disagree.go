package rules

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

var unitsDisagree = Rule{
	Name:     "units-disagree",
	Severity: diag.MustFix,
	Title:    "One amount is told in two units, and they are not the same",
	Explanation: `“600 g (1 lb 4 oz)”: half of the customers weigh one figure and half the other, and 1 lb
4 oz is 33 g less. Amounts in grams and ounces, millilitres and cups, centimetres and
inches, °C and °F that stand side by side are converted and compared, in links, in
running text, in cautions and in the notes of kit.yaml.

Rounding is no disagreement: a converted figure need be no finer than the one it was
made of (NIST SP 1038, 4.4), a cup may be 240 or 250 mL, whole degrees may end with 0 or
5. Where a figure is only right to its last digit, and still more than 6 % away from the
other (“500 g (1 lb)”), the finding should be fixed.

Convert again from the figure you measure by, or tell the amount once.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, p := range pairs(s.Kit) {
			if accord := p.accord(); accord != quantity.Agree {
				findings = append(findings, unequal(s.Kit, p, accord))
			}
		}
		return findings
	},
}

// accord compares the two tellings; those that tell a difference of temperature have
// a rule of their own.
func (p pair) accord() quantity.Accord {
	if p.isDifference() || p.first.Dimension != p.second.Dimension {
		return quantity.Agree
	}
	return quantity.Told(p.first, p.second)
}

func unequal(k *kit.Kit, p pair, accord quantity.Accord) diag.Finding {
	first, second := p.firstTold(), p.secondTold()
	n, m := p.apart()
	converted := asToldIn(p.first, p.second, k.Kitchen.Value)
	finding := diag.Finding{
		Where: p.secondAt, About: p.about,
		Found:    p.where + " tells “" + first + "” and “" + second + "”, which is " + asToldIn(p.second, p.first, k.Kitchen.Value),
		Expected: "one amount in both units: " + first + " (" + converted + ")",
		Sum:      []string{apartSum(p.first, n, m)},
		Remedies: diag.Fix(
			"write “"+converted+"” instead of “"+second+"”",
			"write “"+boundOf(p.first)+asToldIn(p.second, p.first, k.Kitchen.Value)+"” instead of “"+first+"”, if “"+second+"” is what you measure"),
		Also: []diag.Place{{Where: p.firstAt, Note: "told first here"}},
	}
	switch {
	case accord == quantity.Coarse:
		finding.Severity = diag.ShouldFix
		finding.Found += ": rounded too far"
	case p.isReadAsDifference():
		finding.Sum = append(finding.Sum, second+" is what a difference of "+first+" comes to; a reading on a thermometer begins at 32 °F")
	}
	return finding
}

// boundOf is the word that stands before an amount, "below ", or nothing.
func boundOf(a quantity.Amount) string {
	if bound := a.Bound.String(); bound != "" {
		return bound + " "
	}
	return ""
}

// apart gives the two figures in base units that differ most.
func (p pair) apart() (n, m quantity.Number) {
	if p.first.Ranged && p.second.Ranged {
		low, high := p.first.Low.Minus(p.second.Low).Abs(), p.first.High.Minus(p.second.High).Abs()
		if high.Less(low) {
			return p.first.Low, p.second.Low
		}
		return p.first.High, p.second.High
	}
	return p.first.Nominal, p.second.Nominal
}

// apartSum shows by how much two figures differ, in the unit of the first.
func apartSum(like quantity.Amount, n, m quantity.Number) string {
	d := like.Dimension
	if d == quantity.Temperature {
		return show(n, d) + " and " + show(m, d) + " are " + show(n.Minus(m).Abs(), quantity.TemperatureDifference) + " apart"
	}
	line := show(n, d) + " and " + show(m, d) + " are " + show(n.Minus(m).Abs(), d) + " apart"
	if n.Sign() > 0 {
		line += ", " + quantity.Show(n.Minus(m).Abs().Over(n), quantity.Share, quantity.Digits(2)) + " of " + show(n, d)
	}
	return line
}

// asToldIn tells an amount in the unit of another one, as a person would measure it.
func asToldIn(a, like quantity.Amount, c quantity.Convention) string {
	unit := like.Unit
	switch {
	case like.Household:
		return inSpoons(a, like, c)
	case unit.Symbol == "lb":
		return poundsAndOunces(a.Nominal)
	case like.Across.Sign() > 0 && a.Across.Sign() > 0:
		side, _ := quantity.UnitNamed(strings.TrimSuffix(unit.Symbol, "²"), c)
		return threeDigits(a.Across, quantity.Length, side, false) + " × " + threeDigits(a.Along, quantity.Length, side, true)
	case a.Ranged:
		return threeDigits(a.Low, a.Dimension, unit, false) + "–" + threeDigits(a.High, a.Dimension, unit, true)
	}
	return threeDigits(a.Nominal, a.Dimension, unit, true)
}

// threeDigits tells a figure in a unit, with or without the unit behind it. Degrees
// are told whole, or to a half of °C (NIST SP 1038, 4.4.1.3).
func threeDigits(n quantity.Number, d quantity.Dimension, unit quantity.Unit, withUnit bool) string {
	text := quantity.Show(n, d, quantity.In(unit), quantity.Digits(3))
	if d == quantity.Temperature {
		half := quantity.Ratio(1, 2)
		if unit.Symbol == "°F" {
			half = quantity.Whole(1)
		}
		nearest := rounded(unit.FromBase(n).Plus(half.Over(quantity.Whole(2))), half, false)
		text = nearest.String() + " " + unit.Symbol
	}
	if !withUnit {
		text = strings.TrimSuffix(text, " "+unit.Symbol)
	}
	return text
}

// inSpoons tells a volume in quarters of the spoon or cup of another amount where that
// is near enough, else in several of them.
func inSpoons(a, like quantity.Amount, c quantity.Convention) string {
	quarter := like.Unit.Factor.Over(quantity.Whole(4))
	nearest := rounded(a.Nominal.Plus(quarter.Over(quantity.Whole(2))), quarter, false)
	if off := nearest.Minus(a.Nominal).Abs(); nearest.Sign() > 0 && off.Cmp(a.Nominal.Times(aboutAllows)) <= 0 {
		count := nearest.Over(like.Unit.Factor)
		name := like.Unit.Symbol
		if name == like.Unit.Name && quantity.Whole(1).Less(count) {
			name = like.Unit.Plural
		}
		return number(count, true) + " " + name
	}
	if spoons, _, ok := quantity.Household(a.Nominal, c); ok {
		return spoons
	}
	return show(a.Nominal, a.Dimension)
}

// poundsAndOunces tells a mass to the nearest half ounce, below a pound in ounces.
func poundsAndOunces(mass quantity.Number) string {
	ounce, _ := quantity.UnitNamed("oz weight", quantity.USCustomary)
	half := quantity.Ratio(1, 2)
	ounces := rounded(ounce.FromBase(mass).Plus(quantity.Ratio(1, 4)), half, false)
	pounds := quantity.Whole(ounces.Over(quantity.Whole(16)).Int())
	rest := ounces.Minus(pounds.Times(quantity.Whole(16)))
	switch {
	case pounds.IsZero():
		return threeDigits(mass, quantity.Mass, ounce, true)
	case rest.IsZero():
		return pounds.String() + " lb"
	}
	return pounds.String() + " lb " + number(rest, true) + " oz"
}

// isReadAsDifference: “75 °C (135 °F)” was multiplied by 1.8, and 32 forgotten.
func (p pair) isReadAsDifference() bool {
	if p.first.Dimension != quantity.Temperature {
		return false
	}
	a, b := asDifference(p.first), asDifference(p.second)
	return quantity.Told(a, b) == quantity.Agree
}

// asDifference takes a reading for a difference of temperature.
func asDifference(a quantity.Amount) quantity.Amount {
	if a.Dimension == quantity.TemperatureDifference {
		return a
	}
	return a.AsDifference()
}

// unequalPlaces are the second tellings that this rule or the one on differences
// speaks of, so that no other rule does.
func unequalPlaces(k *kit.Kit) map[source.Span]bool {
	all := map[source.Span]bool{}
	for _, p := range pairs(k) {
		if p.accord() != quantity.Agree || p.isDifference() {
			all[p.secondAt] = true
		}
	}
	return all
}

// inTwoSystems says whether a figure told again within a link is the first one in
// another system of units, which is compared here.
func inTwoSystems(snag ledger.Snag) bool {
	phrase := snag.Operation.Phrase
	for i := 1; i < len(phrase.Amounts); i++ {
		if phrase.AmountSpans[i] == snag.Wanted.Where {
			return quantity.TwoSystems(phrase.Amounts[0], phrase.Amounts[i])
		}
	}
	return false
}
