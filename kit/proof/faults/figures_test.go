package faults_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// A figure is a number that a finding must show, in g, mL, m, minutes, °C, % or,
// without a unit, pieces.
type figure struct {
	number float64
	unit   string
}

// units gives the base unit and how many of it one is. Spoons and cups are US
// customary: NIST Handbook 44, Appendix C, 1 US gallon = 231 cubic inches.
var units = map[string]figure{
	"g": {1, "g"}, "mg": {0.001, "g"}, "kg": {1000, "g"}, "mL": {1, "mL"}, "L": {1000, "mL"},
	"m": {1, "m"}, "cm": {0.01, "m"}, "mm": {0.001, "m"}, "°C": {1, "°C"}, "%": {1, "%"}, "": {1, ""},
	"min": {1, "min"}, "minutes": {1, "min"}, "h": {60, "min"}, "hour": {60, "min"}, "hours": {60, "min"},
	"d": {1440, "min"}, "day": {1440, "min"}, "days": {1440, "min"},
	"teaspoons": {4.92892159375, "mL"}, "tablespoons": {14.78676478125, "mL"},
	"g/mL": {1, "g/mL"},
}

const (
	gramsPerOunce = 28.349523125  // NIST Handbook 44, Appendix C
	mLPerFluid    = 29.5735295625 // the same
	unitPattern   = `(?:g/mL|kg|mg|g|mL|L|mm|cm|minutes|min|m|°C|%|hours|hour|h|days|day|d|teaspoons|tablespoons)`
)

var (
	amountPattern = regexp.MustCompile(`(\d[\d,]*(?:\.\d+)?)(?:\s*–\s*(\d+(?:\.\d+)?))?(?:\s*(` + unitPattern + `)(?:[^\w/]|$))?`)
	timePattern   = regexp.MustCompile(`(?:(\d+) d(?:ays?)? ?)?(?:(\d+) h ?)?(?:(\d+) min)?`)
)

var numberWords = map[string]float64{
	"one": 1, "a": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
}

// reads gives the first amount of a text in its base unit; a range is its middle.
func reads(text string) (figure, bool) {
	at := amountPattern.FindStringSubmatch(text)
	if at == nil {
		for _, word := range strings.Fields(strings.ToLower(text)) {
			if n, ok := numberWords[word]; ok && word != "a" {
				return figure{n, ""}, true
			}
		}
		return figure{}, false
	}
	n := number(at[1])
	if at[2] != "" {
		n = (n + number(at[2])) / 2
	}
	unit := at[3]
	if strings.Contains(text, "level "+"teaspoons") || strings.Contains(text, "level "+"tablespoons") {
		unit = regexp.MustCompile(`level (\w+)`).FindStringSubmatch(text)[1]
	}
	base := units[unit]
	return figure{n * base.number, base.unit}, true
}

func number(text string) float64 {
	n, err := strconv.ParseFloat(strings.ReplaceAll(text, ",", ""), 64)
	if err != nil {
		panic("no number: " + text)
	}
	return n
}

// isShown says whether one of the texts shows the figure, right to its last digit.
func (f figure) isShown(texts []string) bool {
	for _, text := range texts {
		if f.unit == "min" && f.isTimeIn(text) {
			return true
		}
		for _, at := range amountPattern.FindAllStringSubmatch(text+" ", -1) {
			base := units[at[3]]
			last := math.Pow(10, -float64(len(at[1])-1-strings.IndexByte(at[1]+".", '.')))
			if !strings.Contains(at[1], ".") {
				last = 1
			}
			if base.unit == f.unit && math.Abs(number(at[1])*base.number-f.number) <= 0.5001*last*base.number {
				return true
			}
		}
	}
	return false
}

// isTimeIn reads times of several units: “3 d 6 h 15 min”.
func (f figure) isTimeIn(text string) bool {
	for _, at := range timePattern.FindAllStringSubmatch(text, -1) {
		minutes := 0.0
		for i, unit := range []string{"d", "h", "min"} {
			if at[i+1] != "" {
				minutes += number(at[i+1]) * units[unit].number
			}
		}
		if at[0] != "" && minutes == f.number {
			return true
		}
	}
	return false
}

// write tells a figure in a unit of its kind, with so many digits behind the point.
func (f figure) write(unit string, digits int) string {
	text := strconv.FormatFloat(f.number/units[unit].number, 'f', digits, 64)
	return strings.TrimSpace(text + " " + unit)
}
