package rules

// French words by which running text leaves an amount open or speaks of a tool.
// Common practice, no source.

var frenchVague = vagueTable{
	wants: []string{"de", "d"},
	words: []vagueWord{
		{phrase: "un peu de"}, {phrase: "un peu d'"}, {phrase: "un peu plus de"}, {phrase: "un peu plus d'"},
		{phrase: "une pincée de"}, {phrase: "une pincée d'"}, {phrase: "une poignée de"}, {phrase: "une poignée d'"},
		{phrase: "un filet de"}, {phrase: "un filet d'"}, {phrase: "un trait de"}, {phrase: "un trait d'"}, {phrase: "une noix de"},
		{phrase: "une giclée de"}, {phrase: "une giclée d'"}, {phrase: "quelques gouttes"}, {phrase: "une bonne dose"},
		{phrase: "une bonne quantité"}, {phrase: "une petite quantité"}, {phrase: "une grande quantité"},
		{phrase: "la bonne quantité"}, {phrase: "la quantité voulue"}, {phrase: "la quantité nécessaire"},
		{phrase: "quelques", adding: true, unless: []string{"gouttes", "degrés", "tours", "millimètres", "centimètres", "fois", "étapes"}},
		{phrase: "suffisamment de", adding: true}, {phrase: "suffisamment d'", adding: true},
		{phrase: "assez de", adding: true}, {phrase: "assez d'", adding: true},
		{phrase: "beaucoup de", adding: true}, {phrase: "beaucoup d'", adding: true},
		{phrase: "généreusement", adding: true}, {phrase: "à volonté", adding: true}, {phrase: "à votre goût"}, {phrase: "selon votre goût"},
		{phrase: "au besoin", adding: true}, {phrase: "si besoin", adding: true}, {phrase: "autant que nécessaire", adding: true},
		{phrase: "presque plein", level: true}, {phrase: "presque pleine", level: true}, {phrase: "juste sous le bord", level: true},
		{phrase: "presque jusqu'au bord", level: true}, {phrase: "jusqu'en haut", level: true},
	},
	adding: []string{"ajoutez", "ajouter", "ajoute", "versez", "verser", "verse", "mettez", "mettre", "mets", "incorporez", "incorporer",
		"prenez", "prendre", "utilisez", "utiliser", "déposez", "déposer", "saupoudrez", "saupoudrer", "diluez", "mélangez", "mélanger",
		"complétez", "appliquez", "appliquer", "étalez", "étaler", "mouillez"},
	filling: []string{"remplissez", "remplir", "remplis", "versez", "verser", "coulez", "couler", "complétez"},
	never: []string{"temps", "minute", "minutes", "seconde", "secondes", "heure", "heures", "jour", "jours", "semaines", "patience", "soin",
		"place", "espace", "air", "lumière", "pratique", "force", "chance", "aide", "pression", "recul", "distance", "marge"},
}

var frenchTools = []toolWord{
	{called: "mixeur", words: []string{"mixeur", "mixeur plongeant", "blender"}, alike: []string{"robot"}},
	{called: "fouet", words: []string{"fouet"}, alike: []string{"batteur", "mixeur"}},
	{called: "ciseaux", words: []string{"ciseaux", "paire de ciseaux"}, alike: []string{"cutter"}},
	{called: "cutter", words: []string{"cutter", "scalpel"}, alike: []string{"couteau", "lame"}},
	{called: "tapis de découpe", words: []string{"tapis de découpe"}, alike: []string{"planche", "tapis"}},
	{called: "thermomètre", words: []string{"thermomètre"}, alike: []string{"sonde"}},
	{called: "four", words: []string{"four"}, alike: []string{"cuisinière"}, innocent: []string{"gants de four", "gant de four", "au four et moulin"}},
	{called: "four à micro-ondes", words: []string{"four à micro-ondes", "micro-ondes"}, alike: []string{"micro ondes"}},
	{called: "bouilloire", words: []string{"bouilloire"}},
	{called: "entonnoir", words: []string{"entonnoir"}},
	{called: "passoire", words: []string{"passoire", "tamis"}, alike: []string{"tamis", "étamine"}},
	{called: "marteau", words: []string{"marteau"}, alike: []string{"maillet"}},
	{called: "fer à repasser", words: []string{"fer à repasser", "fer chaud"}, alike: []string{"fer"}},
	{called: "pinces", words: []string{"pince à épiler", "tenailles"}, alike: []string{"pince", "pinces"}},
	{called: "tournevis", words: []string{"tournevis"}},
	{called: "perceuse", words: []string{"perceuse"}},
	{called: "pistolet à colle", words: []string{"pistolet à colle"}},
	{called: "sèche-cheveux", words: []string{"sèche-cheveux"}, alike: []string{"sèche cheveux"}},
	{called: "machine à coudre", words: []string{"machine à coudre"}},
	{called: "agrafeuse", words: []string{"agrafeuse"}},
	{called: "perforatrice", words: []string{"perforatrice", "emporte-pièce"}, alike: []string{"emporte pièce"}},
	{called: "rouleau à pâtisserie", words: []string{"rouleau à pâtisserie"}, alike: []string{"rouleau"}},
	{called: "règle", words: []string{"règle graduée"}, alike: []string{"règle", "mètre ruban", "équerre"}},
	{called: "verre doseur", words: []string{"verre doseur", "verre gradué"}, alike: []string{"doseur", "pichet", "éprouvette"}},
	{called: "balance", words: []string{"balance de cuisine", "pèse-lettre"}, alike: []string{"balance"}},
	{called: "pipette", words: []string{"pipette"}, alike: []string{"compte gouttes", "compte-gouttes", "seringue"}},
	{called: "seringue", words: []string{"seringue"}, alike: []string{"pipette"}},
	{called: "bain-marie", words: []string{"bain-marie"}, alike: []string{"casserole", "bain marie"}},
	{called: "casserole", words: []string{"casserole"}, alike: []string{"poêlon", "faitout"}},
	{called: "plaque de cuisson", words: []string{"plaque de four", "plaque à pâtisserie"}, alike: []string{"plaque", "plateau"}},
	{called: "lunettes de protection", words: []string{"lunettes de protection"}, alike: []string{"lunettes"}},
}

var frenchNotMeant = []string{"sans", "pas", "ni", "jamais", "aucun", "aucune", "évitez", "ou", "comme", "si"}
