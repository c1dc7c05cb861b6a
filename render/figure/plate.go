package figure

import "math"

// A Plate shows everything in a box, each sort drawn once in plain outline and to one
// scale, with its letter and how much of it there is.
type Plate struct {
	Title string
	Items []Item
	// Unscaled says what a broken outline means ("broken outline: not to scale").
	Unscaled string
	// Lengths are what the scale may be told in, rising.
	Lengths []Length
}

// An Item is one sort. Letter stands in it, Says under it ("× 6"); Tells is for the text
// alternative ("F, Glass jar, 6").
type Item struct {
	Shape               Shape
	Letter, Says, Tells string
	// Wide and Tall are its size in millimetres; zero where it isn't known.
	Wide, Tall float64
}

// A Shape is the plain outline of a sort of thing.
type Shape int

const (
	BagShape Shape = iota
	BottleShape
	JarShape
	SheetShape
	ReelShape
	PieceShape
)

// A Length is told on the scale: "5 cm".
type Length struct {
	Millimetres float64
	Says        string
}

const (
	plateWidth = 337.0 // the full text width of an A5 page
	plateTall  = 60.0  // the tallest thing, and the widest
	plateWide  = 76.0
	plateGap   = 9.0
	cellLeast  = 34.0 // a cell has room for the words under it
	thingLeast = 5.0  // smaller things would be specks
	letterSize = 8.5
)

// Draw gives the figure.
func (s Plate) Draw() Figure {
	var p pen
	var told []string
	scale := s.scale()
	y := 2.0
	for _, row := range s.rows(scale) {
		tall := 0.0
		for _, at := range row {
			_, h := s.drawn(s.Items[at], scale)
			tall = math.Max(tall, h)
		}
		x := 0.0
		for _, at := range row {
			item := s.Items[at]
			wide, high := s.drawn(item, scale)
			p.thing(item, x, y+tall-high, wide, high)
			p.itemLabel(item, x, y+tall+12)
			x += s.cell(item, scale) + plateGap
		}
		y += tall + 24
	}
	for _, item := range s.Items {
		told = append(told, item.Tells)
	}
	if drawn := s.scaleLine(&p, scale, y+2); drawn != "" {
		told = append(told, drawn)
	}
	if s.anyUnscaled() {
		p.text("label", "end", plateWidth, y+5.2, s.Unscaled)
		told = append(told, s.Unscaled)
	}
	return Figure{Kind: "plate", Width: plateWidth, Height: y + 10, Title: s.Title, Text: sentence(told...), shapes: p.out.String()}
}

func (i Item) known() bool { return i.Wide > 0 && i.Tall > 0 }

func (s Plate) anyUnscaled() bool {
	for _, item := range s.Items {
		if !item.known() {
			return true
		}
	}
	return false
}

// scale is points to a millimetre, never more than true size; 0 where no size is known.
func (s Plate) scale() float64 {
	widest, tallest := 0.0, 0.0
	for _, item := range s.Items {
		if item.known() {
			widest, tallest = math.Max(widest, item.Wide), math.Max(tallest, item.Tall)
		}
	}
	if widest == 0 {
		return 0
	}
	return min(pointsPerMillimetre, plateTall/tallest, plateWide/widest)
}

// unscaled is the size of an outline whose true size isn't known.
var unscaled = map[Shape][2]float64{
	BagShape: {24, 31}, BottleShape: {13, 31}, JarShape: {26, 27}, SheetShape: {21, 28}, ReelShape: {22, 26}, PieceShape: {26, 20},
}

// drawn is the size of an item in points.
func (s Plate) drawn(item Item, scale float64) (wide, tall float64) {
	if !item.known() || scale == 0 {
		size := unscaled[item.Shape]
		return size[0], size[1]
	}
	return math.Max(item.Wide*scale, thingLeast), math.Max(item.Tall*scale, thingLeast)
}

// cell is the room that an item takes with its words.
func (s Plate) cell(item Item, scale float64) float64 {
	wide, _ := s.drawn(item, scale)
	words := float64(len([]rune(item.Says)))*letterWide + letterSize*1.9
	return max(wide, words, cellLeast)
}

// rows shares the items out in their order.
func (s Plate) rows(scale float64) [][]int {
	var rows [][]int
	used := 0.0
	for i, item := range s.Items {
		needs := s.cell(item, scale)
		if len(rows) == 0 || used+needs > plateWidth {
			rows, used = append(rows, nil), 0
		}
		rows[len(rows)-1] = append(rows[len(rows)-1], i)
		used += needs + plateGap
	}
	return rows
}

// itemLabel writes the letter on its ground, as everywhere in the booklet, and how much.
func (p *pen) itemLabel(item Item, x, y float64) {
	if item.Letter != "" {
		wide := letterSize*0.75*float64(len(item.Letter)) + 5
		p.rect("bag-ground", x, y-8.5, wide, 11, 1.8)
		p.sized("bag-letter", "middle", x+wide/2, y-0.1, letterSize, item.Letter)
		x += wide + 3.5
	}
	p.text("label", "start", x, y, item.Says)
}

// scaleLine draws the longest length that is no longer than a third of the plate, and
// gives what it says.
func (s Plate) scaleLine(p *pen, scale, y float64) string {
	says, long := "", 0.0
	for _, length := range s.Lengths {
		if points := length.Millimetres * scale; points > 0 && points <= plateWidth/3 {
			says, long = length.Says, points
		}
	}
	if says == "" {
		return ""
	}
	p.line("tick", 0, y, long, y)
	p.line("tick", 0, y-3, 0, y+3)
	p.line("tick", long, y-3, long, y+3)
	p.text("label", "start", long+6, y+3.2, says)
	return says
}
