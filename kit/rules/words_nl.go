package rules

// Dutch words by which running text leaves an amount open or speaks of a tool.
// Common practice, no source.

var dutchVague = vagueTable{
	addingBehind: true,
	words: []vagueWord{
		{phrase: "een beetje", adding: true, unless: []string{"langer", "later", "koeler", "warmer", "hoger", "lager"}},
		{phrase: "een scheutje"}, {phrase: "een scheut"}, {phrase: "een flinke scheut"}, {phrase: "een snufje"}, {phrase: "een handvol"},
		{phrase: "een handje"}, {phrase: "een klodder"}, {phrase: "een paar druppels"}, {phrase: "enkele druppels"}, {phrase: "flink wat"},
		{phrase: "een paar", adding: true, unless: []string{"druppels", "graden", "millimeter", "centimeter", "slagen", "steken", "stappen", "keer"}},
		{phrase: "genoeg", adding: true}, {phrase: "voldoende", adding: true}, {phrase: "veel", adding: true}, {phrase: "ruim", adding: true, unless: []string{"op", "onder", "boven"}},
		{phrase: "naar smaak"}, {phrase: "naar wens", adding: true}, {phrase: "naar behoefte", adding: true}, {phrase: "indien nodig", adding: true},
		{phrase: "de juiste hoeveelheid"}, {phrase: "een kleine hoeveelheid"}, {phrase: "een flinke hoeveelheid"},
		{phrase: "bijna vol", level: true}, {phrase: "vlak onder de rand", level: true}, {phrase: "net onder de rand", level: true},
		{phrase: "bijna tot de rand", level: true},
	},
	adding: []string{"voeg", "toe", "toevoegen", "giet", "gieten", "schenk", "schenken", "doe", "neem", "gebruik", "strooi", "bestrooi", "meng", "roer",
		"erbij", "erin", "schep", "breng", "druppel", "smeer"},
	filling: []string{"vul", "vullen", "giet", "gieten", "schenk"},
	never: []string{"tijd", "minuten", "minuut", "seconden", "uur", "uren", "dagen", "geduld", "zorg", "ruimte", "plaats", "lucht", "licht", "oefening",
		"kracht", "geluk", "hulp", "druk", "afstand"},
}

var dutchTools = []toolWord{
	{called: "staafmixer", words: []string{"staafmixer", "blender"}, alike: []string{"mixer"}},
	{called: "garde", words: []string{"garde"}, alike: []string{"mixer"}},
	{called: "schaar", words: []string{"schaar"}},
	{called: "hobbymes", words: []string{"hobbymes", "stanleymes", "scalpel"}, alike: []string{"mes"}},
	{called: "snijmat", words: []string{"snijmat"}, alike: []string{"snijplank", "mat"}},
	{called: "thermometer", words: []string{"thermometer"}},
	{called: "oven", words: []string{"oven"}, innocent: []string{"oven want"}},
	{called: "magnetron", words: []string{"magnetron"}},
	{called: "waterkoker", words: []string{"waterkoker"}, alike: []string{"ketel"}},
	{called: "trechter", words: []string{"trechter"}},
	{called: "zeef", words: []string{"zeef", "vergiet"}},
	{called: "hamer", words: []string{"hamer"}},
	{called: "strijkijzer", words: []string{"strijkijzer"}},
	{called: "tang", words: []string{"tang", "buigtang"}},
	{called: "pincet", words: []string{"pincet"}},
	{called: "schroevendraaier", words: []string{"schroevendraaier"}},
	{called: "boormachine", words: []string{"boormachine"}, alike: []string{"boor"}},
	{called: "lijmpistool", words: []string{"lijmpistool"}},
	{called: "föhn", words: []string{"föhn", "haardroger"}},
	{called: "naaimachine", words: []string{"naaimachine"}},
	{called: "nietmachine", words: []string{"nietmachine"}},
	{called: "perforator", words: []string{"perforator", "gaatjestang"}},
	{called: "deegroller", words: []string{"deegroller"}, alike: []string{"roller"}},
	{called: "liniaal", words: []string{"liniaal"}, alike: []string{"meetlint"}},
	{called: "maatbeker", words: []string{"maatbeker", "maatcilinder"}, alike: []string{"kan", "beker"}},
	{called: "keukenweegschaal", words: []string{"keukenweegschaal", "weegschaal"}},
	{called: "pipet", words: []string{"pipet", "druppelaar"}, alike: []string{"spuit"}},
	{called: "steelpan", words: []string{"steelpan", "kookpan"}, alike: []string{"pan"}},
	{called: "bakplaat", words: []string{"bakplaat"}, alike: []string{"plaat"}},
	{called: "veiligheidsbril", words: []string{"veiligheidsbril"}, alike: []string{"bril"}},
}

var dutchNotMeant = []string{"zonder", "geen", "niet", "nooit", "of", "als", "zoals", "vermijd", "noch"}
