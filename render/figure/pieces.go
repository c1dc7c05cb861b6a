package figure

import (
	"math"
	"slices"
)

// Pieces shows what the kit makes: every filled container drawn once, in rows on
// a shelf, and those of one group alike.
type Pieces struct {
	Title  string
	Groups []Group
	// Level is how full a container is drawn, 0 to 1.
	Level float64
	// Base, Rim and Tall are the inside of a container, in one and the same unit.
	Base, Rim, Tall float64
}

// A Group is pieces of one sort. Says tells them in the text alternative.
type Group struct {
	Name, Says string
	Count      int
}

// Add counts pieces to the group of that name.
func (s *Pieces) Add(name string, count int) {
	for i, group := range s.Groups {
		if group.Name == name {
			s.Groups[i].Count += count
			return
		}
	}
	s.Groups = append(s.Groups, Group{Name: name, Count: count})
}

const (
	shelfWidth  = 337.0 // the full text width of an A5 page
	widestPiece = 84.0
	mostDrawn   = 60 // above this the pieces would be specks
)

// Draw gives the figure. More pieces than can be told apart are drawn up to
// that number; the text alternative keeps the true count.
func (s Pieces) Draw() Figure {
	var told []string
	for _, group := range s.Groups {
		told = append(told, group.Says)
	}
	shelves := s.shelves()
	longest := 1
	for _, shelf := range shelves {
		longest = max(longest, len(shelf))
	}
	wide := math.Min(shelfWidth/float64(longest)*0.78, widestPiece)
	tall := wide * s.proportion()
	var p pen
	y := 2.0
	for _, shelf := range shelves {
		gap := (shelfWidth - float64(len(shelf))*wide) / float64(len(shelf)+1)
		for i, group := range shelf {
			s.piece(&p, gap+(wide+gap)*float64(i), y, wide, tall, group)
		}
		y += tall
		p.line("shelf", 0, y+1.2, shelfWidth, y+1.2)
		y += 2.4 + wide*0.3
	}
	return Figure{
		Kind: "pieces", Width: shelfWidth, Height: math.Max(y-wide*0.3, 1),
		Title: s.Title, Text: sentence(told...), shapes: p.out.String(),
	}
}

// shelves puts the pieces on shelves, each as the number of its group. Small
// groups get a shelf of their own; else the shelves are made of like length.
func (s Pieces) shelves() [][]int {
	var all []int
	own := len(s.Groups) <= 3
	for i, group := range s.Groups {
		own = own && group.Count <= 6
		for n := 0; n < group.Count && len(all) < mostDrawn; n++ {
			all = append(all, i)
		}
	}
	var shelves [][]int
	if own {
		for i, group := range s.Groups {
			shelves = append(shelves, slices.Repeat([]int{i}, max(group.Count, 0)))
		}
		return shelves
	}
	rows := int(math.Ceil(math.Sqrt(float64(len(all)) / 2)))
	return slices.Collect(slices.Chunk(all, (len(all)+rows-1)/rows))
}

// proportion is height by width, kept within what looks like a container.
func (s Pieces) proportion() float64 {
	if s.Base <= 0 || s.Rim <= 0 || s.Tall <= 0 {
		return 1.1
	}
	return math.Min(1.8, math.Max(0.5, s.Tall/math.Max(s.Base, s.Rim)))
}

// piece draws one container, open at the top, cut so that its fill is seen.
func (s Pieces) piece(p *pen, x, y, wide, tall float64, group int) {
	base, rim := wide, wide
	if s.Base > 0 && s.Rim > 0 {
		widest := math.Max(s.Base, s.Rim)
		base, rim = wide*s.Base/widest, wide*s.Rim/widest
	}
	glass := wide * 0.045
	jar := jarOutline{x: x + glass, y: y, base: base - 2*glass, rim: rim - 2*glass, height: tall - glass}
	s.fill(p, jar, math.Min(1, math.Max(0, s.Level)), group)
	p.stroke("outline", vessel(x, y, base, rim, tall, wide*0.1))
}

// fill draws the fill in one of three ways, told apart without colour.
func (s Pieces) fill(p *pen, jar jarOutline, level float64, group int) {
	switch group % 3 {
	case 0:
		p.area("content", jar.slice(0.02, level))
	case 1:
		step := 4 / jar.height
		for at := 0.02; at <= level; at += step {
			from := jar.x + jar.inset(at)
			p.line("stripe", from, jar.y+jar.height*(1-at), from+jar.base+(jar.rim-jar.base)*at, jar.y+jar.height*(1-at))
		}
		p.line("surface", jar.x+jar.inset(level), jar.y+jar.height*(1-level),
			jar.x+jar.inset(level)+jar.base+(jar.rim-jar.base)*level, jar.y+jar.height*(1-level))
	default:
		p.area("pale", jar.slice(0.02, level))
		p.line("surface", jar.x+jar.inset(level), jar.y+jar.height*(1-level),
			jar.x+jar.inset(level)+jar.base+(jar.rim-jar.base)*level, jar.y+jar.height*(1-level))
	}
}

// vessel is the outside of an open container with rounded feet, standing at the
// lower edge.
func vessel(x, y, base, rim, tall, round float64) string {
	wide := math.Max(base, rim)
	left, right := x+(wide-base)/2, x+(wide+base)/2
	return path("M", x+(wide-rim)/2, y, "L", left, y+tall-round, "Q", left, y+tall, left+round, y+tall,
		"L", right-round, y+tall, "Q", right, y+tall, right, y+tall-round, "L", x+(wide+rim)/2, y)
}
