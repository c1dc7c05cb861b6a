package rules

// Italian words by which running text leaves an amount open or speaks of a tool.
// Common practice, no source.

var italianVague = vagueTable{
	wants: []string{"di", "d"},
	words: []vagueWord{
		{phrase: "un po' di"}, {phrase: "un po' d'"}, {phrase: "un poco di"}, {phrase: "un pizzico di"}, {phrase: "una manciata di"},
		{phrase: "un goccio di"}, {phrase: "un goccio d'"}, {phrase: "una spruzzata di"}, {phrase: "un filo di"}, {phrase: "un filo d'"},
		{phrase: "qualche goccia"}, {phrase: "alcune gocce"}, {phrase: "una piccola quantità"}, {phrase: "una buona quantità"},
		{phrase: "una buona dose"}, {phrase: "la quantità giusta"}, {phrase: "la giusta quantità"}, {phrase: "la quantità necessaria"},
		{phrase: "abbastanza", adding: true}, {phrase: "molto", adding: true, unless: []string{"lentamente", "piano"}}, {phrase: "molta", adding: true},
		{phrase: "abbondante", adding: true}, {phrase: "quanto basta"}, {phrase: "a piacere"}, {phrase: "a piacimento"},
		{phrase: "se necessario", adding: true}, {phrase: "al bisogno", adding: true},
		{phrase: "quasi pieno", level: true}, {phrase: "quasi piena", level: true}, {phrase: "quasi fino all'orlo", level: true},
		{phrase: "fin sotto il bordo", level: true}, {phrase: "appena sotto il bordo", level: true},
	},
	adding: []string{"aggiungi", "aggiungete", "aggiungere", "versa", "versate", "versare", "metti", "mettete", "mettere", "prendi", "prendete", "usa",
		"usate", "usare", "unisci", "unite", "spolvera", "cospargi", "mescola", "mescolate", "incorpora", "incorporate", "applica", "stendi", "diluisci"},
	filling: []string{"riempi", "riempite", "riempire", "versa", "versate", "versare", "cola", "colate"},
	never: []string{"tempo", "minuto", "minuti", "secondi", "ora", "ore", "giorno", "giorni", "pazienza", "cura", "attenzione", "spazio", "aria", "luce",
		"pratica", "forza", "fortuna", "aiuto", "pressione", "distanza"},
}

var italianTools = []toolWord{
	{called: "frullatore", words: []string{"frullatore", "minipimer"}, alike: []string{"mixer"}},
	{called: "frusta", words: []string{"frusta"}, alike: []string{"sbattitore"}},
	{called: "forbici", words: []string{"forbici", "forbice"}},
	{called: "taglierino", words: []string{"taglierino", "bisturi", "cutter"}, alike: []string{"coltello", "lama"}},
	{called: "tappetino da taglio", words: []string{"tappetino da taglio"}, alike: []string{"tagliere", "tappetino"}},
	{called: "termometro", words: []string{"termometro"}, alike: []string{"sonda"}},
	{called: "forno", words: []string{"forno"}, innocent: []string{"guanti da forno", "guanto da forno"}},
	{called: "microonde", words: []string{"microonde", "forno a microonde"}},
	{called: "bollitore", words: []string{"bollitore"}},
	{called: "imbuto", words: []string{"imbuto"}},
	{called: "colino", words: []string{"colino", "setaccio"}, alike: []string{"colapasta"}},
	{called: "martello", words: []string{"martello"}, alike: []string{"mazzuolo"}},
	{called: "ferro da stiro", words: []string{"ferro da stiro"}, alike: []string{"ferro"}},
	{called: "pinze", words: []string{"pinze", "pinza"}},
	{called: "pinzette", words: []string{"pinzette", "pinzetta"}},
	{called: "cacciavite", words: []string{"cacciavite"}},
	{called: "trapano", words: []string{"trapano"}},
	{called: "pistola per colla", words: []string{"pistola per colla", "pistola a caldo"}},
	{called: "asciugacapelli", words: []string{"asciugacapelli", "phon"}},
	{called: "macchina da cucire", words: []string{"macchina da cucire"}},
	{called: "cucitrice", words: []string{"cucitrice", "spillatrice"}},
	{called: "perforatrice", words: []string{"perforatrice", "fustella"}},
	{called: "mattarello", words: []string{"mattarello"}},
	{called: "righello", words: []string{"righello"}, alike: []string{"metro", "riga"}},
	{called: "caraffa graduata", words: []string{"caraffa graduata", "misurino"}, alike: []string{"caraffa", "cilindro"}},
	{called: "bilancia", words: []string{"bilancia"}},
	{called: "contagocce", words: []string{"contagocce", "pipetta"}, alike: []string{"siringa"}},
	{called: "pentolino", words: []string{"pentolino", "casseruola"}, alike: []string{"pentola", "tegame"}},
	{called: "teglia", words: []string{"teglia"}},
	{called: "occhiali di protezione", words: []string{"occhiali di protezione"}, alike: []string{"occhiali"}},
}

var italianNotMeant = []string{"senza", "non", "né", "mai", "nessun", "nessuna", "evita", "evitate", "o", "oppure", "come", "se"}
