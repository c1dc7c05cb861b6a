package figure

import "math"

// A Gauge shows how far a container is filled, from the side and to scale.
type Gauge struct {
	// Title says what is drawn ("Jar with lid, seen from the side").
	Title string
	// BaseWidth, RimWidth and Height are the inside in millimetres. Where one
	// of them isn't known (zero), a jar of plain proportions stands for all.
	BaseWidth, RimWidth, Height float64
	// Level is how high the surface stands, as a part of the inside height:
	// 0 empty, 1 at the rim, more than 1 over it.
	Level float64
	// Insert says how something sits in the container, InsertCount how many.
	Insert      Insert
	InsertCount int
	// RimSays, LevelSays, InsertSays are printed beside what they name; an
	// empty one is left out.
	RimSays, LevelSays, InsertSays string
}

// Insert is how an object sits in a container.
type Insert int

const (
	NoInsert Insert = iota
	SunkInsert
	FloatingInsert
	TopInsert
)

// The drawing keeps to this room: the longest side of a jar is jarLength.
const (
	jarLength  = 88.0
	wall       = 3.4
	gaugeWidth = 287.0 // the booklet's text column
)

// Draw gives the figure.
func (g Gauge) Draw() Figure {
	base, rim, height := g.inside()
	var p pen
	left, top := 0.0, 10.0
	jar := jarOutline{x: left + wall, y: top, base: base, rim: rim, height: height}
	level := math.Max(g.Level, 0)

	p.area("content", jar.slice(0, math.Min(level, 1)))
	g.drawInsert(&p, jar, math.Min(level, 1))
	p.stroke("outline", jar.walls())
	right := left + 2*wall + math.Max(base, rim)
	labels := right + 26
	p.mark(right, labels, top, top, g.RimSays)
	surface := top + height*(1-math.Min(level, 1.06))
	says := surface
	if g.RimSays != "" && says < top+13 {
		says = top + 13 // keep two labels apart
	}
	p.line("surface", jar.x+jar.inset(math.Min(level, 1)), surface, right-wall-jar.inset(math.Min(level, 1)), surface)
	p.mark(right, labels, surface, says, g.LevelSays)
	if g.Insert != NoInsert {
		at := insertPlace(g.Insert, jar, math.Min(level, 1))
		p.mark(right-rim/4, labels, at, math.Max(at, says+13), g.InsertSays)
	}
	return Figure{
		Kind: "gauge", Width: gaugeWidth, Height: top + height + wall + 6,
		Title: g.Title, Text: sentence(g.RimSays, g.LevelSays, g.InsertSays), shapes: p.out.String(),
	}
}

// inside gives the drawn size in points, true in proportion.
func (g Gauge) inside() (base, rim, height float64) {
	if g.BaseWidth <= 0 || g.RimWidth <= 0 || g.Height <= 0 {
		return 68, 68, 80
	}
	scale := jarLength / math.Max(g.Height, math.Max(g.BaseWidth, g.RimWidth))
	return g.BaseWidth * scale, g.RimWidth * scale, g.Height * scale
}

// jarOutline is the inside of a container with its rim at the top.
type jarOutline struct{ x, y, base, rim, height float64 }

// inset is how far the inside wall stands in from the widest place, at a part
// of the height.
func (j jarOutline) inset(part float64) float64 {
	return (math.Max(j.base, j.rim) - (j.base + (j.rim-j.base)*part)) / 2
}

// slice is the filled room between two parts of the height.
func (j jarOutline) slice(from, to float64) string {
	wide := math.Max(j.base, j.rim)
	bottom, top := j.y+j.height*(1-from), j.y+j.height*(1-to)
	return path("M", j.x+j.inset(from), bottom, "L", j.x+j.inset(to), top,
		"L", j.x+wide-j.inset(to), top, "L", j.x+wide-j.inset(from), bottom, "Z")
}

// walls is the cut through the container.
func (j jarOutline) walls() string {
	wide := math.Max(j.base, j.rim)
	half := wall / 2
	bottom := j.y + j.height + half
	const round = 5.0
	left, right := j.x+j.inset(0)-half, j.x+wide-j.inset(0)+half
	return path("M", j.x+j.inset(1)-half, j.y, "L", left, bottom-round, "Q", left, bottom, left+round, bottom,
		"L", right-round, bottom, "Q", right, bottom, right, bottom-round, "L", j.x+wide-j.inset(1)+half, j.y)
}

// insertPlace is how high the middle of the insert is drawn.
func insertPlace(sits Insert, jar jarOutline, level float64) float64 {
	surface := jar.y + jar.height*(1-level)
	switch sits {
	case SunkInsert:
		return jar.y + jar.height - jar.base*0.13
	case FloatingInsert:
		return surface + jar.base*0.04
	}
	return surface - jar.base*0.13
}

// mostInserts is how many objects find room side by side.
const mostInserts = 4

// drawInsert draws plain round bodies: their form isn't known.
func (g Gauge) drawInsert(p *pen, jar jarOutline, level float64) {
	if g.Insert == NoInsert {
		return
	}
	count := min(max(g.InsertCount, 1), mostInserts)
	middle := jar.x + math.Max(jar.base, jar.rim)/2
	at := insertPlace(g.Insert, jar, level)
	radius := jar.base * 0.115
	for i := range count {
		p.circle("insert", middle+(float64(i)-float64(count-1)/2)*radius*2.1, at, radius)
	}
}

// mark leads from the drawing to a label.
func (p *pen) mark(from, to, at, labelAt float64, says string) {
	if says == "" {
		return
	}
	p.stroke("lead", path("M", from+3, at, "L", to-14, labelAt, "L", to-4, labelAt))
	p.text("label", "start", to, labelAt+3.2, says)
}
