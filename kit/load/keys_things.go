package load

import (
	"tallyfold/kit"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// What several tables expect, in the same words.
const (
	expectPacked   = "an amount such as 720 g, 12 mL, 6, 2 skeins of 8 m or 900 cm²; behind it “± 5 g” says how far it may be off"
	expectDensity  = "a weight for a volume, such as 0.90 g/mL or 0.50–0.70 g/mL"
	expectShare    = "a share and of what, such as “at most 2 % of mixture”, or a list of them"
	expectReading  = "a temperature such as 60 °C or 140 °F"
	expectResidue  = "what stays behind, such as 10 g ± 4 g"
	expectCarries  = "the liquid it holds on to when lifted out of a bath, as a share of its own dry weight, such as 150 %"
	expectRatio    = "its amount against that of another thing, such as “15–30 mL per g of cotton” or “70 : 100 of plaster”, or a list of them"
	expectNote     = "words for the box list"
	expectPicture  = "a file in the folder pictures that shows it in the booklet's lists of what is needed, by its name alone, such as lavender.jpg"
	expectAlso     = "another name that the method uses for it, or a list of them"
	expectCautions = "a warning in plain words, or a list of them"
)

var componentKeys = table[kit.Component]{"component", "anything packed in the box: a material, a container, a part, printed matter", []field[kit.Component]{
	name("name", "what people call it", "Gelling powder", func(c *kit.Component) *kit.Said[string] { return &c.Called }),
	namesOf(func(c *kit.Component) *kit.Name { return &c.Name }),
	texts("also called", expectAlso, "Setting powder", func(c *kit.Component) *[]kit.Said[string] { return &c.AlsoCalled }),
	packedOf(),
	amount("spare", "the part of the packed amount that nobody has to use, in the same kind of unit, such as 1 g", "1 g", spareable, func(c *kit.Component) *kit.Said[quantity.Amount] { return &c.Spare }),
	density(expectDensity+"; behind it “loose”, “liquid” or “set” says what was weighed", "0.50–0.70 g/mL loose", func(c *kit.Component) (*kit.Said[quantity.Amount], *kit.State) { return &c.Density, &c.DensityState }),
	amount("true density", expectDensity+", of the grains themselves", "2.6 g/mL", aDensity, func(c *kit.Component) *kit.Said[quantity.Amount] { return &c.TrueDensity }),
	amounts("share", expectShare, "at most 2 % of mixture", aShare, func(c *kit.Component) *[]kit.Said[quantity.Amount] { return &c.Shares }),
	amount("add below", expectReading, "60 °C", aReading, func(c *kit.Component) *kit.Said[quantity.Amount] { return &c.AddBelow }),
	amount("withstands", expectReading+", the hottest it may become", "90 °C", aReading, func(c *kit.Component) *kit.Said[quantity.Amount] { return &c.Withstands }),
	whole("strands", "how many strands the thread is laid of, a whole number such as 6", "6", 1, 999, "", func(c *kit.Component) *kit.Said[int] { return &c.Strands }),
	amount("allowance per end", "a length such as 5 cm, lost at each end of every length that is cut", "5 cm", aLength, func(c *kit.Component) *kit.Said[quantity.Amount] { return &c.EndAllowance }),
	amount("cut margin", "a width such as 3 mm, lost on every side of each piece that is cut out", "3 mm", aLength, func(c *kit.Component) *kit.Said[quantity.Amount] { return &c.CutMargin }),
	amount("carries", expectCarries, "150 %", ownShare, func(c *kit.Component) *kit.Said[quantity.Amount] { return &c.Carries }),
	amount("use within", "how long it stays workable once it is taken, such as 20 min", "20 min", fit{kinds: aDuration.kinds}, func(c *kit.Component) *kit.Said[quantity.Amount] { return &c.UseWithin }),
	solubilities(),
	amounts("ratio", expectRatio, "15–30 mL per g of cotton", aRatio, func(c *kit.Component) *[]kit.Said[quantity.Amount] { return &c.Ratios }),
	yesNo("optional", "yes if it may stay in the bag, else no", func(c *kit.Component) *kit.Said[bool] { return &c.Optional }),
	name("one for each", "the key of a container or kind of piece that it goes with, one to each, such as a lid with its jar", "jar", func(c *kit.Component) *kit.Said[string] { return &c.OneForEach }),
	prose("note", expectNote, "the larger of the two bags", func(c *kit.Component) *kit.Said[string] { return &c.Note }),
	picture("picture", expectPicture, "lavender.jpg", func(c *kit.Component) *kit.Said[string] { return &c.Picture }),
	texts("cautions", expectCautions, "Keep away from eyes", func(c *kit.Component) *[]kit.Said[string] { return &c.Cautions }),
	sizeOf(),
	ingredients("ingredients", "what it is a blend of, each with its share of the blend's weight, such as 70 % Water; one or a list", "[70 % Water, 20–25 % Glycerin]", func(c *kit.Component) *[]kit.Said[kit.Ingredient] { return &c.Ingredients }),
	ingredients("allergens", "the allergens that its supplier's breakdown names, each with its share of the weight, such as 0.3 % Linalool; one or a list", "[0.3 % Linalool]", func(c *kit.Component) *[]kit.Said[kit.Ingredient] { return &c.Allergens }),
	prose("label name", "its name in a list of ingredients, where that is another", "Glycerin", func(c *kit.Component) *kit.Said[string] { return &c.LabelName }),
	oneOf("counts as", "what the law counts it as: fragrance or colour in a list of ingredients, marble or balloon among toys", "fragrance", []choice[string]{{"fragrance", "fragrance"}, {"colour", "colour"}, {"marble", "marble"}, {"balloon", "balloon"}},
		func(c *kit.Component) *kit.Said[string] { return &c.CountsAs }),
	texts("hazards", "what its pack says can go wrong: H-statements such as H319, words such as dust or stains, keys of your own hazards; one or a list", "[H319, dust]", func(c *kit.Component) *[]kit.Said[string] { return &c.Hazards }),
	oneOf("signal word", "the word that its pack bears: danger or warning", "warning", []choice[kit.Signal]{{"danger", kit.Danger}, {"warning", kit.Warning}},
		func(c *kit.Component) *kit.Said[kit.Signal] { return &c.SignalWord }),
	yesNo("art material", "yes if it is sold to paint, colour, glue or model with, else no", func(c *kit.Component) *kit.Said[bool] { return &c.ArtMaterial }),
	group("review", "a toxicologist's look at its recipe: day, by, and what it warns of", "{day: 2026-02-10, by: Dr Reed}", reviewKeys, func(c *kit.Component, at source.Span) *kit.Review {
		c.Review = &kit.Review{Span: at}
		return c.Review
	}),
	amount("flash point", expectReading+", from its supplier's sheet", "63 °C", aReading, func(c *kit.Component) *kit.Said[quantity.Amount] { return &c.FlashPoint }),
	prose("first aid", "what its supplier's sheet says to do if something goes wrong", "Rinse eyes with water for 10 minutes.", func(c *kit.Component) *kit.Said[string] { return &c.FirstAid }),
	yesNo("clumps", "yes if it is a powder that lumps in a liquid unless it goes in bit by bit, else no", func(c *kit.Component) *kit.Said[bool] { return &c.Clumps }),
	prose("looks", "what one sees in the bag, such as white powder", "white powder", func(c *kit.Component) *kit.Said[string] { return &c.Looks }),
	oneOf("drawn as", "what it looks like from afar: bag, bottle, jar, sheet, reel or piece; told by how it is packed unless said", "bottle",
		[]choice[string]{{"bag", "bag"}, {"bottle", "bottle"}, {"jar", "jar"}, {"sheet", "sheet"}, {"reel", "reel"}, {"piece", "piece"}},
		func(c *kit.Component) *kit.Said[string] { return &c.DrawnAs }),
	group("container", "the keys of a container, if it ends up holding a finished piece", "{brimful: 235 mL, headspace: 15 mL}", containerKeys, func(c *kit.Component, at source.Span) *kit.Container {
		c.Container = &kit.Container{Span: at}
		return c.Container
	}),
	group("insert", "the keys of an insert, if it is placed into a container or mould", "{mass: 40 g, volume: 15 mL, floats: no}", insertKeys, func(c *kit.Component, at source.Span) *kit.Insert {
		c.Insert = &kit.Insert{Span: at}
		return c.Insert
	}),
}}

var containerKeys = table[kit.Container]{"container", "what a finished piece ends up in, or a mould", []field[kit.Container]{
	amount("brimful", "the volume up to the rim, such as 235 mL", "235 mL", aVolume, func(c *kit.Container) *kit.Said[quantity.Amount] { return &c.Brimful }),
	amount("headspace", "what is left free under the rim: a volume such as 15 mL, or a height such as 8 mm", "15 mL", roomOrDepth, func(c *kit.Container) *kit.Said[quantity.Amount] { return &c.Headspace }),
	amount("withstands", expectReading+", the hottest that may be poured into it", "90 °C", aReading, func(c *kit.Container) *kit.Said[quantity.Amount] { return &c.Withstands }),
	inside(func(c *kit.Container) *kit.Said[kit.Shape] { return &c.Inside }),
	amount("mouth", "how wide the opening is that things go in through, such as 40 mm", "40 mm", aWidth, func(c *kit.Container) *kit.Said[quantity.Amount] { return &c.Mouth }),
	oneOf("opening", "what the contents come out of: jar, bottle, pump, squeeze or spray", "pump",
		[]choice[kit.Opening]{{"jar", kit.OpenJar}, {"bottle", kit.Bottle}, {"pump", kit.Pump}, {"squeeze", kit.Squeeze}, {"spray", kit.Spray}},
		func(c *kit.Container) *kit.Said[kit.Opening] { return &c.Opening }),
	amount("panel", "the side of it that its label has to be read on, such as 60 × 40 mm", "60 × 40 mm", fit{kinds: []quantity.Dimension{quantity.Area}}, func(c *kit.Container) *kit.Said[quantity.Amount] { return &c.Panel }),
	whole("cavities", "how many cavities the mould has, a whole number such as 8", "8", 1, 9999, "", func(c *kit.Container) *kit.Said[int] { return &c.Cavities }),
	yesNo("used again", "yes if it may be filled more than once, else no", func(c *kit.Container) *kit.Said[bool] { return &c.UsedAgain }),
}}

// “floats: yes” and “floats: no” are the short way to say how most inserts sit;
// it is read first so that “sits” can say more.
var insertKeys = table[kit.Insert]{"insert", "an object placed into a container or mould", []field[kit.Insert]{
	amount("mass", "the weight of one, such as 40 g", "40 g", aMass, func(i *kit.Insert) *kit.Said[quantity.Amount] { return &i.Mass }),
	amount("volume", "the volume of one, such as 15 mL", "15 mL", aVolume, func(i *kit.Insert) *kit.Said[quantity.Amount] { return &i.Volume }),
	floats(),
	sits(),
	amount("withstands", expectReading+", the hottest fill it may meet", "90 °C", aReading, func(i *kit.Insert) *kit.Said[quantity.Amount] { return &i.Withstands }),
	amount("wide", "how wide one is across when it stands, such as 30 mm", "30 mm", aWidth, func(i *kit.Insert) *kit.Said[quantity.Amount] { return &i.Wide }),
	amount("tall", "how tall one stands, such as 50 mm", "50 mm", aWidth, func(i *kit.Insert) *kit.Said[quantity.Amount] { return &i.Tall }),
}}

var householdKeys = table[kit.Household]{"household", "what the customer supplies and uses up", []field[kit.Household]{
	name("name", "what people call it", "Tap water", func(h *kit.Household) *kit.Said[string] { return &h.Called }),
	namesOf(func(h *kit.Household) *kit.Name { return &h.Name }),
	texts("also called", expectAlso, "Cold water", func(h *kit.Household) *[]kit.Said[string] { return &h.AlsoCalled }),
	amount("amount", "how much to have ready, such as 2 L", "2 L", fit{kinds: packable.kinds, limit: true}, func(h *kit.Household) *kit.Said[quantity.Amount] { return &h.Amount }),
	density(expectDensity, "0.998 g/mL", func(h *kit.Household) (*kit.Said[quantity.Amount], *kit.State) { return &h.Density, &h.DensityState }),
	amounts("share", expectShare, "at most 80 % of mixture", aShare, func(h *kit.Household) *[]kit.Said[quantity.Amount] { return &h.Shares }),
	amount("add below", expectReading, "60 °C", aReading, func(h *kit.Household) *kit.Said[quantity.Amount] { return &h.AddBelow }),
	amount("carries", expectCarries, "150 %", ownShare, func(h *kit.Household) *kit.Said[quantity.Amount] { return &h.Carries }),
	amounts("ratio", expectRatio, "15–30 mL per g of cotton", aRatio, func(h *kit.Household) *[]kit.Said[quantity.Amount] { return &h.Ratios }),
	prose("note", expectNote, "soft or filtered if yours is hard", func(h *kit.Household) *kit.Said[string] { return &h.Note }),
}}

var toolKeys = table[kit.Tool]{"tool", "what is used and not used up; a tool that holds material is a vessel", []field[kit.Tool]{
	name("name", "what people call it", "Kitchen scale", func(t *kit.Tool) *kit.Said[string] { return &t.Called }),
	namesOf(func(t *kit.Tool) *kit.Name { return &t.Name }),
	texts("also called", expectAlso, "Kitchen balance", func(t *kit.Tool) *[]kit.Said[string] { return &t.AlsoCalled }),
	oneOf("from", "customer or box", "customer", []choice[kit.Supply]{{"customer", kit.FromCustomer}, {"box", kit.FromBox}},
		func(t *kit.Tool) *kit.Said[kit.Supply] { return &t.From }).required(),
	yesNo("essential", "yes if the kit cannot be made without it, no if it only helps", func(t *kit.Tool) *kit.Said[bool] { return &t.Essential }),
	texts("stands in for", "the key of a tool that it may replace, or a list of them", "blender", func(t *kit.Tool) *[]kit.Said[string] { return &t.StandsInFor }),
	amount("holds", "the volume up to the rim, such as 2 L", "2 L", aVolume, func(t *kit.Tool) *kit.Said[quantity.Amount] { return &t.Holds }),
	amount("fills to", "how much of it may be filled at most, such as 70 %", "70 %", ownShare, func(t *kit.Tool) *kit.Said[quantity.Amount] { return &t.FillsTo }),
	amount("residue", expectResidue+"; a weight or a volume", "10 g ± 4 g", massOrRoom, func(t *kit.Tool) *kit.Said[quantity.Amount] { return &t.Residue }),
	amountOf("evaporates", "what is lost of one thing each time a step warms the vessel, such as “10 g ± 5 g of water”", "10 g ± 5 g of water", lossOf, func(t *kit.Tool) *kit.Said[quantity.Amount] { return &t.Evaporates }),
	amount("foam", "the room to leave above what is worked in it: a volume such as 200 mL, or a share of what it holds such as 20 %", "20 %", foamRoom, func(t *kit.Tool) *kit.Said[quantity.Amount] { return &t.Foam }),
	amount("reads to", "its smallest step, such as 1 g, 5 mL or 1 °C", "1 g", scaleStep, func(t *kit.Tool) *kit.Said[quantity.Amount] { return &t.ReadsTo }),
	amount("withstands", expectReading+", the hottest it may become", "120 °C", aReading, func(t *kit.Tool) *kit.Said[quantity.Amount] { return &t.Withstands }),
	amount("packed", "how many come in the box, such as 1", "1", pieces, func(t *kit.Tool) *kit.Said[quantity.Amount] { return &t.Packed }),
	prose("note", expectNote, "one that will not be used for food again", func(t *kit.Tool) *kit.Said[string] { return &t.Note }),
	picture("picture", expectPicture, "scoop.jpg", func(t *kit.Tool) *kit.Said[string] { return &t.Picture }),
}}

var mixtureKeys = table[kit.Mixture]{"mixture", "what is made of several components in one vessel", []field[kit.Mixture]{
	name("name", "what people call it", "Gel", func(m *kit.Mixture) *kit.Said[string] { return &m.Called }),
	namesOf(func(m *kit.Mixture) *kit.Name { return &m.Name }),
	name("made in", "the key of the vessel it is made in", "pan", func(m *kit.Mixture) *kit.Said[string] { return &m.MadeIn }).required(),
	densities(),
	amount("residue", expectResidue+", in whatever vessel it leaves", "10 g", massOrRoom, func(m *kit.Mixture) *kit.Said[quantity.Amount] { return &m.Residue }),
	amount("dries out", "the share of its weight that it loses in the finished piece, such as 2 %", "2 %", ownShare, func(m *kit.Mixture) *kit.Said[quantity.Amount] { return &m.DriesBy }),
	oneOf("flows", "how thick it is when it is used: thin like water, creamy, thick, or set", "creamy",
		[]choice[kit.Flow]{{"thin", kit.Thin}, {"creamy", kit.Creamy}, {"thick", kit.Thick}, {"set", kit.Solid}},
		func(m *kit.Mixture) *kit.Said[kit.Flow] { return &m.Flows }),
	amount("shrinks", "the share of its volume that it loses as it sets, such as 2 %", "2 %", ownShare, func(m *kit.Mixture) *kit.Said[quantity.Amount] { return &m.ShrinksBy }),
	amounts("share", expectShare, "at least 95 % of mixture", aShare, func(m *kit.Mixture) *[]kit.Said[quantity.Amount] { return &m.Shares }),
}}

var pieceKeys = table[kit.Piece]{"piece", "a kind of finished piece", []field[kit.Piece]{
	name("name", "what people call it", "Scent gel", func(p *kit.Piece) *kit.Said[string] { return &p.Called }),
	namesOf(func(p *kit.Piece) *kit.Name { return &p.Name }),
	amount("count", "how many of them the kit makes, such as 6", "6", pieces, func(p *kit.Piece) *kit.Said[quantity.Amount] { return &p.Count }).required(),
	name("in", "the key of the container it ends up in", "jar", func(p *kit.Piece) *kit.Said[string] { return &p.In }),
	amount("net", "what one holds at least, such as “at least 195 g”", "at least 195 g", netContents, func(p *kit.Piece) *kit.Said[quantity.Amount] { return &p.Net }),
	name("of", "the key of the mixture it is made of", "gel", func(p *kit.Piece) *kit.Said[string] { return &p.Of }),
	prose("ingredient list", "its list of ingredients as you print it, names between commas; it is held against the method and printed instead of the program's own", "Water, Glycerin, Parfum", func(p *kit.Piece) *kit.Said[string] { return &p.Listed }),
}}

var reviewKeys = table[kit.Review]{"review", "a toxicologist's look at the recipe of an art material", []field[kit.Review]{
	date("day", "the day, as year-month-day, such as 2026-02-10", "2026-02-10", func(r *kit.Review) *kit.Said[string] { return &r.On }).required(),
	prose("by", "who looked", "Dr Reed, toxicologist", func(r *kit.Review) *kit.Said[string] { return &r.By }).required(),
	prose("warns", "what harm comes of long use, in the toxicologist's words; leave it out for none", "May cause lung damage if its dust is breathed in.", func(r *kit.Review) *kit.Said[string] { return &r.Warns }),
}}

var hazardKeys = table[kit.OwnHazard]{"hazard", "a hazard that the program does not know", []field[kit.OwnHazard]{
	name("name", "what it is, in a few words", "Glue that grabs", func(h *kit.OwnHazard) *kit.Said[string] { return &h.Called }),
	prose("happens", "what comes of it, a sentence for the customer", "The glue grabs skin in seconds.", func(h *kit.OwnHazard) *kit.Said[string] { return &h.Happens }).required(),
	prose("avoid", "how to avoid it, a sentence for the customer", "Hold the parts with the tweezers.", func(h *kit.OwnHazard) *kit.Said[string] { return &h.Avoid }).required(),
	oneOf("signal", "danger, warning, caution or notice", "caution", []choice[kit.Signal]{
		{"danger", kit.Danger}, {"warning", kit.Warning}, {"caution", kit.CautionWord}, {"notice", kit.Notice},
	}, func(h *kit.OwnHazard) *kit.Said[kit.Signal] { return &h.Signal }).required(),
}}
