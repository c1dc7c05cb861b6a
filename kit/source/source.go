// Package source holds the text of a maker's files and the places in it.
//
// A place is kept as bytes from the start of the file. Lines and columns are
// worked out only when a person has to read them, so that no reader of files
// ever has to count them itself.
package source

import (
	"bytes"
	"sort"
	"strings"
	"unicode/utf8"
)

// A File is the text of one file of a kit folder, as it stands on the disk.
type File struct {
	// Name is the path shown to people: relative to the kit folder, forward slashes.
	Name string
	// Text is the whole content. Nobody changes it after NewFile.
	Text []byte

	lineStarts []int
}

// NewFile keeps text under name and notes where its lines begin. A line ends at
// LF, CR LF or a lone CR: what an editor shows as a line.
func NewFile(name string, text []byte) *File {
	file := &File{Name: name, Text: text, lineStarts: []int{0}}
	for i := 0; i < len(text); i++ {
		switch text[i] {
		case '\n':
			file.lineStarts = append(file.lineStarts, i+1)
		case '\r':
			if i+1 < len(text) && text[i+1] == '\n' {
				continue
			}
			file.lineStarts = append(file.lineStarts, i+1)
		}
	}
	return file
}

// Span gives the place from byte start up to, not including, byte end. Bounds
// outside the file are drawn in, so that a Span always can be printed.
func (f *File) Span(start, end int) Span {
	start = min(max(start, 0), len(f.Text))
	end = min(max(end, start), len(f.Text))
	return Span{File: f, Start: start, End: end}
}

// Whole is the place of the file as such, for what concerns no line of it.
func (f *File) Whole() Span { return Span{File: f} }

// LineStart gives the byte at which the line (from 1) begins; a line past the
// end gives the end of the file.
func (f *File) LineStart(line int) int {
	if line < 1 {
		return 0
	}
	if line > len(f.lineStarts) {
		return len(f.Text)
	}
	return f.lineStarts[line-1]
}

// Line gives the text of one line (from 1) without its line end.
func (f *File) Line(line int) string {
	return strings.TrimRight(string(f.Text[f.LineStart(line):f.LineStart(line+1)]), "\r\n")
}

// Lines is how many lines the file has; an empty file has one.
func (f *File) Lines() int { return len(f.lineStarts) }

// A Position is a place as a person counts: line and column from 1, the column
// in characters.
type Position struct{ Line, Column int }

// Position gives the line and column of a byte.
func (f *File) Position(at int) Position {
	at = min(max(at, 0), len(f.Text))
	line := sort.Search(len(f.lineStarts), func(i int) bool { return f.lineStarts[i] > at })
	start := f.lineStarts[line-1]
	return Position{Line: line, Column: utf8.RuneCount(f.Text[start:at]) + 1}
}

// A Span is a place in a file: bytes Start up to, not including, End. The zero
// Span is no place.
type Span struct {
	File       *File
	Start, End int
}

// Known says whether the span is a place at all.
func (s Span) Known() bool { return s.File != nil }

// Text is what stands there.
func (s Span) Text() string {
	if s.File == nil {
		return ""
	}
	return string(s.File.Text[s.Start:s.End])
}

// Position is where the span begins, as a person counts.
func (s Span) Position() Position {
	if s.File == nil {
		return Position{}
	}
	return s.File.Position(s.Start)
}

// Part gives a place inside the span, counted in bytes from its start.
func (s Span) Part(start, end int) Span {
	if s.File == nil {
		return s
	}
	return s.File.Span(s.Start+start, min(s.Start+end, s.End))
}

// Before orders places by file name, then by where they stand.
func (s Span) Before(t Span) bool {
	if a, b := s.fileName(), t.fileName(); a != b {
		return a < b
	}
	if s.Start != t.Start {
		return s.Start < t.Start
	}
	return s.End < t.End
}

// Contains says whether t lies within s.
func (s Span) Contains(t Span) bool {
	return s.File != nil && s.File == t.File && s.Start <= t.Start && t.End <= s.End
}

func (s Span) fileName() string {
	if s.File == nil {
		return ""
	}
	return s.File.Name
}

// OddText finds what no text file of a kit may hold: bytes that are not UTF-8,
// NUL, other control characters, and the line ends that editors and YAML count
// differently (U+0085, U+2028, U+2029). It returns the first such place and what
// it is, or ok = true.
func (f *File) OddText() (at Span, what string, ok bool) {
	for i := 0; i < len(f.Text); {
		r, size := utf8.DecodeRune(f.Text[i:])
		if what := oddRune(r, size, i); what != "" {
			return f.Span(i, i+size), what, false
		}
		i += size
	}
	return Span{}, "", true
}

// ByteOrderMark is the mark some editors put at the head of a file. It carries
// no meaning in UTF-8 and is accepted there and nowhere else.
var ByteOrderMark = []byte("\xef\xbb\xbf")

// WithoutMark says how many bytes of byte order mark stand at the head.
func (f *File) WithoutMark() int {
	if bytes.HasPrefix(f.Text, ByteOrderMark) {
		return len(ByteOrderMark)
	}
	return 0
}

func oddRune(r rune, size, at int) string {
	switch {
	case r == utf8.RuneError && size <= 1:
		return "a byte that is not UTF-8 text"
	case r == 0:
		return "a NUL character"
	case r == 0x85 || r == 0x2028 || r == 0x2029:
		return "an unusual line end (U+0085, U+2028 or U+2029)"
	case r == 0xFEFF && at > 0:
		return "a byte order mark in the middle of the text"
	case r < 0x20 && r != '\n' && r != '\r' && r != '\t', r >= 0x7f && r < 0xa0:
		return "a control character"
	}
	return ""
}
