package labels

import (
	"fmt"
	"html"
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/label"
	"tallyfold/kit/ledger"
	"tallyfold/templates"
)

// Calibration is a sheet to print on plain paper and hold behind a sheet of labels: the
// frame of every label with its number, two rulers, and what to do when they are off.
// Which kinds and grids is as for Make; grids that several kinds share come once.
func Calibration(k *kit.Kit, l *ledger.Ledger, set templates.Set, options Options) ([]*Document, error) {
	m, err := newMaker(k, l, set, options)
	if err != nil {
		return nil, err
	}
	var all []*Document
	seen := map[string]bool{}
	for _, kind := range kinds {
		if len(options.Kinds) > 0 && !slices.Contains(options.Kinds, kind.name) {
			continue
		}
		grid, wanted, err := m.gridOf(kind)
		if err != nil {
			return nil, err
		}
		if !wanted || seen[grid.Name] {
			continue
		}
		seen[grid.Name] = true
		all = append(all, &Document{
			Kind: grid.Name, Title: m.say("calibrate-title", "sheet", grid.Name), Language: m.words.Language,
			Grid: grid, Sheets: 1, maker: m,
		})
	}
	return all, nil
}

// CalibrationHTML gives the sheet as one file.
func (d *Document) CalibrationHTML() ([]byte, error) {
	var out strings.Builder
	out.WriteString(d.openSheet())
	for number := range d.Grid.Each() {
		class := "frame"
		if d.Grid.Round {
			class += " round"
		}
		fmt.Fprintf(&out, "<p class=\"%s\" style=\"%s\">%d</p>\n", class, d.place(number).css(), number+1)
	}
	d.told(&out)
	out.WriteString("</section>\n")
	return d.maker.page(d, out.String())
}

// told is what to do, in the middle of the sheet.
func (d *Document) told(out *strings.Builder) {
	const wide = 118 // mm: the longer ruler and its words
	paper := d.Grid.Paper
	say := d.maker.say
	fmt.Fprintf(out, "<div class=\"told\" style=\"left:%smm;top:%smm;width:%smm\">\n<h1>%s</h1>\n<ol>\n",
		mm((paper.Wide-wide)/2), mm(paper.Tall*0.3), mm(wide), html.EscapeString(d.Title))
	for _, step := range []string{"calibrate-print", "calibrate-rulers", "calibrate-hold", "calibrate-nudge"} {
		fmt.Fprintf(out, "<li>%s</li>\n", html.EscapeString(say(step)))
	}
	fmt.Fprintf(out, "</ol>\n<p class=\"line\">%s</p>\n", html.EscapeString(d.Grid.Size()))
	ruler(out, "50 mm", 50, func(n int) (at, tall float64, more bool) {
		return float64(n), []float64{5, 2, 2, 2, 2, 3.5, 2, 2, 2, 2}[n%10], n <= 50
	})
	ruler(out, "2 in", 2*label.Inch, func(n int) (at, tall float64, more bool) {
		return float64(n) * label.Inch / 8, []float64{5, 2, 3, 2, 4, 2, 3, 2}[n%8], n <= 16
	})
	out.WriteString("</div>\n")
}

// ruler draws a line of so many mm with its marks.
func ruler(out *strings.Builder, name string, long float64, mark func(n int) (at, tall float64, more bool)) {
	fmt.Fprintf(out, "<div class=\"ruler\" style=\"--long:%smm\">", mm(long))
	for n := 0; ; n++ {
		at, tall, more := mark(n)
		if !more {
			break
		}
		fmt.Fprintf(out, "<i style=\"left:%smm;height:%smm\"></i>", fmt.Sprintf("%.4g", at), mm(tall))
	}
	fmt.Fprintf(out, "<span>%s</span></div>\n", name)
}
