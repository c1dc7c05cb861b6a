package faults_test

// Faults of which the examples have no place; they are made in the near misses beside
// the rules. A kind of one kit is a row here: the text, what it becomes, the figures.
var twinFaults = []faultKind{
	{name: "more in each piece on the box than is filled", rule: "net-less-than-claimed", beside: true, edits: func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `net: at least (\d+ g), of`, func(at place) []edit {
			claimed, _ := reads(at.text())
			held := k.filledWith()
			more := figure{float64(int(held.times(1.1).number)), "g"}
			if !more.isOver(claimed) {
				return nil
			}
			return []edit{at.becomes(like(at, more), held, more.minus(held))}
		})
	}},
	{name: "more than dissolves", rule: "does-not-dissolve", twins: everyRow, beside: true, edits: inTwin("does-not-dissolve",
		row{"kit.yaml", "name: Alum, packed: 60 g", "name: Alum, packed: 90 g", "take:alum", []figure{{30, "g"}, {24.8, "g"}}}, // to 100 g of water
		row{"kit.yaml", "24.8 g per 100 g", "12 g per 100 g", "", []figure{{20, "g"}, {12, "g"}}},
		row{"method.md", "[300 g of water]", "[200 g of water]", "take:alum", []figure{{30, "g"}, {24.8, "g"}}},
		row{"method.md", "[100 g of water]", "[20 g of water]", "take:salt", []figure{{100, "g"}, {21, "g"}}},
		row{"kit.yaml", "dissolves: 21 g", "dissolves: 2.1 g", "", []figure{{20, "g"}, {2.1, "g"}}})},
	{name: "a ratio beyond its limits", rule: "ratio-outside-limits", twins: everyRow, beside: true, also: []string{"left-over", "vessel-too-small"}, edits: inTwin("ratio-outside-limits",
		row{"kit.yaml", "name: Alum, packed: 12 g", "name: Alum, packed: 14 g", "take:alum", []figure{{14, "g"}, {100, "g"}}},
		row{"kit.yaml", "name: Alum, packed: 12 g", "name: Alum, packed: 7 g", "take:alum", []figure{{7, "g"}, {100, "g"}}},
		row{"kit.yaml", "2 skeins of 50 g", "2 skeins of 25 g", "take:alum", []figure{{24, "g"}, {100, "g"}, {50, "g"}}},
		row{"method.md", "[2 L of water]", "[4 L of water]", "", []figure{{4000, "mL"}, {100, "g"}}},
		row{"method.md", "[2 L of water]", "[1 L of water]", "", []figure{{1000, "mL"}, {100, "g"}}})},
	{name: "pieces that do not fit on their sheet", rule: "pieces-do-not-fit", twins: everyRow, beside: true, edits: inTwin("pieces-do-not-fit",
		row{"kit.yaml", "sheets of 20 × 15 cm", "sheets of 25 × 12 cm", "", []figure{{2, ""}, {4, ""}}}, // as large, and one to a sheet
		row{"kit.yaml", "sheet of 20 × 16 cm", "sheet of 64 × 5 cm", "", nil},
		row{"method.md", "[4 pieces of 14 × 9 cm]", "[4 pieces of 11.2 × 11.2 cm]", "", []figure{{2, ""}, {4, ""}}})},
	{name: "a hand in plaster", rule: "plaster-on-skin", twins: everyRow, edits: inTwin("plaster-on-skin",
		row{"method.md", "Press a leaf into the plaster by hand", "Press your hand into the plaster", "", nil},
		row{"method.md", "Press a leaf into the plaster by hand", "Make a print of a baby's foot in the plaster", "", nil},
		row{"method.md", "cover the bowl and wash your hands", "cover your other hand with plaster", "", nil},
		row{"method.md", "Keep your hands off it.", "Keep your hands in it.", "", nil})},
}

// everyRow: the kinds of this file are tried at every place.
const everyRow = 8

// A row is one edit: a text that stands once in a file, and what it becomes.
type row struct {
	file, text, with string
	// at stands in the line that the finding names; empty: the line edited.
	at      string
	figures []figure
}

// inTwin makes the edits in one of the near misses.
func inTwin(name string, rows ...row) func(k *cleanKit) []edit {
	return func(k *cleanKit) []edit {
		if k.name != name {
			return nil
		}
		var all []edit
		for _, r := range rows {
			for _, e := range swaps(r.file, r.text, r.with)(k) {
				e.figures = r.figures
				if r.at != "" {
					e = e.toldAt(k.find("method.md", "("+r.at+")")...)
				}
				all = append(all, e)
			}
		}
		return all
	}
}

// filledWith is the mass that one container gets: what the link tells, or an equal
// part of all that was mixed and does not stay behind.
func (k *cleanKit) filledWith() figure {
	told, ok := k.links()[k.fill()].within(` to (\d+ g)`)
	if ok {
		each, _ := reads(told.text())
		return each
	}
	vessel, _ := k.named("tools", "bowl")
	return k.mixed().minus(vessel.amount("residue")).times(1 / k.containersInRun())
}
