package rules

// measuringNames are what tools that measure are called.
type measuringNames struct {
	scales, thermometers, rulers, timers, jugs, spoons []string
}

// measuringWords by language.
var measuringWords = map[string]measuringNames{
	"en": {
		scales: []string{"scale"}, thermometers: []string{"thermometer"}, rulers: []string{"ruler", "tape measure"},
		timers: []string{"timer", "clock"}, jugs: []string{"measuring jug"}, spoons: []string{"spoon", "measuring cup"},
	},
	"fr": {
		scales: []string{"balance", "pèse lettre"}, thermometers: []string{"thermomètre"}, rulers: []string{"règle", "mètre ruban"},
		timers: []string{"minuteur", "horloge", "montre"}, jugs: []string{"verre doseur", "verre gradué"}, spoons: []string{"cuillère", "cuillères", "tasse"},
	},
	"de": {
		scales: []string{"waage", "küchenwaage", "feinwaage"}, thermometers: []string{"thermometer", "küchenthermometer"},
		rulers: []string{"lineal", "maßband"}, timers: []string{"uhr", "küchenuhr", "wecker", "timer"},
		jugs: []string{"messbecher", "messzylinder"}, spoons: []string{"löffel", "teelöffel", "esslöffel", "messlöffel", "tasse"},
	},
	"es": {
		scales: []string{"báscula", "balanza"}, thermometers: []string{"termómetro"}, rulers: []string{"regla", "cinta métrica"},
		timers: []string{"temporizador", "reloj"}, jugs: []string{"vaso medidor", "jarra medidora"}, spoons: []string{"cuchara", "cucharas", "taza"},
	},
	"nl": {
		scales: []string{"weegschaal", "keukenweegschaal"}, thermometers: []string{"thermometer"}, rulers: []string{"liniaal", "meetlint"},
		timers: []string{"kookwekker", "klok", "timer"}, jugs: []string{"maatbeker"}, spoons: []string{"lepel", "theelepel", "eetlepel", "maatlepel", "kop"},
	},
	"it": {
		scales: []string{"bilancia"}, thermometers: []string{"termometro"}, rulers: []string{"righello", "metro"},
		timers: []string{"timer", "orologio"}, jugs: []string{"caraffa graduata", "misurino"}, spoons: []string{"cucchiaio", "cucchiaino", "cucchiai", "tazza"},
	},
}
