package kit

import (
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// Labels say on what the labels of a kit are printed and what the maker wants on them.
// The zero Labels are those of a kit that says nothing: all kinds, on the usual sheets.
type Labels struct {
	// Bags, Containers, Lids and Box name the grid that each kind is printed on: one of
	// label.Grids, OwnSheet or NoLabels.
	Bags, Containers, Lids, Box Said[string]
	// Sheet is the maker's own grid, where one is told.
	Sheet *LabelSheet
	// Address of the maker, as it is printed behind the name.
	Address Said[string]
	// DistributedBy names another who sells the kit, with the address.
	DistributedBy Said[string]
	// Contact is a telephone number, an e-mail or a web address for complaints.
	Contact Said[string]
	// InEU and InUK name who answers for the kit there, with the address.
	InEU, InUK Said[string]
	// MadeIn is the country of origin.
	MadeIn Said[string]
	// Keeps is how long a finished piece keeps unopened, OnceOpened once it is opened, both
	// in months.
	Keeps, OnceOpened Said[int]
	// Lot: there is room to write a lot number. Yes unless said.
	Lot Said[bool]
	// Nudge moves everything on the sheet, for a printer that is off.
	Nudge Said[Nudge]
}

// The words in place of a grid.
const (
	OwnSheet = "own"
	NoLabels = "none"
)

// A Nudge is how far everything on a sheet is moved, in mm; left and up are negative.
type Nudge struct{ Right, Down quantity.Number }

// A LabelSheet is a grid of labels that the maker has measured. All but Paper, Across, Down
// and Round are lengths.
type LabelSheet struct {
	Span         source.Span
	Paper        Said[string] // a4 or letter
	Across, Down Said[int]
	Wide, Tall   Said[quantity.Amount]
	// Left and Top are the margins before the first label.
	Left, Top Said[quantity.Amount]
	// GapAcross and GapDown lie between two labels.
	GapAcross, GapDown Said[quantity.Amount]
	// Round labels are as wide as tall.
	Round Said[bool]
}
