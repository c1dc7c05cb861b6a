package rules

// Spanish words by which running text leaves an amount open or speaks of a tool.
// Common practice, no source.

var spanishVague = vagueTable{
	wants: []string{"de"},
	words: []vagueWord{
		{phrase: "un poco de"}, {phrase: "un poco más de"}, {phrase: "una pizca de"}, {phrase: "un puñado de"}, {phrase: "un chorro de"},
		{phrase: "un chorrito de"}, {phrase: "unas gotas"}, {phrase: "unas cuantas gotas"}, {phrase: "unas pocas gotas"}, {phrase: "algunas gotas"},
		{phrase: "una cantidad generosa"}, {phrase: "una pequeña cantidad"}, {phrase: "una buena cantidad"}, {phrase: "la cantidad adecuada"},
		{phrase: "la cantidad necesaria"}, {phrase: "bastante", adding: true}, {phrase: "suficiente", adding: true},
		{phrase: "mucho", adding: true}, {phrase: "mucha", adding: true}, {phrase: "algo de", adding: true}, {phrase: "al gusto"}, {phrase: "a su gusto"},
		{phrase: "a tu gusto"}, {phrase: "según sea necesario", adding: true}, {phrase: "si es necesario", adding: true},
		{phrase: "casi lleno", level: true}, {phrase: "casi llena", level: true}, {phrase: "casi hasta el borde", level: true},
		{phrase: "justo debajo del borde", level: true},
	},
	adding: []string{"añade", "añada", "añadir", "agrega", "agregue", "agregar", "vierte", "vierta", "verter", "echa", "eche", "echar", "pon", "ponga",
		"poner", "toma", "tome", "usa", "use", "usar", "utilice", "espolvorea", "espolvoree", "mezcla", "mezcle", "incorpora", "incorpore", "aplica", "aplique"},
	filling: []string{"llena", "llene", "llenar", "rellena", "rellene", "vierte", "vierta", "verter"},
	never: []string{"tiempo", "minuto", "minutos", "segundos", "hora", "horas", "día", "días", "paciencia", "cuidado", "espacio", "aire", "luz",
		"práctica", "fuerza", "suerte", "ayuda", "presión", "distancia", "sitio"},
}

var spanishTools = []toolWord{
	{called: "batidora", words: []string{"batidora", "licuadora"}},
	{called: "batidor", words: []string{"batidor", "varillas"}, alike: []string{"batidora"}},
	{called: "tijeras", words: []string{"tijeras"}},
	{called: "cúter", words: []string{"cúter", "bisturí"}, alike: []string{"cuchillo", "cuchilla"}},
	{called: "base de corte", words: []string{"base de corte"}, alike: []string{"tabla", "base"}},
	{called: "termómetro", words: []string{"termómetro"}, alike: []string{"sonda"}},
	{called: "horno", words: []string{"horno"}, innocent: []string{"guantes de horno", "guante de horno"}},
	{called: "microondas", words: []string{"microondas"}},
	{called: "hervidor", words: []string{"hervidor"}},
	{called: "embudo", words: []string{"embudo"}},
	{called: "colador", words: []string{"colador", "tamiz"}, alike: []string{"cedazo"}},
	{called: "martillo", words: []string{"martillo"}, alike: []string{"mazo"}},
	{called: "plancha", words: []string{"plancha de ropa"}, alike: []string{"plancha"}},
	{called: "alicates", words: []string{"alicates"}},
	{called: "pinzas", words: []string{"pinzas"}},
	{called: "destornillador", words: []string{"destornillador"}},
	{called: "taladro", words: []string{"taladro"}},
	{called: "pistola de silicona", words: []string{"pistola de silicona", "pistola de cola"}},
	{called: "secador", words: []string{"secador de pelo"}, alike: []string{"secador"}},
	{called: "máquina de coser", words: []string{"máquina de coser"}},
	{called: "grapadora", words: []string{"grapadora"}},
	{called: "perforadora", words: []string{"perforadora", "sacabocados"}},
	{called: "rodillo", words: []string{"rodillo de cocina"}, alike: []string{"rodillo"}},
	{called: "regla", words: []string{"regla graduada"}, alike: []string{"regla", "cinta métrica"}},
	{called: "vaso medidor", words: []string{"vaso medidor", "jarra medidora"}, alike: []string{"medidor", "jarra", "probeta"}},
	{called: "báscula", words: []string{"báscula", "balanza"}, alike: []string{"peso"}},
	{called: "cuentagotas", words: []string{"cuentagotas", "pipeta"}, alike: []string{"jeringa"}},
	{called: "cazo", words: []string{"cazo", "cacerola"}, alike: []string{"olla", "cazuela"}},
	{called: "bandeja de horno", words: []string{"bandeja de horno"}, alike: []string{"bandeja"}},
	{called: "gafas de protección", words: []string{"gafas de protección"}, alike: []string{"gafas"}},
}

var spanishNotMeant = []string{"sin", "no", "ni", "nunca", "ningún", "ninguna", "evita", "evite", "o", "como", "si"}
