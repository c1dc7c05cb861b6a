// Package handbook holds what is shipped with the program and known of no kit: which
// hazards there are, what comes of them and how they are avoided. Each row names its
// source and how it is known. The rows are offered; a maker's own words come first.
package handbook

import (
	"slices"
	"strings"
	"sync"

	"tallyfold/kit"
)

// A Hazard is one way in which making up a kit can hurt someone or spoil something.
type Hazard struct {
	// ID is what a maker writes: "dust", "H319".
	ID string
	// What it is, what Happens and how to Avoid it, as English sentences. The caution
	// of the booklet says the same in its language, under the word "hazard-" and ID.
	What, Happens, Avoid string
	// Signal is the least signal word of its caution (ANSI Z535.6, ISO 3864-2; for
	// H-statements that of GHS).
	Signal kit.Signal
	// When says in words where it applies.
	When string
	// Source names where it comes from, Known how: "read", "read (2nd hand)", "from
	// memory" or "common practice, no source".
	Source, Known string
	// Wear, Place, Company and Aid name what the page "before you start" says of it:
	// what to wear, where to work, who must be there, what to do if something goes wrong.
	// Each is a word of the booklet's without "before-", or "".
	Wear, Place, Company, Aid string
	// Answers are words by which a caution is known to speak of it, by language: the
	// beginnings of words, in small letters.
	Answers map[string][]string
	// Tools are names of tools that bring it, by language; Unless names with one of
	// them in it that don't.
	Tools, Unless map[string][]string
}

// IsStatement says whether it is an H-statement of the GHS.
func (h Hazard) IsStatement() bool {
	return len(h.ID) == 4 && h.ID[0] == 'H' && strings.Trim(h.ID[1:], "0123456789") == ""
}

// Hazards lists all rows: those of actions, those of materials, and the H-statements. Nobody
// may change them.
func Hazards() []Hazard { return allHazards() }

var allHazards = sync.OnceValue(func() []Hazard { return slices.Concat(actions, materials, statements()) })

// Find gives the hazard of that ID.
func Find(id string) (Hazard, bool) {
	all := Hazards()
	at := slices.IndexFunc(all, func(h Hazard) bool { return h.ID == id })
	if at < 0 {
		return Hazard{}, false
	}
	return all[at], true
}

// MaterialIDs are those that a component may name.
func MaterialIDs() []string {
	var ids []string
	for _, h := range slices.Concat(materials, statements()) {
		ids = append(ids, h.ID)
	}
	return ids
}
