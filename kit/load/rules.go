package load

// The names of what reading kit.yaml can find. All of it must be fixed: what
// cannot be read cannot be checked.
const (
	UnknownField     = "unknown-field"
	DuplicateKey     = "duplicate-key"
	WrongType        = "wrong-type"
	BadAmount        = "bad-amount"
	ShareWithoutBase = "share-without-base"
	MissingField     = "missing-field"
	MissingReference = "missing-reference"
	DuplicateName    = "duplicate-name"
	BadKeyName       = "bad-key-name"
	UnreadableFile   = "unreadable-file"
	RefusedFile      = "refused-file"
)

// A Rule is one of them, told at more length.
type Rule struct{ Name, Title, Explanation string }

// Rules are all of them.
var Rules = []Rule{
	{UnknownField, "a key that means nothing where it stands",
		"A key that is misspelt or in the wrong place would be passed over without a word, and what it says with it. " +
			"Write the key as the finding names it, move it to where it belongs, or take it out."},
	{DuplicateKey, "a key that is said twice",
		"Only one of two values can count, and no reader can know which was meant. The first one is used for all other checks. " +
			"Keep one of the two, or give one of them another name."},
	{WrongType, "a value of the wrong form",
		"A list, a group of keys or a word stands where something else is needed, or a word is none of those that can stand there. " +
			"Write the value as the finding shows."},
	{BadAmount, "an amount that cannot be used",
		"What should be an amount is none, or is one of another kind: a volume for a weight, nothing for something, a limit for a figure. " +
			"Everything that is reckoned from it would be missing or wrong. Correct the figure or its unit."},
	{ShareWithoutBase, "a percentage that does not say of what",
		"Two percent of the wax and two percent of the whole mixture are different amounts, and suppliers use both. " +
			"Name what it is a part of: “at most 2 % of mixture”, “at most 8 % of wax”."},
	{MissingField, "a key that must be there, or has nothing after it",
		"Without it the thing cannot be packed, counted or found. Add the key with its value; a key that is not needed can be taken out whole."},
	{MissingReference, "the name of something that the kit does not have",
		"A key in kit.yaml stands for another thing of the kit, and there is none of that name or not of that kind. " +
			"Correct the key, or add the thing."},
	{DuplicateName, "two things with one key or one name",
		"Steps, labels and findings name things by their key or by what people call them; both must mean one thing only in the whole kit. " +
			"Give one of the two another key or name."},
	{BadKeyName, "a key of your own that cannot be used",
		"Keys stand in the links of the method, so they are made of lower-case letters a to z, digits and single hyphens, and begin with a letter. " +
			"A few words are taken, as they mean something in links or amounts, or may be read as yes or no. What people read goes under “name:”."},
	{UnreadableFile, "a line that cannot be read, and so the whole file",
		"From this line on nobody can tell what belongs to what. Nothing in the file is checked until the line is put right."},
	{RefusedFile, "a file that could be read in more than one way",
		"Some characters and some ways of writing make programs read another file than you see in your editor, or are no text at all; a file far too large is not read either. " +
			"Nothing in the file is checked until they are gone."},
}
