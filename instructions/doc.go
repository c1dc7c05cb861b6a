// Package instructions reads what a maker wrote in Markdown: the method, the
// troubles and the words for the booklet. It also opens a kit folder whole.
//
// The files are CommonMark with tables and task lists. The text of a link is
// what the customer reads, its destination says what happens:
//
//	## [Dissolve the powder](step:dissolve?in=pan)
//
//	Pour in [570 g of water](take:water) and warm it [to 80–85 °C](warm:).
//
// A level-one heading of the method begins a part, a level-two heading a step.
// Links become kit.Operation values, what they say about how much becomes a
// kit.Phrase, everything a customer reads outside links becomes kit.Prose.
//
// Reading never stops at the first mistake: every function gives what could be
// understood together with a list of what could not. Whatever looks like one of
// our links and is none is in that list; it never passes silently as prose.
// Whether a referenced step, trouble or picture exists is judged elsewhere.
//
// The way through the files here: open.go opens the folder, document.go parses
// one file, method.go, trouble.go and words.go walk its sections, passage.go one
// section, operation.go one link, phrase.go the words in it, stray.go what only
// looks like a link.
//
// Every place is kept in bytes of the file as it lies on the disk, byte order
// mark and carriage returns included.
package instructions
