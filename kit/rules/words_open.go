package rules

// An openKind is what a phrase leaves open.
type openKind int

const (
	openTime  openKind = iota // how long
	openHeat                  // how hot
	openPlace                 // where, or which
)

// An openPhrase leaves a time, a heat or a place to the reader.
type openPhrase struct {
	phrase string
	kind   openKind
	// unless: it means something else before one of these words ("until it is ready
	// to pour").
	unless []string
	// after: it means something else behind one of these words.
	after []string
}

// An openTable is what is needed to find such phrases in one language.
type openTable struct {
	phrases []openPhrase
	// ends are words behind which a clause says when to stop: "until no lumps show".
	ends []string
	// likes are words behind which an example or a place follows: "a warm place, such
	// as a windowsill".
	likes []string
	// doing ends a word behind "until it is done" that says with what; "" for none.
	doing string
}

// openPhrases has the phrases of each language by their first word.
var openPhrases = openByFirstWord()

type cutOpenPhrase struct {
	openPhrase
	parts []string
}

func openByFirstWord() map[string]map[string][]cutOpenPhrase {
	all := map[string]map[string][]cutOpenPhrase{}
	for language, table := range openWords {
		all[language] = map[string][]cutOpenPhrase{}
		for _, open := range table.phrases {
			parts := wordsOf(open.phrase)
			all[language][parts[0]] = append(all[language][parts[0]], cutOpenPhrase{open, parts})
		}
	}
	return all
}

// doneUnless are words that make “until it is ready” tell of something.
var doneUnless = []string{"to", "for", "with", "as", "in", "on", "and", "setting", "melting", "drying", "cooling", "by", "enough"}

// openWords by language. A further language is one more entry.
var openWords = map[string]openTable{
	"fr": frenchOpen, "de": germanOpen, "es": spanishOpen, "nl": dutchOpen, "it": italianOpen,
	"en": {
		phrases: []openPhrase{
			{phrase: "for a while"}, {phrase: "wait a while"}, {phrase: "for a little while"}, {phrase: "for quite a while"},
			{phrase: "for some time"}, {phrase: "wait some time"}, {phrase: "for a long time", after: []string{"kept", "keeps", "keep", "last", "lasts"}},
			{phrase: "for a bit", unless: []string{"of"}}, {phrase: "wait a bit", unless: []string{"longer"}},
			{phrase: "for a short time"}, {phrase: "for a short while"}, {phrase: "for the right time"}, {phrase: "for the usual time"},
			{phrase: "for as long as necessary"}, {phrase: "for as long as needed"}, {phrase: "as long as it takes"},
			{phrase: "for long enough", unless: []string{"to"}}, {phrase: "for a suitable time"}, {phrase: "for the required time"},
			{phrase: "until done", unless: doneUnless}, {phrase: "until it is done", unless: doneUnless}, {phrase: "until it's done", unless: doneUnless},
			{phrase: "until they are done", unless: doneUnless}, {phrase: "until ready", unless: doneUnless},
			{phrase: "until it is ready", unless: doneUnless}, {phrase: "until it's ready", unless: doneUnless},
			{phrase: "until they are ready", unless: doneUnless}, {phrase: "until finished", unless: doneUnless},
			{phrase: "until it is finished", unless: doneUnless}, {phrase: "until it looks right"}, {phrase: "until it feels right"},
			{phrase: "until it looks good"}, {phrase: "until it seems right"}, {phrase: "until satisfied"},

			{phrase: "medium heat", kind: openHeat}, {phrase: "medium-high heat", kind: openHeat}, {phrase: "medium-low heat", kind: openHeat},
			{phrase: "moderate heat", kind: openHeat}, {phrase: "low heat", kind: openHeat}, {phrase: "gentle heat", kind: openHeat},
			{phrase: "high heat", kind: openHeat}, {phrase: "strong heat", kind: openHeat}, {phrase: "hot oven", kind: openHeat},
			{phrase: "warm oven", kind: openHeat}, {phrase: "moderate oven", kind: openHeat}, {phrase: "low oven", kind: openHeat},
			{phrase: "the right temperature", kind: openHeat}, {phrase: "the correct temperature", kind: openHeat},
			{phrase: "the desired temperature", kind: openHeat}, {phrase: "a suitable temperature", kind: openHeat},
			{phrase: "the required temperature", kind: openHeat}, {phrase: "pouring temperature", kind: openHeat},
			{phrase: "working temperature", kind: openHeat},

			{phrase: "a suitable place", kind: openPlace}, {phrase: "a suitable spot", kind: openPlace}, {phrase: "an appropriate place", kind: openPlace},
			{phrase: "the right place", kind: openPlace}, {phrase: "the right spot", kind: openPlace}, {phrase: "the correct place", kind: openPlace},
			{phrase: "the right position", kind: openPlace}, {phrase: "the correct position", kind: openPlace},
			{phrase: "the appropriate place", kind: openPlace}, {phrase: "the desired position", kind: openPlace},
			{phrase: "a suitable container", kind: openPlace}, {phrase: "an appropriate container", kind: openPlace},
			{phrase: "a suitable vessel", kind: openPlace}, {phrase: "a suitable size", kind: openPlace}, {phrase: "the right size", kind: openPlace},
			{phrase: "the desired size", kind: openPlace}, {phrase: "the desired length", kind: openPlace}, {phrase: "a suitable length", kind: openPlace},
			{phrase: "the right length", kind: openPlace}, {phrase: "the desired shape", kind: openPlace},
			{phrase: "where needed", kind: openPlace}, {phrase: "where necessary", kind: openPlace}, {phrase: "where appropriate", kind: openPlace},
			{phrase: "where required", kind: openPlace}, {phrase: "somewhere suitable", kind: openPlace},
			{phrase: "in the usual way", kind: openPlace}, {phrase: "in the normal way", kind: openPlace},
			{phrase: "in the usual manner", kind: openPlace}, {phrase: "a warm place", kind: openPlace}, {phrase: "a warm spot", kind: openPlace},
			{phrase: "somewhere warm", kind: openPlace},
		},
		doing: "ing",
		ends:  []string{"until", "till", "once", "when", "before", "soon"},
		likes: []string{"such", "like", "near", "beside", "above", "under", "over", "between", "on", "at", "by", "about", "of", "for", "with",
			"from", "behind", "below", "within", "you", "that", "marked", "shown"},
	},
}
