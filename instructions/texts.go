package instructions

import (
	"strings"

	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// ReadTexts reads kit.XX.txt: a text as it stands in kit.yaml at the beginning of a
// line, and under it, set in, what stands for it in the language. Lines beginning with
// # are notes.
//
//	Drawer sachets
//	  Sachets parfumés
func ReadTexts(file *source.File) (map[string]string, diag.List) {
	texts := map[string]string{}
	if refused := refuse(file); refused != nil {
		return texts, refused
	}
	var found diag.List
	own, told := "", false
	for number := 1; number <= file.Lines(); number++ {
		line := strings.TrimRight(file.Line(number), " \t\r\n")
		text := strings.TrimSpace(line)
		switch {
		case text == "" || strings.HasPrefix(line, "#"):
		case text == line:
			own, told = text, false
		case own == "" || told:
			start := file.LineStart(number)
			found = append(found, finding(refusedFile, file.Span(start, start+len(line)), text, "a translation, "+quoted(text)+", under no text of kit.yaml",
				"the text as kit.yaml has it at the beginning of a line, and its translation alone under it",
				"write the text that it translates above it", "put a translation into one line"))
		default:
			texts[own], told = text, true
		}
	}
	return texts, found
}
