package kit

import (
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// A Component is anything packed in the box: material, container, part, print.
type Component struct {
	Name
	// Letter marks the bag: A, B … Z, AA. Given by the order in kit.yaml.
	Letter string
	// Packed is for the whole box; Spare is the part of it that nobody has to use.
	Packed, Spare Said[quantity.Amount]
	// Density turns spoons into mass; for a powder it is the loose bulk density.
	Density Said[quantity.Amount]
	// DensityState says what Density is that of; NoState where the maker did not say.
	DensityState State
	// TrueDensity is that of the grains or the liquid: the volume it adds to a mixture.
	TrueDensity Said[quantity.Amount]
	// Shares are the limits on its part of a mixture; Amount.Of names the base.
	Shares []Said[quantity.Amount]
	// AddBelow: the mixture must be colder than this when it is added.
	AddBelow Said[quantity.Amount]
	// Withstands is the hottest that it may become.
	Withstands Said[quantity.Amount]
	// Lots are the packs inside the pack: "2 skeins of 8 m". Packed is then all of them
	// together. The zero Lots were not told.
	Lots Lots
	// Strands is how many strands a thread is laid of.
	Strands Said[int]
	// EndAllowance is lost at each end of every length that is cut.
	EndAllowance Said[quantity.Amount]
	// CutMargin is lost along each side of every piece that is cut out of a sheet.
	CutMargin Said[quantity.Amount]
	// Carries is how much liquid it holds on to when it is lifted out of a bath, as a
	// share of its own dry mass. A thing that carries is a solid, such as fibre: it
	// lies in a liquid and is no part of it.
	Carries Said[quantity.Amount]
	// UseWithin is how long it stays workable once it is taken.
	UseWithin Said[quantity.Amount]
	// Dissolves are points of what a solvent takes up of it, rising with temperature.
	Dissolves []Said[quantity.Solubility]
	// Ratios are limits on its amount against that of another thing (Amount.Of): mL
	// of water per g of fibre, powder to water.
	Ratios []Said[quantity.Amount]
	// Optional components may stay in the bag.
	Optional Said[bool]
	// OneForEach is the key of a container or kind of piece that this goes with, one
	// to each: a lid, a label, a tag.
	OneForEach Said[string]
	// Note is printed in the box list.
	Note Said[string]
	// Picture is the file in pictures/ that shows it in the list of the box.
	Picture Said[string]
	// Cautions are the supplier's warnings in plain words, one a line.
	Cautions []Said[string]
	// Hazards are what the pack or its sheet says can go wrong: H-statements by their
	// codes, words of the handbook, or keys of the kit's own hazards.
	Hazards []Said[string]
	// SignalWord is the one that its pack bears, DANGER or WARNING.
	SignalWord Said[Signal]
	// Size is the outside of one loose part; the zero Shape is not told.
	Size Said[Shape]
	// Ingredients are what it is made of itself, where it is a blend: shares of its mass.
	Ingredients []Said[Ingredient]
	// Allergens are those that its supplier's breakdown names, as shares of its mass.
	Allergens []Said[Ingredient]
	// LabelName is its name in a list of ingredients, where that is another.
	LabelName Said[string]
	// CountsAs says what the law counts it as: "fragrance" or "colour" in a list of
	// ingredients, "marble" or "balloon" among toys, or "".
	CountsAs Said[string]
	// ArtMaterial: it is sold to make or colour something with, and no cosmetic.
	ArtMaterial Said[bool]
	// Review is a toxicologist's look at its recipe; nil where none is told.
	Review *Review
	// FlashPoint is the temperature at which its vapour can catch fire.
	FlashPoint Said[quantity.Amount]
	// FirstAid is what the supplier's sheet says to do if something goes wrong.
	FirstAid Said[string]
	// Clumps: a powder that lumps when it meets a liquid all at once.
	Clumps Said[bool]
	// Looks is what one sees in the bag: "white powder".
	Looks Said[string]
	// DrawnAs is the outline it has on the plate of what is in the box: bag, bottle, jar,
	// sheet, reel or piece.
	DrawnAs Said[string]

	Container *Container // nil unless it holds finished pieces
	Insert    *Insert    // nil unless it is placed into a container or mould
}

// A Review is a toxicologist's look at the recipe of an art material.
type Review struct {
	Span source.Span
	On   Said[string] // year-month-day
	By   Said[string]
	// Warns is what harm comes of long use, in the toxicologist's words; "" for none.
	Warns Said[string]
}

// Lots are packs inside a pack: Count of them with Each inside, called Noun.
type Lots struct {
	Count int
	Each  quantity.Amount
	Noun  string
}

// Told says whether the maker told the pack in lots.
func (l Lots) Told() bool { return l.Count > 0 }

// IsMaterial says whether it is packed by weight or volume: wax, powder, a liquid.
func (c *Component) IsMaterial() bool {
	switch c.Packed.Value.Dimension {
	case quantity.Mass, quantity.Volume:
		return true
	}
	return false
}
