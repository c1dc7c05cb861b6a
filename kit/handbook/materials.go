package handbook

import "tallyfold/kit"

// The IDs of hazards that the program asks for by name.
const (
	Dust        = "dust"
	Lye         = "lye"
	Plaster     = "plaster"
	Flammable   = "flammable"
	FoamingBath = "foaming-bath"
)

// FoamingBathCaution is the statement of 21 CFR 740.17(b), to the letter; a product
// labelled as intended for use exclusively by adults need not bear it.
const FoamingBathCaution = "Use only as directed. Excessive use or prolonged exposure may cause irritation to skin and urinary tract. " +
	"Discontinue use if rash, redness, or itching occurs. Consult your physician if irritation persists. Keep out of reach of children."

// Powders are words in the names and looks of what is a dry powder, by language.
var Powders = map[string][]string{
	"en": {"powder"}, "fr": {"poudre"}, "de": {"pulver"}, "es": {"polvo", "polvos"}, "nl": {"poeder"}, "it": {"polvere"},
}

// materials are hazards that a maker says of a component, where no H-statement does.
var materials = []Hazard{
	{
		ID: Dust, What: "a fine dust", Happens: "The dust irritates nose and lungs.",
		Avoid:  "Open the bag slowly, pour from close by, work where the air moves, and wipe up with a damp cloth.",
		Signal: kit.CautionWord, When: "a component with “hazards: dust” is taken, or one that is packed by weight and called or looks like a powder", Known: fromPractice,
		Wear: "dust-mask", Place: "open-window", Aid: "breathed-in",
		Answers: map[string][]string{
			"en": {"dust", "breath", "sniff", "inhal"}, "fr": {"poussi", "respir", "inhal"}, "de": {"staub", "stäub", "einatm", "atme"},
			"es": {"polvo", "respir", "inhal"}, "nl": {"stof", "adem"}, "it": {"polver", "respir", "inal"},
		},
	},
	{
		ID: "stains", What: "a thing that stains", Happens: "It stains skin, cloth and worktops.",
		Avoid:  "Wear gloves and old clothes, cover the table, and wipe up drops at once.",
		Signal: kit.Notice, When: "a component with “hazards: stains” is taken", Known: fromPractice,
		Wear: "gloves", Place: "covered-table",
		Answers: map[string][]string{
			"en": {"stain"}, "fr": {"tach", "tein"}, "de": {"fleck", "färb"}, "es": {"manch", "tiñ"}, "nl": {"vlek", "verf"}, "it": {"macchi", "ting"},
		},
	},
	{
		ID: "allergen", What: "a thing that some people are allergic to", Happens: "Some people get a rash or worse from it.",
		Avoid:  "Read the name on the bag; if you have ever reacted to it, leave it out of your hands.",
		Signal: kit.CautionWord, When: "a component with “hazards: allergen” is taken", Known: fromPractice,
		Wear: "gloves", Aid: "rash",
		Answers: map[string][]string{
			"en": {"allerg", "react"}, "fr": {"allerg"}, "de": {"allerg"}, "es": {"alérg", "alerg"}, "nl": {"allerg"}, "it": {"allerg"},
		},
	},
	{
		ID: "small-parts", What: "parts small enough to swallow", Happens: "A small child can choke on small parts.",
		Avoid:  "Keep the box, and what falls from the table, away from children under three.",
		Signal: kit.Warning, When: "a component with “hazards: small-parts” is taken", Source: "16 CFR 1501 and 1500.19, by topic", Known: "read",
		Company: "no-small-children", Aid: "choking",
		Answers: map[string][]string{
			"en": {"chok", "swallow", "small part", "under three", "under 3"}, "fr": {"étouff", "aval", "trois ans"}, "de": {"erstick", "verschluck", "drei jahre"},
			"es": {"ahog", "asfix", "tragar", "tres años"}, "nl": {"stik", "inslik", "drie jaar"}, "it": {"soffoc", "ingo", "tre anni"},
		},
	},
	{
		ID: "sharp", What: "a part with a sharp edge or point", Happens: "It cuts or pricks.",
		Avoid:  "Take it by its blunt side and put it down where nobody reaches into it.",
		Signal: kit.CautionWord, When: "a component with “hazards: sharp” is taken", Known: fromPractice, Company: "adult-at-tools", Aid: "cut",
		Answers: map[string][]string{
			"en": {"sharp", "cut", "prick"}, "fr": {"coup", "piqu", "tranch", "pointu"}, "de": {"scharf", "schneid", "stech", "spitz"},
			"es": {"cort", "pinch", "afilad"}, "nl": {"scherp", "snij", "prik"}, "it": {"tagli", "pung", "affilat"},
		},
	},
	{
		ID: "like-food", What: "a thing that looks or smells like food", Happens: "It looks or smells good enough to eat, and is not food.",
		Avoid:  "Keep it away from children and from the kitchen table, and never put it into food packs.",
		Signal: kit.CautionWord, When: "a component with “hazards: like-food” is taken", Known: fromPractice, Company: "no-small-children", Aid: "swallowed",
		Answers: map[string][]string{
			"en": {"eat", "food", "mouth", "swallow"}, "fr": {"mang", "aliment", "bouche", "aval"}, "de": {"essen", "essbar", "lebensmittel", "mund", "schluck"},
			"es": {"comer", "alimento", "boca", "trag"}, "nl": {"eten", "eetbaar", "mond", "slik"}, "it": {"mangi", "aliment", "bocca", "ingo"},
		},
	},
	{
		ID: Flammable, What: "a liquid warmed to near its flash point, or beside a flame", Happens: "Its vapour can catch fire.",
		Avoid:  "Keep flames, sparks and hot plates away from it, and open a window.",
		Signal: kit.Warning, When: "a component with a “flash point” is taken into something as hot as that, or in a step with an open flame",
		Source: "16 CFR 1500.3 for the words by flash point", Known: "read", Place: "nothing-that-burns", Company: "adult-at-flame", Aid: "fire",
		Answers: map[string][]string{
			"en": {"flam", "fire", "vapour", "vapor"}, "fr": {"flamme", "feu", "vapeur", "inflamm"}, "de": {"flamm", "feuer", "dämpf", "entzünd"},
			"es": {"llama", "fuego", "vapor", "inflam"}, "nl": {"vlam", "vuur", "damp", "brand"}, "it": {"fiamm", "fuoco", "vapor", "infiamm"},
		},
	},
	{
		ID: Plaster, What: "plaster that heats up as it sets", Happens: "Setting plaster gets hot enough to burn deeply, and grips what is in it.",
		Avoid:  "Never put a hand, a foot or any other part of a body into it, and do not wash it down a sink.",
		Signal: kit.Warning, When: "a component with “hazards: plaster” is taken", Source: "supplier's sheets of gypsum plasters", Known: fromMemory,
		Wear: "dust-mask", Aid: "burn",
		Answers: map[string][]string{
			"en": {"burn", "heats"}, "fr": {"brûl", "chauff"}, "de": {"verbrenn", "erhitz"},
			"es": {"quem", "calient"}, "nl": {"verbrand", "brandwond"}, "it": {"ustion", "scott", "scald"},
		},
	},
	{
		ID: Lye, What: "lye, a strong alkali", Happens: "Lye burns skin and eyes deeply before it hurts, and gets hot in water.",
		Avoid:  "Wear goggles and long gloves, add the lye to the water and never the water to the lye, and keep vinegar off burns: rinse with water for a long time.",
		Signal: kit.Danger, When: "a component with “hazards: lye” is taken", Source: "GHS H314; common practice of soap makers", Known: fromMemory,
		Wear: "goggles-and-gloves", Place: "open-window", Company: "adults-only", Aid: "eyes",
		Answers: map[string][]string{
			"en": {"lye", "caustic", "alkali"}, "fr": {"soude", "caustique"}, "de": {"lauge", "ätz", "natron"}, "es": {"sosa", "cáustic", "lejía"},
			"nl": {"loog", "bijtend"}, "it": {"soda", "caustic", "liscivia"},
		},
	},
	{
		ID: FoamingBath, What: "a foaming bath product", Happens: FoamingBathCaution, Avoid: "",
		Signal: kit.CautionWord, When: "a component with “hazards: foaming-bath” is taken, unless the kit is for adults alone", Source: "21 CFR 740.17(b)", Known: "read",
		Aid: "rash",
		Answers: map[string][]string{
			"en": {"urinary"}, "fr": {"urinaire"}, "de": {"harnweg"}, "es": {"urinari"}, "nl": {"urineweg"}, "it": {"urinari"},
		},
	},
}
