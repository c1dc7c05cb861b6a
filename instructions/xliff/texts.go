package xliff

import "strings"

// Texts adds to a kit.XX.txt, before, what the document translates of kit.yaml and that
// file does not have yet. Lines that stand there stay.
func (t *Translated) Texts(file *File, before string, has map[string]string) (text string, troubles []Trouble) {
	var out strings.Builder
	out.WriteString(before)
	if before != "" && !strings.HasSuffix(before, "\n") {
		out.WriteString("\n")
	}
	for _, s := range file.Sections {
		for _, unit := range s.Units {
			words, there, why := t.unit(unit)
			switch own := unit.Text(); {
			case why != "":
				troubles = append(troubles, Trouble{unit.ID, own, why})
			case there && has[own] == "" && !strings.Contains(out.String(), "\n"+own+"\n"):
				out.WriteString(own + "\n  " + words + "\n")
			}
		}
	}
	return out.String(), troubles
}
