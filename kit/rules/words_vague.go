package rules

// A vagueWord is a phrase that leaves an amount to the reader.
type vagueWord struct {
	phrase string
	// adding: it only counts behind a word of adding ("pour in some of the oil").
	adding bool
	// level: it tells how full something is; a word of filling must stand before it.
	level bool
	// then: one of these words must follow ("a good" splash). Empty: any.
	then []string
	// unless: it means something else before one of these words ("plenty of time").
	unless []string
	// after: it means something else behind one of these words ("begins to taste").
	after []string
	// behind: it means something else where one of these words stands just before
	// ("give it a good squeeze").
	behind []string
}

// A vagueTable is what is needed to find vague amounts in one language.
type vagueTable struct {
	words []vagueWord
	// adding are words of adding; joined with "in", "into" or "on" also stirring.
	adding, stirring, inward []string
	// addingBehind: a word of adding may stand behind the phrase too.
	addingBehind bool
	filling      []string
	// wants are words at the end of a phrase that want the next one, to be told.
	wants []string
	// rinsing are words before which water is not measured: "rinse it in plenty of water".
	rinsing []string
	// never are words that no phrase speaks of an amount before: times, care.
	never []string
}

// A vaguePhrase is a vague word cut into words.
type vaguePhrase struct {
	vagueWord
	parts []string
}

// vaguePhrases has the phrases of each language by their first word.
var vaguePhrases = byFirstWord()

func byFirstWord() map[string]map[string][]vaguePhrase {
	all := map[string]map[string][]vaguePhrase{}
	for language, table := range vagueWords {
		all[language] = map[string][]vaguePhrase{}
		for _, vague := range table.words {
			parts := wordsOf(vague.phrase)
			all[language][parts[0]] = append(all[language][parts[0]], vaguePhrase{vague, parts})
		}
	}
	return all
}

// vagueWords by language. A further language is a file words_xx.go and a line here
// and in toolWords.
var vagueWords = map[string]vagueTable{
	"en": englishVague, "fr": frenchVague, "de": germanVague, "es": spanishVague, "nl": dutchVague, "it": italianVague,
}
