package instructions

import (
	"strings"

	"tallyfold/kit"
)

var italian = &language{
	tag:    "it",
	elided: []string{"l'", "dell'", "d'", "all'", "nell'", "dall'", "sull'", "un'", "tutt'", "mezz'", "quest'", "c'"},
	articles: say("la", "il", "lo", "l'", "i", "gli", "le", "tuo", "tua", "tuoi", "tue", "suo", "sua", "suoi", "sue", "questo",
		"questa", "quest'", "questi", "queste", "vostro", "vostra", "vostri", "vostre"),
	indefinite:  say("un", "una", "un'", "uno"),
	of:          say("di", "d'", "del", "della", "dell'", "dello", "dei", "degli", "delle"),
	ofThe:       say("del", "della", "dell'", "dello", "dei", "degli", "delle", "di questi", "di queste"),
	ofThem:      say("di essi", "di esse", "di loro"),
	each:        say("ciascuno", "ciascuna", "ciascun", "ogni", "ognuno", "ognuna", "cadauno", "l' uno", "l' una"),
	every:       say("ogni"),
	per:         say("per", "a"),
	inAll:       say("in tutto", "in totale", "complessivamente"),
	about:       say("circa", "all' incirca", "pressappoco", "approssimativamente", "ca", "intorno a", "quasi"),
	aboutBehind: say("circa"),
	exactly:     say("esattamente", "precisamente", "i", "le"),
	to:          say("a", "fino a", "ai"),
	fillTo:      say("fino a"),
	byHead:      say("di"),
	both:        say("entrambi", "entrambe", "tutti e due", "tutte e due"),
	multiples:   map[string]int{"una volta": 1},
	times:       say("volte", "volta"),
	more:        say("altri", "altre", "altra", "altro", "in più", "ancora"),
	again:       say("di nuovo", "nuovamente", "ancora", "un' altra volta"),
	all:         say("tutti", "tutte"),
	whole:       say("tutto", "tutta", "tutt'", "intero", "intera", "interi", "intere", "completo", "completa"),
	rest: say("resto", "rimanente", "rimanenti", "restante", "restanti", "avanzo", "quel che resta", "che resta", "che restano",
		"quello che rimane", "che rimane", "che rimangono", "ciò che resta", "rimasto", "rimasta", "rimasti", "rimaste"),
	fractions: map[string]int64{
		"metà": 2, "mezzo": 2, "mezza": 2, "mezz'": 2, "terzo": 3, "terzi": 3, "quarto": 4, "quarti": 4, "quinto": 5, "quinti": 5,
		"sesto": 6, "sesti": 6, "ottavo": 8, "ottavi": 8, "decimo": 10, "decimi": 10,
	},
	notHalf:   say("pieno", "piena", "pieni", "piene"),
	last:      say("altro", "altra", "altri", "altre", "ultimo", "ultima", "ultimi", "ultime"),
	second:    say("seconda"),
	remaining: say("rimanente", "rimanenti", "restante", "restanti", "che resta", "che rimane", "rimasta", "rimasto"),
	itself:    []string{"esso", "essa", "essi", "resto", "quello", "quel", "ciò"},
	packs: []string{"pacco", "pacchetto", "confezione", "bustina", "busta", "sacchetto", "sacco", "bottiglia", "bottiglietta", "flacone",
		"barattolo", "lattina", "scatola", "tubo", "tubetto", "matassa", "rotolo", "foglio", "bobina", "blocco", "panetto", "vasetto",
		"fiala", "gomitolo", "cartone"},
	lotsOf: say("di", "da"),
	ordinals: say("un", "una", "un'", "uno", "primo", "prima", "secondo", "seconda", "terzo", "terza", "quarto", "quarta", "quinto",
		"quinta", "sesto", "sesta", "prossimo", "prossima", "ultimo", "ultima", "altro", "altra"),
	rims:   say("sotto", "bordo", "orlo", "raso", "linea", "segno", "collo", "tacca"),
	labels: say("busta", "bustina", "pacco", "passo", "passi", "misura", "n", "numero", "parte", "pagina", "immagine", "tipo", "vasetto", "figura"),
	joins:  say("di", "del", "della", "dei", "delle", "volte", "volta", "altri", "altre", "e", "o", "a"),
	signals: map[kit.Signal][]string{kit.Danger: {"PERICOLO"}, kit.Warning: {"AVVERTENZA"}, kit.CautionWord: {"ATTENZIONE"},
		kit.Notice: {"AVVISO", "NOTA"}},
	stem: func(word string) string { return strings.TrimRight(strip(plain(word), 3, "a", "e", "i", "o"), "h") },
}
