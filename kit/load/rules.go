package load

// The names of what reading kit.yaml can find. All of it must be fixed: what
// cannot be read cannot be checked.
const (
	// UnknownField: a key that means nothing where it stands.
	UnknownField = "unknown-field"
	// DuplicateKey: a key said twice; the first one counts.
	DuplicateKey = "duplicate-key"
	// WrongType: a list, lines of keys or words where something else belongs.
	WrongType = "wrong-type"
	// BadAmount: what should be an amount and is none, or one of the wrong kind.
	BadAmount = "bad-amount"
	// ShareWithoutBase: a percentage that does not say of what.
	ShareWithoutBase = "share-without-base"
	// MissingField: a key that must be there, or has nothing after it.
	MissingField = "missing-field"
	// MissingReference: the name of something that this kit does not have.
	MissingReference = "missing-reference"
	// DuplicateName: two things with one key or one name.
	DuplicateName = "duplicate-name"
	// BadKeyName: a key of the maker's own that cannot be used in links.
	BadKeyName = "bad-key-name"
	// UnreadableFile: a line that cannot be read, and so the whole file.
	UnreadableFile = "unreadable-file"
	// RefusedFile: a file that could be read in more than one way, or is no text.
	RefusedFile = "refused-file"
)
