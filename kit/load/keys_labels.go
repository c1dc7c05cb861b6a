package load

import (
	"tallyfold/kit"
	"tallyfold/kit/label"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

const expectGrid = "the sheet they are printed on: a size such as a4-70x37, own (the one under “sheet”), or none"

var labelKeys = table[kit.Labels]{"labels", "on which sheets labels are printed, and what the maker wants on them", []field[kit.Labels]{
	gridOf("bags", "for bags, ", "a4-70x37", func(l *kit.Labels) *kit.Said[string] { return &l.Bags }),
	gridOf("containers", "for the containers of finished pieces, ", "a4-99x68", func(l *kit.Labels) *kit.Said[string] { return &l.Containers }),
	gridOf("lids", "for their lids, ", "a4-round-60", func(l *kit.Labels) *kit.Said[string] { return &l.Lids }),
	gridOf("box", "for the end of the box, ", "a4-99x139", func(l *kit.Labels) *kit.Said[string] { return &l.Box }),
	group("sheet", "a sheet that you measured, with its margins and gaps", "{across: 2, down: 8, wide: 90 mm, tall: 34 mm}", labelSheetKeys, func(l *kit.Labels, at source.Span) *kit.LabelSheet {
		l.Sheet = &kit.LabelSheet{Span: at}
		return l.Sheet
	}),
	prose("address", "where the maker is, as it is printed behind the name", "3 Quay Lane, Brindle", func(l *kit.Labels) *kit.Said[string] { return &l.Address }),
	prose("distributed by", "who sells it, where that is not the maker, with the address", "Harbour Goods, 9 Mill Street, Brindle", func(l *kit.Labels) *kit.Said[string] { return &l.DistributedBy }),
	prose("contact", "an e-mail or a web address for complaints, or a telephone number such as “Tel. 555 0100”", "Tel. 555 0100", func(l *kit.Labels) *kit.Said[string] { return &l.Contact }),
	prose("responsible in eu", "who answers for the kit in the European Union, with the address", "Quay Goods, 4 Havenweg, Brinde", func(l *kit.Labels) *kit.Said[string] { return &l.InEU }),
	prose("responsible in uk", "who answers for the kit in the United Kingdom, with the address", "Quay Goods, 9 Mill Street, Brindle", func(l *kit.Labels) *kit.Said[string] { return &l.InUK }),
	prose("made in", "the country that the kit is from", "Ireland", func(l *kit.Labels) *kit.Said[string] { return &l.MadeIn }),
	whole("keeps", "how many months a finished piece keeps unopened, such as 12 months", "12 months", 1, 600, " months", func(l *kit.Labels) *kit.Said[int] { return &l.Keeps }),
	whole("once opened", "how many months a finished piece keeps once it is opened, such as 6 months", "6 months", 1, 600, " months", func(l *kit.Labels) *kit.Said[int] { return &l.OnceOpened }),
	yesNo("lot", "yes for room to write a lot number, else no; yes unless said", func(l *kit.Labels) *kit.Said[bool] { return &l.Lot }),
	nudgeOf(),
}}

var labelSheetKeys = table[kit.LabelSheet]{"label sheet", "a sheet of labels as measured, upright", []field[kit.LabelSheet]{
	oneOf("paper", "a4 or letter; a4 unless said", "a4", paperChoices(), func(s *kit.LabelSheet) *kit.Said[string] { return &s.Paper }),
	whole("across", "how many labels there are in a row, a whole number", "3", 1, 50, "", func(s *kit.LabelSheet) *kit.Said[int] { return &s.Across }).required(),
	whole("down", "how many labels there are in a column, a whole number", "8", 1, 80, "", func(s *kit.LabelSheet) *kit.Said[int] { return &s.Down }).required(),
	amount("wide", "how wide a label is, such as 70 mm", "70 mm", aWidth, func(s *kit.LabelSheet) *kit.Said[quantity.Amount] { return &s.Wide }).required(),
	amount("tall", "how tall a label is, such as 37 mm", "37 mm", aWidth, func(s *kit.LabelSheet) *kit.Said[quantity.Amount] { return &s.Tall }).required(),
	amount("left", "from the left edge of the paper to the first label, such as 5 mm", "5 mm", aLength, func(s *kit.LabelSheet) *kit.Said[quantity.Amount] { return &s.Left }),
	amount("top", "from the upper edge of the paper to the first label, such as 12 mm", "12 mm", aLength, func(s *kit.LabelSheet) *kit.Said[quantity.Amount] { return &s.Top }),
	amount("gap across", "between two labels in a row, such as 2.5 mm", "2.5 mm", aLength, func(s *kit.LabelSheet) *kit.Said[quantity.Amount] { return &s.GapAcross }),
	amount("gap down", "between two labels in a column, such as 2.5 mm", "2.5 mm", aLength, func(s *kit.LabelSheet) *kit.Said[quantity.Amount] { return &s.GapDown }),
	yesNo("round", "yes for round labels, else no", func(s *kit.LabelSheet) *kit.Said[bool] { return &s.Round }),
}}

// gridOf reads the name of a grid.
func gridOf(key, whose, example string, at func(*kit.Labels) *kit.Said[string]) field[kit.Labels] {
	var choices []choice[string]
	for _, g := range label.Grids() {
		choices = append(choices, choice[string]{g.Name, g.Name})
	}
	choices = append(choices, choice[string]{kit.OwnSheet, kit.OwnSheet}, choice[string]{kit.NoLabels, kit.NoLabels})
	return oneOf(key, whose+expectGrid, example, choices, at)
}

func paperChoices() []choice[string] {
	var choices []choice[string]
	for _, paper := range label.Papers() {
		choices = append(choices, choice[string]{paper.Name, paper.Name})
	}
	return choices
}
