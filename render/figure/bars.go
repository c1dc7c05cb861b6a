package figure

import "math"

// Bars compares what is packed with what is used, a bar for each thing: the full part
// is used, the pale part is left.
type Bars struct {
	Title string
	Rows  []Bar
}

// A Bar is one thing, all three in one unit. Used beyond Packed is too much; what is not
// known is negative and leaves the bar empty.
type Bar struct {
	Letter, Name string
	// Says tells the figures ("1.1 kg of 1.12 kg, 20 g left").
	Says                string
	Packed, Used, Spare float64
}

const (
	barTall  = 6.0
	barLines = 25.0 // from one bar to the next
)

// Draw gives the figure.
func (b Bars) Draw() Figure {
	var p pen
	var told []string
	y := 9.0
	for _, row := range b.Rows {
		p.itemLabel(Item{Letter: row.Letter, Says: row.Name}, 0, y)
		p.text("label", "end", plateWidth, y, row.Says)
		p.usedBar(row, y+5)
		told = append(told, join(row.Letter, row.Name, row.Says))
		y += barLines
	}
	return Figure{Kind: "bars", Width: plateWidth, Height: y - 6, Title: b.Title, Text: sentence(told...), shapes: p.out.String()}
}

// usedBar is as long as what is packed, or as what is used where that is more.
func (p *pen) usedBar(row Bar, y float64) {
	whole := math.Max(row.Packed, row.Used)
	if row.Used < 0 || row.Packed < 0 || whole <= 0 {
		p.stroke("thing unscaled", path("M", 0.0, y, "H", plateWidth, "V", y+barTall, "H", 0.0, "Z"))
		return
	}
	at := func(amount float64) float64 { return amount / whole * plateWidth }
	p.rect("pale", 0, y, plateWidth, barTall, 0)
	p.rect("hands", 0, y, at(math.Min(row.Used, row.Packed)), barTall, 0)
	if row.Used > row.Packed { // what is missing is striped, so that it is seen without colour
		for x := at(row.Packed) + 1; x < plateWidth; x += 3 {
			p.line("tick", x, y, x, y+barTall)
		}
	}
	if row.Spare > 0 && row.Spare < row.Packed {
		p.line("tick", at(row.Packed-row.Spare), y-2, at(row.Packed-row.Spare), y+barTall+2)
	}
	p.stroke("lead", path("M", 0.0, y, "H", plateWidth, "V", y+barTall, "H", 0.0, "Z"))
}
