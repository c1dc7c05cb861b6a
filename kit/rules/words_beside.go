package rules

// otherwise are words beside an amount that make it another amount than the one
// the steps take: a limit, a difference, a part. By language; of a language that is
// not here no typed amount is compared.
var otherwise = map[string][]string{
	"en": {"than", "within", "under", "over", "below", "above", "least", "most", "every", "per", "another", "extra", "spare",
		"more", "less", "fewer", "each", "further", "additional", "by", "between", "up", "last", "first", "next"},
	"fr": {"que", "moins", "plus", "sous", "dessous", "dessus", "maximum", "minimum", "chaque", "par", "autre", "autres", "supplémentaire",
		"supplémentaires", "chacun", "chacune", "entre", "jusqu", "dernier", "derniers", "premier", "premiers", "prochains", "encore"},
	"de": {"als", "unter", "über", "mindestens", "höchstens", "maximal", "je", "jede", "jedes", "jeden", "jeder", "pro", "weitere", "weiteren",
		"mehr", "weniger", "zusätzlich", "zusätzliche", "zwischen", "bis", "um", "letzten", "ersten", "nächsten", "noch", "reserve"},
	"es": {"que", "menos", "más", "bajo", "debajo", "encima", "máximo", "mínimo", "cada", "por", "otro", "otra", "otros", "otras", "adicional",
		"adicionales", "entre", "hasta", "últimos", "primeros", "extra"},
	"nl": {"dan", "onder", "boven", "minstens", "hoogstens", "maximaal", "minder", "meer", "elk", "elke", "per", "andere", "extra", "tussen", "tot",
		"laatste", "eerste", "volgende", "nog"},
	"it": {"che", "meno", "più", "sotto", "sopra", "massimo", "minimo", "almeno", "ogni", "per", "altro", "altra", "altri", "altre", "ulteriori",
		"ciascuno", "ciascuna", "tra", "fra", "fino", "ultimi", "primi", "extra"},
}

// betweenWords may stand between an amount and what it is of.
var betweenWords = map[string][]string{
	"en": {"of", "the", "your", "all"},
	"fr": {"de", "d", "du", "des", "la", "le", "les", "l", "votre"},
	"de": {"von", "vom", "der", "des", "dem", "deines", "deiner"},
	"es": {"de", "del", "la", "el", "los", "las", "su", "tu"},
	"nl": {"van", "de", "het", "je", "uw"},
	"it": {"di", "d", "del", "della", "dell", "dello", "dei", "delle", "la", "il", "l"},
}
