package rules

// actionVerbs by language: words that order a handling when they begin a sentence.
// A step is written in orders ("Press the stickers under the feet"), so that its
// sentences tell its actions; what only explains begins otherwise.
var actionVerbs = map[string][]string{
	"en": {
		"add", "apply", "arrange", "assemble", "attach", "bake", "beat", "bend", "blend", "boil", "braid", "break", "bring", "brush",
		"burnish", "butter", "carve", "cast", "catch", "chill", "chop", "clamp", "clean", "clear", "clip", "close", "coat", "coil",
		"collect", "combine", "cook", "cool", "count", "cover", "crimp", "crush", "curl", "cut", "dab", "dip", "dissolve", "divide",
		"drain", "drape", "draw", "drill", "drip", "drizzle", "drop", "dry", "dust", "dye", "empty", "even", "fasten", "felt", "file",
		"fill", "finish", "fit", "fix", "flatten", "flip", "fold", "form", "freeze", "gather", "glue", "go", "grate", "grease", "grind",
		"hammer", "hang", "heat", "hold", "hook", "insert", "iron", "join", "knead", "knit", "knock", "knot", "lace", "ladle", "lay",
		"leave", "let", "level", "lift", "line", "loosen", "lower", "make", "mark", "mask", "mash", "massage", "measure", "melt", "mix",
		"moisten", "mould", "move", "nail", "nestle", "open", "pack", "paint", "paste", "peel", "pierce", "pin", "pinch", "place", "plait",
		"polish", "pop", "pour", "press", "prick", "pull", "punch", "push", "put", "reheat", "remove", "rest", "rinse", "roll", "rub",
		"sand", "saw", "scatter", "scoop", "scrape", "screw", "seal", "secure", "set", "sew", "shake", "shape", "sharpen", "shave",
		"shut", "sieve", "sift", "simmer", "skim", "slice", "slide", "slip", "smooth", "snip", "soak", "spoon", "spray", "spread",
		"sprinkle", "squeeze", "stack", "stand", "steep", "stick", "stir", "stitch", "straighten", "strain", "stretch", "string", "strip",
		"swirl", "take", "tap", "tape", "tear", "thread", "tie", "tighten", "tilt", "tint", "tip", "top", "trace", "transfer", "trim",
		"tuck", "turn", "twist", "unfold", "unmould", "untie", "unwrap", "warm", "wash", "wax", "weave", "weigh", "wet", "whisk", "wind",
		"wipe", "work", "wrap", "wring", "zero",
	},
}
