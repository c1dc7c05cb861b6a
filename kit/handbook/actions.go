package handbook

import "tallyfold/kit"

// The IDs of hazards that actions bring.
const (
	Hot       = "hot"
	HotPour   = "hot-pour"
	Microwave = "microwave"
	Flame     = "flame"
	Blender   = "blender"
	Blade     = "blade"

	Unattended = "unattended"
	HotGlass   = "hot-glass"
	Glass      = "glass"
	Burning    = "burning"
)

// ScaldsAt is the temperature, °C, from which a hot liquid is told as one: at 120 °F
// (48.9 °C) tap water burns an adult badly in five minutes, at 140 °F (60 °C) in six
// seconds (US Consumer Product Safety Commission, tap-water scald leaflet; read, 2nd hand).
const ScaldsAt = 49

// LeavesAt is how long a wait is, in seconds, from which people are taken to leave what
// stands on the heat (common practice, no source).
const LeavesAt = 5 * 60

const (
	scaldSource  = "US Consumer Product Safety Commission, tap-water scald leaflet"
	secondHand   = "read (2nd hand)"
	fromMemory   = "from memory"
	fromPractice = "common practice, no source"
)

// hotAnswers are how cautions speak of heat.
var hotAnswers = map[string][]string{
	"en": {"hot", "burn", "scald", "heat", "steam"},
	"fr": {"chaud", "brûl", "brul", "vapeur"},
	"de": {"heiß", "heiss", "verbrenn", "verbrüh", "dampf"},
	"es": {"calient", "quem", "vapor"},
	"nl": {"heet", "hete", "brand", "stoom"},
	"it": {"cald", "bollent", "scott", "brucia", "ustion", "vapore"},
}

// PutAway are words of a sentence that puts a tool away instead of using it, by language.
var PutAway = map[string][]string{
	"en": {"back", "away"}, "fr": {"ranger", "rangez", "remettez"}, "de": {"zurück", "weg", "aufräumen"},
	"es": {"guarde", "guardar"}, "nl": {"terug", "weg", "opruimen"}, "it": {"riponete", "rimettete"},
}

// HeatOff are words of a step that takes the heat away, by language.
var HeatOff = map[string][]string{
	"en": {"turn off", "turn it off", "switch off", "switch it off", "heat off", "off the heat", "off the stove", "off the hob", "off the boil", "off the hot plate",
		"take the pan off", "take it off", "lift it off", "lift it out", "lift the pan", "lift the pot", "lift the jug", "lift the bowl", "remove from", "remove it from", "unplug"},
	"fr": {"éteig", "hors du feu", "retirez du feu", "retirez-la du feu", "retirez-le du feu", "retirez la casserole", "retirez le pot", "coupez le feu"},
	"de": {"ausschalten", "abschalten", "herd aus", "platte aus", "hitze aus", "vom herd", "von der platte", "nimm den topf", "nehmen sie den topf", "aus dem wasserbad"},
	"es": {"apag", "del fuego", "retire la olla", "retire el cazo"},
	"nl": {"vuur uit", "plaat uit", "uitzetten", "uitschakelen", "van het vuur", "van de plaat", "haal de pan"},
	"it": {"spegn", "dal fuoco", "dal fornello", "togliete la pentola"},
}

// breaking is how cautions speak of glass.
var breaking = map[string][]string{
	"en": {"crack", "shatter", "break"}, "fr": {"fissur", "fêl", "éclat", "cass"}, "de": {"spring", "platzt", "platzen", "bersten", "birst", "zerspring", "zerbrech", "zerbrich"},
	"es": {"romp", "agriet", "estall"}, "nl": {"barst", "spring", "breek"}, "it": {"rott", "romp", "crep", "incrin"},
}

// glasses are words in the names of things of glass, by language; notGlasses names with one of
// them in it that are of something else.
var glasses = map[string][]string{
	"en": {"glass", "glasses", "jam jar", "preserving jar", "tumbler"}, "fr": {"verre", "verres", "pot de confiture", "bocal"},
	"de": {"-glas", "-gläser", "gläschen", "glasbecher", "glasschale", "glaskrug", "glasform"}, "es": {"vidrio", "cristal", "tarro de mermelada"},
	"nl": {"-glas", "-glazen", "jampot", "glaasje"}, "it": {"vetro", "vasetto di marmellata"},
}

var notGlasses = map[string][]string{
	"en": {"fibreglass", "fiberglass", "glass fibre", "glass fiber", "hourglass", "magnifying glass", "glass cutter"}, "fr": {"fibre de verre"},
	"de": {"plexiglas", "acrylglas"}, "es": {"fibra de vidrio"}, "nl": {"plexiglas"}, "it": {"fibra di vetro"},
}

var actions = []Hazard{
	{
		ID: Hot, What: "something is heated",
		Happens: "It gets hot enough to burn.",
		Avoid:   "Stay beside it until the heat is off, keep children and pets away, and hold hot things with oven gloves.",
		Signal:  kit.CautionWord, When: "a step warms something to 49 °C (120 °F) or more, or says no temperature",
		Source: scaldSource, Known: secondHand,
		Wear: "oven-gloves", Place: "level-table", Company: "adult-at-stove", Aid: "burn", Answers: hotAnswers,
	},
	{
		ID: HotPour, What: "something hot is poured",
		Happens: "What you pour is still hot enough to burn.",
		Avoid:   "Pour slowly and away from you, over a level, heatproof table, and do not move it until it has cooled.",
		Signal:  kit.CautionWord, When: "something of 49 °C (120 °F) or more goes from vessel to vessel or into containers",
		Source: scaldSource, Known: secondHand,
		Wear: "oven-gloves", Place: "level-table", Company: "adult-at-stove", Aid: "burn", Answers: hotAnswers,
	},
	{
		ID: Unattended, What: "heat that is on while the step waits",
		Happens: "What is left alone on the heat boils over, boils dry or catches fire.",
		Avoid:   "Stay in the room until the heat is off, and set a timer.",
		Signal:  kit.CautionWord, When: "a step waits five minutes or longer while what it, or an earlier one of its part, warmed is on the heat",
		Source: "", Known: fromPractice,
		Company: "adult-at-stove", Aid: "fire",
		Answers: map[string][]string{
			"en": {"stay", "do not leave", "don’t leave", "don't leave", "never leave", "leave the room", "watch", "unattended", "timer"}, "fr": {"restez", "quitt", "surveill", "minuteur"},
			"de": {"bleib", "verlass", "unbeaufsichtigt", "wecker", "timer", "aufsicht"}, "es": {"quéd", "qued", "vigil", "abandon", "temporizador"},
			"nl": {"blijf", "verlaat", "toezicht", "onbewaakt", "wekker"}, "it": {"restate", "restare", "rimanete", "sorvegli", "incustod", "timer"},
		},
	},
	{
		ID: HotGlass, What: "glass that is filled hot",
		Happens: "Glass can crack when something hot is poured into it, and what is in it runs out.",
		Avoid:   "Use only glass without chips or cracks, warm it first, stand it on a dry cloth or board, and pour slowly.",
		Signal:  kit.CautionWord, When: "a thing with glass in its name is filled at 49 °C (120 °F) or more",
		Source: "", Known: fromPractice,
		Place: "level-table", Aid: "cut",
		Answers: breaking,
		Tools:   glasses, Unless: notGlasses,
	},
	{
		ID: Glass, What: "glass that is worked in",
		Happens: "Glass that is knocked or dropped breaks into sharp pieces.",
		Avoid:   "Stand it well back from the edge, use none that is chipped or cracked, and pick up pieces with a brush, never with bare fingers.",
		Signal:  kit.CautionWord, When: "something goes for the first time into a thing with glass in its name, and is not hot",
		Source: "", Known: fromPractice,
		Place: "level-table", Aid: "cut",
		Answers: breaking, Tools: glasses, Unless: notGlasses,
	},
	{
		ID: Burning, What: "a candle that is burned",
		Happens: "A candle that burns sets alight what is near it.",
		Avoid:   "Burn it within sight, on a surface that bears heat, away from things that catch fire and from children and pets.",
		Signal:  kit.Warning, When: "the kit is sold as a candle; after the last step",
		Source: "ASTM F2058-07 (2021), its three topics", Known: secondHand,
		Place: "nothing-that-burns", Aid: "fire",
		Answers: map[string][]string{
			"en": {"within sight", "burn it", "burning it", "unattended"}, "fr": {"sans surveillance", "faites-la brûler"}, "de": {"unbeaufsichtigt", "brennen lassen", "brennende kerze"},
			"es": {"sin vigilancia", "encendida"}, "nl": {"zonder toezicht", "laten branden", "brandende kaars"}, "it": {"senza sorveglianza", "accesa"},
		},
	},
	{
		ID: Microwave, What: "a liquid is heated in a microwave oven",
		Happens: "A liquid from a microwave oven can boil up all at once when it is moved or stirred.",
		Avoid:   "Heat it in short bursts, let it stand for half a minute, stir, and keep your face away.",
		Signal:  kit.Warning, When: "a step that warms something works with a microwave oven",
		Source: "US Food and Drug Administration, consumer page on superheated water (2007)", Known: "read",
		Wear: "oven-gloves", Company: "adult-at-stove", Aid: "burn",
		Answers: map[string][]string{
			"en": {"microwave", "boil"}, "fr": {"micro-ondes", "bou"}, "de": {"mikrowelle", "siedeverzug", "koch"},
			"es": {"microondas", "herv"}, "nl": {"magnetron", "kook"}, "it": {"microonde", "boll"},
		},
		Tools: map[string][]string{
			"en": {"microwave"}, "fr": {"micro-ondes"}, "de": {"mikrowelle"}, "es": {"microondas"}, "nl": {"magnetron"}, "it": {"microonde"},
		},
	},
	{
		ID: Flame, What: "an open flame",
		Happens: "Hair, sleeves and paper catch fire quickly.",
		Avoid:   "Tie hair and sleeves back, clear the table, never leave the flame, and have a lid or water at hand.",
		Signal:  kit.Warning, When: "a step works with a lighter, matches, a burner or a torch",
		Source: "", Known: fromPractice,
		Place: "nothing-that-burns", Company: "adult-at-flame", Aid: "fire",
		Answers: map[string][]string{
			"en": {"fire", "flame"}, "fr": {"feu", "flamme"}, "de": {"feuer", "flamme", "brand"},
			"es": {"fuego", "llama"}, "nl": {"vuur", "vlam", "brand"}, "it": {"fuoco", "fiamm"},
		},
		Tools: map[string][]string{
			"en": {"lighter", "match", "matches", "burner", "torch", "blowtorch", "tealight"},
			"fr": {"briquet", "allumette", "allumettes", "réchaud", "chalumeau"},
			"de": {"feuerzeug", "streichholz", "streichhölzer", "brenner", "teelicht"},
			"es": {"mechero", "cerilla", "cerillas", "soplete"},
			"nl": {"aansteker", "lucifer", "lucifers", "brander", "theelichtje"},
			"it": {"accendino", "fiammifero", "fiammiferi", "cannello"},
		},
		Unless: map[string][]string{"en": {"torch lamp", "electric lighter"}},
	},
	{
		ID: Blender, What: "a stick blender in a deep vessel",
		Happens: "The blades cut, and what is in the vessel splashes when they come up into the air.",
		Avoid:   "Switch it on only below the surface, off before you lift it, and pull the plug before you touch the blades.",
		Signal:  kit.CautionWord, When: "a step works with a stick blender",
		Source: "", Known: fromPractice, Company: "adult-at-tools", Aid: "cut",
		Answers: map[string][]string{
			"en": {"blend", "blade", "splash"}, "fr": {"mixeur", "lame", "éclabouss"}, "de": {"mixer", "klinge", "spritz"},
			"es": {"batidora", "cuchilla", "salpic"}, "nl": {"mixer", "messen", "spat"}, "it": {"frullatore", "lame", "schizz"},
		},
		Tools: map[string][]string{
			"en": {"stick blender", "hand blender", "immersion blender"}, "fr": {"mixeur plongeant", "mixeur"}, "de": {"stabmixer", "pürierstab"},
			"es": {"batidora"}, "nl": {"staafmixer"}, "it": {"frullatore a immersione", "frullatore"},
		},
	},
	{
		ID: Blade, What: "a blade or a point",
		Happens: "It cuts or pricks.",
		Avoid:   "Cut away from you, keep the other hand out of the way, and put it down where nobody reaches into it.",
		Signal:  kit.CautionWord, When: "a step works with a knife, scissors, a saw, an awl or a needle",
		Source: "", Known: fromPractice, Company: "adult-at-tools", Aid: "cut",
		Answers: map[string][]string{
			"en": {"sharp", "cut", "prick", "blade", "needle"}, "fr": {"coup", "piqu", "tranch", "pointe", "aiguille"},
			"de": {"scharf", "schneid", "stech", "stich", "spitz", "nadel"}, "es": {"cort", "pinch", "afilad", "aguja"},
			"nl": {"scherp", "snij", "prik", "naald"}, "it": {"tagli", "pung", "affilat", "ago"},
		},
		Tools: map[string][]string{
			"en": {"knife", "scissors", "scalpel", "cutter", "saw", "awl", "needle", "clippers", "chisel"},
			"fr": {"couteau", "ciseaux", "scalpel", "cutter", "scie", "poinçon", "alêne", "aiguille"},
			"de": {"messer", "schere", "skalpell", "cutter", "säge", "ahle", "nadel"},
			"es": {"cuchillo", "tijeras", "bisturí", "cúter", "sierra", "punzón", "aguja"},
			"nl": {"mes", "schaar", "scalpel", "zaag", "priem", "naald"},
			"it": {"coltello", "forbici", "bisturi", "taglierino", "sega", "punteruolo", "ago"},
		},
		Unless: map[string][]string{"en": {"butter knife", "table knife", "palette knife", "plastic knife"}},
	},
}
