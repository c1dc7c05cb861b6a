package quantity

var english = &language{
	tag:     "en",
	numbers: englishNumbers,
	dozens:  []string{"dozen"},
	fractions: map[string][2]int64{
		"half": {1, 2}, "a half": {1, 2}, "one half": {1, 2},
		"a third": {1, 3}, "one third": {1, 3}, "two thirds": {2, 3},
		"quarter": {1, 4}, "a quarter": {1, 4}, "one quarter": {1, 4}, "three quarters": {3, 4}, "three quarter": {3, 4},
		"one fourth": {1, 4}, "a fourth": {1, 4}, "three fourths": {3, 4},
		"a fifth": {1, 5}, "one fifth": {1, 5}, "two fifths": {2, 5},
		"an eighth": {1, 8}, "one eighth": {1, 8}, "three eighths": {3, 8}, "five eighths": {5, 8}, "seven eighths": {7, 8},
		"a tenth": {1, 10}, "one tenth": {1, 10},
	},
	more: map[string][2]int64{
		"and a half": {1, 2}, "and one half": {1, 2}, "and a quarter": {1, 4}, "and one quarter": {1, 4},
		"and three quarters": {3, 4}, "and a third": {1, 3}, "and one third": {1, 3}, "and two thirds": {2, 3},
	},
	bounds: map[Bound][]string{
		AtMost:  {"at most", "at the most", "no more than", "not more than"},
		AtLeast: {"at least", "no less than", "not less than"},
		Below:   {"below", "less than"},
		Above:   {"above", "more than"},
		UpTo:    {"up to"},
		About:   {"about", "approximately", "approx", "roughly", "circa", "ca", "some"},
	},
	fieldBounds: map[Bound][]string{
		AtMost:  {"max", "maximum", "not over"},
		AtLeast: {"min", "minimum"},
		Below:   {"under"},
		Above:   {"over"},
		About:   {"around"},
		Exactly: {"exactly"},
	},
	trailing: map[Bound][]string{
		AtMost:  {"or less", "or fewer", "at most", "max", "maximum"},
		AtLeast: {"or more", "at least", "minimum"},
	},
	words: map[role][]string{
		articleWord: {"a", "an"},
		linkWord:    {"a", "an", "of a", "of an", "of one", "of"},
		betweenWord: {"between", "from"},
		toWord:      {"to"},
		andWord:     {"and"},
		orWord:      {"or"},
		plusMinus:   {"plus or minus", "give or take"},
		byWord:      {"by"},
		timesWord:   {"by"},
		perWord:     {"per", "to each", "for each"},
		ofWord:      {"of"},
		theWord:     {"the"},
		atWord:      {"at"},
		minusWord:   {"minus"},
		massWord:    {"by weight", "by mass"},
		fillerWord:  {"more", "extra", "further", "full", "whole", "additional"},
		labelWord: {"step", "steps", "size", "no", "number", "nos", "page", "pages", "figure", "figures", "fig", "picture",
			"part", "parts", "chapter", "section", "version", "edition", "model", "type", "grade", "age", "aged", "ages",
			"run", "note", "line", "row", "option", "stage", "phase", "day", "week", "year", "level", "gauge", "room"},
		stopWord: {"a", "an", "the", "and", "or", "of", "to", "in", "on", "at", "by", "for", "with", "from", "as", "is", "are",
			"it", "its", "that", "this", "then", "than", "per", "each", "times", "time", "more", "less", "further", "extra",
			"other", "others", "another", "am", "pm", "if", "so", "but", "not", "all", "both", "when", "while", "until",
			"into", "onto", "over", "under", "through", "after", "before", "above", "below", "up", "down", "out", "off",
			"you", "your", "they", "them", "we", "he", "she", "was", "were", "be", "will", "may", "can", "should", "must",
			"above", "here", "there", "again", "only", "also", "too", "long", "wide", "high", "tall", "deep", "thick",
			"full", "whole", "about", "at least", "such", "which", "who", "has", "have", "had", "does", "do", "x",
			"ply", "st", "nd", "rd", "th",
			"january", "february", "march", "april", "may", "june", "july", "august", "september", "october",
			"november", "december", "jan", "feb", "mar", "apr", "jun", "jul", "aug", "sep", "sept", "oct", "nov", "dec"},
	},
	fills: map[string][]string{
		"level":   {"level", "levelled", "leveled", "flat"},
		"heaped":  {"heaped", "heaping"},
		"rounded": {"rounded"},
		"scant":   {"scant"},
		"packed":  {"packed", "firmly packed"},
		"loose":   {"loose", "loosely packed"},
	},
}

// englishNumbers gives the numerals from nought to a hundred and the hundreds.
func englishNumbers(add func(n int64, words ...string)) {
	small := []string{"zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
		"twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"}
	tens := []string{"", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"}
	for n, word := range small {
		add(int64(n), word)
	}
	for ten := 2; ten < 10; ten++ {
		add(int64(10*ten), tens[ten])
		for n := 1; n < 10; n++ {
			add(int64(10*ten+n), tens[ten]+"-"+small[n])
		}
	}
	add(100, "hundred", "a hundred")
	for n := 1; n < 10; n++ {
		add(int64(100*n), small[n]+" hundred")
	}
	add(1000, "a thousand", "one thousand")
}
