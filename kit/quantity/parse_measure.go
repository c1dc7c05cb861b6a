package quantity

// A measure is a figure with its unit or noun: what stands on either side of the
// dash of a range.
type measure struct {
	figure figure
	// value, low and high are in base units; low and high differ for an own measure
	// that has a tolerance.
	value, low, high Number
	unit             Unit
	// parts are the rows of the units that follow the first in "2 lb 3 oz".
	parts [2]int16
	noun  string
	fill  string
	start int // token
}

// bare: only a figure, which may take the unit that follows later.
func (m *measure) bare() bool { return m.unit.Dimension == 0 && m.noun == "" }

func (m *measure) dimension() Dimension {
	if m.unit.Dimension == 0 {
		return Count
	}
	return m.unit.Dimension
}

// in gives a bare figure its unit.
func (m *measure) in(u Unit) {
	m.unit = u
	m.value = u.ToBase(m.figure.value)
	m.low, m.high = u.ends(m.figure.value)
}

// measure reads a figure and what it counts or measures.
func (p *parser) measure(i int) (measure, int, *Error) {
	m := measure{start: i}
	if next := p.moneyBefore(i, &m); next > i {
		return m, next, p.notNegative(&m, next)
	}
	f, next := p.figure(i)
	if next == i {
		if fill, after := p.find(i, fillWord); after > 0 && !p.prose {
			return p.filled(i, after, fill.fill)
		}
		return m, i, p.noFigure(i)
	}
	m.figure = f
	m.value, m.low, m.high = f.value, f.value, f.value
	next, err := p.unitOrNoun(next, &m)
	if err != nil {
		return m, next, err
	}
	return m, next, p.notNegative(&m, next)
}

// filled reads "level teaspoon", which means one.
func (p *parser) filled(i, next int, fill string) (measure, int, *Error) {
	unit, after, ok := p.unit(next)
	if !ok {
		return measure{}, i, p.noFigure(i)
	}
	m := measure{start: i, figure: figure{value: one, article: true}, fill: fill}
	m.in(unit)
	return m, after, nil
}

// moneyBefore reads "£12.50", where the unit stands before the figure.
func (p *parser) moneyBefore(i int, m *measure) int {
	if !p.kind(i, signToken) && !p.kind(i, wordToken) {
		return i
	}
	unit, next, ok := p.tableUnit(i)
	if !ok || unit.Dimension != Money || !p.kind(next, numberToken) {
		return i
	}
	m.figure, next = p.figure(next)
	m.in(unit)
	return next
}

// unitOrNoun reads what stands behind the figure. A figure may stay bare.
func (p *parser) unitOrNoun(i int, m *measure) (int, *Error) {
	linked := m.figure.linked
	if linked > 0 { // before the rest: "d'heure" does not begin with a day
		if next, ok := p.unitBehind(linked, m); ok {
			return next, nil
		}
	}
	if next, ok := p.unitBehind(i, m); ok {
		return next, nil
	}
	i = max(i, linked)
	noun, next, err := p.noun(i, m)
	m.noun = noun
	return next, err
}

// unitBehind reads "more heaped teaspoons", with what may follow a unit.
func (p *parser) unitBehind(i int, m *measure) (int, bool) {
	if _, next := p.find(i, fillerWord); next > 0 {
		i = next
	}
	if fill, next := p.find(i, fillWord); next > 0 {
		m.fill = fill.fill
		i = next
	}
	if p.is(i, "-") && p.joined(i) && p.joined(i+1) {
		i++ // 5-minute, 250-mL
	}
	unit, next, ok := p.unit(i)
	if !ok || p.prose && p.onlyAWord(i, next, unit, m) {
		m.fill = ""
		return i, false
	}
	m.in(unit)
	if fill, after := p.find(next, fillWord); after > 0 && m.fill == "" && unit.Household {
		m.fill, next = fill.fill, after
	}
	if more, after := p.find(next, moreWord); after > 0 && m.figure.value.IsWhole() {
		m.figure.value = m.figure.value.Plus(more.number) // an hour and a half
		m.in(unit)
		next = after
	}
	if per, after, ok := p.perUnit(next, unit); ok {
		m.in(per)
		return after, true
	}
	return p.parts(next, m), true
}

// unit reads a unit: first of the kit's own measures, then of the table.
func (p *parser) unit(i int) (Unit, int, bool) {
	if unit, next, ok := p.ownMeasure(i); ok {
		return unit, next, true
	}
	return p.tableUnit(i)
}

// tableUnit reads a unit of the table.
func (p *parser) tableUnit(i int) (Unit, int, bool) {
	found, next := p.find(i, unitWord)
	if found == nil {
		return Unit{}, i, false
	}
	unit, ok := unitAt(found.row, p.reader.Convention)
	if !ok {
		return Unit{}, i, false
	}
	return unit, p.overAbbreviation(next), true
}

// overAbbreviation passes the point of "oz." where it cannot end a sentence.
func (p *parser) overAbbreviation(i int) int {
	if !p.is(i, ".") || !p.joined(i) || p.tokens[i-1].kind != wordToken {
		return i
	}
	if !p.prose || i+1 < len(p.tokens) && p.tokens[i+1].kind != wordToken && p.tokens[i+1].kind != signToken {
		return i + 1
	}
	if _, to := p.find(i+1, toWord); p.reader.Loose && to > 0 {
		return i + 1 // 80° C. to 90° C.
	}
	return i
}

// perUnit reads "/mL", "per g", "per 100 g" behind a unit.
func (p *parser) perUnit(i int, unit Unit) (Unit, int, bool) {
	slash := p.is(i, "/")
	if slash {
		i++
	} else if _, next := p.find(i, perWord); next > 0 {
		i = next
	} else {
		return Unit{}, i, false
	}
	each := one
	if p.kind(i, numberToken) {
		each = p.tokens[i].number
		i++
		// "570 g / 20 oz" tells one amount twice and is no ratio.
		if slash && !each.Equal(Whole(100)) && !each.Equal(Whole(10)) && !each.Equal(Whole(1000)) {
			return Unit{}, i, false
		}
	}
	other, next, ok := p.unit(i)
	if !ok || unit.isPlainOunce() || other.isPlainOunce() {
		return Unit{}, i, false
	}
	per, ok := unit.per(each, other)
	return per, next, ok
}

// parts reads the smaller units that follow: "2 lb 3 oz", "1 h 20 min 30 s", "2 cups
// and 1 tbsp". Each is smaller than the one before and of its chain, and only the
// last may have a fraction.
func (p *parser) parts(i int, m *measure) int {
	last := m.unit
	figure := m.figure.value
	for part := range m.parts {
		if last.row == 0 || table[last.row-1].chain == alone || !figure.IsWhole() || figure.Sign() < 0 {
			return i
		}
		next, value, unit := p.part(i, last)
		if next == i {
			return i
		}
		m.value = m.value.Plus(unit.ToBase(value))
		m.low, m.high = m.value, m.value
		m.parts[part] = unit.row
		last, figure, i = unit, value, next
	}
	return i
}

func (p *parser) part(i int, last Unit) (next int, value Number, unit Unit) {
	at := i
	if p.is(at, "+") {
		at++
	} else if _, after := p.find(at, andWord); after > 0 {
		at = after
	}
	f, behind := p.figure(at)
	if behind == at || f.article || f.value.Sign() < 0 {
		return i, Number{}, Unit{}
	}
	unit, next, ok := p.tableUnit(behind)
	if !ok {
		return p.minutesBehindHours(i, at, behind, last, f.value)
	}
	chain := table[last.row-1].chain
	if chain == poundsAndOunces && unit.isPlainOunce() {
		unit, _ = unitAt(weightOunce, p.reader.Convention) // behind pounds it can only be a weight
	}
	if table[unit.row-1].chain != chain || !unit.Factor.Less(last.Factor) {
		return i, Number{}, Unit{}
	}
	return next, f.value, unit
}

var weightOunce = rowOf("oz weight")

// minutesBehindHours reads the minutes of "1h20" and of the French "1 h 20".
func (p *parser) minutesBehindHours(i, at, behind int, last Unit, value Number) (int, Number, Unit) {
	close := p.joined(at) || baseOf(p.reader.Language) == french.tag
	if last.row-1 != hourRow || at != i || !close || !value.IsWhole() || !value.Less(Whole(60)) || behind != at+1 {
		return i, Number{}, Unit{}
	}
	minute, _ := unitAt(minuteRow, p.reader.Convention)
	return behind, value, minute
}

var hourRow, minuteRow = int16(rowOf("h")), rowOf("min")

// notNegative refuses less than nothing.
func (p *parser) notNegative(m *measure, next int) *Error {
	if m.figure.value.Sign() >= 0 || m.dimension() == Temperature || m.bare() {
		return nil
	}
	return p.refuse(m.start, next, "a "+m.dimension().String()+" of nothing or more", "only a temperature can be below nothing")
}
