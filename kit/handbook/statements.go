package handbook

import "tallyfold/kit"

// skinAndEyes are how cautions speak of skin and eyes.
var skinAndEyes = map[string][]string{
	"en": {"skin", "eye", "irritat", "sting"}, "fr": {"peau", "yeux", "irrit"}, "de": {"haut", "auge", "reiz"},
	"es": {"piel", "ojo", "irrit"}, "nl": {"huid", "oog", "ogen", "irrit"}, "it": {"pelle", "occhi", "irrit"},
}

// offTheSkin are how cautions speak of a thing that harms the skin it gets on. "Skin" alone is
// not among them: hot wax burns it too.
var offTheSkin = map[string][]string{
	"en": {"irritat", "allerg", "rash", "sting", "splash", "itch", "off skin", "off your skin", "on skin", "on your skin", "with skin", "your skin"},
	"fr": {"irrit", "allerg", "éruption", "éclabouss", "démang", "contact avec la peau", "sur la peau"},
	"de": {"reiz", "allerg", "ausschlag", "spritz", "juck", "auf die haut", "auf der haut", "hautkontakt", "von der haut"},
	"es": {"irrit", "alerg", "alérg", "erupci", "salpic", "pic", "contacto con la piel", "en la piel"},
	"nl": {"irrit", "allerg", "uitslag", "spat", "jeuk", "op de huid", "op je huid", "met de huid"},
	"it": {"irrit", "allerg", "eruzion", "schizz", "prud", "contatto con la pelle", "sulla pelle"},
}

var breathing = map[string][]string{
	"en": {"breath", "inhal", "fume", "vapour", "vapor", "ventilat"}, "fr": {"respir", "inhal", "vapeur", "aér"}, "de": {"atm", "dämpf", "lüft"},
	"es": {"respir", "inhal", "vapor", "ventil"}, "nl": {"adem", "damp", "ventil"}, "it": {"respir", "inal", "vapor", "ventil"},
}

var swallowing = map[string][]string{
	"en": {"swallow", "eat", "eating", "mouth", "drink"}, "fr": {"aval", "mang", "bouche", "boi"}, "de": {"schluck", "ess", "mund", "trink"},
	"es": {"trag", "comer", "coma", "boca", "beber", "beba"}, "nl": {"slik", "eet", "mond", "drink"}, "it": {"ingo", "mangi", "bocca", "bev"},
}

var fire = map[string][]string{
	"en": {"flam", "fire", "spark"}, "fr": {"flamme", "feu", "inflamm", "étincelle"}, "de": {"flamm", "feuer", "entzünd", "funken"},
	"es": {"llama", "fuego", "inflam", "chispa"}, "nl": {"vlam", "vuur", "brand", "vonk"}, "it": {"fiamm", "fuoco", "infiamm", "scintill"},
}

const ghs = "UN GHS, Rev. 10, hazard statements"

// statements are those H-statements of the GHS that packs of craft kits most often bear.
// Happens is the statement itself, to the letter, with the spelling of the list; the
// signal word is that of its class (for H411 and H412 it has none; they are notices).
func statements() []Hazard {
	row := func(id, statement, avoid string, signal kit.Signal, wear, place, aid string, answers map[string][]string) Hazard {
		return Hazard{
			ID: id, What: "a thing whose pack bears " + id, Happens: statement + ".", Avoid: avoid, Signal: signal,
			When: "a component with “hazards: " + id + "” is taken", Source: ghs, Known: "read",
			Wear: wear, Place: place, Aid: aid, Answers: answers,
		}
	}
	const (
		offSkin = "Wear gloves, and wash off splashes with soap and water."
		offEyes = "Keep it away from your eyes; if some gets in, rinse for several minutes, take contact lenses out and go on rinsing."
		offFire = "Keep it away from heat, sparks and flames, and close the pack when you have taken what you need."
		offAir  = "Open a window and do not breathe it in."
	)
	return []Hazard{
		row("H225", "Highly flammable liquid and vapor", offFire, kit.Danger, "", "nothing-that-burns", "fire", fire),
		row("H226", "Flammable liquid and vapor", offFire, kit.Warning, "", "nothing-that-burns", "fire", fire),
		row("H227", "Combustible liquid", offFire, kit.Warning, "", "nothing-that-burns", "fire", fire),
		row("H302", "Harmful if swallowed", "Do not eat or drink while you work, and keep it away from children.", kit.Warning, "", "", "swallowed", swallowing),
		row("H304", "May be fatal if swallowed and enters airways", "Keep it closed and away from children; if some is swallowed, do not make anyone vomit.", kit.Danger, "", "", "swallowed", swallowing),
		row("H314", "Causes severe skin burns and eye damage", "Wear goggles and long gloves; rinse splashes at once, with much water, and take off wet clothes.", kit.Danger, "goggles-and-gloves", "open-window", "eyes", skinAndEyes),
		row("H315", "Causes skin irritation", offSkin, kit.Warning, "gloves", "", "skin", offTheSkin),
		row("H317", "May cause an allergic skin reaction", offSkin, kit.Warning, "gloves", "", "rash", offTheSkin),
		row("H318", "Causes serious eye damage", "Wear goggles; if some gets in, rinse at once for several minutes, take contact lenses out and go on rinsing.", kit.Danger, "goggles-and-gloves", "", "eyes", skinAndEyes),
		row("H319", "Causes serious eye irritation", offEyes, kit.Warning, "goggles", "", "eyes", skinAndEyes),
		row("H335", "May cause respiratory irritation", offAir, kit.Warning, "", "open-window", "breathed-in", breathing),
		row("H336", "May cause drowsiness or dizziness", offAir, kit.Warning, "", "open-window", "breathed-in", breathing),
		row("H411", "Toxic to aquatic life with long lasting effects", "Do not pour it down a drain.", kit.Notice, "", "", "", drains),
		row("H412", "Harmful to aquatic life with long lasting effects", "Do not pour it down a drain.", kit.Notice, "", "", "", drains),
	}
}

var drains = map[string][]string{
	"en": {"drain", "sink", "water life", "aquatic"}, "fr": {"évier", "égout", "canalis", "aquatique"}, "de": {"abfluss", "ausguss", "gewässer", "wasserorgan"},
	"es": {"desagüe", "fregadero", "acuátic"}, "nl": {"afvoer", "gootsteen", "waterorgan"}, "it": {"scaric", "lavandino", "acquatic"},
}
