// Package kit has the nouns: a kit, what is packed in its box, the tools, the
// runs, the steps. It opens no file and judges nothing. kit/load and
// instructions fill these values in from a maker's folder, kit/ledger follows
// the steps over them, kit/rules judges both.
//
// Every value that a maker wrote keeps the place it came from (Said), so that a
// finding always can point at it. Things are named by their key in kit.yaml
// ("wax"), which is unique over components, household items, tools, mixtures
// and kinds of piece of one kit.
package kit

import (
	"tallyfold/kit/colour"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// Said is a value with the place where the maker wrote it. The zero Said was
// not written at all.
type Said[T any] struct {
	Value T
	Span  source.Span
}

// Given says whether the maker wrote the value.
func (s Said[T]) Given() bool { return s.Span.Known() }

// Name is the key of a thing in kit.yaml together with what people call it.
type Name struct {
	// ID is the key: lower-case letters, digits and hyphens.
	ID string
	// IDSpan is where the key stands.
	IDSpan source.Span
	// Called is what people read; where the maker gave none it is the key.
	Called Said[string]
	// AlsoCalled are other names by which the method may speak of it. Components,
	// household items and tools have them.
	AlsoCalled []Said[string]
	// Others are names in other languages.
	Others []OtherName
}

// An OtherName is what people who read a language call a thing.
type OtherName struct {
	Language Said[string] // BCP 47 tag
	// Called has at least one name; the first is printed, by all the texts may call it.
	Called []string
	Span   source.Span
}

// A Kit is what is sold in one box, with the method that goes into it.
type Kit struct {
	// Folder is the base name of the kit folder; it names the output files.
	Folder string
	// File is kit.yaml itself.
	File *source.File

	Name  Said[string]
	Maker Said[string]
	Page  Said[string] // address of the kit's page on the web
	// Emergency is whom to call where the kit is sold ("Poison line: …").
	Emergency Said[string]
	About     Said[string] // one sentence for the cover
	Language  Said[string] // BCP 47 tag of the written texts; "en" unless said
	Edition   Said[int]
	Makes     Said[quantity.Amount] // a count with a noun
	Audience  Audience
	Time      Time
	Look      Look
	Labels    Labels
	Kitchen   Said[quantity.Convention] // which spoons and cups are meant
	// Price is that of the whole kit, PriceEach the one claimed of a piece.
	Price, PriceEach Said[quantity.Amount]
	// Markets are where the kit is sold: "US", "EU", "UK", or one that there is no pack for.
	Markets []Said[string]
	// SoldAs is what the finished pieces are for the law of labels.
	SoldAs   Said[Purpose]
	Measures []*Measure

	// OwnHazards are those the handbook does not have.
	OwnHazards []*OwnHazard

	Components []*Component
	Household  []*Household
	Tools      []*Tool
	Mixtures   []*Mixture
	Pieces     []*Piece
	Runs       []*Run
	Claims     []*Claim
	Accepted   []*Accepted

	Method Method
	// Translations are the method in other languages, by the names of their files.
	Translations []*Translation
	Troubles     []*Trouble
	Words        []*Words
	Pictures     []*Picture
	// Documents are the files that claims name and that are in the folder, as the
	// claims write them ("trials/burn.yaml").
	Documents []string

	// onlyRun is the nameless run of a kit without runs: one and the same each time.
	onlyRun Run
}

// OwnHazard is a hazard that the maker adds to those of the handbook.
type OwnHazard struct {
	Name
	// Happens and Avoid are sentences for the customer: what comes of it, how to avoid it.
	Happens, Avoid Said[string]
	Signal         Said[Signal]
}

// Purpose is what finished pieces are sold or given away as.
type Purpose string

// What finished pieces can be sold as; the first two have a list of ingredients.
const (
	LeaveOn  Purpose = "leave-on cosmetic"
	RinseOff Purpose = "rinse-off cosmetic"
	Candle   Purpose = "candle"
	OtherUse Purpose = "other"
)

// Audience says for whom the kit is meant.
type Audience struct {
	// Age is the youngest age in years ("14+" is 14).
	Age   Said[int]
	Skill Said[string] // beginner, some practice, experienced
	// ForChildren: the kit is made mainly for children of twelve and younger. Toy: it is
	// meant for play, itself or what is made of it.
	ForChildren, Toy Said[bool]
}

// Look is how the booklet looks in what is the maker's to choose.
type Look struct {
	// Accent is the one colour beside black: bars, numbers, bag letters.
	Accent Said[colour.Colour]
}

// Time is what the box claims.
type Time struct {
	HandsOn, Total Said[quantity.Amount] // durations
}

// A Measure is a measure of the kit's own: a scoop, a drop, a spray.
type Measure struct {
	Name
	Holds Said[quantity.Amount] // volume
}

// State is what a density was measured on: the word after it in kit.yaml
// ("0.55 g/mL loose").
type State int

const (
	NoState State = iota
	Loose         // a powder as a spoon holds it, air between the grains
	Liquid        // poured or melted
	Set           // cooled or hardened
)

// A Container ends up holding a finished piece, or is a mould with cavities.
type Container struct {
	Span source.Span
	// Brimful is the volume up to the rim.
	Brimful Said[quantity.Amount]
	// Headspace is left free under the rim: a volume, or a height (length).
	Headspace Said[quantity.Amount]
	// Withstands is the hottest that may be poured into it (at most).
	Withstands Said[quantity.Amount]
	// Inside is its shape; the zero Shape is not told.
	Inside Said[Shape]
	// Mouth is the width of the opening that things go in through (length).
	Mouth Said[quantity.Amount]
	// Opening is what the contents come out of.
	Opening Said[Opening]
	// Cavities of a mould; one unless said.
	Cavities Said[int]
	// Panel is the part of the outside that is seen when it is shown for sale: the side
	// that its label has to be read on, told by its two sides.
	Panel Said[quantity.Amount]
	// UsedAgain: the same mould may be filled more than once.
	UsedAgain Said[bool]
}

// An Opening is what the contents of a container come out of.
type Opening int

const (
	OpenJar Opening = iota + 1 // wide enough for a spoon or a finger
	Bottle                     // poured through a neck
	Pump
	Squeeze // pressed out of a soft bottle or tube
	Spray
)

// Form is the kind of an inside shape.
type Form int

const (
	NoForm   Form = iota
	Cylinder      // Widths[0] is the diameter
	Cone          // a frustum: Widths[0] at the base, Widths[1] at the rim
	Box           // Widths[0] and Widths[1] are the sides
	Sphere        // Widths[0] is the diameter
	Table         // Levels
)

// A Shape is the inside of a container, lengths in mm.
type Shape struct {
	Form   Form
	Widths []quantity.Number
	Tall   quantity.Number // inside height; zero when not told
	Levels []Level         // for Table, rising
}

// A Level pairs a height above the base (mm) with the volume up to it (mL).
type Level struct{ Height, Volume quantity.Number }

// Sitting says how an insert sits in what is filled around it.
type Sitting int

const (
	Sunk    Sitting = iota // below the surface, takes its whole volume
	Floats                 // displaces its mass divided by the density of the fill
	OnTop                  // rests on the rim or the set surface, takes no room
	Flooded                // open: the fill runs into it; takes only its own material's volume
)

// An Insert is placed into a container or mould.
type Insert struct {
	Span   source.Span
	Mass   Said[quantity.Amount]
	Volume Said[quantity.Amount] // outer volume; for Flooded that of its material
	Sits   Said[Sitting]
	// Withstands is the hottest fill that it may meet.
	Withstands Said[quantity.Amount]
	// Wide is how wide one is across when it stands Tall (lengths).
	Wide, Tall Said[quantity.Amount]
}

// An Ingredient is a part of a blend, with its share of the blend's mass.
type Ingredient struct {
	Name  string
	Share quantity.Amount
}

// A Household item is supplied by the customer and used up.
type Household struct {
	Name
	Density      Said[quantity.Amount]
	DensityState State
	Shares       []Said[quantity.Amount]
	AddBelow     Said[quantity.Amount]
	// Carries and Ratios are those of a component.
	Carries Said[quantity.Amount]
	Ratios  []Said[quantity.Amount]
	// About is how much to have ready, where the maker wants to say it.
	Amount Said[quantity.Amount]
	Note   Said[string]
}

// Supply says who brings a tool.
type Supply int

const (
	FromCustomer Supply = iota + 1
	FromBox
)

// A Tool is used and not used up. A tool that holds material is a vessel.
type Tool struct {
	Name
	From      Said[Supply]
	Essential Said[bool]
	// StandsInFor are keys of tools that this one may replace.
	StandsInFor []Said[string]
	Holds       Said[quantity.Amount] // volume, brimful
	FillsTo     Said[quantity.Amount] // share of Holds that it may be filled to at most
	Residue     Said[quantity.Amount] // stays behind when last emptied in a run
	// Evaporates is lost of one thing (Amount.Of) in each step that warms the vessel.
	Evaporates Said[quantity.Amount]
	// Foam is the room to leave above what is worked in it: a volume, or a share of
	// the volume of what it holds.
	Foam       Said[quantity.Amount]
	ReadsTo    Said[quantity.Amount] // smallest step of a scale, jug or thermometer
	Withstands Said[quantity.Amount]
	Packed     Said[quantity.Amount] // count, when it comes in the box; one unless said
	Note       Said[string]
	Picture    Said[string] // file in pictures/ that shows it in the list of the box, or of what to bring
}

// A Mixture is a named making of several components in one vessel.
type Mixture struct {
	Name
	MadeIn  Said[string]          // key of a vessel
	Density Said[quantity.Amount] // measured, as filled
	// DensityState says what Density is that of.
	DensityState State
	// SetDensity is that of the cooled or hardened mixture, where Density is that of
	// the liquid: between them lies how far it draws together.
	SetDensity Said[quantity.Amount]
	Residue    Said[quantity.Amount] // stays behind in whatever vessel it leaves
	DriesBy    Said[quantity.Amount] // share of its mass that it loses in the finished piece ("dries out: 2 %")
	Shares     []Said[quantity.Amount]
	// Flows is how thick it is when it is used.
	Flows Said[Flow]
	// ShrinksBy is the share of its volume that it loses when it sets.
	ShrinksBy Said[quantity.Amount]
}

// A Flow is how thick a mixture is, by eye.
type Flow int

const (
	Thin   Flow = iota + 1 // runs like water
	Creamy                 // runs slowly, like cream
	Thick                  // holds a peak, like cold honey or a balm
	Solid                  // does not run at all once it has set
)

// A Piece is a kind of finished item.
type Piece struct {
	Name
	Count Said[quantity.Amount]
	In    Said[string]          // key of its container, "" for none
	Net   Said[quantity.Amount] // claimed net contents of one
	Of    Said[string]          // key of the mixture it holds, where one is meant
	// Listed is the list of ingredients as the maker prints it, names between commas.
	Listed Said[string]
}

// A Run is one pass through the method with its own choice of components.
type Run struct {
	Span source.Span
	Name Said[string]
	// With binds a role in the method to a component key.
	With []Binding
	// Parts limits the run to the named parts of the method; empty means all.
	Parts []Said[string]
}

// A Binding gives a role its component in one run.
type Binding struct {
	Role      Said[string]
	Component Said[string]
}

// Component gives the key bound to a role, or ok = false.
func (r *Run) Component(role string) (id string, ok bool) {
	for _, b := range r.With {
		if b.Role.Value == role {
			return b.Component.Value, true
		}
	}
	return "", false
}

// A Claim is a statement printed on the box.
type Claim struct {
	Span source.Span
	Says Said[string]
	// ShownBy names what backs it: "pieces", "time", a trial file or a document.
	ShownBy Said[string]
}

// Accepted is a finding the maker has decided to live with, and why.
type Accepted struct {
	Span    source.Span
	Rule    Said[string]
	About   Said[string]
	Because Said[string]
	Until   Said[string] // ISO date, last day it holds
	Edition Said[int]    // last edition it holds for
	Seen    Said[string] // words or figures of the finding as it was accepted
}
