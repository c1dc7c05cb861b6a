package quantity

import "strings"

// String tells the amount again in English with a decimal point: "20 g ± 1 g". Read
// by Amount it gives the same amount, with a Reader of the same convention and
// measures.
func (a Amount) String() string { return teller{english, false}.amount(a) }

// In tells the amount in a language ("fr"), with its words for spoons, bounds and
// days and its decimal sign. Nouns and bases stay as they were written. Only English,
// German and Dutch say "by" before a difference of temperature; elsewhere the
// sentence around it has to.
func (a Amount) In(tag string) string {
	return teller{languageFor(tag), DecimalCommaIn(tag)}.amount(a)
}

// A teller tells amounts in one language.
type teller struct {
	language *language
	comma    bool
}

func (t teller) amount(a Amount) string {
	text := t.core(a)
	if bound := t.bound(a.Bound); bound != "" {
		text = bound + " " + text
	}
	if words := t.language.words[byWord]; a.Dimension == TemperatureDifference && len(words) > 0 {
		text = words[0] + " " + text
	}
	if a.Of != "" {
		text += " " + t.language.words[ofWord][0] + " " + a.Of
	}
	return text
}

func (t teller) bound(bound Bound) string {
	if phrases := t.language.bounds[bound]; len(phrases) > 0 {
		return phrases[0]
	}
	return ""
}

// core tells the figures and the unit.
func (t teller) core(a Amount) string {
	switch {
	case a.Across.Sign() > 0:
		return t.sides(a)
	case a.Ranged && a.parts != [2]int16{}:
		return t.mixed(a, a.Low, false) + " – " + t.mixed(a, a.High, true)
	case a.Ranged:
		return t.withUnit(a, t.joined(a.lowFigure(), a.highFigure(), a.Unit), a.highFigure())
	}
	spread := a.toleranceFigure()
	switch {
	case spread.IsZero():
		return t.mixed(a, a.Nominal, false)
	case a.Unit.Dimension == 0:
		return t.withUnit(a, t.figure(a.Nominal, a.Unit)+" ± "+t.figure(spread, a.Unit), a.Nominal)
	}
	fine := a.lastUnit()
	spread = spread.Times(a.Unit.Factor).Over(fine.Factor)
	plain := Amount{Unit: fine}
	return t.mixed(a, a.Nominal, false) + " ± " + t.withUnit(plain, t.figure(spread, fine), spread)
}

// joined tells the two ends of a range in one unit.
func (t teller) joined(low, high Number, u Unit) string {
	between := "–"
	if low.Sign() < 0 {
		between = " " + t.language.words[toWord][0] + " "
	}
	return t.figure(low, u) + between + t.figure(high, u)
}

func (t teller) sides(a Amount) string {
	side := mustUnit(strings.TrimSuffix(a.Unit.Symbol, "²"))
	text := t.figure(side.FromBase(a.Across), side) + " × " + t.figure(side.FromBase(a.Along), side) + " " + side.Symbol
	if a.Slack.Sign() > 0 {
		text += " ± " + t.figure(side.FromBase(a.Slack), side) + " " + side.Symbol
	}
	return text
}

// mixed tells n base units in the units as written, "2 lb 3 oz". Parts of nothing
// are left out where short is wished.
func (t teller) mixed(a Amount, n Number, short bool) string {
	if a.parts[0] == 0 {
		return t.withUnit(a, t.figure(a.in(n), a.Unit), a.in(n))
	}
	units := a.units()
	var told []string
	for i, unit := range units {
		count := unit.FromBase(n)
		if i < len(units)-1 {
			count = Whole(count.Int())
		}
		n = n.Minus(unit.ToBase(count))
		if i == 0 || !count.IsZero() || !short {
			told = append(told, t.withUnit(Amount{Unit: unit}, t.figure(count, unit), count))
		}
	}
	return strings.Join(told, " ")
}

// units are the units of "2 lb 3 oz", the ounces of which need no "weight" behind them.
func (a Amount) units() []Unit {
	units := []Unit{a.Unit}
	for _, row := range a.parts {
		if row > 0 {
			unit := table[row-1].Unit
			if each := table[row-1].each; each != nil {
				unit.Factor = a.Unit.Factor.Times(each[USCustomary]).Over(table[a.Unit.row-1].each[USCustomary])
			}
			unit.Symbol = strings.TrimSuffix(unit.Symbol, " weight")
			unit.row = row
			units = append(units, unit)
		}
	}
	return units
}

func (a Amount) lastUnit() Unit {
	units := a.units()
	return units[len(units)-1]
}

// withUnit puts fill and unit or noun to the told figures; count says whether the
// unit is told of one or of several.
func (t teller) withUnit(a Amount, figures string, count Number) string {
	u := a.Unit
	switch {
	case u.Dimension == 0 && a.Noun == "":
		return figures
	case u.Dimension == 0:
		return figures + " " + a.Noun
	case u.isMoneySign():
		return u.Symbol + figures
	}
	name := t.language.unitName(u, t.language.several(count))
	fill := t.language.fills[a.Fill]
	switch {
	case len(fill) == 0:
		return figures + " " + name
	case t.language.fillBehind:
		return figures + " " + name + " " + fill[0]
	}
	return figures + " " + fill[0] + " " + name
}

func (u Unit) isMoneySign() bool {
	return u.Dimension == Money && strings.Contains("£€$¥", u.Symbol)
}

// several says whether a count takes the plural.
func (l *language) several(count Number) bool {
	if l.singularBelowTwo {
		return !count.Abs().Less(Whole(2))
	}
	return one.Less(count.Abs())
}

// unitName is how a unit is printed behind a figure: its symbol, or the word for it
// where it has none that is understood everywhere.
func (l *language) unitName(u Unit, several bool) string {
	if names := l.units[u.Symbol]; len(names) > 1 && (u.Household || u.Symbol == u.Name) {
		if several {
			return strings.TrimPrefix(names[1], "=")
		}
		return strings.TrimPrefix(names[0], "=")
	}
	if several && u.Symbol == u.Name {
		return u.Plural
	}
	return u.Symbol
}

// figure tells a number exactly: "1½" where fractions are usual, "1.5" where decimals
// are, "1 1/7" where no decimal ends.
func (t teller) figure(n Number, u Unit) string {
	sign := ""
	if n.Sign() < 0 {
		sign, n = "−", n.Abs()
	}
	whole := n.round(0, down)
	rest := n.Minus(whole)
	switch character := vulgarText(rest); {
	case rest.IsZero():
		return sign + n.String()
	case character != "" && u.inFractions() && whole.IsZero():
		return sign + character
	case character != "" && u.inFractions():
		return sign + whole.String() + character
	case n.significantDigits() <= MaxDigits && u.Dimension == Money:
		return sign + t.cents(n)
	case n.significantDigits() <= MaxDigits:
		return sign + t.decimal(n.String())
	case whole.IsZero():
		return sign + rest.String()
	}
	return sign + whole.String() + " " + fractionText(rest)
}

// fractionText is n as a fraction, whether its decimals end or not.
func fractionText(n Number) string {
	r := n.asRat()
	return r.Num().String() + "/" + r.Denom().String()
}

func (t teller) cents(n Number) string {
	text := n.String()
	if n.Times(Whole(10)).IsWhole() {
		text += "0"
	}
	return t.decimal(text)
}

func (t teller) decimal(text string) string {
	if t.comma {
		return strings.Replace(text, ".", ",", 1)
	}
	return text
}

// inFractions: halves and quarters of spoons, inches, pounds and things; never of
// metric units (NIST SP 1038, section 5).
func (u Unit) inFractions() bool {
	if u.row == 0 {
		return u.Household || u.Dimension == 0
	}
	switch table[u.row-1].chain {
	case kitchen, poundsAndOunces, yardsAndInches:
		return true
	}
	return u.Household
}

// toleranceFigure is what stands behind ±, in the unit as written; 0 when nothing
// does. The spread of one of the kit's own measures is not told.
func (a Amount) toleranceFigure() Number {
	if a.limit() || a.Ranged || a.Bound == UpTo {
		return Number{}
	}
	return a.highFigure().Minus(a.Figure())
}

// lowFigure and highFigure are the ends in the unit as written.

func (a Amount) lowFigure() Number {
	if !a.Unit.Low.IsZero() {
		return a.Low.Over(a.Unit.Low)
	}
	return a.in(a.Low)
}

func (a Amount) highFigure() Number {
	if !a.Unit.High.IsZero() {
		return a.High.Over(a.Unit.High)
	}
	return a.in(a.High)
}
