package amend

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"tallyfold/kit/source"
)

// Stretch puts other words in the place of bytes start to end of a text file, such as
// method.md; every other byte stays. was is what stands there as far as the caller
// knows; where something else does, nothing is changed. Line ends in was and words may
// be LF: in the file they become those of the lines around.
func Stretch(content []byte, start, end int, was, words string) ([]byte, error) {
	switch {
	case start < 0 || end < start || end > len(content):
		return nil, refuse("read the file again", "the place lies outside the file")
	case splitsCharacter(content, start) || splitsCharacter(content, end):
		return nil, refuse("read the file again", "the place begins or ends inside a character")
	case unified(string(content[start:end])) != unified(was):
		return nil, refuse("read the file again", "other words stand there by now")
	case unwritable(words) != "":
		return nil, refuse("take it out", "the new words have %s", unwritable(words))
	}
	with := strings.ReplaceAll(unified(words), "\n", lineEndNear(content, start))
	return bytes.Join([][]byte{content[:start], []byte(with), content[end:]}, nil), nil
}

// Whole gives a text file the text that an editor made of it. Editors show every line
// end as LF and no byte order mark: what they left as it was keeps its bytes, and only
// the one stretch in which the text is another is written anew.
func Whole(content []byte, edited string) ([]byte, error) {
	mark := source.NewFile("", content).WithoutMark()
	old, edited := unified(string(content[mark:])), unified(strings.TrimPrefix(edited, string(source.ByteOrderMark)))
	from, behind := 0, 0
	for from < min(len(old), len(edited)) && old[from] == edited[from] {
		from++
	}
	for behind < min(len(old), len(edited))-from && old[len(old)-1-behind] == edited[len(edited)-1-behind] {
		behind++
	}
	for from > 0 && (splitsCharacter([]byte(old), from) || splitsCharacter([]byte(edited), from)) {
		from--
	}
	for behind > 0 && (splitsCharacter([]byte(old), len(old)-behind) || splitsCharacter([]byte(edited), len(edited)-behind)) {
		behind--
	}
	start, end := mark+bytesFor(content[mark:], from), mark+bytesFor(content[mark:], len(old)-behind)
	return Stretch(content, start, end, old[from:len(old)-behind], edited[from:len(edited)-behind])
}

// unified has LF for every kind of line end.
func unified(text string) string {
	return strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
}

// bytesFor is the byte of a text at which byte n of its unified form stands.
func bytesFor(content []byte, n int) int {
	at := 0
	for ; n > 0; n-- {
		if content[at] == '\r' && at+1 < len(content) && content[at+1] == '\n' {
			at++
		}
		at++
	}
	return at
}

// splitsCharacter says whether a place lies inside a character, or between CR and LF.
func splitsCharacter(content []byte, at int) bool {
	if at == 0 || at == len(content) {
		return false
	}
	return !utf8.RuneStart(content[at]) || content[at-1] == '\r' && content[at] == '\n'
}

// lineEndNear is how the line above a place ends; in the first line, how the first does.
func lineEndNear(content []byte, at int) string {
	above := bytes.LastIndexAny(content[:at], "\r\n")
	switch {
	case above < 0:
		return lineEnd(content)
	case content[above] == '\r':
		return "\r"
	case above > 0 && content[above-1] == '\r':
		return "\r\n"
	}
	return "\n"
}
