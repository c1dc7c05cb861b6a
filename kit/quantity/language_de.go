package quantity

var german = &language{
	tag:          "de",
	decimalComma: true,
	numbers:      germanNumbers,
	dozens:       []string{"dutzend"},
	fractions: map[string][2]int64{
		"halb": {1, 2}, "halbe": {1, 2}, "halber": {1, 2}, "halben": {1, 2}, "halbes": {1, 2},
		"ein halber": {1, 2}, "eine halbe": {1, 2}, "einen halben": {1, 2}, "ein halbes": {1, 2}, "einer halben": {1, 2},
		"ein drittel": {1, 3}, "zwei drittel": {2, 3}, "ein viertel": {1, 4}, "drei viertel": {3, 4}, "dreiviertel": {3, 4},
		"ein achtel": {1, 8},
		"anderthalb": {3, 2}, "eineinhalb": {3, 2}, "zweieinhalb": {5, 2}, "dreieinhalb": {7, 2}, "viereinhalb": {9, 2},
	},
	more: map[string][2]int64{"und eine halbe": {1, 2}, "und ein halber": {1, 2}, "und ein halbes": {1, 2}},
	bounds: map[Bound][]string{
		AtMost:  {"höchstens", "maximal", "nicht mehr als"},
		AtLeast: {"mindestens", "wenigstens", "nicht weniger als"},
		Below:   {"unter", "unterhalb von", "weniger als"},
		Above:   {"über", "oberhalb von", "mehr als"},
		UpTo:    {"bis zu"},
		About:   {"etwa", "ungefähr", "ca", "zirka", "circa", "rund"},
	},
	fieldBounds: map[Bound][]string{AtMost: {"max"}, AtLeast: {"min"}, UpTo: {"bis"}},
	trailing:    map[Bound][]string{AtMost: {"oder weniger"}, AtLeast: {"oder mehr"}},
	words: map[role][]string{
		articleWord: {"ein", "eine", "einen", "einem", "einer"},
		linkWord:    {"eines", "einer"},
		betweenWord: {"zwischen", "von"},
		toWord:      {"bis"},
		andWord:     {"und"},
		plusMinus:   {"plus minus", "plus oder minus"},
		byWord:      {"um"},
		timesWord:   {"mal", "auf"},
		perWord:     {"pro", "je"},
		ofWord:      {"von", "der", "des", "vom"},
		theWord:     {"der", "die", "das", "dem"},
		atWord:      {"bei"},
		minusWord:   {"minus"},
		massWord:    {"nach Gewicht", "nach Masse"},
		fillerWord:  {"weitere", "weiteren", "ganze", "volle"},
		labelWord: {"schritt", "schritte", "größe", "nummer", "nr", "seite", "seiten", "bild", "abbildung", "abb", "teil",
			"abschnitt", "version", "ausgabe", "typ", "alter", "tag", "woche", "jahr"},
		stopWord: {"der", "die", "das", "dem", "den", "des", "und", "oder", "von", "vom", "zu", "zum", "zur", "in", "im", "an", "am",
			"auf", "aus", "bei", "mit", "nach", "für", "mal", "weitere", "weiteren", "mehr", "weniger", "andere", "ist", "sind",
			"bis", "pro", "je", "wenn", "dann", "als", "wie", "nicht", "man", "sie", "er", "es", "uhr", "x",
			"januar", "februar", "märz", "april", "mai", "juni", "juli", "august", "september", "oktober", "november", "dezember"},
	},
	fills: map[string][]string{
		"level":   {"gestrichener", "gestrichene", "gestrichenen", "gestrichen", "gestr"},
		"heaped":  {"gehäufter", "gehäufte", "gehäuften", "gehäuft", "geh"},
		"rounded": {"leicht gehäufte", "leicht gehäufter", "leicht gehäuften"},
		"scant":   {"knapper", "knappe", "knappen"},
		"packed":  {"fest gedrückter", "fest gedrückte", "fest gedrückten"},
		"loose":   {"lockerer", "lockere", "lockeren"},
	},
	units: map[string][]string{
		"mg":  {"Milligramm", "Milligramm"},
		"g":   {"Gramm", "Gramm"},
		"kg":  {"Kilogramm", "Kilogramm", "Kilo"},
		"oz":  {"Unze", "Unzen"},
		"mL":  {"Milliliter", "Milliliter", "Millilitern"},
		"cL":  {"Zentiliter", "Zentiliter"},
		"dL":  {"Deziliter", "Deziliter"},
		"L":   {"Liter", "Liter", "Litern"},
		"tsp": {"=TL", "=TL", "Teelöffel", "Teelöffeln"},
		"tbsp": {"=EL", "=EL", "Esslöffel", "Esslöffeln",
			"Eßlöffel"},
		"cup":   {"Tasse", "Tassen"},
		"mm":    {"Millimeter", "Millimeter", "Millimetern"},
		"cm":    {"Zentimeter", "Zentimeter", "Zentimetern"},
		"m":     {"Meter", "Meter", "Metern"},
		"in":    {"Zoll", "Zoll"},
		"cm²":   {"Quadratzentimeter", "Quadratzentimeter"},
		"m²":    {"Quadratmeter", "Quadratmeter"},
		"°C":    {"Grad Celsius", "Grad Celsius", "Grad C"},
		"°F":    {"Grad Fahrenheit", "Grad Fahrenheit"},
		"s":     {"Sekunde", "Sekunden", "Sek"},
		"min":   {"Minute", "Minuten"},
		"h":     {"Stunde", "Stunden", "Std"},
		"day":   {"Tag", "Tage", "Tagen"},
		"week":  {"Woche", "Wochen"},
		"month": {"Monat", "Monate", "Monaten"},
		"year":  {"Jahr", "Jahre", "Jahren"},
		"%":     {"Prozent", "Prozent"},
		"€":     {"Euro", "Euro"},
	},
}

// germanNumbers gives the numerals from null to hundert.
func germanNumbers(add func(n int64, words ...string)) {
	small := []string{"null", "ein", "zwei", "drei", "vier", "fünf", "sechs", "sieben", "acht", "neun", "zehn", "elf",
		"zwölf", "dreizehn", "vierzehn", "fünfzehn", "sechzehn", "siebzehn", "achtzehn", "neunzehn"}
	tens := []string{"", "", "zwanzig", "dreißig", "vierzig", "fünfzig", "sechzig", "siebzig", "achtzig", "neunzig"}
	for n, word := range small {
		if n != 1 { // "ein" is also the article; it counts only before a unit
			add(int64(n), word)
		}
	}
	add(1, "eins")
	add(2, "zwo")
	for ten := 2; ten < 10; ten++ {
		add(int64(10*ten), tens[ten])
		for n := 1; n < 10; n++ {
			add(int64(10*ten+n), small[n]+"und"+tens[ten])
		}
	}
	add(30, "dreissig")
	add(100, "hundert", "einhundert")
	for n := 2; n < 10; n++ {
		add(int64(100*n), small[n]+"hundert")
	}
	add(1000, "tausend", "eintausend")
}
