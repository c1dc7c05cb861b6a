package quantity

var dutch = &language{
	tag:          "nl",
	decimalComma: true,
	numbers:      dutchNumbers,
	dozens:       []string{"dozijn"},
	fractions: map[string][2]int64{
		"half": {1, 2}, "halve": {1, 2}, "een half": {1, 2}, "een halve": {1, 2},
		"een derde": {1, 3}, "twee derde": {2, 3}, "een kwart": {1, 4}, "kwart": {1, 4}, "driekwart": {3, 4}, "drie kwart": {3, 4},
		"een achtste": {1, 8}, "anderhalf": {3, 2}, "anderhalve": {3, 2}, "tweeënhalf": {5, 2}, "tweeënhalve": {5, 2},
	},
	more: map[string][2]int64{"en een half": {1, 2}, "en een halve": {1, 2}, "en een kwart": {1, 4}},
	bounds: map[Bound][]string{
		AtMost:  {"hoogstens", "maximaal", "ten hoogste", "niet meer dan"},
		AtLeast: {"minstens", "minimaal", "ten minste", "niet minder dan"},
		Below:   {"onder", "beneden", "minder dan"},
		Above:   {"boven", "meer dan"},
		UpTo:    {"tot wel", "tot maximaal"},
		About:   {"ongeveer", "circa", "ca", "omstreeks"},
	},
	fieldBounds: map[Bound][]string{AtMost: {"max"}, AtLeast: {"min"}, UpTo: {"tot"}},
	trailing:    map[Bound][]string{AtMost: {"of minder"}, AtLeast: {"of meer"}},
	words: map[role][]string{
		articleWord: {"een"},
		linkWord:    {"van een"},
		betweenWord: {"tussen", "van"},
		toWord:      {"tot", "à"},
		andWord:     {"en"},
		plusMinus:   {"plus of min"},
		timesWord:   {"bij", "keer"},
		perWord:     {"per"},
		ofWord:      {"van"},
		theWord:     {"de", "het"},
		atWord:      {"bij"},
		minusWord:   {"min"},
		massWord:    {"op gewicht"},
		fillerWord:  {"extra", "volle"},
		byWord:      {"met"},
		labelWord: {"stap", "stappen", "maat", "nummer", "nr", "pagina", "figuur", "afbeelding", "deel", "versie", "editie",
			"type", "leeftijd", "dag", "week", "jaar"},
		stopWord: {"de", "het", "een", "en", "of", "van", "tot", "in", "op", "aan", "uit", "bij", "met", "naar", "voor", "keer", "maal",
			"meer", "minder", "andere", "is", "zijn", "als", "dan", "niet", "per", "uur", "ten", "x",
			"januari", "februari", "maart", "april", "mei", "juni", "juli", "augustus", "september", "oktober", "november", "december"},
	},
	fills: map[string][]string{
		"level":   {"afgestreken", "gestreken"},
		"heaped":  {"opgehoopte"},
		"rounded": {"bolle"},
		"scant":   {"krappe"},
		"packed":  {"aangedrukte"},
		"loose":   {"losse"},
	},
	units: map[string][]string{
		"mg":    {"milligram", "milligram"},
		"g":     {"gram", "gram"},
		"kg":    {"kilogram", "kilogram", "kilo"},
		"mL":    {"milliliter", "milliliter"},
		"cL":    {"centiliter", "centiliter"},
		"dL":    {"deciliter", "deciliter"},
		"L":     {"liter", "liter"},
		"tsp":   {"theelepel", "theelepels", "tl"},
		"tbsp":  {"eetlepel", "eetlepels", "el"},
		"cup":   {"kop", "kopjes", "kopje", "koppen"},
		"mm":    {"millimeter", "millimeter"},
		"cm":    {"centimeter", "centimeter"},
		"m":     {"meter", "meter"},
		"cm²":   {"vierkante centimeter", "vierkante centimeter"},
		"m²":    {"vierkante meter", "vierkante meter"},
		"°C":    {"graden Celsius", "graden Celsius", "graden C"},
		"°F":    {"graden Fahrenheit", "graden Fahrenheit"},
		"s":     {"seconde", "seconden"},
		"min":   {"minuut", "minuten"},
		"h":     {"uur", "uur", "uren"},
		"day":   {"dag", "dagen"},
		"week":  {"week", "weken"},
		"month": {"maand", "maanden"},
		"year":  {"jaar", "jaar", "jaren"},
		"%":     {"procent", "procent"},
		"€":     {"euro", "euro"},
	},
}

// dutchNumbers gives the numerals from nul to honderd.
func dutchNumbers(add func(n int64, words ...string)) {
	small := []string{"nul", "één", "twee", "drie", "vier", "vijf", "zes", "zeven", "acht", "negen", "tien", "elf",
		"twaalf", "dertien", "veertien", "vijftien", "zestien", "zeventien", "achttien", "negentien"}
	tens := []string{"", "", "twintig", "dertig", "veertig", "vijftig", "zestig", "zeventig", "tachtig", "negentig"}
	for n, word := range small {
		add(int64(n), word)
	}
	for ten := 2; ten < 10; ten++ {
		add(int64(10*ten), tens[ten])
		for n := 1; n < 10; n++ {
			joined := small[n] + "en"
			switch n {
			case 1:
				joined = "eenen"
			case 2, 3: // the e is parted: tweeëntwintig
				joined = small[n] + "ën"
			}
			add(int64(10*ten+n), joined+tens[ten])
		}
	}
	add(100, "honderd")
	for n := 2; n < 10; n++ {
		add(int64(100*n), small[n]+"honderd")
	}
	add(1000, "duizend")
}
