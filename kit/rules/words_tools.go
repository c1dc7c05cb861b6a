package rules

import "slices"

// A toolWord is a word by which running text speaks of a tool.
type toolWord struct {
	// called is what the finding calls it; other kit.yaml names that mean the same
	// tool are in alike.
	called string
	words  []string
	alike  []string
	// innocent phrases hold the word and mean something else.
	innocent []string
}

// toolWords by language. Only tools that some kitchens or workshops lack, and
// words that hardly ever mean something else: a tap, a table and a hand are there.
var toolWords = map[string][]toolWord{
	"en": {
		{called: "blender", words: []string{"blender", "liquidiser"}, alike: []string{"mixer", "food processor"}},
		{called: "food processor", words: []string{"food processor"}, alike: []string{"blender"}},
		{called: "whisk", words: []string{"whisk", "whisking"}, alike: []string{"mixer", "beater", "frother"},
			innocent: []string{"whisk away", "whisk off"}},
		{called: "scissors", words: []string{"scissors", "shears"}, alike: []string{"snips", "cutter"}},
		{called: "craft knife", words: []string{"craft knife", "scalpel"}, alike: []string{"knife", "blade", "cutter"}},
		{called: "cutting mat", words: []string{"cutting mat"}, alike: []string{"cutting board", "mat", "board"}},
		{called: "thermometer", words: []string{"thermometer"}, alike: []string{"temperature probe", "probe"}},
		{called: "oven", words: []string{"oven"}, alike: []string{"cooker", "stove"},
			innocent: []string{"oven glove", "oven mitt", "oven cloth", "oven-proof dish"}},
		{called: "microwave", words: []string{"microwave", "microwave oven"}, innocent: []string{"microwave safe"}},
		{called: "kettle", words: []string{"kettle"}},
		{called: "funnel", words: []string{"funnel"}},
		{called: "sieve", words: []string{"sieve", "strainer", "colander"}, alike: []string{"sifter", "cheesecloth", "muslin"}},
		{called: "hammer", words: []string{"hammer"}, alike: []string{"mallet"}},
		{called: "mallet", words: []string{"mallet"}, alike: []string{"hammer"}},
		{called: "iron", words: []string{"iron", "ironing board"}, alike: []string{"press"},
			innocent: []string{"iron oxide", "iron-on transfer", "cast iron", "wrought iron", "iron powder", "iron filing",
				"iron water", "iron mordant", "iron sulphate", "iron sulfate", "iron out", "iron pigment", "iron black"}},
		{called: "pliers", words: []string{"pliers"}},
		{called: "tweezers", words: []string{"tweezers"}},
		{called: "screwdriver", words: []string{"screwdriver"}},
		{called: "drill", words: []string{"drill"}, innocent: []string{"drill hole", "drill stitch"}},
		{called: "saw", words: []string{"hacksaw", "fretsaw", "coping saw"}, alike: []string{"saw"}},
		{called: "glue gun", words: []string{"glue gun"}},
		{called: "heat gun", words: []string{"heat gun"}, alike: []string{"hair dryer", "hairdryer"}},
		{called: "hair dryer", words: []string{"hair dryer", "hairdryer"}, alike: []string{"heat gun"}},
		{called: "sewing machine", words: []string{"sewing machine"}},
		{called: "stapler", words: []string{"stapler"}},
		{called: "hole punch", words: []string{"hole punch"}, alike: []string{"punch"}},
		{called: "rolling pin", words: []string{"rolling pin"}},
		{called: "ruler", words: []string{"ruler"}, alike: []string{"tape measure", "measuring tape", "set square"}},
		{called: "tape measure", words: []string{"tape measure", "measuring tape"}, alike: []string{"ruler"}},
		{called: "measuring jug", words: []string{"measuring jug", "measuring cylinder"}, alike: []string{"jug", "measuring cup", "cylinder", "beaker"}},
		{called: "measuring spoons", words: []string{"measuring spoon"}, alike: []string{"spoon", "teaspoon"}},
		{called: "kitchen scale", words: []string{"kitchen scale", "weighing scale", "digital scale"}, alike: []string{"scale", "balance"}},
		{called: "spray bottle", words: []string{"spray bottle"}, alike: []string{"mister", "atomiser"}},
		{called: "pipette", words: []string{"pipette"}, alike: []string{"dropper", "syringe"}},
		{called: "syringe", words: []string{"syringe"}, alike: []string{"pipette", "dropper"}},
		{called: "double boiler", words: []string{"double boiler", "bain-marie"}, alike: []string{"saucepan", "pan", "pot"}},
		{called: "saucepan", words: []string{"saucepan"}, alike: []string{"pan", "pot"}},
		{called: "baking tray", words: []string{"baking tray", "baking sheet"}, alike: []string{"tray", "tin"}},
		{called: "embroidery hoop", words: []string{"embroidery hoop"}, alike: []string{"hoop", "frame"}},
		{called: "goggles", words: []string{"goggles"}, alike: []string{"eye protection", "safety glasses"}},
		{called: "spirit level", words: []string{"spirit level"}},
	},
}

// A toolSense is a tool word with all its phrases cut into words.
type toolSense struct {
	toolWord
	names, alikes, innocents [][]string
}

// toolSenses has the tool words of each language, cut.
var toolSenses = cutTools()

func cutTools() map[string][]toolSense {
	all := map[string][]toolSense{}
	for language, table := range toolWords {
		for _, tool := range table {
			all[language] = append(all[language], toolSense{
				toolWord: tool, names: cutAll(tool.words), innocents: cutAll(tool.innocent),
				alikes: cutAll(slices.Concat([]string{tool.called}, tool.words, tool.alike)),
			})
		}
	}
	return all
}

func cutAll(names []string) [][]string {
	all := make([][]string, len(names))
	for i, name := range names {
		all[i] = wordsOf(name)
	}
	return all
}

// notMeant are words before the name of a tool which say that it is not used, or
// only one of several ways.
var notMeant = map[string][]string{
	"en": {"without", "no", "not", "never", "don't", "don’t", "avoid", "instead", "than", "like", "or", "if", "unlike"},
}
