package adopt

import "tallyfold/kit/source"

// A Report is an adoption for programs. Bytes count in the leaflet from 0, lines and
// columns from 1, columns in characters.
type Report struct {
	Leaflet   string          `json:"leaflet"`
	Proposals []PlainProposal `json:"proposals"`
	Questions []PlainQuestion `json:"questions"`
	// Definition and Method are kit.yaml and method.md with the accepted proposals.
	Definition string `json:"kit.yaml"`
	Method     string `json:"method.md"`
}

// A PlainPlace is a part of the leaflet with its words.
type PlainPlace struct {
	Start  int    `json:"start"`
	End    int    `json:"end"`
	Line   int    `json:"line"`
	Column int    `json:"column"`
	Words  string `json:"words"`
}

// A PlainProposal is a Proposal.
type PlainProposal struct {
	ID    int        `json:"id"`
	Kind  Kind       `json:"kind"`
	Place PlainPlace `json:"place"`
	// Amount is the part of the place that tells how much.
	Amount       *PlainPlace        `json:"amount,omitempty"`
	Things       []string           `json:"things"`
	Destination  string             `json:"destination"`
	Meaning      string             `json:"meaning"`
	Why          string             `json:"why"`
	Alternatives []PlainAlternative `json:"alternatives"`
	Accepted     bool               `json:"accepted"`
	Open         string             `json:"open,omitempty"`
}

// A PlainAlternative is an Alternative.
type PlainAlternative struct {
	Destination string `json:"destination"`
	Meaning     string `json:"meaning"`
}

// A PlainQuestion is a Question; about the leaflet as a whole it has no place.
type PlainQuestion struct {
	Place  *PlainPlace `json:"place,omitempty"`
	About  string      `json:"about,omitempty"`
	Asks   string      `json:"asks"`
	Advice string      `json:"to do"`
}

// Report tells all that was recognised and all that is open.
func (a *Adoption) Report() Report {
	r := Report{Leaflet: a.File.Name, Proposals: []PlainProposal{}, Questions: []PlainQuestion{},
		Definition: string(a.Definition()), Method: string(a.Method())}
	for _, p := range a.Proposals {
		plain := PlainProposal{ID: p.ID, Kind: p.Kind, Place: plainPlace(a.File.Span(p.Start, p.End)), Things: []string{},
			Destination: p.Destination, Meaning: p.Meaning, Why: p.Why, Alternatives: []PlainAlternative{}, Accepted: p.Accepted, Open: p.Open}
		if p.AmountEnd > p.AmountStart {
			place := plainPlace(a.File.Span(p.AmountStart, p.AmountEnd))
			plain.Amount = &place
		}
		for _, n := range p.Names {
			plain.Things = append(plain.Things, n.Key)
		}
		for _, other := range p.Alternatives {
			plain.Alternatives = append(plain.Alternatives, PlainAlternative(other))
		}
		r.Proposals = append(r.Proposals, plain)
	}
	for _, q := range a.Questions {
		plain := PlainQuestion{Asks: q.Asks, Advice: q.Advice}
		if q.End > q.Start {
			place := plainPlace(a.File.Span(q.Start, q.End))
			plain.Place = &place
		} else {
			plain.About = q.Words
		}
		r.Questions = append(r.Questions, plain)
	}
	return r
}

func plainPlace(at source.Span) PlainPlace {
	position := at.Position()
	return PlainPlace{at.Start, at.End, position.Line, position.Column, at.Text()}
}
