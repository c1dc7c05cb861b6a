package labels

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tallyfold/templates"
)

const (
	point = 25.4 / 72 // a point in mm
	// lineHeight is the distance of lines as a multiple of the size of the type.
	lineHeight = 1.2
	// smallestType is the smallest that is still read, in points (common practice, no source).
	smallestType = 6
	// shrinking is by which part type is made smaller at a time.
	shrinking = 0.03
	// writeLeast is the room to write on behind a word, and its height, in mm.
	writeLeast, writeTall = 16, 6.5
	// between what stands at the head, below it and at the foot, in mm.
	between = 1.5
)

// The faces of a label.
type faceName int

const (
	regular faceName = iota
	bold
	title
)

type faces [3]*templates.Typeface

// faceCuts are the family and weight of each face.
var faceCuts = [3][2]string{{"Booklet Label", "400"}, {"Booklet Label", "700"}, {"Booklet Text", "600"}}

func readFaces(set templates.Set) (faces, error) {
	var all faces
	for i, c := range faceCuts {
		face, err := set.Typeface(c[0], c[1])
		if err != nil {
			return all, err
		}
		all[i] = face
	}
	return all, nil
}

// An item is one text of a label.
type item struct {
	text string
	face faceName
	// largest and smallest are sizes of type in points.
	largest, smallest float64
	// gap is left above it, in mm; not above the first of several.
	gap float64
	// warns: it is a caution, set apart by a bar.
	warns bool
	// alerts: the alert sign stands before its first line.
	alerts bool
	// language is its BCP 47 tag where that is not the label's, or "".
	language string
	// soft: it is printed in grey.
	soft bool
	// toWrite: a line to write on follows the words.
	toWrite bool
	// lowest is how far from the lower edge of the label it must lie at most, in mm; 0 is
	// anywhere.
	lowest float64
}

// A box is a place on a label, in mm from its left upper corner.
type box struct{ left, top, wide, tall float64 }

// A line is one line of text as it is printed.
type line struct {
	box
	item
	size float64 // points
	// indent is how far it is moved in for its bar and its sign, in mm.
	indent float64
}

// A Misfit is a text that has no room on its label.
type Misfit struct {
	Label string // "the bag label B, Pine fragrance"
	Text  string
	// Why says by how much, and what would help.
	Why string
	// tooSmall: a larger label would have room.
	tooSmall bool
}

func (m Misfit) String() string {
	return fmt.Sprintf("%s: “%s” %s", m.Label, beginning(m.Text), m.Why)
}

// beginning is what finds a text again.
func beginning(text string) string {
	const most = 60
	if runes := []rune(text); len(runes) > most {
		return string(runes[:most-1]) + "…"
	}
	return text
}

// A stack is what stands on a label: the head, beside a square for a mark where there is
// one; below it, across the whole width, and the foot at the lower edge.
type stack struct {
	about             string
	in                box
	mark              float64 // side of the square in mm, or 0
	head, below, foot []item
}

func (s stack) items() []item { return slices.Concat(s.head, s.below, s.foot) }

// beside is the box of the head.
func (s stack) beside() box {
	if s.mark == 0 {
		return s.in
	}
	return box{s.in.left + s.mark + markGap, s.in.top, s.in.wide - s.mark - markGap, s.in.tall}
}

// markLeast is how far the square of a mark shrinks with what stands beside it.
const markLeast = 0.6

// lay sets all of a stack at the largest scale at which there is room, and gives the side
// that the square of its mark has then.
func (f *faces) lay(s stack) (lines []line, mark float64, misfits []Misfit) {
	for _, one := range s.items() {
		if _, lacking := f[one.face].Width(one.text); len(lacking) > 0 {
			return nil, s.mark, []Misfit{{Label: s.about, Text: one.text, Why: "has letters whose width is not known here (" +
				string(lacking) + "), so that nobody can tell whether it has room; write it in letters of the faces that labels are printed in"}}
		}
	}
	largest := s.mark
	for scale := 1.0; ; scale -= shrinking {
		s.mark = largest * max(scale, markLeast)
		lines, over, wide := f.at(s, scale)
		switch {
		case over <= 0 && wide == nil:
			return lines, s.mark, nil
		case !smallest(s.items(), scale):
			continue
		case wide != nil:
			wide.Label = s.about
			return nil, s.mark, []Misfit{*wide}
		}
		return nil, s.mark, []Misfit{{Label: s.about, Text: longest(s.items()), tooSmall: true, Why: fmt.Sprintf(
			"and what stands with it needs %.1f mm more height, at the smallest type (%.1f mm, and there are %.1f mm)", over, s.in.tall+over, s.in.tall)}}
	}
}

// at sets a stack at one scale. over is by how much it is too high, in mm.
func (f *faces) at(s stack, scale float64) (lines []line, over float64, wide *Misfit) {
	head, high, wideHead := f.set(s.beside(), s.head, scale)
	high = max(high, s.mark)
	under := s.in
	if len(s.below) > 0 {
		high += between
		under.top += high
	}
	below, more, wideBelow := f.set(under, s.below, scale)
	foot, low, wideFoot := f.set(s.in, s.foot, scale)
	over = high + more + low - s.in.tall
	if len(s.foot) > 0 {
		over += between
	}
	for i := range foot {
		foot[i].top += s.in.tall - low
	}
	return slices.Concat(head, below, foot), over, cmp.Or(wideHead, wideBelow, wideFoot)
}

// smallest says whether no item can become smaller.
func smallest(items []item, scale float64) bool {
	for _, one := range items {
		if one.largest*scale > one.smallest {
			return false
		}
	}
	return true
}

func longest(items []item) string {
	longest := ""
	for _, one := range items {
		if len(one.text) > len(longest) {
			longest = one.text
		}
	}
	return longest
}

// warningBar is the room a caution leaves for its bar, in mm.
const warningBar = 2

// set lays items at a scale from the top of a box down and gives their height. What is
// wider than the box is given too.
func (f *faces) set(in box, items []item, scale float64) (lines []line, high float64, wide *Misfit) {
	for i, one := range items {
		if i > 0 {
			high += one.gap
		}
		indent := 0.0
		if one.warns {
			indent = warningBar
		}
		if one.alerts {
			indent += alertWide(max(one.smallest, one.largest*scale))
		}
		room := box{in.left + indent, in.top, in.wide - indent, in.tall}
		size := max(one.smallest, min(one.largest*scale, f.widest(one, room.wide)))
		if one.toWrite {
			tall := max(writeTall, size*point*lineHeight)
			if words := f.wide(one.text, one.face, size); words+writeLeast > room.wide {
				wide = &Misfit{Text: one.text, tooSmall: true, Why: fmt.Sprintf("leaves %.1f mm too little to write on", words+writeLeast-room.wide)}
			}
			lines = append(lines, line{box{room.left, in.top + high, room.wide, tall}, one, size, indent})
			high += tall
			continue
		}
		tall := size * point * lineHeight
		broken, over, word := f.broken(one, size, room.wide)
		if over > 0 {
			wide = &Misfit{Text: one.text, tooSmall: true, Why: fmt.Sprintf("is %.1f mm too wide at “%s”, at the smallest type", over, word)}
		}
		for i, text := range broken {
			part := one
			part.text, part.alerts = text, one.alerts && i == 0
			lines = append(lines, line{box{room.left, in.top + high, room.wide, tall}, part, size, indent})
			high += tall
		}
	}
	return lines, high, wide
}

// alertWide is the room that the alert sign takes beside type of a size in points, in mm.
func alertWide(size float64) float64 { return size*point*lineHeight*alertShape + alertGap }

const (
	alertShape = 24.0 / 21 // as wide as high
	alertGap   = 0.8       // mm behind it
)

// widest is the size of type at which the longest word of an item just has room, in points.
func (f *faces) widest(one item, room float64) float64 {
	longest := 0.0
	for _, word := range strings.Split(one.text, " ") {
		longest = max(longest, f.wide(word, one.face, 1))
	}
	return room / max(longest, 1e-9) * (1 - 1e-9)
}

// wide is the width of a text in mm.
func (f *faces) wide(text string, face faceName, size float64) float64 {
	ems, _ := f[face].Width(text)
	return ems * size * point
}

// broken breaks a text into lines between its words. over is by how much its longest word
// is too wide, in mm.
func (f *faces) broken(one item, size, room float64) (lines []string, over float64, longest string) {
	var now string
	for _, word := range strings.Split(one.text, " ") {
		if beyond := f.wide(word, one.face, size) - room; beyond > over {
			over, longest = beyond, word
		}
		longer := strings.TrimSpace(now + " " + word)
		if now != "" && f.wide(longer, one.face, size) > room {
			lines, now = append(lines, strings.TrimSuffix(now, " ·")), word // the mark parts what the line end parts too
			continue
		}
		now = longer
	}
	if now != "" {
		lines = append(lines, now)
	}
	return lines, over, longest
}
