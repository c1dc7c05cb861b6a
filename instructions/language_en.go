package instructions

import (
	"strings"

	"tallyfold/kit"
)

var english = &language{
	tag:        "en",
	articles:   say("the", "your", "this", "that", "these", "those", "its", "their"),
	indefinite: say("a", "an"),
	of:         say("of"),
	ofThe:      say("of the", "of your", "of this", "of that", "of these", "of those", "of its", "of their"),
	ofThem:     say("of them"),
	each:       say("each", "every", "per", "apiece"),
	every:      say("each", "every", "per"),
	inAll:      say("in all", "in total", "altogether"),
	about:      say("about", "around", "roughly", "approximately", "approx", "circa", "ca"),
	exactly:    say("exactly", "just", "the"),
	to:         say("to"),
	upTo:       say("up to"),
	by:         say("by"),
	both:       say("both"),
	multiples:  map[string]int{"once": 1, "twice": 2, "thrice": 3},
	times:      say("times", "time"),
	more:       say("more", "further", "other"),
	again:      say("again"),
	all:        say("all", "everything"),
	whole:      say("whole", "entire"),
	rest: say("rest", "remainder", "remaining", "remains", "leftover", "leftovers", "left-over",
		"is left", "was left", "what's left", "are left", "that's left", "have left", "left over"),
	fractions: map[string]int64{
		"half": 2, "halves": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "fourth": 4, "fourths": 4,
		"fifth": 5, "fifths": 5, "sixth": 6, "sixths": 6, "eighth": 8, "eighths": 8, "tenth": 10, "tenths": 10,
	},
	notHalf: say("full", "way"),
	last:    say("other", "remaining", "last"),
	second:  say("second"),
	itself:  []string{"it", "them", "rest", "remainder", "what", "remaining"},
	packs: []string{"pack", "packet", "package", "bag", "bottle", "sachet", "tub", "tin", "pouch", "box", "tube",
		"skein", "roll", "sheet", "spool", "block", "bar", "envelope", "jar", "vial", "cake", "ball", "cone", "carton"},
	lotsOf:   say("of"),
	ordinals: say("a", "an", "first", "second", "third", "fourth", "fifth", "sixth", "next", "last", "another", "other"),
	rims:     say("below", "under", "beneath", "short", "within", "rim", "brim", "top", "edge", "line", "mark", "shoulder", "neck"),
	below:    say("below", "under", "beneath", "from"),
	edge:     say("rim", "brim", "top", "edge"),
	labels:   say("bag", "bags", "pack", "step", "steps", "size", "no", "number", "part", "page", "picture", "type", "grade", "jar", "figure"),
	joins:    say("of", "times", "more", "other", "and", "or", "to"),
	signals: map[kit.Signal][]string{kit.Danger: {"DANGER"}, kit.Warning: {"WARNING"}, kit.CautionWord: {"CAUTION"},
		kit.Notice: {"NOTICE"}},
	stem: singular,
}

// singular takes the s of an English plural off, well enough to compare two words.
func singular(word string) string {
	switch {
	case strings.HasSuffix(word, "ss"):
		return word
	case strings.HasSuffix(word, "xes"), strings.HasSuffix(word, "shes"), strings.HasSuffix(word, "ches"), strings.HasSuffix(word, "sses"):
		return word[:len(word)-2]
	case len(word) > 2 && strings.HasSuffix(word, "s"):
		return word[:len(word)-1]
	}
	return word
}
