package adopt

import (
	"cmp"
	"slices"
	"strings"

	"tallyfold/kit/quantity"
)

// added is the note by which a heading that was not in the leaflet is known. It is never
// printed.
const added = "<!-- heading added to the leaflet -->"

// An insertion is text that is put in at a byte of the leaflet.
type insertion struct {
	at   int
	text string
}

// Method writes the leaflet as method.md: every byte of it, with the accepted proposals
// as links, and a heading before each step that had none.
func (a *Adoption) Method() []byte {
	var b strings.Builder
	at := 0
	for _, one := range a.insertions() {
		b.WriteString(a.text[at:one.at])
		b.WriteString(one.text)
		at = one.at
	}
	b.WriteString(a.text[at:])
	return []byte(b.String())
}

// insertions are what the accepted proposals put into the leaflet, from its beginning
// to its end. No two links overlap: of two that do, the first stands.
func (a *Adoption) insertions() []insertion {
	var all []insertion
	steps, end := int64(0), 0
	for _, p := range a.inOrder() {
		if p.Kind == StepStart {
			steps++
		}
		switch {
		case !p.Accepted || p.Destination == "" || p.Start < end:
		case p.Kind == StepStart && p.Start == p.End:
			all = append(all, insertion{p.Start, "## [Step " + quantity.Whole(steps).String() + "](" + p.Destination + ")" + added + "\n\n"})
		default:
			all = append(all, insertion{p.Start, "["}, insertion{p.End, "](" + p.Destination + ")"})
			end = p.End
		}
	}
	return all
}

// inOrder gives the proposals by where they begin; at one place the step comes first.
func (a *Adoption) inOrder() []*Proposal {
	sorted := slices.Clone(a.Proposals)
	slices.SortStableFunc(sorted, func(p, q *Proposal) int {
		if p.Start == q.Start {
			return cmp.Compare(rank(p), rank(q))
		}
		return p.Start - q.Start
	})
	return sorted
}

func rank(p *Proposal) int {
	if p.Kind == StepStart {
		return 0
	}
	return 1
}
