package rules

// A shortWord is an abbreviation of a unit that people read in several ways.
type shortWord struct {
	// written as it is: capitals count.
	written string
	// reads says how it is read, instead what to write.
	reads, instead string
	// below: behind a figure of at least this, it has one meaning only; 0 for any figure.
	below int
}

// A shortTable is what is needed to find ambiguous abbreviations in one language.
type shortTable struct {
	units []shortWord
	// labels are words that a figure behind them belongs to ("step 2 C"), shaped what
	// is named by the shape of a letter ("2 C clamps").
	labels, shaped []string
	// degrees are words for a degree that says neither °C nor °F; they count where a
	// word of heat stands in the sentence, none of turning, and a scale does not follow.
	degrees, scales, heat, turning []string
}

// shortWords by language. A further language is one more entry.
var shortWords = map[string]shortTable{
	"en": {
		units: []shortWord{
			{written: "T", reads: "a tablespoon to some, a teaspoon or a tonne to others", instead: "tbsp or tsp"},
			{written: "t", reads: "a teaspoon to some, a tonne to others", instead: "tsp"},
			{written: "c", reads: "a cup to some, a centilitre, a carat or “about” to others", instead: "cup"},
			{written: "C", reads: "a cup to some, a temperature to others", instead: "cup, or °C", below: 20},
			{written: "gr", reads: "a gram to some, a grain (0.065 g) to others", instead: "g"},
			{written: "Gr", reads: "a gram to some, a grain (0.065 g) to others", instead: "g"},
			{written: "dr", reads: "a dram to some, a drop to others", instead: "the amount in g, mL or drops"},
			{written: "sp", reads: "a teaspoon to some, a tablespoon to others", instead: "tsp or tbsp"},
		},
		labels: []string{"step", "steps", "bag", "bags", "size", "no", "number", "part", "page", "figure", "hole", "row", "group", "option"},
		shaped: []string{"clamp", "clamps", "pin", "pins", "square", "squares", "joint", "joints", "bar", "bars", "cell", "cells",
			"battery", "batteries", "shirt", "shirts", "shape", "shapes", "nut", "nuts"},
		degrees: []string{"degrees", "degree", "deg"},
		scales:  []string{"c", "f", "celsius", "fahrenheit", "centigrade", "k", "kelvin"},
		heat: []string{"heat", "heats", "heated", "warm", "warms", "warmed", "cool", "cools", "cooled", "hot", "oven", "bake", "baked",
			"melt", "melted", "boil", "simmer", "temperature", "thermometer", "preheat", "preheated", "iron", "kiln"},
		turning: []string{"turn", "turns", "turned", "turning", "rotate", "rotated", "tilt", "tilted", "angle", "angles", "twist", "bend", "bent", "corner", "corners"},
	},
}
