package labels

import (
	"fmt"
	"html"
	"strings"

	"tallyfold/kit/colour"
)

// shell is what labels.html fills in; Style and Body are HTML, the rest is plain text.
type shell struct{ Language, Direction, Title, Style, Body string }

// HTML gives the sheets as one file that needs nothing else. The error says which template
// does not fit.
func (d *Document) HTML() ([]byte, error) { return d.maker.page(d, d.body()) }

// page puts sheets into the shell.
func (m *maker) page(d *Document, body string) ([]byte, error) {
	style, err := m.style(d, body)
	if err != nil {
		return nil, err
	}
	page, err := m.set.Execute("labels.html", nil, shell{
		Language: m.words.Language, Direction: m.say("direction"), Title: d.Title, Style: style, Body: body,
	})
	return []byte(page), err
}

// style is the sheet, the faces and the look, with the kit's accent. What the maker adds to
// the look of the booklet is not added here: it would move lines that are measured.
func (m *maker) style(d *Document, body string) (string, error) {
	faces, err := m.set.FaceRules(body)
	if err != nil {
		return "", err
	}
	look, err := m.set.File("labels.css")
	if err != nil {
		return "", err
	}
	paper := d.Grid.Paper
	sheets := fmt.Sprintf("@page { size: %smm %smm; margin: 0; }\n", mm(paper.Wide), mm(paper.Tall)) + faces + string(look)
	if accent := m.kit.Look.Accent; accent.Given() {
		// Black labels on an accent too pale for them would not be read.
		sheets += fmt.Sprintf(":root { --accent: %s; }\n", accent.Value.Readable(colour.White, colour.ForText))
	}
	return strings.ReplaceAll(sheets, "</", `<\/`), nil
}

// body is every sheet with its labels in their places.
func (d *Document) body() string {
	var out strings.Builder
	at := d.maker.options.Start - 1
	for sheet := range d.Sheets {
		out.WriteString(d.openSheet())
		for place := range d.Grid.Each() {
			number := sheet*d.Grid.Each() + place - at
			if number >= 0 && number < len(d.labels) {
				d.label(&out, place, d.labels[number])
			}
		}
		out.WriteString("</section>\n")
	}
	return out.String()
}

func (d *Document) openSheet() string {
	return fmt.Sprintf("<section class=\"sheet %s\" style=\"width:%smm;height:%smm\">\n", d.Kind, mm(d.Grid.Paper.Wide), mm(d.Grid.Paper.Tall))
}

// place is where a label stands, nudged as the maker's printer wants it.
func (d *Document) place(number int) box {
	left, top := d.Grid.Position(number)
	nudge := d.maker.kit.Labels.Nudge.Value
	return box{left + nudge.Right.Float(), top + nudge.Down.Float(), d.Grid.Wide, d.Grid.Tall}
}

func (d *Document) label(out *strings.Builder, place int, one drawn) {
	class := "label"
	if one.centred {
		class += " centred"
	}
	fmt.Fprintf(out, "<article class=\"%s\" style=\"%s\">\n", class, d.place(place).css())
	d.ornament(out)
	if one.mark != "" {
		fmt.Fprintf(out, "<b class=\"mark\" style=\"%s;font-size:%spt\">%s</b>\n", one.markBox.css(), mm(one.markSize), html.EscapeString(one.mark))
	}
	for i, l := range one.lines {
		if l.warns && (i == 0 || !one.lines[i-1].warns) {
			d.bar(out, one.lines[i:])
		}
		if l.alerts {
			fmt.Fprintf(out, alertSign, box{l.left - l.indent + warningBar, l.top, l.indent - warningBar - alertGap, l.tall}.css())
		}
		fmt.Fprintf(out, "<p class=\"%s\"%s style=\"%s;font-size:%spt\">%s</p>\n", l.class(), l.tag(), l.css(), mm(l.size), html.EscapeString(l.text))
	}
	if d.maker.options.Draft {
		d.draft(out)
	}
	out.WriteString("</article>\n")
}

// ornament is the one coloured thing of labels without a letter: a ring on a round one, a
// band at the head of a box end.
func (d *Document) ornament(out *strings.Builder) {
	room := inside(d.Grid)
	switch {
	case d.Grid.Round:
		fmt.Fprintf(out, "<i class=\"ring\" style=\"%s\"></i>\n", box{ringIn, ringIn, d.Grid.Wide - 2*ringIn, d.Grid.Tall - 2*ringIn}.css())
	case d.Kind == "bags":
	default:
		fmt.Fprintf(out, "<i class=\"band\" style=\"left:%smm;top:%smm;width:%smm\"></i>\n", mm(room.left), mm(room.top), mm(min(room.wide*0.2, 16)))
	}
}

// bar stands beside the cautions that a label has, from the first line to the last.
func (d *Document) bar(out *strings.Builder, lines []line) {
	last := lines[0]
	for _, l := range lines {
		if !l.warns {
			break
		}
		last = l
	}
	first := lines[0]
	fmt.Fprintf(out, "<i class=\"bar\" style=\"left:%smm;top:%smm;height:%smm\"></i>\n",
		mm(first.left-first.indent), mm(first.top), mm(last.top+last.tall-first.top))
}

// alertSign is the general warning sign, with room for its place: a triangle of equal sides
// with an exclamation mark (16 CFR 1500.19(d), ISO 7010).
const alertSign = "<svg class=\"alert\" style=\"%s\" viewBox=\"0 0 24 21\" aria-hidden=\"true\"><path fill=\"currentColor\" fill-rule=\"evenodd\" " +
	"d=\"M12 0 24 21H0ZM10.6 6.8h2.8l-.5 7.4h-1.8zM10.6 15.4h2.8v2.8h-2.8z\"/></svg>\n"

// tag is the language of a line that is in another than its label.
func (l line) tag() string {
	if l.language == "" {
		return ""
	}
	return fmt.Sprintf(" lang=\"%s\" dir=\"ltr\"", html.EscapeString(l.language))
}

// draft lies across a label, as large as it has room for.
func (d *Document) draft(out *strings.Builder) {
	text := d.maker.say("draft")
	ems, _ := d.maker.faces[bold].Width(text)
	size := min(d.Grid.Wide*0.8/ems, d.Grid.Tall*0.3) / point
	fmt.Fprintf(out, "<p class=\"draft-mark\" style=\"%s;font-size:%spt\">%s</p>\n", box{0, 0, d.Grid.Wide, d.Grid.Tall}.css(), mm(size), html.EscapeString(text))
}

func (l line) class() string {
	class := "line" + map[faceName]string{regular: "", bold: " bold", title: " title"}[l.face]
	if l.soft {
		class += " soft"
	}
	if l.warns {
		class += " warns"
	}
	if l.toWrite {
		class += " to-write"
	}
	return class
}

func (b box) css() string {
	return fmt.Sprintf("left:%smm;top:%smm;width:%smm;height:%smm", mm(b.left), mm(b.top), mm(b.wide), mm(b.tall))
}

// mm tells a length to a hundredth.
func mm(length float64) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.2f", length), "0"), ".")
}
