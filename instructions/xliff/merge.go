package xliff

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// A Trouble is a translation that cannot be taken over.
type Trouble struct{ Unit, Text, Why string }

// Markdown gives the text of a file of the translation: sections as translated, those
// that the document does not have as kept(name) has them, "" where there are none. What
// cannot be taken over is told, and its section left as it was.
func (t *Translated) Markdown(file *File, kept func(name string) string) (text string, troubles []Trouble) {
	var sections []string
	for _, s := range file.Sections {
		written, complete, found := t.section(s)
		troubles = append(troubles, found...)
		if !complete {
			written = strings.TrimSpace(kept(s.Name))
		}
		if written != "" {
			sections = append(sections, written)
		}
	}
	if len(sections) == 0 {
		return "", troubles
	}
	return strings.Join(sections, "\n\n") + "\n", troubles
}

// section is complete when each of its units is translated.
func (t *Translated) section(s *Section) (text string, complete bool, troubles []Trouble) {
	var blocks []string
	complete = true
	for i, unit := range s.Units {
		words, there, why := t.unit(unit)
		switch {
		case why != "":
			troubles = append(troubles, Trouble{unit.ID, unit.Text(), why})
			complete = false
		case !there:
			complete = false
		case i == 0:
			blocks = append(blocks, s.heading(words))
		default:
			blocks = append(blocks, wrapped(words, unit.head, unit.further))
		}
	}
	return joined(blocks, s.Units), complete, troubles
}

// heading of a section. A part has no name in its heading.
func (s *Section) heading(title string) string {
	marks := strings.Repeat("#", s.level) + " "
	if strings.HasPrefix(s.Name, "part:") {
		return marks + title
	}
	return marks + "[" + title + "](" + s.Name + s.parameters + ")"
}

// joined puts blocks under one another: items of a list, lines of a table and of one
// quotation without a blank line between.
func joined(blocks []string, units []*Unit) string {
	var out strings.Builder
	for i, block := range blocks {
		switch {
		case i == 0:
		case i < len(units) && tight(units[i-1], units[i]):
			out.WriteString("\n")
		case i < len(units) && strings.HasPrefix(units[i].head, ">") && strings.HasPrefix(units[i-1].head, ">"):
			out.WriteString("\n>\n")
		default:
			out.WriteString("\n\n")
		}
		out.WriteString(block)
	}
	return out.String()
}

func tight(before, unit *Unit) bool {
	line := func(u *Unit) bool {
		return listItem.MatchString(strings.TrimLeft(u.head, "> ")) || strings.HasPrefix(u.Text(), "|")
	}
	return line(before) && line(unit)
}

// unit gives the translation of one unit with its codes from the kit. why says what is
// wrong with one that is there.
func (t *Translated) unit(u *Unit) (text string, there bool, why string) {
	told := t.units[u.ID]
	if told == nil || strings.TrimSpace(plain(told.target)) == "" {
		return "", false, ""
	}
	if !sameSource(u.pieces, told.source) {
		return "", true, "the kit's own text was changed since the file was made; make it again"
	}
	if strings.Contains(plain(told.target), "](") && !strings.Contains(plain(u.pieces), "](") {
		return "", true, "it holds a link of its own; links are locked and come from the kit"
	}
	var out strings.Builder
	var used []codeKey
	for _, p := range told.target {
		if p.code == nil {
			out.WriteString(p.text)
			continue
		}
		key := codeKey{p.code.id, p.code.kind}
		own := u.code(key)
		switch {
		case own == nil:
			return "", true, "it holds a code that the kit's own text does not have; take it out"
		case slices.Contains(used, key):
			return "", true, fmt.Sprintf("it holds “%s” twice; take one out", own.shows)
		}
		used = append(used, key)
		out.WriteString(own.writes)
	}
	for _, p := range u.pieces {
		if p.code != nil && !slices.Contains(used, codeKey{p.code.id, p.code.kind}) {
			return "", true, fmt.Sprintf("“%s”, which is locked, is missing; put it in again", p.code.shows)
		}
	}
	return tidied(out.String()), true, ""
}

type codeKey struct {
	id   int
	kind codeKind
}

func (u *Unit) code(key codeKey) *code {
	for _, p := range u.pieces {
		if p.code != nil && p.code.id == key.id && p.code.kind == key.kind {
			return p.code
		}
	}
	return nil
}

// Text is the unit in the kit's own language, as people read it.
func (u *Unit) Text() string {
	var out strings.Builder
	for _, p := range u.pieces {
		switch {
		case p.code == nil:
			out.WriteString(p.text)
		case p.code.kind == alone:
			out.WriteString(p.code.shows)
		}
	}
	return out.String()
}

// plain is the text of pieces without codes.
func plain(pieces []piece) string {
	var out strings.Builder
	for _, p := range pieces {
		out.WriteString(p.text)
	}
	return out.String()
}

// tidied takes out the blanks that programs put around codes when they set a document
// out in lines.
func tidied(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	return strings.NewReplacer("[ ", "[", " ](", "](").Replace(text)
}

// sameSource compares a unit with what went out, whatever a program did to its blanks.
func sameSource(own, file []piece) bool {
	return shape(own) == shape(file)
}

func shape(pieces []piece) string {
	var out strings.Builder
	for _, p := range pieces {
		if p.code != nil {
			fmt.Fprintf(&out, "\x00%d.%d\x00", p.code.id, p.code.kind)
			continue
		}
		out.WriteString(p.text)
	}
	return strings.Join(strings.Fields(out.String()), "")
}

// width of the lines of a file that is written.
const width = 90

// marksBlock: a word that would make a list, heading or quotation of a line.
var marksBlock = regexp.MustCompile(`^(?:[-+*>#|=]|[0-9]+[.)]$)`)

// wrapped breaks a text into lines, each with what marks its quotation or list.
func wrapped(text, head, further string) string {
	if strings.HasPrefix(text, "|") || strings.HasPrefix(strings.TrimLeft(head, "> "), "#") {
		return head + text
	}
	var out strings.Builder
	line := head
	begun := false
	for _, word := range strings.Split(text, " ") {
		if begun && len([]rune(line))+1+len([]rune(word)) > width && !marksBlock.MatchString(word) {
			out.WriteString(line + "\n")
			line, begun = further, false
		}
		if begun {
			line += " "
		}
		line += word
		begun = true
	}
	out.WriteString(line)
	return out.String()
}
