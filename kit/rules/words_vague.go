package rules

// A vagueWord is a phrase that leaves an amount to the reader.
type vagueWord struct {
	phrase string
	// adding: it only counts behind a word of adding ("pour in some of the oil").
	adding bool
	// level: it tells how full something is; a word of filling must stand before it.
	level bool
	// then: one of these words must follow ("a good" splash). Empty: any.
	then []string
	// unless: it means something else before one of these words ("plenty of time").
	unless []string
	// after: it means something else behind one of these words ("begins to taste").
	after []string
}

// A vagueTable is what is needed to find vague amounts in one language.
type vagueTable struct {
	words []vagueWord
	// adding are words of adding; joined with "in", "into" or "on" also stirring.
	adding, stirring, inward []string
	filling                  []string
	// never are words that no phrase speaks of an amount before: times, care.
	never []string
}

// A vaguePhrase is a vague word cut into words.
type vaguePhrase struct {
	vagueWord
	parts []string
}

// vaguePhrases has the phrases of each language by their first word.
var vaguePhrases = byFirstWord()

func byFirstWord() map[string]map[string][]vaguePhrase {
	all := map[string]map[string][]vaguePhrase{}
	for language, table := range vagueWords {
		all[language] = map[string][]vaguePhrase{}
		for _, vague := range table.words {
			parts := wordsOf(vague.phrase)
			all[language][parts[0]] = append(all[language][parts[0]], vaguePhrase{vague, parts})
		}
	}
	return all
}

// smallAmounts are measures by eye.
var smallAmounts = []string{
	"splash", "pinch", "handful", "glug", "dollop", "squeeze", "amount", "spoonful", "drizzle", "dash", "dose",
	"helping", "squirt", "sprinkle", "sprinkling", "lump", "blob", "chunk", "measure", "quantity", "drop", "dusting",
}

// vagueWords by language. A further language is one more entry.
var vagueWords = map[string]vagueTable{
	"en": {
		words: []vagueWord{
			{phrase: "a good", then: smallAmounts},
			{phrase: "a generous", unless: []string{"margin", "seam", "border", "gift"}},
			{phrase: "be generous with"},
			{phrase: "plenty of"},
			{phrase: "plenty", adding: true, unless: []string{"of"}},
			{phrase: "a bit of"},
			{phrase: "a bit more", adding: true},
			{phrase: "a little", adding: true, unless: []string{
				"at", "by", "longer", "later", "while", "bit", "warmer", "cooler", "too", "way", "over", "under",
				"above", "below", "further", "each", "and", "until", "so", "if", "then", "apart", "harder", "to", "higher", "lower"}},
			{phrase: "some of", adding: true},
			{phrase: "some", adding: true, unless: []string{"of", "people", "kits", "force", "makers"}},
			{phrase: "a few drops"},
			{phrase: "a few", adding: true, unless: []string{"drops", "degree", "degrees", "millimetres", "centimetres", "mm", "cm", "turns", "stitches", "steps", "rows"}},
			{phrase: "a couple of", adding: true, unless: []string{"degrees", "turns", "stitches", "steps", "rows"}},
			{phrase: "several", adding: true, unless: []string{"turns", "stitches", "steps", "rows", "thin", "layers"}},
			{phrase: "a handful of"},
			{phrase: "a handful", adding: true, unless: []string{"of"}},
			{phrase: "a splash of", unless: []string{"colour", "color"}},
			{phrase: "a dash of", unless: []string{"colour", "color"}},
			{phrase: "a drizzle of"}, {phrase: "a glug of"}, {phrase: "a knob of"}, {phrase: "a dollop of"},
			{phrase: "a pinch of"}, {phrase: "a smidgen of"}, {phrase: "a sprinkle of"}, {phrase: "a sprinkling of"},
			{phrase: "a squeeze of"}, {phrase: "a squirt of"}, {phrase: "a blob of"}, {phrase: "a dab of"},
			{phrase: "a dusting of"},
			{phrase: "enough", adding: true, unless: []string{"room", "space", "air", "light", "heat", "force", "for", "that", "people"},
				after: []string{"long", "warm", "cool", "hot", "cold", "large", "small", "big", "deep", "wide", "soft", "hard",
					"thick", "thin", "dry", "well", "far", "strong", "firm", "slowly", "fast", "near", "close", "is", "there's", "not"}},
			{phrase: "to taste", unless: []string{"it", "of", "like", "bitter", "sweet", "the", "a"},
				after: []string{"want", "wants", "begin", "begins", "like", "likes", "able", "safe", "not", "try", "ready", "going", "tempted", "unfit", "fit"}},
			{phrase: "as needed", adding: true}, {phrase: "as required", adding: true}, {phrase: "as necessary", adding: true},
			{phrase: "as you like", adding: true}, {phrase: "as you wish", adding: true}, {phrase: "as you need", adding: true},
			{phrase: "the right amount"}, {phrase: "a suitable amount"}, {phrase: "a small amount"}, {phrase: "a large amount"},
			{phrase: "a sufficient amount"}, {phrase: "the desired amount"}, {phrase: "a small quantity"},
			{phrase: "lots of", adding: true}, {phrase: "a lot of", adding: true},
			{phrase: "nearly full", level: true}, {phrase: "almost full", level: true}, {phrase: "mostly full", level: true},
			{phrase: "just below the rim", level: true}, {phrase: "just under the rim", level: true},
			{phrase: "just below the top", level: true}, {phrase: "just under the top", level: true},
			{phrase: "just below the brim", level: true}, {phrase: "just under the brim", level: true},
			{phrase: "near the rim", level: true}, {phrase: "near the top", level: true}, {phrase: "close to the rim", level: true},
			{phrase: "close to the top", level: true}, {phrase: "nearly to the rim", level: true}, {phrase: "nearly to the top", level: true},
			{phrase: "almost to the rim", level: true}, {phrase: "almost to the top", level: true},
		},
		adding: []string{"add", "adding", "pour", "pouring", "tip", "drizzle", "sprinkle", "spoon", "put", "use", "using", "take",
			"squeeze", "drip", "dab", "splash", "trickle", "dust", "apply", "scoop", "melt", "weigh", "measure", "mix", "top", "drop", "dilute", "thin", "moisten", "dampen", "cover"},
		stirring: []string{"stir", "whisk", "fold", "rub", "blend", "work", "shake", "beat"},
		inward:   []string{"in", "into", "on", "onto"},
		filling:  []string{"fill", "fills", "filled", "filling", "pour", "pouring", "top", "ladle", "spoon"},
		never: []string{"time", "times", "minute", "minutes", "second", "seconds", "hour", "hours", "day", "days", "week",
			"weeks", "moment", "moments", "care", "patience", "practice", "luck", "fun", "room", "light", "space", "air",
			"ventilation", "help", "fresh", "effort", "pressure"},
	},
}
