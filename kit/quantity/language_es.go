package quantity

var spanish = &language{
	tag:          "es",
	decimalComma: true, fillBehind: true,
	numbers: spanishNumbers,
	dozens:  []string{"docena", "docenas", "docena de", "docenas de"},
	fractions: map[string][2]int64{
		"medio": {1, 2}, "media": {1, 2}, "un tercio": {1, 3}, "dos tercios": {2, 3},
		"un cuarto": {1, 4}, "cuarto": {1, 4}, "tres cuartos": {3, 4}, "un octavo": {1, 8},
	},
	more: map[string][2]int64{"y medio": {1, 2}, "y media": {1, 2}, "y cuarto": {1, 4}, "y un cuarto": {1, 4}, "y tres cuartos": {3, 4}},
	bounds: map[Bound][]string{
		AtMost:  {"como máximo", "a lo sumo", "no más de"},
		AtLeast: {"al menos", "como mínimo", "por lo menos", "no menos de"},
		Below:   {"menos de", "por debajo de", "inferior a"},
		Above:   {"más de", "por encima de", "superior a"},
		UpTo:    {"hasta"},
		About:   {"unos", "unas", "aproximadamente", "alrededor de", "cerca de", "aprox"},
	},
	fieldBounds: map[Bound][]string{AtMost: {"máx", "máximo"}, AtLeast: {"mín", "mínimo"}},
	trailing:    map[Bound][]string{AtMost: {"o menos", "como máximo"}, AtLeast: {"o más", "como mínimo"}},
	words: map[role][]string{
		articleWord: {"un", "una"},
		linkWord:    {"de", "de una", "de un"},
		betweenWord: {"entre", "de"},
		toWord:      {"a"},
		andWord:     {"y"},
		plusMinus:   {"más o menos"},
		timesWord:   {"por"},
		perWord:     {"por", "por cada"},
		ofWord:      {"de", "del"},
		theWord:     {"la", "el", "los", "las"},
		atWord:      {"a"},
		minusWord:   {"menos"},
		massWord:    {"en peso", "en masa"},
		fillerWord:  {"más"},
		labelWord: {"paso", "pasos", "talla", "tamaño", "número", "n.º", "página", "páginas", "figura", "figuras", "parte",
			"sección", "versión", "edición", "modelo", "tipo", "edad", "día", "semana", "año"},
		stopWord: {"a", "al", "de", "del", "y", "o", "u", "e", "la", "el", "los", "las", "un", "una", "en", "por", "para", "con",
			"sobre", "veces", "vez", "más", "menos", "otros", "otras", "es", "son", "que", "si", "no", "se", "lo", "x",
			"enero", "febrero", "marzo", "abril", "mayo", "junio", "julio", "agosto", "septiembre", "octubre", "noviembre", "diciembre"},
	},
	fills: map[string][]string{
		"level":   {"rasa", "rasas", "raso", "rasos"},
		"heaped":  {"colmada", "colmadas", "colmado", "colmados"},
		"rounded": {"redondeada", "redondeadas"},
		"scant":   {"escasa", "escasas"},
		"packed":  {"compactada", "compactadas"},
		"loose":   {"sin compactar"},
	},
	units: map[string][]string{
		"mg":    {"miligramo", "miligramos"},
		"g":     {"gramo", "gramos"},
		"kg":    {"kilogramo", "kilogramos", "kilo", "kilos"},
		"oz":    {"onza", "onzas"},
		"lb":    {"libra", "libras"},
		"mL":    {"mililitro", "mililitros"},
		"cL":    {"centilitro", "centilitros"},
		"dL":    {"decilitro", "decilitros"},
		"L":     {"litro", "litros"},
		"tsp":   {"cucharadita", "cucharaditas", "cdta", "cdtas"},
		"tbsp":  {"cucharada", "cucharadas", "cda", "cdas"},
		"cup":   {"taza", "tazas"},
		"fl oz": {"onza líquida", "onzas líquidas"},
		"mm":    {"milímetro", "milímetros"},
		"cm":    {"centímetro", "centímetros"},
		"m":     {"metro", "metros"},
		"in":    {"pulgada", "pulgadas"},
		"ft":    {"pie", "pies"},
		"cm²":   {"centímetro cuadrado", "centímetros cuadrados"},
		"m²":    {"metro cuadrado", "metros cuadrados"},
		"°C":    {"grado Celsius", "grados Celsius", "grados C", "grados centígrados"},
		"°F":    {"grado Fahrenheit", "grados Fahrenheit"},
		"s":     {"segundo", "segundos"},
		"min":   {"minuto", "minutos"},
		"h":     {"hora", "horas"},
		"day":   {"día", "días"},
		"week":  {"semana", "semanas"},
		"month": {"mes", "meses"},
		"year":  {"año", "años"},
		"%":     {"por ciento", "por ciento"},
		"€":     {"euro", "euros"},
	},
}

// spanishNumbers gives the numerals from cero to cien.
func spanishNumbers(add func(n int64, words ...string)) {
	small := []string{"cero", "uno", "dos", "tres", "cuatro", "cinco", "seis", "siete", "ocho", "nueve", "diez", "once",
		"doce", "trece", "catorce", "quince", "dieciséis", "diecisiete", "dieciocho", "diecinueve", "veinte",
		"veintiuno", "veintidós", "veintitrés", "veinticuatro", "veinticinco", "veintiséis", "veintisiete",
		"veintiocho", "veintinueve"}
	tens := []string{"", "", "", "treinta", "cuarenta", "cincuenta", "sesenta", "setenta", "ochenta", "noventa"}
	for n, word := range small {
		add(int64(n), word)
	}
	add(21, "veintiún", "veintiuna")
	for ten := 3; ten < 10; ten++ {
		add(int64(10*ten), tens[ten])
		for n := 1; n < 10; n++ {
			add(int64(10*ten+n), tens[ten]+" y "+small[n])
		}
		add(int64(10*ten+1), tens[ten]+" y un", tens[ten]+" y una")
	}
	add(100, "cien")
	hundreds := []string{"dosc", "tresc", "cuatroc", "quin", "seisc", "setec", "ochoc", "novec"}
	for i, word := range hundreds {
		add(int64(100*(i+2)), word+"ientos", word+"ientas")
	}
	add(1000, "mil")
}
