package quantity

import (
	"strings"
	"unicode/utf8"
)

// ambiguous abbreviations mean different things to different people; each has its
// reason told.
var ambiguous = map[string]string{
	"T":  "T is a tablespoon to some and a tonne or teaspoon to others; write tbsp, tsp or kg",
	"t":  "t is a teaspoon to some and a tonne to others; write tsp or kg",
	"c":  "c is a cup to some and short for circa or Celsius to others; write cup, about or °C",
	"C":  "C is a cup to some and a temperature to others; write cup or °C",
	"F":  "write °F for a temperature",
	"M":  "M is not a metre but a million; write m",
	"gr": "gr is a grain to some and a gram to others; write g, or grain in full",
	"Gr": "Gr is a grain to some and a gram to others; write g, or grain in full",
	"dr": aDram, "drs": aDram,
}

const aDram = "a dram is a weight or a volume; write g, mL, dram avoirdupois, drachm apothecaries or fluid dram"

// ambiguousWords are the same in any case.
var ambiguousWords = map[string]string{
	"dram": aDram, "drams": aDram, "drachm": aDram, "drachms": aDram,
	"ton":    "there are three tons; write kg",
	"tons":   "there are three tons; write kg",
	"degree": "write °C or °F", "degrees": "write °C or °F", "deg": "write °C or °F",
	"spoon": "say which spoon: tsp or tbsp", "spoons": "say which spoon: tsp or tbsp",
	"spoonful": "say which spoon: tsp or tbsp", "spoonfuls": "say which spoon: tsp or tbsp",
	"inf": "write a figure that can be measured", "infinity": "write a figure that can be measured",
}

// vague measures are whatever the hand makes of them; a kit may give them a size.
var vague = wordSet("pinch pinches dash dashes drop drops splash splashes handful handfuls glug glugs knob knobs " +
	"sprinkle smidgen dollop dollops scoop scoops spray sprays squirt squirts blob blobs " +
	"wineglassful wineglassfuls wineglassesful glassful glassfuls tumblerful tumblerfuls teacup teacups teacupful teacupfuls " +
	"pailful pailfuls ladleful ladlefuls thimbleful thimblefuls pennyworth pennyworths")

// vagueWords are no measure at all.
var vagueWords = wordSet("plenty little some few several lots bit good generous")

const noMeasure = "nobody can measure that; write g, mL or spoons"

const anyUnit = "a unit such as g, mL, cm, min or °C, or the name of what is counted"

// unitProblem says what is wrong with the word behind a figure, nil if it may name
// something that is counted.
func (p *parser) unitProblem(i int) *Error {
	t := p.tokens[i]
	if t.kind != wordToken {
		return nil
	}
	word := p.text[t.start:t.end]
	hint, known := p.measureHint(i)
	switch {
	case known:
	case vagueWords[t.low]:
		hint = noMeasure
	case !looksLikeWord(t.low):
		if hint = didYouMean(word, 2); hint == "" {
			hint = didYouMeanWord(t.low)
		}
	default:
		if hint = didYouMeanWord(t.low); hint == "" {
			return nil
		}
	}
	return p.refuse(i, i+1, anyUnit, hint)
}

// vagueOne is the name of one of a vague measure: "drop" for "drops".
func vagueOne(low string) string {
	name := low
	for _, single := range singulars(low) {
		if vague[single] {
			name = single
		}
	}
	return name
}

// didYouMean names the nearest symbol, "" where none is near.
func didYouMean(word string, furthest int) string {
	nearest := ""
	for i := range table {
		for _, spelling := range append([]string{table[i].Symbol}, table[i].spellings...) {
			spelling = strings.TrimPrefix(spelling, "=")
			far := distance(strings.ToLower(word), strings.ToLower(spelling))
			if far < furthest && far < utf8.RuneCountInString(spelling) {
				nearest, furthest = spelling, far
			}
		}
	}
	if nearest == "" {
		return ""
	}
	hint := "did you mean " + nearest + "?"
	if strings.EqualFold(nearest, word) && strings.HasPrefix(word, "M") {
		hint += " A large M stands for a million of them"
	}
	return hint
}

// didYouMeanWord names the unit that a word is a slip of the pen for. Only long
// names are looked at, and only with the same first letter: "6 rounds" are not
// pounds, and "6 prints" are not pints.
func didYouMeanWord(low string) string {
	for _, name := range longNames {
		if name[0] == low[0] && abs(len(name)-len(low)) <= 1 && distance(low, name) == 1 {
			return "did you mean " + name + "?"
		}
	}
	return ""
}

// longNames are the names of units that are long enough to be known by a slip.
var longNames = func() (all []string) {
	const shortest = 5
	for i := range table {
		for _, name := range append([]string{table[i].Name, table[i].Plural}, table[i].names...) {
			if len(name) >= shortest && !seldomMistaken[table[i].Symbol] {
				all = append(all, name)
			}
		}
	}
	return all
}()

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}

// seldomMistaken: units whose names are one letter off common nouns.
var seldomMistaken = map[string]bool{
	"pint": true, "lb": true, "quart": true, "grain": true, "in": true, "h": true, "week": true, "day": true, "yd": true,
	"£": true, "€": true, "month": true,
}

// distance is how many letters must be put in, left out, changed or swapped with
// the next to make a of b (optimal string alignment).
func distance(a, b string) int {
	from, to := []rune(a), []rune(b)
	rows := make([][]int, len(from)+1)
	for i := range rows {
		rows[i] = make([]int, len(to)+1)
		rows[i][0] = i
	}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i := 1; i <= len(from); i++ {
		for j := 1; j <= len(to); j++ {
			change := 1
			if from[i-1] == to[j-1] {
				change = 0
			}
			rows[i][j] = min(rows[i-1][j]+1, rows[i][j-1]+1, rows[i-1][j-1]+change)
			if i > 1 && j > 1 && from[i-1] == to[j-2] && from[i-2] == to[j-1] {
				rows[i][j] = min(rows[i][j], rows[i-2][j-2]+1)
			}
		}
	}
	return rows[len(from)][len(to)]
}
