package quantity

// amount reads a whole amount at token i: bound, figure and unit, the other end of
// a range, tolerance, base.
func (p *parser) amount(i int) (Amount, int, *Error) {
	start := i
	if _, next := p.find(i, byWord); next > 0 {
		return p.difference(i, next)
	}
	bound := Exactly
	if found, next := p.find(i, boundWord); next > 0 {
		bound, i = found.bound, p.overAbbreviation(next)
	}
	_, between := p.find(i, betweenWord)
	if between > 0 {
		i = between
	}
	m, next, err := p.measure(i)
	if err != nil {
		return Amount{}, next, err
	}
	a, next, err := p.continued(&m, next, bound, between > 0)
	if err != nil {
		return Amount{}, next, err
	}
	if between > 0 && !a.Ranged {
		return Amount{}, next, p.refuse(next, len(p.tokens), "the other end: between 30 and 40 g", "")
	}
	a.Written = p.written(start, next)
	return a, next, nil
}

// Limits of what an amount may be. 10¹² base units are a million tonnes, or 30,000
// years. Nothing is colder than 0 K (NIST SP 811, 8.5).
var (
	mostUnits = Whole(1e12)
	coldest   = Ratio(-27315, 100)
)

// thinkable refuses what no kit can hold, which is a slip of the pen.
func (p *parser) thinkable(a *Amount, start, next int) *Error {
	switch {
	case a.Dimension == Temperature && a.Low.Less(coldest):
		return p.refuse(start, next, "a temperature of −273.15 °C or more", "nothing can be colder; look for a slip of the pen")
	case a.Dimension == Area && (a.Across.Sign() < 0 || a.Along.Sign() < 0 || a.Nominal.IsZero() && a.Across.Sign()+a.Along.Sign() > 0):
		return p.refuse(start, next, "sides of more than nothing", "an area has two sides")
	case mostUnits.Less(a.High):
		return p.refuse(start, next, "a "+a.Dimension.String()+" that fits into a kit", "look for a figure or a unit too large")
	}
	return nil
}

// difference reads "by 5 °C".
func (p *parser) difference(i, next int) (Amount, int, *Error) {
	if _, again := p.find(next, byWord); again > 0 { // each further one would cost time
		return Amount{}, next, p.noFigure(next)
	}
	a, end, err := p.amount(next)
	if err != nil {
		return Amount{}, end, err
	}
	switch a.Dimension {
	case Temperature:
		a = a.AsDifference()
	case TemperatureDifference: // by 5 K
	default:
		return Amount{}, i, p.refuse(i, end, "an amount, or by and a difference of temperature", "leave “by” out")
	}
	if a.High.Less(a.Low) {
		return Amount{}, i, p.refuse(i, end, "a difference of nothing or more behind a limit", "say by how much, and that it gets colder in words")
	}
	a.Written = p.written(i, end)
	return a, end, nil
}

// continued reads on behind the first measure.
func (p *parser) continued(m *measure, next int, bound Bound, between bool) (Amount, int, *Error) {
	var a Amount
	var err *Error
	if second, after, ok := p.otherEnd(m, next, between); ok {
		a, err = p.ranged(m, &second, after)
		next = after
	} else if after := p.otherSide(m, next, &a); after > next {
		next = after
	} else if after := p.ratioTo(m, next, &a); after > next {
		next = after
	} else {
		a, next, err = p.withTolerance(m, next)
	}
	if err != nil {
		return Amount{}, next, err
	}
	if part := m.figure.inWords && !m.figure.value.IsWhole(); a.Dimension == Count && a.Noun == "" && (part || m.figure.article) {
		return Amount{}, next, p.refuse(next, len(p.tokens), "a unit, or the name of what is counted", "of what? A figure in words alone is not enough")
	}
	if a.Dimension == Count && a.Low.Sign() < 0 || a.Dimension == Area && a.Low.Sign() < 0 {
		return Amount{}, next, p.refuse(m.start, next, "an amount of nothing or more", "only a temperature can be below nothing")
	}
	if err := p.thinkable(&a, m.start, next); err != nil {
		return Amount{}, next, err
	}
	if found, after := p.find(next, trailingWord); after > 0 && bound == Exactly {
		bound, next = found.bound, after
	}
	if err := p.bound(&a, bound, m.start, next); err != nil {
		return Amount{}, next, err
	}
	return a, p.base(&a, next), nil
}

// amountOf makes an amount of one measure.
func amountOf(m *measure) Amount {
	return Amount{
		Dimension: m.dimension(), Nominal: m.value, Low: m.low, High: m.high,
		Unit: m.unit, parts: m.parts, Noun: m.noun, Fill: m.fill,
		Household:  m.unit.Household,
		PlainOunce: m.unit.isPlainOunce(),
	}
}

// otherEnd reads the second end of a range: "– 40 g", "to 40 g".
func (p *parser) otherEnd(m *measure, i int, between bool) (measure, int, bool) {
	at := i
	_, to := p.find(i, toWord)
	switch {
	case p.is(i, "–") || p.is(i, "-") || p.is(i, "−"):
		at = i + 1
	case to > 0:
		at = to
	case p.reader.Loose && p.orWord(i) > 0:
		at = p.orWord(i)
	case between:
		if _, at = p.find(i, andWord); at == 0 {
			return measure{}, i, false
		}
	default:
		return measure{}, i, false
	}
	second, next, err := p.measure(at)
	if err != nil || second.figure.article {
		return measure{}, i, false
	}
	if second.bare() && m.unit.Dimension == Money {
		second.in(m.unit) // £12–15
	}
	if second.bare() && !m.bare() {
		return measure{}, i, false
	}
	// "Add 5 g to 10 g of wax" moves the 5 g; "from 5 g to 10 g" is a range.
	if p.prose && to > 0 && !between && !m.bare() && m.unit.Dimension != Temperature && m.unit.Dimension != Duration {
		return measure{}, i, false
	}
	return second, next, true
}

// orWord is the place behind "or", 0 where there is none.
func (p *parser) orWord(i int) int {
	_, next := p.find(i, orWord)
	return next
}

// ranged makes an amount of two ends.
func (p *parser) ranged(m, second *measure, next int) (Amount, *Error) {
	if m.bare() && !second.bare() {
		m.noun = second.noun
		if second.unit.Dimension != 0 {
			m.in(second.unit)
			if err := p.notNegative(m, next); err != nil {
				return Amount{}, err
			}
		}
	}
	same := m.dimension() == second.dimension() && m.noun == second.noun &&
		(m.dimension() != Money || m.unit.Symbol == second.unit.Symbol)
	if !same {
		return Amount{}, p.refuse(m.start, next, "two ends of one kind", "both ends of a range need the same kind of unit")
	}
	if m.unit.Household != second.unit.Household || m.unit.Low.Cmp(second.unit.Low) != 0 || !m.unit.Low.IsZero() && m.unit.Symbol != second.unit.Symbol {
		return Amount{}, p.refuse(m.start, next, "two ends in one unit", "tell both ends in "+m.unit.Plural+" or both without")
	}
	if !m.value.Less(second.value) {
		return Amount{}, p.refuse(m.start, next, "the lesser figure first", "turn the range round, or write one figure")
	}
	a := amountOf(m)
	a.Ranged = true
	a.Low, a.High = m.low, second.high
	a.Nominal = m.value.Plus(second.value).Over(Whole(2))
	if a.Fill == "" {
		a.Fill = second.fill
	}
	if a.parts == [2]int16{} && second.unit == a.Unit {
		a.parts = second.parts
	}
	return a, nil
}

// otherSide reads the second side of "30 × 20 cm", which makes an area.
func (p *parser) otherSide(m *measure, i int, a *Amount) int {
	_, at := p.find(i, timesWord)
	if at == 0 || !m.bare() && m.unit.Dimension != Length || m.figure.article {
		return i
	}
	second, next, err := p.measure(at)
	if err != nil || second.unit.Dimension != Length || second.figure.article {
		return i
	}
	if m.bare() {
		m.in(second.unit)
	}
	area, ok := squareOf(m.unit, p.reader.Convention)
	if !ok {
		return i
	}
	across, along := m.value, second.value
	var slack Number
	if tolerance, after, err := p.tolerance(next, Length, second.unit, along); err == nil && after > next &&
		!across.Less(tolerance) && !along.Less(tolerance) {
		slack, next = tolerance, after
	}
	*a = Amount{
		Dimension: Area, Unit: area, Across: across, Along: along,
		Nominal: across.Times(along),
		Low:     across.Minus(slack).Times(along.Minus(slack)),
		High:    across.Plus(slack).Times(along.Plus(slack)),
		Slack:   slack,
	}
	return next
}

// squareOf is the unit of area whose side is a unit of length.
func squareOf(side Unit, c Convention) (Unit, bool) {
	row := rowOf(side.Symbol + "²")
	if row < 0 {
		return Unit{}, false
	}
	return unitAt(row, c)
}

// ratioTo reads the ": 100" of "70 : 100".
func (p *parser) ratioTo(m *measure, i int, a *Amount) int {
	if !m.bare() || !p.is(i, ":") || m.figure.value.Sign() < 0 || m.figure.article {
		return i
	}
	to, next := p.figure(i + 1)
	if next == i+1 || to.value.Sign() <= 0 || to.article || to.value.significantDigits() > MaxDigits {
		return i
	}
	m.in(ratioUnit(to.value))
	*a = amountOf(m)
	return next
}

// ratioUnit is what the first figure of a ratio counts: one in so many.
func ratioUnit(to Number) Unit {
	return Unit{
		Name: "to " + to.String(), Plural: "to " + to.String(), Symbol: ": " + to.String(),
		Dimension: Proportion, Factor: one.Over(to),
	}
}

// withTolerance makes an amount of one measure and the "± 1 g" behind it.
func (p *parser) withTolerance(m *measure, i int) (Amount, int, *Error) {
	at, found := p.overPlusMinus(i)
	if !found {
		return amountOf(m), i, nil
	}
	unit := m.unit
	if m.bare() {
		second, next, err := p.measure(at)
		if err != nil {
			return Amount{}, next, err
		}
		if second.unit.Dimension != 0 {
			m.in(second.unit)
			unit = second.unit
		}
		m.noun = second.noun
	}
	tolerance, next, err := p.tolerance(i, m.dimension(), unit, m.value)
	if err != nil {
		return Amount{}, next, err
	}
	a := amountOf(m)
	a.Low, a.High = m.value.Minus(tolerance), m.value.Plus(tolerance)
	if m.unit.Low.Sign() > 0 { // both the count of drops and the drop may be off
		a.Low = m.unit.FromBase(a.Low).Times(m.unit.Low)
		a.High = m.unit.FromBase(a.High).Times(m.unit.High)
	}
	if a.Low.Sign() < 0 && a.Dimension != Temperature {
		hint := "the tolerance is more than the amount; tell the two ends instead"
		if a.Dimension == Share {
			hint = "behind a percentage, ± counts in percentage points; tell the two ends instead, such as 1.8–2.2 %"
		}
		return Amount{}, next, p.refuse(i, next, "a tolerance no larger than the amount", hint)
	}
	return a, next, nil
}

// overPlusMinus passes "±", "+/-" or "plus or minus".
func (p *parser) overPlusMinus(i int) (next int, found bool) {
	if _, next := p.find(i, plusMinus); next > 0 {
		return next, true
	}
	if !p.is(i, "+") {
		return i, false
	}
	next = i + 1
	if p.is(next, "/") && p.joined(next) {
		next++
	}
	if (p.is(next, "-") || p.is(next, "−")) && p.joined(next) {
		return next + 1, true
	}
	return i, false
}

// tolerance reads "± 10 g" or "± 2 %" of the nominal figure, in base units.
func (p *parser) tolerance(i int, dimension Dimension, unit Unit, nominal Number) (Number, int, *Error) {
	at, found := p.overPlusMinus(i)
	if !found {
		return Number{}, i, nil
	}
	m, next, err := p.measure(at)
	if err != nil {
		return Number{}, next, err
	}
	if m.bare() && unit.Dimension != 0 {
		m.unit = unit
	}
	percent := m.dimension() == Share && dimension != Share
	switch {
	case m.figure.value.Sign() < 0:
		return Number{}, next, p.refuse(at, next, "a tolerance of nothing or more", "")
	case percent && dimension == Temperature:
		return Number{}, next, p.refuse(at, next, "a tolerance in degrees", "a percentage of a temperature means nothing; write ± 5 °C")
	case percent:
		return nominal.Abs().Times(m.value), next, nil
	case m.dimension() == dimension, dimension == Temperature && m.dimension() == TemperatureDifference,
		dimension == TemperatureDifference && m.dimension() == Temperature:
		if m.unit.Dimension == 0 {
			return m.figure.value, next, nil
		}
		if m.parts != [2]int16{} {
			return m.value, next, nil
		}
		return m.figure.value.Times(m.unit.Factor), next, nil
	}
	return Number{}, next, p.refuse(at, next, "a tolerance that is a "+dimension.String()+" or a percentage", "")
}

// bound puts a bound on the amount read so far.
func (p *parser) bound(a *Amount, bound Bound, start, next int) *Error {
	if bound == Exactly || bound == About {
		a.Bound = bound
		return nil
	}
	toleranced := a.toleranceFigure().Sign() > 0 || a.Slack.Sign() > 0
	a.Bound = bound
	switch {
	case a.Ranged || toleranced:
		return p.refuse(start, next, "one figure behind “"+bound.String()+"”", "a limit has no second end and no tolerance; keep the limit or the range")
	case bound == AtLeast || bound == Above:
		a.High = a.Nominal
	case a.Dimension == Temperature:
		a.Low = a.Nominal
	default:
		a.Low = Number{}
	}
	return nil
}
