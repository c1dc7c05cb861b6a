package quantity

var french = &language{
	tag:          "fr",
	decimalComma: true, singularBelowTwo: true, fillBehind: true,
	numbers: frenchNumbers,
	dozens:  []string{"douzaine", "douzaines", "douzaine de", "douzaines de", "douzaine d'", "douzaines d'"},
	fractions: map[string][2]int64{
		"demi": {1, 2}, "demie": {1, 2}, "un demi": {1, 2}, "une demi": {1, 2}, "une demie": {1, 2},
		"un tiers": {1, 3}, "deux tiers": {2, 3}, "un quart": {1, 4}, "trois quarts": {3, 4}, "un huitième": {1, 8},
	},
	more: map[string][2]int64{
		"et demi": {1, 2}, "et demie": {1, 2}, "et un quart": {1, 4}, "et quart": {1, 4}, "et trois quarts": {3, 4},
	},
	bounds: map[Bound][]string{
		AtMost:  {"au plus", "au maximum", "pas plus de"},
		AtLeast: {"au moins", "au minimum", "pas moins de"},
		Below:   {"moins de", "en dessous de", "au-dessous de", "inférieur à"},
		Above:   {"plus de", "au-dessus de", "supérieur à"},
		UpTo:    {"jusqu'à"},
		About:   {"environ", "à peu près", "approximativement", "env"},
	},
	fieldBounds: map[Bound][]string{AtMost: {"max", "maximum"}, AtLeast: {"min", "minimum"}, About: {"vers"}},
	trailing:    map[Bound][]string{AtMost: {"ou moins", "au plus", "au maximum"}, AtLeast: {"ou plus", "au moins", "au minimum"}},
	words: map[role][]string{
		articleWord: {"un", "une"},
		linkWord:    {"de", "d'", "d'une", "d'un"},
		betweenWord: {"entre", "de"},
		toWord:      {"à"},
		andWord:     {"et"},
		plusMinus:   {"plus ou moins"},
		timesWord:   {"sur"},
		perWord:     {"par", "pour"},
		ofWord:      {"de", "du", "des", "d'"},
		theWord:     {"la", "le", "les", "l'"},
		atWord:      {"à"},
		minusWord:   {"moins"},
		massWord:    {"en masse", "en poids"},
		fillerWord:  {"bonnes", "bons"},
		labelWord: {"étape", "étapes", "taille", "numéro", "no", "n°", "page", "pages", "figure", "figures", "partie",
			"section", "version", "édition", "modèle", "type", "âge", "jour", "semaine", "année"},
		stopWord: {"à", "au", "aux", "de", "du", "des", "d", "et", "ou", "la", "le", "les", "l", "un", "une", "en", "par", "pour",
			"sur", "dans", "avec", "fois", "plus", "moins", "autres", "autre", "sont", "est", "ans", "puis", "qui", "que",
			"pas", "peu", "si", "il", "elle", "on", "vous", "ce", "ces", "cette", "x", "er", "e", "ème",
			"janvier", "février", "mars", "avril", "mai", "juin", "juillet", "août", "septembre", "octobre", "novembre", "décembre"},
	},
	fills: map[string][]string{
		"level":   {"rase", "ras", "rases", "arasée", "arasées"},
		"heaped":  {"bombée", "bombées", "bien pleine", "bien pleines"},
		"rounded": {"arrondie", "arrondies"},
		"scant":   {"à peine pleine", "à peine pleines"},
		"packed":  {"tassée", "tassées", "tassé"},
		"loose":   {"non tassée", "non tassées"},
	},
	units: map[string][]string{
		"mg":  {"milligramme", "milligrammes"},
		"g":   {"gramme", "grammes"},
		"kg":  {"kilogramme", "kilogrammes", "kilo", "kilos"},
		"oz":  {"once", "onces"},
		"lb":  {"livre", "livres"},
		"mL":  {"millilitre", "millilitres"},
		"cL":  {"centilitre", "centilitres"},
		"dL":  {"décilitre", "décilitres"},
		"L":   {"litre", "litres"},
		"tsp": {"c. à café", "c. à café", "cuillère à café", "cuillères à café", "cuillerée à café", "cuillerées à café", "c. à thé", "cuillère à thé", "cuillères à thé", "c à c", "càc"},
		"tbsp": {"c. à soupe", "c. à soupe", "cuillère à soupe", "cuillères à soupe", "cuillerée à soupe",
			"cuillerées à soupe", "c à s", "càs"},
		"dessertspoon": {"c. à dessert", "c. à dessert", "cuillère à dessert", "cuillères à dessert"},
		"cup":          {"tasse", "tasses"},
		"fl oz":        {"once liquide", "onces liquides"},
		"mm":           {"millimètre", "millimètres"},
		"cm":           {"centimètre", "centimètres"},
		"m":            {"mètre", "mètres"},
		"in":           {"pouce", "pouces"},
		"ft":           {"pied", "pieds"},
		"cm²":          {"centimètre carré", "centimètres carrés"},
		"m²":           {"mètre carré", "mètres carrés"},
		"°C":           {"degré Celsius", "degrés Celsius", "degrés C"},
		"°F":           {"degré Fahrenheit", "degrés Fahrenheit"},
		"s":            {"seconde", "secondes"},
		"min":          {"minute", "minutes"},
		"h":            {"heure", "heures"},
		"day":          {"jour", "jours"},
		"week":         {"semaine", "semaines"},
		"month":        {"mois", "mois"},
		"year":         {"an", "ans", "année", "années"},
		"%":            {"pour cent", "pour cent"},
		"€":            {"euro", "euros"},
	},
}

// frenchNumbers gives the numerals from zéro to cent, with the Swiss and Belgian
// ones for 70, 80 and 90.
func frenchNumbers(add func(n int64, words ...string)) {
	small := []string{"zéro", "un", "deux", "trois", "quatre", "cinq", "six", "sept", "huit", "neuf", "dix", "onze",
		"douze", "treize", "quatorze", "quinze", "seize", "dix-sept", "dix-huit", "dix-neuf"}
	for n, word := range small {
		add(int64(n), word)
	}
	add(1, "une")
	upTo := func(base int64, word string, highest int) {
		add(base, word)
		for n := 1; n <= highest; n++ {
			add(base+int64(n), word+"-"+small[n])
			if n == 1 || n == 11 {
				add(base+int64(n), word+" et "+small[n])
			}
		}
		add(base+1, word+" et une", word+"-une")
	}
	upTo(20, "vingt", 9)
	upTo(30, "trente", 9)
	upTo(40, "quarante", 9)
	upTo(50, "cinquante", 9)
	upTo(60, "soixante", 19)
	upTo(70, "septante", 9)
	upTo(80, "quatre-vingt", 19)
	upTo(80, "huitante", 9)
	upTo(90, "nonante", 9)
	add(80, "quatre-vingts")
	add(100, "cent", "une centaine de", "une centaine d'")
	for n := 2; n < 10; n++ {
		add(int64(100*n), small[n]+" cents", small[n]+" cent")
	}
	add(1000, "mille")
}
