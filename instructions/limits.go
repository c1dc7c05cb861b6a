package instructions

// What is read has limits, so that a broken or hostile folder gives a finding in
// bounded time. Each is far above what a kit needs.
const (
	// maxDefinition is the size of kit.yaml. A kit of forty components takes 10 KB.
	maxDefinition = 256 << 10

	// maxText is the size of one Markdown file. A method of thirty steps takes
	// 15 KB. Some inputs take the Markdown parser a time that grows with the
	// square of their length, so that this limit alone would allow seconds.
	maxText = 64 << 10

	// maxBrackets is how many "[" one Markdown file may have. A method of thirty
	// steps has 200; 64 KiB of nothing but unclosed links take the parser 1 s, those
	// of this many brackets 0.05 s.
	maxBrackets = 3000

	// maxNesting is how many quotations and lists may stand inside one another.
	// 64 KiB of nothing but quotation marks take the parser 1.6 s, and no reader
	// follows a list in a list in a list in a list in a list.
	maxNesting = 16

	// maxPicture is the size of one picture: a photograph of 24 megapixels.
	maxPicture = 16 << 20

	// maxPictures is how many pictures a kit may have.
	maxPictures = 200

	// maxAllPictures is the size of all pictures together: they all go into the
	// booklet file, which people send by mail.
	maxAllPictures = 64 << 20

	// maxTimes is how often an action may be told to be done again. Each is
	// followed one by one; nobody stirs a thousand times on command.
	maxTimes = 200

	// maxGuesses is for how many unknown names of one file the nearest known one is
	// looked for. A file with more of them belongs to another kit.
	maxGuesses = 100
)
