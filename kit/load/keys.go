package load

import (
	"tallyfold/kit"
	"tallyfold/kit/colour"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// This file and keys_things.go have the keys of kit.yaml: for each place the keys
// that may stand there, what they hold, and where it goes. Findings, schemas and
// the documentation are made from the same tables. To add a key, add a line.

// Keys gives all sections of kit.yaml, the kit itself first.
func Keys() []Section {
	return []Section{
		kitKeys.section(), audienceKeys.section(), timeKeys.section(), lookKeys.section(), measureKeys.section(),
		componentKeys.section(), containerKeys.section(), insertKeys.section(), householdKeys.section(),
		toolKeys.section(), mixtureKeys.section(), pieceKeys.section(), runKeys.section(),
		claimKeys.section(), acceptKeys.section(), hazardKeys.section(), labelKeys.section(), labelSheetKeys.section(), reviewKeys.section(),
	}
}

// Language, kitchen and measures come first, as they say how amounts are read.
var kitKeys = table[kit.Kit]{"kit", "what is sold in one box; these keys begin in the first column of kit.yaml", []field[kit.Kit]{
	languageOf(),
	kitchenOf(),
	measuresOf(),
	name("name", "the name of the kit, as on the cover", "Windowsill scent gels", func(k *kit.Kit) *kit.Said[string] { return &k.Name }).required(),
	name("maker", "who makes and sells the kit", "Brindle Quay Workroom", func(k *kit.Kit) *kit.Said[string] { return &k.Maker }),
	addressOf("page", "the address of the kit's page, at most 106 letters, such as https://example.com/kit; it is printed with a code to scan", "https://example.com/gels", func(k *kit.Kit) *kit.Said[string] { return &k.Page }),
	prose("about", "one sentence for the cover", "Six jars of scented gel from one pan", func(k *kit.Kit) *kit.Said[string] { return &k.About }),
	whole("edition", "the number of this edition, a whole number from 1", "1", 1, 9999, "", func(k *kit.Kit) *kit.Said[int] { return &k.Edition }),
	amount("makes", "how many pieces the kit makes, such as 6 jars", "6 jars", pieces, func(k *kit.Kit) *kit.Said[quantity.Amount] { return &k.Makes }).required(),
	amount("price", "what the kit costs, such as 24 EUR or £24", "24 EUR", aPrice, func(k *kit.Kit) *kit.Said[quantity.Amount] { return &k.Price }),
	amount("price each", "what a piece is said to cost, such as 4 EUR", "4 EUR", aPrice, func(k *kit.Kit) *kit.Said[quantity.Amount] { return &k.PriceEach }),
	oneOf("sold as", "what the finished pieces are for the law of labels: leave-on cosmetic, rinse-off cosmetic or other", "leave-on cosmetic",
		[]choice[kit.Purpose]{{"leave-on cosmetic", kit.LeaveOn}, {"rinse-off cosmetic", kit.RinseOff}, {"candle", kit.Candle}, {"other", kit.OtherUse}},
		func(k *kit.Kit) *kit.Said[kit.Purpose] { return &k.SoldAs }),
	marketsOf(),
	group("audience", "for whom the kit is: age and skill", "{age: 14+, skill: beginner}", audienceKeys, func(k *kit.Kit, _ source.Span) *kit.Audience { return &k.Audience }),
	group("time", "how long the kit takes: hands-on and total", "{hands-on: 50 min, total: 5 h}", timeKeys, func(k *kit.Kit, _ source.Span) *kit.Time { return &k.Time }),
	group("look", "how the booklet looks: accent, a colour", `{accent: "#17566b"}`, lookKeys, func(k *kit.Kit, _ source.Span) *kit.Look { return &k.Look }),
	prose("emergency", "whom to call where the kit is sold if something goes wrong", "Poison line 01 234 56 78, day and night", func(k *kit.Kit) *kit.Said[string] { return &k.Emergency }),
	named("hazards", "hazards that the program does not know, each under a key of its own", "fumes: {happens: It fumes., avoid: Open a window., signal: caution}", hazardKeys,
		func(h *kit.OwnHazard) *kit.Name { return &h.Name }, func(k *kit.Kit, h *kit.OwnHazard) { k.OwnHazards = append(k.OwnHazards, h) }),
	named("components", "everything packed in the box, each under a key of its own", "glycerin: {name: Glycerin, packed: 62 g}", componentKeys,
		func(c *kit.Component) *kit.Name { return &c.Name }, func(k *kit.Kit, c *kit.Component) { k.Components = append(k.Components, c) }).required(),
	named("household", "what the customer supplies and uses up, each under a key of its own", "water: {name: Tap water}", householdKeys,
		func(h *kit.Household) *kit.Name { return &h.Name }, func(k *kit.Kit, h *kit.Household) { k.Household = append(k.Household, h) }),
	named("tools", "what is used and not used up, each under a key of its own", "pan: {name: Saucepan, from: customer}", toolKeys,
		func(t *kit.Tool) *kit.Name { return &t.Name }, func(k *kit.Kit, t *kit.Tool) { k.Tools = append(k.Tools, t) }),
	named("mixtures", "what is made of several components, each under a key of its own", "gel: {made in: pan}", mixtureKeys,
		func(m *kit.Mixture) *kit.Name { return &m.Name }, func(k *kit.Kit, m *kit.Mixture) { k.Mixtures = append(k.Mixtures, m) }),
	named("pieces", "the kinds of finished piece, each under a key of its own", "jar-gel: {count: 6, in: jar}", pieceKeys,
		func(p *kit.Piece) *kit.Name { return &p.Name }, func(k *kit.Kit, p *kit.Piece) { k.Pieces = append(k.Pieces, p) }),
	group("labels", "on which sheets labels are printed, and what you want on them", "{bags: a4-70x37, address: 3 Quay Lane}", labelKeys, func(k *kit.Kit, _ source.Span) *kit.Labels { return &k.Labels }),
	groupList("runs", "a list of runs through the method", "[{name: Rosemary, with: {scent: rosemary}}]", runKeys, func(k *kit.Kit, at source.Span) *kit.Run {
		return added(&k.Runs, &kit.Run{Span: at})
	}),
	groupList("claims", "a list of what the box claims", "[{says: Makes six jars, shown by: pieces}]", claimKeys, func(k *kit.Kit, at source.Span) *kit.Claim {
		return added(&k.Claims, &kit.Claim{Span: at})
	}),
	groupList("accept", "a list of findings the maker lives with", "[{rule: left-over, about: pan, because: a spoonful to test the set}]", acceptKeys,
		func(k *kit.Kit, at source.Span) *kit.Accepted { return added(&k.Accepted, &kit.Accepted{Span: at}) }),
}}

// added puts one at the end of a list and hands it out.
func added[T any](list *[]*T, one *T) *T {
	*list = append(*list, one)
	return one
}

var audienceKeys = table[kit.Audience]{"audience", "for whom the kit is meant", []field[kit.Audience]{
	whole("age", "the youngest age in years, such as 14+", "14+", 1, 120, "+", func(a *kit.Audience) *kit.Said[int] { return &a.Age }),
	oneOf("skill", "beginner, some practice or experienced", "beginner",
		[]choice[string]{{"beginner", "beginner"}, {"some practice", "some practice"}, {"experienced", "experienced"}},
		func(a *kit.Audience) *kit.Said[string] { return &a.Skill }),
	yesNo("for children", "yes if the kit is made mainly for children of twelve and younger, else no", func(a *kit.Audience) *kit.Said[bool] { return &a.ForChildren }),
	yesNo("toy", "yes if the kit, or what is made of it, is meant for play, else no", func(a *kit.Audience) *kit.Said[bool] { return &a.Toy }),
}}

var timeKeys = table[kit.Time]{"time", "the time claimed on the box", []field[kit.Time]{
	amount("hands-on", "a time such as 50 min", "50 min", aDuration, func(t *kit.Time) *kit.Said[quantity.Amount] { return &t.HandsOn }),
	amount("total", "a time such as 5 h or 2 h 30 min", "5 h", aDuration, func(t *kit.Time) *kit.Said[quantity.Amount] { return &t.Total }),
}}

var lookKeys = table[kit.Look]{"look", "how the booklet looks in what is yours to choose", []field[kit.Look]{
	colourOf("accent", "a colour as # and six figures of 0 to 9 and a to f, in quotation marks, such as \"#17566b\"", `"#17566b"`,
		func(l *kit.Look) *kit.Said[colour.Colour] { return &l.Accent }),
}}

var measureKeys = table[kit.Measure]{"measure", "a measure of the kit's own, such as a scoop or a drop; “scoop: 15 mL” is enough", []field[kit.Measure]{
	name("name", "what people call the measure", "Blue scoop", func(m *kit.Measure) *kit.Said[string] { return &m.Called }),
	namesOf(func(m *kit.Measure) *kit.Name { return &m.Name }),
	amount("holds", "a volume such as 15 mL", "15 mL", aVolume, func(m *kit.Measure) *kit.Said[quantity.Amount] { return &m.Holds }).required(),
}}

var runKeys = table[kit.Run]{"run", "one pass through the method with its own choice of components", []field[kit.Run]{
	name("name", "what people call the run", "Rosemary", func(r *kit.Run) *kit.Said[string] { return &r.Name }).required(),
	withOf(),
	texts("parts", "the names of the parts of the method that the run goes through; all unless said", "[candles]", func(r *kit.Run) *[]kit.Said[string] { return &r.Parts }),
}}

var claimKeys = table[kit.Claim]{"claim", "a statement printed on the box", []field[kit.Claim]{
	prose("says", "the words of the claim", "Burns for 30 hours", func(c *kit.Claim) *kit.Said[string] { return &c.Says }).required(),
	name("shown by", "what backs the claim: pieces, time, the key of a thing in the kit, or a file such as trials/burn-test.yaml", "trials/burn-test.yaml",
		func(c *kit.Claim) *kit.Said[string] { return &c.ShownBy }),
}}

var acceptKeys = table[kit.Accepted]{"accept", "a finding the maker has decided to live with, and why", []field[kit.Accepted]{
	name("rule", "the name of the finding's rule, as it is printed", "left-over", func(a *kit.Accepted) *kit.Said[string] { return &a.Rule }).required(),
	name("about", "the key of what the finding is about", "pan", func(a *kit.Accepted) *kit.Said[string] { return &a.About }),
	prose("because", "the reason, for whoever reads this next year", "a spoonful to test the set on a cold plate", func(a *kit.Accepted) *kit.Said[string] { return &a.Because }).required(),
	date("until", "the last day it is accepted, as year-month-day, such as 2027-06-30", "2027-06-30", func(a *kit.Accepted) *kit.Said[string] { return &a.Until }),
	name("seen", "a figure or some words of the finding as you accepted it, such as 20 mL; when it no longer says so, it comes back", "20 mL", func(a *kit.Accepted) *kit.Said[string] { return &a.Seen }),
	whole("edition", "the last edition it is accepted for, a whole number from 1", "2", 1, 9999, "", func(a *kit.Accepted) *kit.Said[int] { return &a.Edition }),
}}
