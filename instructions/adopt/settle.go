package adopt

import (
	"slices"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// settle writes the method, reads it as any method is read, and takes back each link
// that is not read as it was meant: in code, in HTML, or with words that tell no amount
// to the reader. So what is accepted is sure to work.
func (a *Adoption) settle() {
	for range a.Proposals { // each round takes back at least one
		method, k, found := a.readBack()
		if k == nil || !a.takeBack(method, found) {
			return
		}
	}
}

func (a *Adoption) readBack() (kit.Method, *kit.Kit, diag.List) {
	k, _ := load.Kit(source.NewFile("kit.yaml", a.Definition()))
	if k == nil {
		return kit.Method{}, nil, nil
	}
	method, found := instructions.ReadMethod(source.NewFile("method.md", a.Method()), k, load.Amounts(k))
	return method, k, found
}

// takeBack leaves as typed what was not read as a link or tells no amount.
func (a *Adoption) takeBack(method kit.Method, found diag.List) (any bool) {
	read := operationsAt(method)
	shift := 0
	written := map[*Proposal]int{}
	for _, p := range a.linked() {
		written[p.proposal] = p.at + shift
		shift += p.grows
	}
	for p, at := range written {
		if p.Kind == StepStart {
			continue
		}
		operation := read[at]
		switch {
		case operation == nil || operation.Does() != p.Destination:
			p.refuse("no link is read at this place of the text, as in code, in a quotation of code or in HTML")
			any = true
		case p.Kind != Cue && blamed(found, operation):
			p.refuse("its words do not tell an amount that is read: write it as in 200 g of wax")
			any = true
		}
	}
	return any
}

func operationsAt(method kit.Method) map[int]*kit.Operation {
	all := map[int]*kit.Operation{}
	for _, part := range method.Parts {
		for _, o := range part.Operations {
			all[o.Span.Start] = o
		}
		for _, step := range part.Steps {
			for _, o := range step.Operations {
				all[o.Span.Start] = o
			}
		}
	}
	return all
}

// blamed says whether reading found fault with the words of a link.
func blamed(found diag.List, o *kit.Operation) bool {
	return slices.ContainsFunc(found, func(f diag.Finding) bool {
		return o.Span.Contains(f.Where) && f.Where.End > f.Where.Start && (f.Rule == "unreadable-amount" || f.Rule == "unreadable-link")
	})
}

// A linkedAt is an accepted proposal with where its link begins in the leaflet, and by
// how many bytes the text grows before what follows.
type linkedAt struct {
	proposal  *Proposal
	at, grows int
}

func (a *Adoption) linked() []linkedAt {
	all := a.insertions()
	var linked []linkedAt
	n := 0
	for _, p := range a.inOrder() {
		if n >= len(all) || !p.Accepted || p.Destination == "" || all[n].at != p.Start {
			continue
		}
		if p.Kind == StepStart && p.Start == p.End {
			linked = append(linked, linkedAt{p, p.Start, len(all[n].text)})
			n++
			continue
		}
		if all[n].text != "[" || n+1 >= len(all) || all[n+1].at != p.End {
			continue
		}
		linked = append(linked, linkedAt{p, p.Start, len(all[n].text) + len(all[n+1].text)})
		n += 2
	}
	return linked
}
