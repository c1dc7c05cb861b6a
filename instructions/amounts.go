package instructions

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
