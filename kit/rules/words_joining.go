package rules

// joiningWords begin a clause that can stand as a sentence of its own, by language.
var joiningWords = map[string][]string{
	"en": {"and", "but", "so", "then", "which", "whereupon", "therefore", "however", "otherwise", "or"},
}
