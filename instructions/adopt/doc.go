// Package adopt makes a start of a kit out of a leaflet that a maker already has: plain
// text or Markdown, and perhaps a list of parts. It opens no file.
//
// Read recognises amounts, what they are of, times, temperatures, tools and steps. Each
// is a Proposal: the place in the leaflet, what is proposed, how it was recognised, the
// alternatives, and whether it is accepted. What could not be settled is a Question with
// its place. Nothing is guessed in silence, and nothing of the leaflet is lost: Method
// writes the text with the accepted proposals as links, and Plain takes the links out
// again, byte for byte.
//
// An amount is linked only where it is known what it is of. One that is not linked stays
// as typed, and a question says why. English prose alone is read so far.
//
// The way through the files here: adopt.go holds the proposals; read.go goes through
// the text; amounts.go, names.go, times.go, tools.go and steps.go recognise; parts.go
// reads a list of parts; ask.go gathers what is open; method.go, definition.go and
// list.go write; settle.go reads what was written as a method and takes back what
// could not be read there.
//
// Unlinked does the same for the method of a kit, while it is written: within.go goes through
// it, bared.go leaves its links out, called.go has the names of the kit, named.go, fill.go,
// counts.go, minutes.go and habits.go recognise by them, and meant.go leaves out what
// would not be read back as meant.
package adopt
