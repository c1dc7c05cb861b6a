package figure

import "math"

// A Timeline tells the work from top to bottom: what keeps the hands busy is a
// bar, what only takes waiting a broken line, and a long wait is cut short with
// a mark, since a day beside ten minutes would leave the minutes invisible.
type Timeline struct {
	Title string
	Rows  []Row
	// EndsSays is the time at the end ("1 day 1 h").
	EndsSays string
}

// A Row is one stretch of time.
type Row struct {
	// Heading stands above the row and starts a group ("Fig leaf").
	Heading string
	// StartSays is the time since the beginning ("1 h 10 min").
	StartSays string
	// Says names the row ("2. Melt the wax"); LastsSays is how long ("20 min").
	Says, LastsSays string
	// Minutes is the length.
	Minutes float64
	// Waiting: no hands are needed.
	Waiting bool
}

const (
	timelineWidth = 287.0
	spineClock    = 90.0 // where the bars stand beside a clock
	spineAlone    = 6.0  // and without one
	rowLeast      = 16.5
	rowMost       = 44.0
	waitShown     = 120.0 // minutes; a longer wait is drawn cut
)

// Draw gives the figure.
func (t Timeline) Draw() Figure {
	var p pen
	y, spine := 6.0, t.spine()
	var told []string
	for _, row := range t.Rows {
		if row.Heading != "" {
			y += 15
			p.text("group", "start", spine+14, y-4, row.Heading)
			told = append(told, row.Heading)
		}
		y += p.row(row, spine, y)
		told = append(told, join(row.StartSays, row.Says, row.LastsSays))
	}
	y += 3
	p.line("tick", spine-5, y, spine+5, y)
	p.text("clock", "end", spine-12, y+3.2, t.EndsSays)
	told = append(told, t.EndsSays)
	return Figure{Kind: "timeline", Width: timelineWidth, Height: y + 8, Title: t.Title, Text: sentence(told...), shapes: p.out.String()}
}

// spine is where the bars stand: beside the clock, if any row tells one.
func (t Timeline) spine() float64 {
	for _, row := range t.Rows {
		if row.StartSays != "" {
			return spineClock
		}
	}
	return spineAlone
}

// row draws one row at y and gives the room it took.
func (p *pen) row(row Row, spine, y float64) float64 {
	tall := rowHeight(row.Minutes)
	p.text("clock", "end", spine-12, y+9.2, row.StartSays)
	if row.Waiting {
		p.line("waiting", spine, y+1.5, spine, y+tall-1.5)
		if row.Minutes > waitShown {
			p.cut(spine, y+tall/2)
		}
	} else {
		p.rect("hands", spine-3.5, y+1, 7, tall-2, 1.5)
	}
	p.text("label", "start", spine+14, y+9.2, row.Says)
	p.text("lasts", "end", timelineWidth, y+9.2, row.LastsSays)
	return tall
}

// cut marks a line as shortened: two short slanted strokes.
func (p *pen) cut(x, y float64) {
	for _, dy := range []float64{-2, 2} {
		p.line("tick", x-5, y+dy+2, x+5, y+dy-2)
	}
}

// rowHeight grows with the minutes and stays readable at both ends.
func rowHeight(minutes float64) float64 {
	return math.Min(rowMost, math.Max(rowLeast, 12+minutes*0.45))
}

// join puts the parts that there are into one phrase.
func join(parts ...string) string {
	said := ""
	for _, part := range parts {
		switch {
		case part == "":
		case said == "":
			said = part
		default:
			said += ", " + part
		}
	}
	return said
}
