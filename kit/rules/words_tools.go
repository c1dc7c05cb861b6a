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
	"en": englishTools, "fr": frenchTools, "de": germanTools, "es": spanishTools, "nl": dutchTools, "it": italianTools,
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

// notNeeded are words behind the name of a tool which say the same: "tweezers are not
// needed". One of the first and then one of the second must stand near.
var notNeeded = map[string][2][]string{
	"en": {{"not", "isn't", "isn’t", "aren't", "aren’t", "never"}, {"needed", "necessary", "required", "wanted", "either"}},
}

// notMeant are words before the name of a tool which say that it is not used, or
// only one of several ways.
var notMeant = map[string][]string{
	"en": englishNotMeant, "fr": frenchNotMeant, "de": germanNotMeant, "es": spanishNotMeant, "nl": dutchNotMeant, "it": italianNotMeant,
}
