package instructions

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// Amounts gives what reads amounts the way the kit writes them: its spoons and
// cups, its language, its own measures, the things it counts.
func Amounts(k *kit.Kit) quantity.Reader {
	language, _, _ := strings.Cut(strings.ToLower(k.Language.Value), "-")
	if language == "" {
		language = english
	}
	reader := quantity.Reader{
		Convention:   k.Kitchen.Value,
		Language:     language,
		DecimalComma: language != english,
		Measures:     map[string]quantity.Amount{},
	}
	for _, measure := range k.Measures {
		reader.Measures[measure.ID] = measure.Holds.Value
		reader.Measures[strings.ToLower(measure.String())] = measure.Holds.Value
	}
	return reader
}

// english is the only language whose words around an amount ("half of the",
// "each of") are read.
const english = "en"

// checkLanguage says so for a method in another language.
func (r *reader) checkLanguage() {
	if r.amounts.Language == english || r.amounts.Language == "" {
		return
	}
	r.say(languageNotRead, r.kit.Language.Span, "language", "a method in the language "+quoted(r.kit.Language.Value),
		"English, as words like “half of the” and “each of” are read only in it so far",
		"look at what `balance` made of every link", "write amounts as figures with units")
}
