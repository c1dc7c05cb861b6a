package quantity

import "strings"

var italian = &language{
	tag:          "it",
	decimalComma: true, fillBehind: true,
	numbers: italianNumbers,
	dozens:  []string{"dozzina", "dozzine", "dozzina di", "dozzine di"},
	fractions: map[string][2]int64{
		"mezzo": {1, 2}, "mezza": {1, 2}, "mezz'": {1, 2}, "un mezzo": {1, 2},
		"un terzo": {1, 3}, "due terzi": {2, 3}, "un quarto": {1, 4}, "tre quarti": {3, 4}, "un ottavo": {1, 8},
	},
	more: map[string][2]int64{"e mezzo": {1, 2}, "e mezza": {1, 2}, "e un quarto": {1, 4}, "e tre quarti": {3, 4}},
	bounds: map[Bound][]string{
		AtMost:  {"al massimo", "non più di", "al più"},
		AtLeast: {"almeno", "non meno di", "come minimo"},
		Below:   {"sotto i", "meno di", "al di sotto di", "inferiore a"},
		Above:   {"sopra i", "più di", "al di sopra di", "superiore a"},
		UpTo:    {"fino a"},
		About:   {"circa", "all'incirca", "ca", "pressappoco"},
	},
	fieldBounds: map[Bound][]string{AtMost: {"max", "massimo"}, AtLeast: {"min", "minimo"}, Below: {"sotto"}, Above: {"sopra"}},
	trailing:    map[Bound][]string{AtMost: {"o meno", "al massimo"}, AtLeast: {"o più", "almeno"}},
	words: map[role][]string{
		articleWord: {"un", "una", "un'", "uno"},
		linkWord:    {"di", "d'", "di una", "di un"},
		betweenWord: {"tra", "fra", "da"},
		toWord:      {"a"},
		andWord:     {"e"},
		plusMinus:   {"più o meno"},
		timesWord:   {"per"},
		perWord:     {"per", "ogni"},
		ofWord:      {"di", "del", "della", "dell'", "dello"},
		theWord:     {"la", "il", "lo", "l'", "i", "gli", "le"},
		atWord:      {"a"},
		minusWord:   {"meno"},
		massWord:    {"in peso", "in massa"},
		fillerWord:  {"altri", "altre"},
		labelWord: {"passo", "passi", "fase", "taglia", "misura", "numero", "n", "pagina", "pagine", "figura", "figure", "parte",
			"sezione", "versione", "edizione", "modello", "tipo", "età", "giorno", "settimana", "anno"},
		stopWord: {"a", "al", "di", "del", "della", "dello", "dei", "degli", "delle", "al", "alla", "ai", "nel", "nella", "e", "o", "la", "il", "lo", "i", "gli", "le", "un", "una", "in", "per", "con",
			"su", "da", "volte", "volta", "più", "meno", "altri", "altre", "è", "sono", "che", "se", "non", "si", "x",
			"gennaio", "febbraio", "marzo", "aprile", "maggio", "giugno", "luglio", "agosto", "settembre", "ottobre", "novembre", "dicembre"},
	},
	fills: map[string][]string{
		"level":   {"raso", "rasi", "rasa", "rase"},
		"heaped":  {"colmo", "colmi", "colma", "colme"},
		"rounded": {"arrotondato", "arrotondati"},
		"scant":   {"scarso", "scarsi", "scarsa", "scarse"},
		"packed":  {"pressato", "pressati", "pressata", "pressate"},
		"loose":   {"non pressato", "non pressati", "non pressata", "non pressate"},
	},
	units: map[string][]string{
		"mg":    {"milligrammo", "milligrammi"},
		"g":     {"grammo", "grammi"},
		"kg":    {"chilogrammo", "chilogrammi", "chilo", "chili"},
		"oz":    {"oncia", "once"},
		"lb":    {"libbra", "libbre"},
		"mL":    {"millilitro", "millilitri"},
		"cL":    {"centilitro", "centilitri"},
		"dL":    {"decilitro", "decilitri"},
		"L":     {"litro", "litri"},
		"tsp":   {"cucchiaino", "cucchiaini"},
		"tbsp":  {"cucchiaio", "cucchiai"},
		"cup":   {"tazza", "tazze"},
		"mm":    {"millimetro", "millimetri"},
		"cm":    {"centimetro", "centimetri"},
		"m":     {"metro", "metri"},
		"in":    {"pollice", "pollici"},
		"cm²":   {"centimetro quadrato", "centimetri quadrati"},
		"m²":    {"metro quadrato", "metri quadrati"},
		"°C":    {"grado Celsius", "gradi Celsius", "gradi C", "gradi centigradi"},
		"°F":    {"grado Fahrenheit", "gradi Fahrenheit"},
		"s":     {"secondo", "secondi"},
		"min":   {"minuto", "minuti"},
		"h":     {"ora", "ore"},
		"day":   {"giorno", "giorni"},
		"week":  {"settimana", "settimane"},
		"month": {"mese", "mesi"},
		"year":  {"anno", "anni"},
		"%":     {"per cento", "per cento"},
		"€":     {"euro", "euro"},
	},
}

// italianNumbers gives the numerals from zero to cento.
func italianNumbers(add func(n int64, words ...string)) {
	small := []string{"zero", "uno", "due", "tre", "quattro", "cinque", "sei", "sette", "otto", "nove", "dieci", "undici",
		"dodici", "tredici", "quattordici", "quindici", "sedici", "diciassette", "diciotto", "diciannove"}
	tens := []string{"", "", "venti", "trenta", "quaranta", "cinquanta", "sessanta", "settanta", "ottanta", "novanta"}
	for n, word := range small {
		add(int64(n), word)
	}
	for ten := 2; ten < 10; ten++ {
		add(int64(10*ten), tens[ten])
		for n := 1; n < 10; n++ {
			stem := tens[ten]
			if n == 1 || n == 8 { // ventuno, ventotto
				stem = stem[:len(stem)-1]
			}
			unit := small[n]
			if n == 3 {
				unit = "tré"
			}
			add(int64(10*ten+n), stem+unit)
		}
	}
	for ten := 2; ten < 10; ten++ {
		add(int64(10*ten+1), strings.TrimSuffix(tens[ten], tens[ten][len(tens[ten])-1:])+"un")
	}
	add(100, "cento")
	for n := 2; n < 10; n++ {
		add(int64(100*n), small[n]+"cento")
	}
	add(1000, "mille")
}
