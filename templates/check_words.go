package templates

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// checkWords holds each word of a maker's list against those that the program asks for:
// its name, and the places to fill in.
func checkWords(file *source.File, language string) diag.List {
	asked, err := Shipped().Words(SourceLanguage)
	if err != nil {
		panic("templates: the words that are shipped cannot be read: " + err.Error())
	}
	w := wordList{file: file, language: language, asked: asked}
	for n := 1; n <= file.Lines(); n++ {
		line := strings.TrimSpace(file.Line(n))
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		start := file.LineStart(n)
		w.line(file.Span(start, start+len(file.Line(n))), line)
	}
	return w.found
}

type wordList struct {
	file     *source.File
	language string
	asked    Words
	found    diag.List
}

func (w *wordList) line(where source.Span, line string) {
	name, says, ok := strings.Cut(line, ":")
	name, says = strings.TrimSpace(name), strings.TrimSpace(says)
	switch {
	case !ok:
		w.found = append(w.found, noColon(w.file, where.Position().Line))
	case w.source(name) == "":
		todo := "delete the line; tallyfold templates KIT words/en.txt prints all names"
		if near := diag.Nearest(name, w.asked.Names()); near != "" {
			todo = "write " + near
		}
		w.tell(where, name, fmt.Sprintf("there is no word %q to say", name), "a name that the booklet asks for", todo)
	case says == "":
		w.tell(where, name, fmt.Sprintf("%s says nothing", name), "the words to print", "write the words, or delete the line to have those of the program")
	case name == "direction" && says != "ltr" && says != "rtl":
		w.tell(where, name, fmt.Sprintf("direction is %q", says), "ltr (from left to right) or rtl (from right to left)", "write ltr or rtl")
	default:
		w.places(where, name, says)
	}
}

// source is the English under a name, or under the common form of a word with a number.
func (w *wordList) source(name string) string {
	word, form, counted := strings.Cut(name, ".")
	if !counted {
		return w.asked.says[name]
	}
	if !slices.Contains(formsOf(w.language), form) {
		return ""
	}
	return w.asked.says[word+".other"]
}

var placeInWords = regexp.MustCompile(`\{[^{}]*\}`)

func (w *wordList) places(where source.Span, name, says string) {
	want, got := placeInWords.FindAllString(w.source(name), -1), placeInWords.FindAllString(says, -1)
	slices.Sort(want)
	slices.Sort(got)
	_, form, _ := strings.Cut(name, ".")
	mayLackNumber := (form == "one" || form == "two") && len(got) == 0 // "a year and over"
	if slices.Equal(slices.Compact(want), slices.Compact(got)) || mayLackNumber {
		return
	}
	expected := "no places in braces"
	if len(want) > 0 {
		expected = strings.Join(want, ", ") + ", as in “" + w.source(name) + "”"
	}
	found := fmt.Sprintf("%s has no place to fill in", name)
	if len(got) > 0 {
		found = fmt.Sprintf("%s has the places %s", name, strings.Join(got, ", "))
	}
	w.tell(where, name, found, expected, "write the places in braces as they are expected, each where its value belongs")
}

func (w *wordList) tell(where source.Span, about, found, expected, todo string) {
	f := misfit(where, about, found, expected, todo)
	f.Rule = "word-does-not-fit"
	w.found = append(w.found, f)
}
