package rules

// The demands of demands.go in the other languages that are read (from memory).

var demandsDE = []demand{
	{words: cutAll([]string{"schere", "bastelschere", "haushaltsschere", "stoffschere", "nadel", "nähnadel"}), unless: cutAll([]string{"stumpfe nadel", "plastiknadel"}), age: 6},
	{words: cutAll([]string{"ahle", "vorstecher"}), age: 8},
	{words: cutAll([]string{"heißklebepistole", "klebepistole", "bügeleisen"}), age: 10},
	{words: cutAll([]string{"messer", "bastelmesser", "cutter", "cuttermesser", "skalpell", "säge", "laubsäge", "herd", "backofen", "ofen"}), unless: cutAll([]string{"stumpfes messer", "buttermesser"}), age: 12},
	{words: cutAll([]string{"nähmaschine"}), age: 10, skill: "some practice"},
	{words: cutAll([]string{"bohrmaschine", "lötkolben"}), age: 14, skill: "some practice"},
	{words: cutAll([]string{"heißluftpistole"}), age: 16},
	{words: cutAll([]string{"ätznatron", "natriumhydroxid", "natronlauge"}), age: 16, skill: "some practice"},
	{words: cutAll([]string{"gasbrenner", "lötlampe", "brennofen", "drehbank", "bandsäge", "oberfräse"}), age: 18, skill: "experienced"},
}

var demandsFR = []demand{
	{words: cutAll([]string{"ciseaux", "aiguille", "aiguilles"}), unless: cutAll([]string{"aiguille à bout rond", "aiguille en plastique"}), age: 6},
	{words: cutAll([]string{"alêne", "poinçon"}), age: 8},
	{words: cutAll([]string{"pistolet à colle", "fer à repasser"}), age: 10},
	{words: cutAll([]string{"couteau", "cutter", "scalpel", "scie", "four", "cuisinière", "plaque de cuisson"}), unless: cutAll([]string{"couteau à beurre", "couteau de table"}), age: 12},
	{words: cutAll([]string{"machine à coudre"}), age: 10, skill: "some practice"},
	{words: cutAll([]string{"perceuse", "fer à souder"}), age: 14, skill: "some practice"},
	{words: cutAll([]string{"pistolet à air chaud", "décapeur thermique"}), age: 16},
	{words: cutAll([]string{"soude caustique", "hydroxyde de sodium"}), age: 16, skill: "some practice"},
	{words: cutAll([]string{"chalumeau", "four à céramique", "scie à ruban", "défonceuse"}), age: 18, skill: "experienced"},
}

var demandsES = []demand{
	{words: cutAll([]string{"tijeras", "aguja", "agujas"}), unless: cutAll([]string{"aguja roma", "aguja de plástico"}), age: 6},
	{words: cutAll([]string{"punzón", "lezna"}), age: 8},
	{words: cutAll([]string{"pistola de pegamento", "plancha"}), age: 10},
	{words: cutAll([]string{"cuchillo", "cúter", "bisturí", "sierra", "horno", "cocina", "fogón"}), unless: cutAll([]string{"cuchillo de mesa", "cuchillo de mantequilla"}), age: 12},
	{words: cutAll([]string{"máquina de coser"}), age: 10, skill: "some practice"},
	{words: cutAll([]string{"taladro", "soldador"}), age: 14, skill: "some practice"},
	{words: cutAll([]string{"pistola de aire caliente"}), age: 16},
	{words: cutAll([]string{"sosa cáustica", "hidróxido de sodio"}), age: 16, skill: "some practice"},
	{words: cutAll([]string{"soplete", "horno de cerámica", "torno", "sierra de cinta", "fresadora"}), age: 18, skill: "experienced"},
}

var demandsNL = []demand{
	{words: cutAll([]string{"schaar", "naald", "naalden"}), unless: cutAll([]string{"stompe naald", "plastic naald"}), age: 6},
	{words: cutAll([]string{"priem", "els"}), age: 8},
	{words: cutAll([]string{"lijmpistool", "strijkijzer"}), age: 10},
	{words: cutAll([]string{"mes", "hobbymes", "breekmes", "scalpel", "zaag", "figuurzaag", "oven", "fornuis", "kookplaat"}), unless: cutAll([]string{"botermes", "tafelmes"}), age: 12},
	{words: cutAll([]string{"naaimachine"}), age: 10, skill: "some practice"},
	{words: cutAll([]string{"boormachine", "soldeerbout"}), age: 14, skill: "some practice"},
	{words: cutAll([]string{"heteluchtpistool"}), age: 16},
	{words: cutAll([]string{"natronloog", "natriumhydroxide", "bijtende soda"}), age: 16, skill: "some practice"},
	{words: cutAll([]string{"gasbrander", "keramiekoven", "draaibank", "lintzaag", "bovenfrees"}), age: 18, skill: "experienced"},
}

var demandsIT = []demand{
	{words: cutAll([]string{"forbici", "ago", "aghi"}), unless: cutAll([]string{"ago a punta tonda", "ago di plastica"}), age: 6},
	{words: cutAll([]string{"punteruolo", "lesina"}), age: 8},
	{words: cutAll([]string{"pistola per colla", "colla a caldo", "ferro da stiro"}), age: 10},
	{words: cutAll([]string{"coltello", "taglierino", "bisturi", "sega", "seghetto", "forno", "fornello", "fornelli"}), unless: cutAll([]string{"coltello da burro", "coltello da tavola"}), age: 12},
	{words: cutAll([]string{"macchina da cucire"}), age: 10, skill: "some practice"},
	{words: cutAll([]string{"trapano", "saldatore"}), age: 14, skill: "some practice"},
	{words: cutAll([]string{"pistola ad aria calda"}), age: 16},
	{words: cutAll([]string{"soda caustica", "idrossido di sodio"}), age: 16, skill: "some practice"},
	{words: cutAll([]string{"cannello", "forno per ceramica", "tornio", "sega a nastro", "fresatrice"}), age: 18, skill: "experienced"},
}
