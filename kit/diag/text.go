package diag

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"tallyfold/kit/source"
)

// Style says how findings are printed for people.
type Style struct {
	// Colour marks the severity and the place with terminal colours.
	Colour bool
	// Folder stands before file names, so that they can be opened from where the
	// command was given. Empty prints names within the kit folder.
	Folder string
	// Screen is how many lines there is room for. Where the findings take more,
	// those that need not be fixed are told in a line each. 0 tells all in full.
	Screen int
	// Rest says how the rest is got, behind what was told in short.
	Rest string
}

// WriteText prints findings worst first, each with its place, its sum and the
// ways out. Findings with the cause of an earlier one stand under it in a line.
// What must be fixed is always told in full.
func WriteText(w io.Writer, list List, style Style) error {
	p := &printer{w: w, style: style}
	groups := list.Sorted().grouped()
	full := len(groups)
	if style.Screen > 0 && linesOf(groups, style) > style.Screen {
		full = mustFixGroups(groups)
	}
	p.inFull(groups[:full])
	p.inShort(groups[full:])
	return p.err
}

// linesOf counts the lines that groups take in full.
func linesOf(groups []List, style Style) int {
	var text strings.Builder
	p := &printer{w: &text, style: style}
	p.inFull(groups)
	return strings.Count(text.String(), "\n")
}

// mustFixGroups is how many groups hold something that must be fixed. As groups
// stand in the order of their worst finding, they are the first ones.
func mustFixGroups(groups []List) int {
	n := slices.IndexFunc(groups, func(group List) bool { return !group.MustFix() })
	if n < 0 {
		return len(groups)
	}
	return n
}

// grouped puts findings that one mistake brings about behind the one that tells
// it best: the first of them that does not follow from another.
func (l List) grouped() []List {
	var groups []List
	at := map[string]int{}
	for _, f := range l {
		n, known := at[f.Cause]
		if !known || f.Cause == "" {
			at[f.Cause] = len(groups)
			groups = append(groups, List{f})
			continue
		}
		groups[n] = append(groups[n], f)
		if groups[n][0].Follows && !f.Follows {
			groups[n] = append(List{f}, groups[n][:len(groups[n])-1]...)
		}
	}
	return groups
}

// printer writes until the first error and keeps it.
type printer struct {
	w     io.Writer
	style Style
	begun bool // something has been printed
	err   error
}

func (p *printer) print(text string) {
	p.begun = true
	if p.err == nil {
		_, p.err = io.WriteString(p.w, text)
	}
}

// gap sets what follows apart from what stands above.
func (p *printer) gap() {
	if p.begun {
		p.print("\n")
	}
}

// line writes a label and what belongs to it.
func (p *printer) line(label, text string) {
	p.print(fmt.Sprintf("  %-9s %s\n", label, Printable(text)))
}

// inFull prints groups with all that there is to say, an empty line between them.
func (p *printer) inFull(groups []List) {
	for _, group := range groups {
		p.gap()
		p.finding(group[0])
		for _, follower := range group[1:] {
			p.line("with it", p.oneLine(follower))
		}
	}
}

// inShort prints each finding of groups in a line, under its severity.
func (p *printer) inShort(groups []List) {
	told, last := 0, Severity(0)
	for _, f := range slices.Concat(groups...).Sorted() {
		if f.Severity != last {
			p.gap()
			p.print(p.paint(f.Severity, f.Severity.String()) + ", in short:\n")
			last = f.Severity
		}
		p.print("  " + Printable(p.oneLine(f)) + "\n")
		told++
	}
	switch told {
	case 0:
	case 1:
		p.print("\n1 lesser finding is told in short; " + p.style.Rest + "\n")
	default:
		p.print(fmt.Sprintf("\n%d lesser findings are told in short; %s\n", told, p.style.Rest))
	}
}

// oneLine tells a finding by place, rule and what was found.
func (p *printer) oneLine(f Finding) string { return p.at(f.Where) + f.Rule + ", " + f.Found }

// at writes a place before what is said of it; no place is nothing.
func (p *printer) at(where source.Span) string {
	if !where.Known() {
		return ""
	}
	return p.place(where) + ": "
}

func (p *printer) finding(f Finding) {
	p.print(p.paint(f.Severity, f.Severity.String()) + ": " + f.Rule + "\n")
	if f.Where.Known() {
		p.print("  " + p.place(f.Where) + "\n")
		p.excerpt(f.Where)
	}
	p.line("found", f.Found)
	if f.Expected != "" {
		p.line("expected", f.Expected)
	}
	for i, sum := range f.Sum {
		p.line(first(i, "sum", ""), sum)
	}
	for i, remedy := range f.Remedies {
		text := remedy.Do
		if remedy.Then != "" {
			text += " (" + remedy.Then + ")"
		}
		p.line(first(i, "to do", "or"), text)
		if remedy.Tried != "" {
			p.line("", "tried: "+remedy.Tried)
		}
	}
	for i, also := range f.Also {
		p.line(first(i, "see also", ""), strings.TrimSpace(p.place(also.Where)+"  "+also.Note))
	}
}

func first(i int, label, later string) string {
	if i == 0 {
		return label
	}
	return later
}

// place writes file:line:column; a place that is the file as such, only its name.
func (p *printer) place(at source.Span) string {
	if !at.Known() {
		return ""
	}
	name := at.File.Name
	if p.style.Folder != "" {
		name = p.style.Folder + "/" + name
	}
	if at == at.File.Whole() {
		return name
	}
	position := at.Position()
	return fmt.Sprintf("%s:%d:%d", name, position.Line, position.Column)
}

// longestExcerpt is how many characters of a source line are shown: about what a
// terminal holds. A longer line is cut around the place.
const longestExcerpt = 100

// excerpt shows the line of the file with the place marked under it.
func (p *printer) excerpt(at source.Span) {
	if at == at.File.Whole() || len(at.File.Text) == 0 {
		return
	}
	position := at.Position()
	line := at.File.Line(position.Line)
	column := position.Column - 1
	width := max(1, utf8.RuneCountInString(firstLine(at.Text())))
	line, column, width = cut([]rune(line), column, width)
	p.print(fmt.Sprintf("  %5d | %s\n", position.Line, Printable(line)))
	p.print(fmt.Sprintf("        | %s%s\n", strings.Repeat(" ", column), p.paint(0, strings.Repeat("^", width))))
}

// cut keeps the part of a long line that holds the place.
func cut(line []rune, column, width int) (string, int, int) {
	start := 0
	if column > longestExcerpt*3/4 {
		start = column - longestExcerpt/4
	}
	end := min(len(line), start+longestExcerpt)
	width = max(1, min(width, end-column))
	text := string(line[start:end])
	column -= start
	if start > 0 {
		text, column = "…"+text, column+1
	}
	if end < len(line) {
		text += "…"
	}
	return text, column, width
}

// firstLine of a place that goes over several.
func firstLine(text string) string {
	if at := strings.IndexAny(text, "\r\n"); at >= 0 {
		return text[:at]
	}
	return text
}

// Printable keeps a maker's text from steering the terminal, and tabs from
// pushing the mark away from its place.
func Printable(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t':
			return ' '
		case r < 0x20 || r >= 0x7f && r < 0xa0 || r == 0x2028 || r == 0x2029 || r == utf8.RuneError:
			return '�'
		case r >= 0x202A && r <= 0x202E || r >= 0x2066 && r <= 0x2069:
			return '�' // marks that turn the direction of writing
		}
		return r
	}, text)
}

// paint colours a text by severity; no severity is the mark under an excerpt.
func (p *printer) paint(severity Severity, text string) string {
	if !p.style.Colour {
		return text
	}
	colour := map[Severity]string{0: "36", MustFix: "1;31", ShouldFix: "1;33", WorthKnowing: "1;34"}[severity]
	return "\x1b[" + colour + "m" + text + "\x1b[0m"
}
