package instructions

import (
	"strings"

	"tallyfold/kit"
)

var spanish = &language{
	tag:         "es",
	articles:    say("la", "el", "los", "las", "lo", "su", "sus", "tu", "tus", "este", "esta", "estos", "estas", "ese", "esa", "esos", "esas"),
	indefinite:  say("un", "una", "uno"),
	of:          say("de", "del"),
	ofThe:       say("de los", "de las", "de la", "del", "de sus", "de tus", "de su", "de tu", "de estos", "de estas"),
	ofThem:      say("de ellos", "de ellas"),
	each:        say("cada", "cada uno", "cada una"),
	every:       say("cada"),
	per:         say("por"),
	inAll:       say("en total", "en conjunto", "en advice"),
	about:       say("aproximadamente", "unos", "unas", "alrededor de", "cerca de", "aprox", "casi", "ca", "circa"),
	aboutBehind: say("aproximadamente", "más o menos", "aprox"),
	exactly:     say("exactamente", "justo", "los", "las"),
	to:          say("a", "hasta", "hasta los"),
	fillTo:      say("hasta"),
	by:          say("en"),
	both:        say("ambos", "ambas"),
	multiples:   map[string]int{"una vez": 1},
	times:       say("veces", "vez"),
	more:        say("más", "otros", "otras", "otra", "otro"),
	again:       say("otra vez", "de nuevo", "nuevamente"),
	all:         say("todos", "todas"),
	whole:       say("advice", "toda", "entero", "entera", "enteros", "enteras", "completo", "completa", "totalidad"),
	notAll:      say("sobre advice", "del advice", "advice el tiempo", "advice el rato"),
	rest: say("resto", "restante", "restantes", "sobrante", "sobrantes", "lo que queda", "que queda", "que quedan", "lo que sobra",
		"que sobra", "que sobran"),
	fractions: map[string]int64{
		"mitad": 2, "medio": 2, "media": 2, "tercio": 3, "tercios": 3, "tercera": 3, "cuarto": 4, "cuartos": 4, "cuarta": 4,
		"quinto": 5, "quintos": 5, "sexto": 6, "sextos": 6, "octavo": 8, "octavos": 8, "décimo": 10, "décimos": 10,
	},
	notHalf:   say("lleno", "llena", "llenos", "llenas"),
	halves:    say("medio", "media"),
	last:      say("otro", "otra", "otros", "otras", "último", "última", "últimos", "últimas"),
	second:    say("segunda"),
	remaining: say("restante", "restantes", "que queda", "que quedan", "sobrante"),
	itself:    []string{"ello", "eso", "ellos", "ellas", "resto", "lo", "él", "ella"},
	packs: []string{"paquete", "bolsa", "bolsita", "sobre", "botella", "frasco", "bote", "lata", "caja", "tubo", "madeja", "rollo",
		"hoja", "bobina", "bloque", "barra", "tarro", "vial", "pastilla", "ovillo", "cartón", "saquito"},
	lotsOf: say("de"),
	ordinals: say("un", "una", "primer", "primero", "primera", "segundo", "segunda", "tercer", "tercero", "tercera", "cuarto", "cuarta",
		"quinto", "quinta", "sexto", "sexta", "siguiente", "próximo", "próxima", "último", "última", "otro", "otra"),
	rims:   say("debajo", "bajo", "borde", "ras", "tope", "arriba", "línea", "marca", "cuello", "hombro"),
	below:  say("debajo", "por debajo", "bajo", "del"),
	edge:   say("borde", "tope"),
	labels: say("bolsa", "bolsas", "paquete", "paso", "pasos", "talla", "tamaño", "n", "número", "parte", "página", "imagen", "tipo", "vaso", "figura"),
	joins:  say("de", "del", "veces", "vez", "más", "otros", "otras", "y", "o", "a"),
	signals: map[kit.Signal][]string{kit.Danger: {"PELIGRO"}, kit.Warning: {"ADVERTENCIA"}, kit.CautionWord: {"PRECAUCIÓN", "ATENCIÓN"},
		kit.Notice: {"AVISO", "NOTA"}},
	stem: func(word string) string {
		return strings.TrimSuffix(strip(plain(word), 3, "es", "s", "e"), "e")
	},
}
