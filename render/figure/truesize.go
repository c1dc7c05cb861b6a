package figure

import "math"

// Points in a millimetre: drawings are in points, true sizes in millimetres.
const pointsPerMillimetre = 72 / 25.4

const (
	// checkBar is the length of the bar that a ruler is laid on, in millimetres.
	checkBar = 50.0
	// underGauge is how much the bar and its words take, with the air about them.
	underGauge = 18.0
	// tickWide is the width of a mark in points, as the style sheet has it.
	tickWide = 1.2
)

// DrawTrue gives the gauge at true size, to hold a container against, with a bar to see
// whether the printer has kept to it. ok is false where the inside isn't known or does
// not fit into the room, in millimetres. BarSays stands under the bar.
func (g Gauge) DrawTrue(barSays string, wide, tall float64) (f Figure, ok bool) {
	widest := math.Max(g.BaseWidth, g.RimWidth)
	beside := 4.0 // mm at either side, for the line of the surface
	if g.BaseWidth <= 0 || g.RimWidth <= 0 || g.Height <= 0 || g.Height+underGauge > tall {
		return Figure{}, false
	}
	needs := math.Max(widest+2*beside, checkBar) * pointsPerMillimetre
	labels := 0.0 // beside the jar, where it is too narrow for words
	if inside := widest*pointsPerMillimetre - 12; inside < g.longestLabel() {
		labels = needs + 6
		needs = labels + g.longestLabel()
	}
	if needs > wide*pointsPerMillimetre {
		return Figure{}, false
	}
	const mm = pointsPerMillimetre
	var p pen
	jar := jarOutline{x: beside * mm, y: 10, base: g.BaseWidth * mm, rim: g.RimWidth * mm, height: g.Height * mm}
	level := math.Min(math.Max(g.Level, 0), 1)
	p.area("pale", jar.slice(0, level))
	g.drawInsert(&p, jar, level)
	p.stroke("outline", jar.walls())
	surface := jar.y + jar.height*(1-level)
	p.line("true-level", 0, surface, widest*mm+2*beside*mm, surface)
	g.trueLabels(&p, jar, level, labels)

	bar := jar.y + jar.height + wall + 16
	p.bar(0, bar, barSays)
	return Figure{
		Kind: "gauge true-size", Width: needs, Height: bar + 19, TrueSize: true,
		Title: g.Title, Text: sentence(g.RimSays, g.LevelSays, g.InsertSays, barSays), shapes: p.out.String(),
	}, true
}

// longestLabel is about the width of the longest words in the drawing, in points.
func (g Gauge) longestLabel() float64 {
	longest := max(len([]rune(g.RimSays)), len([]rune(g.LevelSays)), len([]rune(g.InsertSays)))
	return float64(longest) * letterWide
}

// trueLabels writes into the jar under the rim and over the surface, or beside it.
func (g Gauge) trueLabels(p *pen, jar jarOutline, level, beside float64) {
	surface := jar.y + jar.height*(1-level)
	rim, says, insert := jar.y+9, surface-4, surface+12
	x := jar.x + math.Max(jar.inset(1), jar.inset(level)) + 6
	if beside > 0 {
		x, rim, says = beside, jar.y+3, surface+3.2
	}
	if g.RimSays != "" && says < rim+11 { // keep two labels apart
		says = math.Max(rim+11, surface+12)
		insert = says + 12
	}
	p.text("label", "start", x, rim, g.RimSays)
	p.text("label strong", "start", x, says, g.LevelSays)
	if g.Insert != NoInsert {
		p.text("label", "start", x, math.Max(insert, says+12), g.InsertSays)
	}
}

// bar draws the bar to lay a ruler on, with a mark every ten millimetres.
func (p *pen) bar(x, y float64, says string) {
	long := checkBar * pointsPerMillimetre
	p.line("check-bar", x, y, x+long, y)
	for mark := 0.0; mark <= checkBar; mark += 10 {
		at, tall := x+mark*pointsPerMillimetre, 2.5
		switch mark { // the outer marks end where the bar does
		case 0:
			at, tall = at+tickWide/2, 5
		case checkBar:
			at, tall = at-tickWide/2, 5
		}
		p.line("tick", at, y-tall, at, y+tall)
	}
	p.text("label", "start", x, y+15, says)
}
