package xliff

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strings"
)

// namespace of XLIFF 2.0 (OASIS Standard, 5 August 2014).
const namespace = "urn:oasis:names:tc:xliff:document:2.0"

// Write gives files as one XLIFF 2.0 document, from one language into another by their
// BCP 47 tags. Sections without units and files without sections are left out.
func Write(files []*File, from, to string) []byte {
	var out bytes.Buffer
	fmt.Fprintf(&out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<xliff xmlns=%q version=\"2.0\" srcLang=\"%s\" trgLang=\"%s\">\n",
		namespace, escaped(from), escaped(to))
	for _, file := range files {
		if len(file.Sections) == 0 {
			continue
		}
		fmt.Fprintf(&out, "  <file id=\"%s\">\n", escaped(file.Name))
		for _, section := range file.Sections {
			for _, unit := range section.Units {
				unit.write(&out)
			}
		}
		out.WriteString("  </file>\n")
	}
	out.WriteString("</xliff>\n")
	return out.Bytes()
}

func (u *Unit) write(out *bytes.Buffer) {
	fmt.Fprintf(out, "    <unit id=\"%s\">\n      <notes><note>%s</note></notes>\n", escaped(u.ID), escaped(u.Note))
	if data := u.originalData(); data != "" {
		fmt.Fprintf(out, "      <originalData>\n%s      </originalData>\n", data)
	}
	fmt.Fprintf(out, "      <segment>\n        <source xml:space=\"preserve\">%s</source>\n      </segment>\n    </unit>\n", u.inline())
}

// originalData is what each code stands for.
func (u *Unit) originalData() string {
	var out strings.Builder
	for _, p := range u.pieces {
		if p.code != nil {
			fmt.Fprintf(&out, "        <data id=\"%s\">%s</data>\n", p.code.dataID(), escaped(p.code.shows))
		}
	}
	return out.String()
}

func (c *code) dataID() string {
	if c.kind == closes {
		return fmt.Sprintf("d%d-end", c.id)
	}
	return fmt.Sprintf("d%d", c.id)
}

// inline is the text with its codes. A code may be moved, as languages have their own
// order, but not copied or taken out.
func (u *Unit) inline() string {
	var out strings.Builder
	for _, p := range u.pieces {
		switch {
		case p.code == nil:
			out.WriteString(escaped(p.text))
		case p.code.kind == opens:
			fmt.Fprintf(&out, `<pc id="%d" canCopy="no" canDelete="no" dataRefEnd="d%d-end" dataRefStart="d%d">`, p.code.id, p.code.id, p.code.id)
		case p.code.kind == closes:
			out.WriteString("</pc>")
		default:
			fmt.Fprintf(&out, `<ph id="%d" canCopy="no" canDelete="no" dataRef="d%d" disp="%s" equiv="%s"/>`,
				p.code.id, p.code.id, escaped(p.code.shows), escaped(p.code.shows))
		}
	}
	return out.String()
}

func escaped(text string) string {
	var out bytes.Buffer
	if err := xml.EscapeText(&out, []byte(text)); err != nil {
		panic("xliff: a text in memory can't be written: " + err.Error())
	}
	return out.String()
}
