package load

import (
	"bytes"
	"fmt"
	"strings"

	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// This file says where and why a kit.yaml cannot be read. The YAML reader names
// the line on which the surrounding thing begins, or one near it, or none; here
// the line is the first that cannot be added to the lines above it.

// readerDepth is the depth at which the YAML reader itself gives up.
const readerDepth = 10000

// linesTried is how many lines above the place where the reader stopped are
// tried one by one: nearly every mistake lies within them. What stays open for
// longer (a quotation mark, a bracket) is found by halving.
const linesTried = 16

// bytesTried bounds the work of finding the line in a long file.
const bytesTried = 4 << 20

// unreadable tells the line that cannot be read; stopped is how many bytes the
// reader had taken in after the byte order mark.
func unreadable(file *source.File, stopped int) diag.Finding {
	if deepest(file.Text) >= readerDepth {
		return refusal(file.Whole(), fmt.Sprintf("things set inside each other more than %d deep", readerDepth),
			"at most six levels", "look for brackets that are opened and never closed")
	}
	number := firstBadLine(file, file.WithoutMark()+stopped)
	line := takeApart(file, number)
	for _, look := range looks {
		if t, ok := look(line); ok {
			return t.finding()
		}
	}
	return misplaced(line).finding()
}

// firstBadLine gives the line after the longest run of whole lines that can be read.
func firstBadLine(file *source.File, stopped int) int {
	budget := bytesTried
	reads := func(lines int) bool {
		text := file.Text[file.WithoutMark():max(file.LineStart(lines+1), file.WithoutMark())]
		if budget -= len(text); budget < 0 {
			return false
		}
		_, _, _, ok := parse(text)
		return ok
	}
	bad := file.Position(stopped - 1).Line
	for good := bad - 1; good >= max(bad-linesTried, 0); good-- {
		if reads(good) {
			return good + 1
		}
	}
	good := 0
	for bad = max(bad-linesTried, 1); bad-good > 1; {
		if middle := (good + bad) / 2; reads(middle) {
			good = middle
		} else {
			bad = middle
		}
	}
	return good + 1
}

// deepest counts brackets, and dashes in a row, without looking at quotation marks.
func deepest(text []byte) int {
	open, most := 0, 0
	for _, b := range text {
		switch b {
		case '{', '[':
			open++
		case '}', ']':
			open--
		}
		most = max(most, open)
	}
	for _, line := range bytes.Split(text, []byte("\n")) {
		most = max(most, bytes.Count(line, []byte("- ")), bytes.Count(line, []byte("? ")))
	}
	return most
}

// A badLine is a line that cannot be read, taken apart.
type badLine struct {
	file   *source.File
	number int
	text   string
	// body is the byte in text after indentation and dashes; value that after the
	// first colon, or body where there is none.
	body, value int
	dashed      bool
	colon       bool
}

func takeApart(file *source.File, number int) badLine {
	l := badLine{file: file, number: number, text: strings.TrimPrefix(file.Line(number), string(source.ByteOrderMark))}
	l.body = skipBlanks(l.text, 0)
	for strings.HasPrefix(l.text[l.body:], "- ") {
		l.dashed = true
		l.body = skipBlanks(l.text, l.body+1)
	}
	l.value = l.body
	if at := keyEnd(l.text[l.body:]); at >= 0 {
		l.colon = true
		l.value = skipBlanks(l.text, l.body+at+1)
	}
	return l
}

func skipBlanks(text string, at int) int {
	for at < len(text) && (text[at] == ' ' || text[at] == '\t') {
		at++
	}
	return at
}

// keyEnd is the byte of the colon that ends a key, or -1.
func keyEnd(text string) int {
	from := 0
	if text != "" && (text[0] == '"' || text[0] == '\'') {
		from = quoteEnd([]byte(text), 0, text[0])
	}
	for at := from; at < len(text); at++ {
		if text[at] == ':' && (at+1 == len(text) || text[at+1] == ' ') {
			return at
		}
	}
	return -1
}

// span gives a place in the line.
func (l badLine) span(start, end int) source.Span {
	from := l.file.LineStart(l.number)
	if l.number == 1 {
		from = l.file.WithoutMark()
	}
	return l.file.Span(from+start, from+end)
}

// above gives the next line above that says anything, or ok = false.
func (l badLine) above() (line badLine, ok bool) {
	for number := l.number - 1; number >= 1; number-- {
		line := takeApart(l.file, number)
		if line.body < len(line.text) && line.text[line.body] != '#' {
			return line, true
		}
	}
	return badLine{}, false
}

// A trouble is what is wrong with a line, where, and the way out.
type trouble struct {
	where           source.Span
	found, expected string
	order           string
}

func (t trouble) finding() diag.Finding {
	return diag.Finding{Rule: UnreadableFile, Severity: diag.MustFix, Where: t.where,
		Found: t.found, Expected: t.expected, Remedies: diag.Fix(t.order)}
}
