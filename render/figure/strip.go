package figure

import "math"

// A Strip tells the stretches of one step in their order, from left to right: a bar
// where hands are needed, a broken line where only time goes by.
type Strip struct {
	Title     string
	Stretches []Stretch
}

// A Stretch is a part of a step.
type Stretch struct {
	// Says is printed under it ("5 min"); Tells says it in full ("5 min hands-on").
	Says, Tells string
	Minutes     float64
	Waiting     bool
}

const (
	stripWidth  = 287.0 // the booklet's text column
	stripGap    = 2.0
	letterWide  = 4.9 // a letter of a label, on average
	stripMiddle = 5.0
)

// Draw gives the figure. All stretches are to one scale, but for those that would be
// too narrow for their words: then the longest is cut, and has the mark of it.
func (s Strip) Draw() Figure {
	var p pen
	var told []string
	widths, cut := s.widths()
	x := 0.0
	for i, stretch := range s.Stretches {
		end := x + widths[i]
		if stretch.Waiting {
			p.line("waiting", x+1.5, stripMiddle, end-1.5, stripMiddle)
		} else {
			p.rect("hands", x, stripMiddle-3.5, widths[i], 7, 1.5)
		}
		if i == cut {
			p.slash(x+widths[i]*0.7, stripMiddle)
		}
		p.text("label", "start", x, stripMiddle+14.5, stretch.Says)
		told = append(told, stretch.Tells)
		x = end + stripGap
	}
	return Figure{Kind: "strip", Width: stripWidth, Height: stripMiddle + 18, Title: s.Title, Text: sentence(told...), shapes: p.out.String()}
}

// widths shares the strip out by minutes, each stretch wide enough for its words. cut is
// the one that is drawn too short for that, or -1.
func (s Strip) widths() (widths []float64, cut int) {
	room := stripWidth - stripGap*float64(len(s.Stretches)-1)
	widths = make([]float64, len(s.Stretches))
	held := make([]bool, len(s.Stretches))
	longest := -1
	for {
		free, minutes := room, 0.0
		for i, stretch := range s.Stretches {
			if held[i] {
				free -= widths[i]
			} else {
				minutes += stretch.Minutes
			}
		}
		changed := false
		for i, stretch := range s.Stretches {
			if held[i] {
				continue
			}
			least := letterWide*float64(len([]rune(stretch.Says))) + 6
			if widths[i] = free * stretch.Minutes / math.Max(minutes, 1e-9); widths[i] < least {
				widths[i], held[i], changed = least, true, true
			}
		}
		if !changed {
			break
		}
	}
	cut = -1
	for i, stretch := range s.Stretches {
		if longest < 0 || stretch.Minutes > s.Stretches[longest].Minutes {
			longest = i
		}
		if held[i] {
			cut = len(s.Stretches)
		}
	}
	if cut >= 0 {
		cut = longest
	}
	return widths, cut
}

// slash marks a lying line as shortened: two short slanted strokes.
func (p *pen) slash(x, y float64) {
	for _, dx := range []float64{-2, 2} {
		p.line("tick", x+dx-2, y+5, x+dx+2, y-5)
	}
}
