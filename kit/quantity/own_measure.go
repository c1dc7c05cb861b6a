package quantity

import "strings"

// ownMeasure reads the name of one of the kit's own measures, of up to three words.
func (p *parser) ownMeasure(i int) (Unit, int, bool) {
	if len(p.reader.Measures) == 0 || !p.kind(i, wordToken) {
		return Unit{}, i, false
	}
	name := ""
	var found Unit
	next := i
	for words := 0; words < 3 && p.kind(i+words, wordToken); words++ {
		if words > 0 {
			name += " "
		}
		name += p.tokens[i+words].low
		for _, single := range singulars(name) {
			if measure, ok := p.reader.Measures[single]; ok && measure.Nominal.Sign() > 0 {
				found, next = measureUnit(single, measure), i+words+1
				break
			}
		}
	}
	return found, next, next > i
}

// singulars gives what the name of one may be, given the name of one or several.
func singulars(name string) []string {
	all := []string{name}
	for _, ending := range []string{"s", "es"} {
		if single, ok := strings.CutSuffix(name, ending); ok {
			all = append(all, single)
		}
	}
	return all
}

// measureUnit makes a unit of an own measure: "drop: 0.05 mL ± 0.01 mL".
func measureUnit(name string, size Amount) Unit {
	unit := Unit{
		Name: name, Plural: plural(name), Symbol: name,
		Dimension: size.Dimension, Factor: size.Nominal, Household: true,
	}
	if size.HasTolerance() {
		unit.Low, unit.High = size.Low, size.High
	}
	return unit
}

func plural(name string) string {
	for _, ending := range []string{"s", "x", "ch", "sh"} {
		if strings.HasSuffix(name, ending) {
			return name + "es"
		}
	}
	return name + "s"
}
