package adopt

import (
	"errors"
	"slices"
	"strings"

	"tallyfold/instructions"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// Kind is what a proposal is about.
type Kind string

const (
	Amount      Kind = "amount"      // so much of something is taken
	Packed      Kind = "packed"      // so much of something is in the box, by a list
	Time        Kind = "time"        // worked or waited
	Temperature Kind = "temperature" // warmed or cooled to
	Cue         Kind = "cue"         // what to look for
	Tool        Kind = "tool"        // used and not used up
	Vessel      Kind = "vessel"      // what a step works in
	StepStart   Kind = "step"        // where a step begins
)

// A Proposal is one thing recognised in the leaflet.
type Proposal struct {
	// ID counts from 1 in the order of the leaflet.
	ID   int
	Kind Kind
	// Start and End are the bytes of the leaflet that become the words of the link;
	// of a step Start alone counts.
	Start, End int
	// AmountStart and AmountEnd are the bytes of the amount alone; both 0 for none.
	AmountStart, AmountEnd int
	// Names are the places and keys of what an amount is of.
	Names []Name
	// Destination is that of the link ("take:wax"), of a step its name; "" where
	// nothing is linked.
	Destination string
	// Meaning says in plain words what is proposed, Why how it was recognised.
	Meaning, Why string
	// Alternatives are other readings. One without a destination cannot be had by a
	// link alone.
	Alternatives []Alternative
	Accepted     bool
	// Open says why nothing is proposed for acceptance, "" where something is.
	Open string

	amount quantity.Amount
	known  bool // amount was read
	// noSize: the measure has no one size, so amount is not known.
	noSize bool
}

// A Name is where a thing is named, and its key in kit.yaml.
type Name struct {
	Start, End int
	Key        string
}

// An Alternative is another reading of the same words.
type Alternative struct{ Destination, Meaning string }

// A Question is something that the leaflet leaves open.
type Question struct {
	// Start and End are the bytes of the leaflet that it is about; both 0 where it is
	// about the leaflet as a whole.
	Start, End int
	Words      string
	// Asks is the question, Advice what to write.
	Asks, Advice string
}

// An Adoption is a leaflet with all that was recognised in it.
type Adoption struct {
	File      *source.File
	Proposals []*Proposal
	// Questions stand in the order of the leaflet, those about the whole at the end.
	Questions []Question
	Things    []*Thing
	Tools     []*ToolFound
	// Title is what the kit is called: as somebody said, else the first line, where it reads
	// like a name; "" else.
	Title string
	// Makes is how many pieces it says that it makes; the zero Yield where it does not.
	Makes Yield

	options Options
	text    string
}

// Options say how a leaflet is read. The zero value reads US customary spoons and pints.
type Options struct {
	// Kitchen says whose spoons and pints the leaflet means, Told whether somebody said so.
	Kitchen quantity.Convention
	Told    bool
	// Name is what the kit is called, where somebody said so; else the leaflet may tell.
	Name string
	// measures are those of the kit whose method is read.
	measures map[string]quantity.Amount
}

func (o Options) reader() quantity.Reader {
	return quantity.Reader{Convention: o.Kitchen, Language: language, Loose: true, Measures: o.measures}
}

// language is the one that leaflets are read in.
const language = "en"

// Read recognises what it can in a leaflet, with a list of parts that may be nil. The
// error is in words for the maker: the text is too large or no text, or it is a method
// already.
func Read(leaflet, parts *source.File, options Options) (*Adoption, error) {
	for _, file := range []*source.File{leaflet, parts} {
		if file == nil {
			continue
		}
		if why := instructions.Refused(file); why != "" {
			return nil, errors.New(file.Name + " cannot be read: " + why)
		}
	}
	if instructions.HasLinks(leaflet.Text) || strings.Contains(string(leaflet.Text), added) {
		return nil, errors.New(leaflet.Name + " already has links such as [200 g of wax](take:wax), so it is a method and no plain leaflet; see: tallyfold check")
	}
	a := &Adoption{File: leaflet, text: string(leaflet.Text), options: options}
	r := newReading(a)
	if parts != nil {
		r.parts(parts)
	}
	r.read()
	a.settle()
	a.ask(r)
	return a, nil
}

// Proposal finds one by its ID, or nil.
func (a *Adoption) Proposal(id int) *Proposal {
	i := slices.IndexFunc(a.Proposals, func(p *Proposal) bool { return p.ID == id })
	if i < 0 {
		return nil
	}
	return a.Proposals[i]
}

// Accept takes a proposal or leaves it. It is false for an ID that there is none of,
// and for a proposal that has nothing to link.
func (a *Adoption) Accept(id int, yes bool) bool {
	p := a.Proposal(id)
	if p == nil || yes && p.Destination == "" {
		return false
	}
	p.Accepted = yes
	return true
}

// Choose puts an alternative in the place of what was proposed, and accepts it. n
// counts from 0. It is false where there is no such alternative with a destination.
func (a *Adoption) Choose(id, n int) bool {
	p := a.Proposal(id)
	if p == nil || n < 0 || n >= len(p.Alternatives) || p.Alternatives[n].Destination == "" {
		return false
	}
	chosen := p.Alternatives[n]
	if p.Destination == "" {
		p.Alternatives = slices.Delete(p.Alternatives, n, n+1)
	} else {
		p.Alternatives[n] = Alternative{p.Destination, p.Meaning}
	}
	p.Destination, p.Meaning, p.Open, p.Accepted = chosen.Destination, chosen.Meaning, "", true
	p.Why += "; chosen by hand"
	return true
}

// Words are those of the leaflet that a proposal is about.
func (a *Adoption) Words(p *Proposal) string { return a.text[p.Start:p.End] }
