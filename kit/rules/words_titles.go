package rules

import "strings"

// A titleTable is what is needed to judge the titles of steps in one language.
type titleTable struct {
	// verbs are orders; a title may begin with one that is not listed.
	verbs map[string]bool
	// leads may stand before the order: "now", "carefully", "to finish,".
	leads map[string]bool
	// numbering may stand before it with a figure: "step 2:", "day one".
	numbering map[string]bool
	// clauses begin a clause that the order follows behind a comma: "when it is set, …".
	clauses map[string]bool
	// joining words stand between two orders: "cut and fold".
	joining map[string]bool
	// speech begins what is no order and tells all the same what to do: "how to …".
	speech map[string]bool
	// articles begin a noun, and show that the word before them is a verb.
	articles map[string]bool
	// nouns are what titles without an order begin with; nounEnds how more of them end.
	nouns    map[string]bool
	nounEnds []string
	// being joins with a participle to a passive: "is melted".
	being map[string]bool
	// participles that do not end like most, with their orders.
	participles map[string]string
	// ing ends a title that names an action: let pass. Not in these words.
	ing    string
	notIng map[string]bool
	// asOrders gives the order in a noun: "preparation", "prepare".
	asOrders map[string]string
}

func wordSet(all string) map[string]bool {
	set := map[string]bool{}
	for _, word := range strings.Fields(all) {
		set[word] = true
	}
	return set
}

// titleWords by language. A further language is one more entry.
var titleWords = map[string]titleTable{
	"en": {
		verbs: wordSet(`add adjust admire air align allow answer apply arrange assemble attach bake baste bathe be beat begin
			bend bind blanch bleach blend block blot blow boil bolt bond braid break bring brush buff build burn burnish burn bury
			button buy carry carve cast catch centre center chain chalk change charge check chill chip choose chop clamp clean clear
			clip close coat coil collect colour color comb combine come compare complete connect cook cool copy cord count cover
			crack crease crimp crochet crop cross crumble crush cure curl cut dab damp dampen darn decide decorate degas dilute dip
			discard dispose dissolve distribute divide do double drain drape draw dress drill drip drop dry dust dye ease embed emboss
			embroider empty enjoy enlarge etch even examine expose extend fasten feed feel felt fetch fill filter find finish fire fit
			fix flatten flip float fluff fold follow form frame freeze fuse gather get give glaze glue go grate grind grip group grout
			guide hammer hand handle hang harden have heat hem hold hook hull immerse insert inspect install invert iron join keep
			knead knit knot knock label lace ladle lash lather lay lead leave let level lift light line link list load lock look loop
			loosen lower make mark mask massage match measure meet melt mend mill mind mist mitre mix model moisten mordant mould mold
			mount move nail name neaten notch note number observe oil open order organise organize overlap pack pad paint pair pare
			part paste pat peel perforate personalise personalize pick pierce pin pinch place plait plan plane plant play pleat plug
			point polish pop portion position pound pour practise practice preheat prepare press prick prime print protect pull pulse
			punch push put rasp reach read record refill reheat release relax remove reopen repair repeat replace repot reserve reshape
			rest return reverse review rinse roll rotate rub run sand satin save saw scent scoop score scour scrape scrub seal seam
			season secure select separate serve set sew shake shape share sharpen shave shift show shred shut sieve sift simmer sit
			size sketch skim skip slice slide slip slit smell smooth snap snip soak soften solder solve sort space spin splash splice
			split sponge spoon spot spray spread sprinkle square squeeze stack stain stamp stand staple start stay steam steep stencil
			step stick stiffen stir stitch stop store straighten strain stretch string strip stroke stud stuff submerge support swirl
			switch take tap tape taper tear temper tend test thin thread tidy tie tighten tilt tint tip top toss touch trace transfer
			trim try tuck tumble turn twist unclip undo unfold unhook unmould unmold unpack unplug unroll unscrew untie unwind unwrap
			use varnish ventilate vent wait warm wash watch water wax wear weave weigh wet whip whisk whittle wind wipe wire wish work
			wrap wring write zero zip bag box bottle bead bottle build can cap cork crate dish film fill foil jar lid pot sleeve sheet
			tag warp weft ply skein reel spindle card bundle knit crown gild score jog prep prime lacquer
			thicken thin mulch sow dig feed prune plant graft brew ferment infuse steep macerate
			ask tell call say learn know see start welcome ensure verify confirm avoid don't`),
		leads: wordSet(`now then first next finally lastly again also always never please just simply carefully once more to
			and only meanwhile together ahead last`),
		numbering: wordSet("step stage part day week session lesson round phase point no number task section"),
		clauses: wordSet(`when once after before if while until as for with without in on at by from during to using through
			instead between`),
		joining: wordSet("and then or"),
		speech:  wordSet("how what why where who which you we let's lets time ready it's there's is are do does can may not no yes"),
		articles: wordSet(`the a an your our each every all both some any this that these those its his her their one two three
			four five six seven eight nine ten another more it them everything half up out in off down over on together apart away
			into onto through back round around well until`),
		nouns: wordSet(`final safety optional quick general basic materials ingredients
			equipment tools supplies components contents assembly summary overview introduction notes tips care storage workflow
			hints method steps instructions wicks touches details basics beginning end ending`),
		nounEnds: []string{"tion", "sion", "ment", "ness", "ity", "ance", "ence", "ism", "ology", "ship"},
		being:    wordSet("is are was were be been being gets get has have will must should"),
		participles: map[string]string{
			"cut": "cut", "set": "set", "put": "put", "built": "build", "bound": "bind", "drawn": "draw", "held": "hold", "hung": "hang",
			"kept": "keep", "laid": "lay", "left": "leave", "made": "make", "sewn": "sew", "shaken": "shake", "shut": "shut",
			"spread": "spread", "taken": "take", "thrown": "throw", "torn": "tear", "woven": "weave", "wound": "wind", "done": "do",
			"begun": "begin", "beaten": "beat", "bent": "bend", "broken": "break", "dealt": "deal", "driven": "drive", "fed": "feed",
			"found": "find", "frozen": "freeze", "given": "give", "ground": "grind", "split": "split", "stuck": "stick", "wrung": "wring",
		},
		ing:    "ing",
		notIng: wordSet("string ring spring wing thing king lining ceiling building clothing packaging padding"),
		asOrders: map[string]string{
			"preparation": "prepare", "preparations": "prepare", "assembly": "assemble", "decoration": "decorate", "application": "apply",
			"completion": "complete", "insertion": "insert", "division": "divide", "attachment": "attach", "arrangement": "arrange",
			"measurement": "measure", "adjustment": "adjust", "storage": "store",
			"installation": "install", "combination": "combine", "separation": "separate", "selection": "choose",
			"removal": "remove", "final": "finish", "decorations": "decorate", "filtration": "filter", "colouration": "colour",
		},
	},
}
