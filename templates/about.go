package templates

import (
	"path"
	"regexp"
	"strings"
)

// firstNote is the remark that a template begins with.
var firstNote = regexp.MustCompile(`^(?:\{\{/\*|/\*)\s*([^*\n]*?)\s*(?:\*/|\n)`)

var drawingTitle = regexp.MustCompile(`<title>([^<]*)</title>`)

// About tells in a line what a shipped file is for, from the remark at its head.
func About(name string) string {
	switch path.Ext(name) {
	case ".txt":
		return "fixed words; write only those that differ"
	case ".woff2":
		return "a face"
	}
	switch name {
	case "book.html":
		return "The page around the booklet."
	case "labels.html":
		return "The page around labels."
	case "fold.html":
		return "The sheet on which pages are laid to be folded."
	}
	text, err := shipped.ReadFile(name)
	if err != nil {
		return ""
	}
	if title := drawingTitle.FindSubmatch(text); path.Ext(name) == ".svg" && title != nil {
		return "pictogram: " + string(title[1])
	}
	if note := firstNote.FindSubmatch(text); note != nil {
		return strings.TrimSpace(string(note[1]))
	}
	return ""
}
