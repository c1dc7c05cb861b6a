package workbench

import (
	"tallyfold/instructions/adopt"
	"tallyfold/kit/proof"
	"tallyfold/kit/source"
)

// propose adds what could be linked in the method and is not, and what a reader would ask.
// Where nothing can be recognised, the links are made by hand.
func (m *marks) propose(p *proof.Proof) {
	file := p.Kit.Method.File
	found, err := adopt.Unlinked(file, p.Kit)
	if err != nil {
		return
	}
	at := func(place int) int { return inEditor(file.Text, place) }
	for _, one := range found.Could {
		could := couldMark{
			From: at(one.Start), To: at(one.End), Words: string(file.Text[one.Start:one.End]), Kind: string(one.Kind),
			Destination: one.Destination, Meaning: one.Meaning, Why: one.Why, Others: []otherReading{},
		}
		for _, other := range one.Alternatives {
			could.Others = append(could.Others, otherReading{other.Destination, other.Meaning})
		}
		m.Could = append(m.Could, could)
	}
	for _, q := range found.Questions {
		m.Asked = append(m.Asked, askedMark{at(q.Start), at(q.End), askedOf(file, q), q.Advice})
	}
}

// askedOf tells a question with the words that it is about.
func askedOf(file *source.File, q adopt.Question) string {
	return "“" + string(shown(file.Text[q.Start:q.End])) + "”: " + q.Asks
}
