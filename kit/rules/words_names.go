package rules

// A nameTable is what is needed to compare the words of links with the names of
// things in one language.
type nameTable struct {
	// fillers name nothing: articles, amounts, packs, sizes, states.
	fillers map[string]bool
	// before a word that may be an order these show that it names something: "the
	// thread", "of tape".
	before map[string]bool
	// classes are words for whatever is of a kind: "the fragrance" may be a pine oil
	// where nothing else in the kit is called a fragrance.
	classes map[string]bool
	// ends of words that name nothing: "slowly", "sifted", "remaining".
	ends []string
}

// nameWords by language. A further language is one more entry.
var nameWords = map[string]nameTable{
	"en": {
		fillers: wordSet(`a an the this that these those your our its their it them they each every all both some any half quarter third rest
			remainder remaining left over whole lot lots everything part parts portion share bit of in into onto on to from for with without
			at by as and or plus more extra spare other others another same last first second third next new old again now then still
			one ones two three four five six seven eight nine ten eleven twelve dozen pair pairs set sets single double
			bag bags sachet sachets packet packets pack packs bottle bottles tube tubes tin tins box boxes pot pots vial vials pouch
			pouches roll rolls bundle bundles reel reels envelope envelopes contents content piece pieces length lengths strip strips
			slice slices drop drops spoon spoonful spoonfuls scoop scoops level heaped teaspoon teaspoons tablespoon tablespoons cup cups
			strand strands cube cubes square squares layer layers coat coats lump lumps handful amount quantity mixture
			skein skeins ball balls hank hanks spool spools bobbin bobbins sheet sheets leaf leaves slab slabs block blocks bar bars stick
			sticks bunch bunches sprig sprigs cone cones stack stacks pad pads jar jars
			small smaller large larger big bigger little long longer short shorter thin thick wide narrow empty full clean dry wet damp
			warm hot cold cool soft hard fresh loose flat right good best outer inner upper lower top bottom middle
			which is are was were be you have has had what where when while until about around exactly nearly only just up down out off
			here there not no so too also very if per not dark light pale plain main back front side sides end ends inside outside`),
		before: wordSet("the a an your our of each all both some any this that these those more other another last first second own"),
		classes: wordSet(`fragrance scent perfume colour color tint dye pigment colourant colorant powder liquid fluid base material
			ingredient fabric cloth glue adhesive paint`),
		ends: []string{"ly", "ed", "ing"},
	},
}
