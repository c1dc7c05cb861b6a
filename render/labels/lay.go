package labels

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"tallyfold/kit/label"
)

// A design is what one label says.
type design struct {
	// about names it in messages.
	about string
	// count is how many of it there are in one kit.
	count int
	// mark is the letter of a bag, drawn large on a ground of its own; head stands beside it.
	mark string
	// below stands under the head, foot at the lower edge.
	head, below, foot []item
	centred           bool
}

// A drawn label is a design laid out.
type drawn struct {
	design
	markBox  box
	markSize float64
	lines    []line
}

// A Document is the sheets of one kind of label.
type Document struct {
	// Kind, such as bags; Title names the document; Language is a BCP 47 tag.
	Kind, Title, Language string
	Grid                  label.Grid
	// Labels is how many there are, Sheets on how many sheets.
	Labels, Sheets int

	maker  *maker
	labels []drawn
}

// lay lays the designs of a kind out, one beside the other for each kit.
func (m *maker) lay(k kind, grid label.Grid, designs []design) (*Document, []Misfit) {
	d := &Document{Kind: k.name, Title: m.kit.Name.Value, Language: m.words.Language, Grid: grid, maker: m}
	var misfits []Misfit
	for _, design := range designs {
		one, wrong := m.draw(design, grid)
		for _, misfit := range wrong {
			if misfit.tooSmall {
				misfit.Why += m.wayOut(k, design.about, grid)
			}
			misfits = append(misfits, misfit)
		}
		for range design.count * m.options.Kits {
			d.labels = append(d.labels, one)
		}
	}
	d.Labels = len(d.labels)
	d.Sheets = (m.options.Start - 1 + d.Labels + grid.Each() - 1) / grid.Each()
	return d, misfits
}

// edge is what a printer at home leaves white at the edge of the paper, in mm; common
// practice is 4 to 6.
const edge = 5

// inside is the part of a label that may be printed on. A round one gives a box within its
// ring.
func inside(grid label.Grid) box {
	if grid.Round {
		const wide, tall = 0.76, 0.65 // 0.76² + 0.65² = 1
		d := grid.Wide - 2*(ringIn+1)
		return box{(grid.Wide - d*wide) / 2, (grid.Tall - d*tall) / 2, d * wide, d * tall}
	}
	across, down := max(2.5, edge-grid.Left), max(2, edge-grid.Top)
	return box{across, down, grid.Wide - 2*across, grid.Tall - 2*down}
}

const (
	// ringIn is how far the ring of a round label lies within it, so that a sheet that is a
	// little off does not cut it; bandRoom is what the band at the head of others takes.
	ringIn, bandRoom = 2, 3.4
	// markWide and markNarrow are how much of a label's width the letter of a bag takes,
	// alone and with cautions below it; markGap is the room beside it, in mm.
	markWide, markNarrow, markGap = 0.24, 0.17, 2.5
)

// draw lays one design out on a label of the grid.
func (m *maker) draw(d design, grid label.Grid) (drawn, []Misfit) {
	one := drawn{design: d}
	s := stack{about: d.about, in: inside(grid), head: plain(d.head), below: plain(d.below), foot: plain(d.foot)}
	switch {
	case d.mark != "":
		s.mark = grid.Wide * markWide
		if len(d.below) > 0 {
			s.mark = grid.Wide * markNarrow
		}
		s.mark = min(s.mark, s.in.tall*0.8)
	case !grid.Round:
		s.in.top, s.in.tall = s.in.top+bandRoom, s.in.tall-bandRoom
	}
	lines, mark, misfits := m.faces.lay(s)
	one.lines, one.markBox, one.markSize = lines, box{s.in.left, s.in.top, mark, mark}, m.markSize(d.mark, mark)
	for _, l := range lines {
		if above := grid.Tall - l.top - l.lowest; l.lowest > 0 && above > 0.05 {
			return one, append(misfits, Misfit{Label: d.about, Text: l.text, tooSmall: true, Why: fmt.Sprintf(
				"begins %.1f mm too high: it must lie in the bottom 30 %% of the label, %.1f mm (21 CFR 701.13)", above, l.lowest)})
		}
	}
	return one, misfits
}

// plain gives items with their texts on one line each, with spaces that the faces have.
func plain(items []item) []item {
	items = slices.Clone(items)
	for i, one := range items {
		text := spaces.Replace(one.text)
		words := strings.FieldsFunc(text, func(letter rune) bool { return strings.ContainsRune(" \n\r\t", letter) })
		items[i].text = strings.Join(words, " ")
	}
	return items
}

// spaces puts a no-break space in the place of narrower ones and of that as wide as a figure.
var spaces = strings.NewReplacer("\u202f", "\u00a0", "\u2007", "\u00a0")

// markSize is the size of type, in points, at which letters fill their square.
func (m *maker) markSize(mark string, side float64) float64 {
	if mark == "" {
		return 0
	}
	size := side * 0.78 / point
	if wide := m.faces.wide(mark, bold, size); wide > side*0.84 {
		size *= side * 0.84 / wide
	}
	return size
}

// wayOut names the smallest known sheet on the same paper that has room for a label. Each is
// designed anew, as the least height of some type goes by the size of the label.
func (m *maker) wayOut(k kind, about string, grid label.Grid) string {
	notes := m.notes
	defer func() { m.notes = notes }() // what is noted of sheets that are only tried is of no use
	best, area := "", math.Inf(1)
	for _, other := range label.Grids() {
		if other.Paper != grid.Paper || other.Round != grid.Round || other.Wide*other.Tall >= area {
			continue
		}
		for _, d := range k.designs(m, other) {
			if d.about != about {
				continue
			}
			if _, misfits := m.draw(d, other); len(misfits) == 0 {
				best, area = other.Name, other.Wide*other.Tall
			}
		}
	}
	if best == "" {
		return "; say it in fewer words"
	}
	return "; take a sheet with more room on a label, such as --sheet " + best + ", or say it in fewer words"
}
