package kit

import (
	"strconv"

	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// Method is the steps in the order they are read.
type Method struct {
	File  *source.File
	Parts []*Part
}

// Steps gives all steps of all parts in reading order.
func (m Method) Steps() []*Step {
	var steps []*Step
	for _, part := range m.Parts {
		steps = append(steps, part.Steps...)
	}
	return steps
}

// Step finds the step with this name, or nil.
func (m Method) Step(id string) *Step {
	for _, step := range m.Steps() {
		if step.ID == id {
			return step
		}
	}
	return nil
}

// A Part is one making in the box: a level-one heading of the method. A method
// without such a heading has one part with an empty ID and title.
type Part struct {
	ID    string
	Title string
	Span  source.Span
	Steps []*Step
	// Body is the introduction, from the heading to the first step; its links are
	// told, not done.
	Body       source.Span
	Operations []*Operation
	Cautions   []Caution
	Prose      []Prose
}

// A Step is one numbered step of the method.
type Step struct {
	// ID is the name in `step:ID`, or one made from the title.
	ID     string
	Named  bool // the heading itself is a link, so the ID is the maker's own
	Number int  // from 1, over the whole method
	Title  string
	// Span is the heading, Body everything up to the next heading.
	Span, Body source.Span
	// Vessel is the key in the heading's `?in=`, or "".
	Vessel     string
	VesselSpan source.Span
	// Of is the fingerprint of the step that this one was translated from, in the
	// heading's `?of=`; only in a translation.
	Of Said[string]
	// Operations in the order they stand in the text.
	Operations []*Operation
	// Cautions in the order they stand; Span tells which actions come after.
	Cautions []Caution
	// Prose is the running text outside links, headings and pictures, in pieces.
	Prose []Prose
	// Paragraphs are each paragraph, item of a list and cell of a table of the Body,
	// in order, those of cautions too; what ends there ends a sentence.
	Paragraphs []source.Span
	// Mentions are tools and containers that the running text, the heading or the
	// text of another link names by a bare word; cautions count too.
	Mentions []Mention
}

// A Mention is a tool or container named in running text by a bare word.
type Mention struct {
	Key  string
	Span source.Span
}

// Kind is what an operation does: the word before the colon of a link.
type Kind string

const (
	Take        Kind = "take"    // from a pack or household item into a vessel
	Use         Kind = "use"     // used up, joins no mixture
	Move        Kind = "move"    // from one vessel into another
	Fill        Kind = "fill"    // from the step's vessel into containers
	Place       Kind = "place"   // an insert or part into containers, or an object into a vessel
	WithVessel  Kind = "vessel"  // names a vessel worked with
	WithTool    Kind = "tool"    // names a tool used
	Work        Kind = "work"    // hands-on time
	Wait        Kind = "wait"    // time without hands; may have a name
	After       Kind = "after"   // a named wait is over
	Again       Kind = "again"   // the actions before it in this step, so many more times
	Left        Kind = "left"    // what is done with the remainder of a vessel or pack
	Clean       Kind = "clean"   // a vessel is emptied of its residue
	Warm        Kind = "warm"    // brought to a temperature
	Cool        Kind = "cool"    // let down to a temperature
	Cue         Kind = "cue"     // what to look for
	Same        Kind = "same"    // a figure told again: compared, moves nothing
	Hazard      Kind = "hazard"  // words that answer a hazard
	ToStep      Kind = "step"    // reference to a step
	ToHelp      Kind = "trouble" // reference to a trouble
	ShowPicture Kind = "picture" // reference to a picture
)

// An Operation is one link in a step: what the customer reads, and what happens.
type Operation struct {
	Kind Kind
	// Target is the key, role or name after the colon, "" for none. `clean` and `left`
	// without one have the step's vessel here; `move` without one has From.
	Target string
	Into   string // ?into=
	From   string // ?from=
	In     string // ?in=
	As     string // ?as=, on `left`: kept, discarded, evaporated … or a key it goes to
	// Either names a choice of the customer's (?either=): of all links with one name
	// in a part, one is followed.
	Either string
	// DrawnFor is the edition that a picture was last looked at for (?drawn-for=).
	DrawnFor Said[int]
	// Strands is of how many strands a thread is used (?strands=), 0 for all of them.
	Strands int
	// Text is what the customer reads ("" is filled in from the definition).
	Text string
	// Phrase is what the text says about how much.
	Phrase Phrase
	// Span is the whole link, TextSpan its text, TargetSpan its destination.
	Span, TextSpan, TargetSpan source.Span
	// Aside: stands inside a quotation or in trouble.md, so it is told, not done.
	Aside bool
}

// Does is what an operation does and to what, without how much, as it is written in a
// destination: "take:wax?into=jug".
func (o *Operation) Does() string {
	text := string(o.Kind) + ":" + o.Target
	sign := "?"
	add := func(name, value string) {
		if value != "" {
			text += sign + name + "=" + value
			sign = "&"
		}
	}
	add("into", o.Into)
	add("from", o.From)
	add("in", o.In)
	add("as", o.As)
	add("either", o.Either)
	if o.Strands > 0 {
		add("strands", strconv.Itoa(o.Strands))
	}
	return text
}

// Portion says which part of a supply a phrase speaks of.
type Portion int

const (
	NoPortion  Portion = iota // the text names no amount: one of a thing that is counted
	Exactly                   // Amounts[0]
	AllOf                     // everything there
	RestOf                    // what is left there
	FractionOf                // Fraction of what is there, or of the pack
)

// A Phrase is how much a link's text says.
type Phrase struct {
	Portion Portion
	// Fraction of what is there; of the whole pack when OfPack.
	Fraction quantity.Number
	OfPack   bool
	// Amounts: the first is what the customer does; the rest tell it again.
	Amounts []quantity.Amount
	// Lots is how many packs inside the pack the first amount is told in ("one
	// skein"), 0 for none.
	Lots quantity.Number
	// AmountSpans are the places of Amounts.
	AmountSpans []source.Span
	// Each multiplies by the containers, cavities or pieces of the run; EachCount
	// is their number where the text says it ("each of 3 jars"), else 0. Lots and
	// repeats are told the same way: "two lengths of 40 cm", "3 × 10 minutes".
	Each      bool
	EachCount int
	// To: "fill to" is the total in the container; otherwise it is added.
	To bool
	// Plural: the words name several of the thing and no number: "the labels".
	Plural bool
	// FromRim: a fill height is told from the rim down.
	FromRim bool
	// InAll: the figure is for the whole box, not one run.
	InAll bool
	// About: shared out equally and then compared.
	About bool
	// By: a difference of temperature.
	By bool
	// Count of containers, pieces or times said in the text ("3 jars", "twice"), 0 if
	// none; of `again` it is how many more times. Never above 200.
	Count int
}

// Amount gives the first amount, or ok = false.
func (p Phrase) Amount() (quantity.Amount, bool) {
	if len(p.Amounts) == 0 {
		return quantity.Amount{}, false
	}
	return p.Amounts[0], true
}

// Signal is the word at the head of a caution (ANSI Z535.6, ISO 3864-2).
type Signal string

const (
	Danger      Signal = "DANGER"
	Warning     Signal = "WARNING"
	CautionWord Signal = "CAUTION"
	Notice      Signal = "NOTICE"
)

// A Caution is a quotation that begins with a signal word.
type Caution struct {
	Signal Signal
	Text   string
	Span   source.Span
}

// Prose is a piece of running text outside links, with the place of each piece.
type Prose struct {
	Text string
	Span source.Span // Span.Text() == Text
}

// A Trouble is one problem in trouble.md: what is seen, why, what to do.
type Trouble struct {
	ID         string
	Named      bool
	Title      string
	Span, Body source.Span
	Operations []*Operation
	Cautions   []Caution
	Prose      []Prose
	Paragraphs []source.Span // as in a Step
}

// Words is a section of words.md: welcome, storing, about the maker.
type Words struct {
	ID         string
	Title      string
	Span, Body source.Span
	Operations []*Operation // all told, none done
	Prose      []Prose
}

// A Picture is a file in pictures/.
type Picture struct {
	Name string // file name without folder
	Size int64
	// Data is the file's bytes, for the booklet.
	Data []byte
}
