package workbench

import (
	"bytes"
	"net/url"
	"strings"
	"sync"
	"unicode/utf8"

	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// An editor in a browser counts other places than files do: every line end is one, a byte
// order mark is none, and letters beyond U+FFFF are two (UTF-16).

// inEditor is the place in the editor of a byte of a file.
func inEditor(text []byte, at int) int {
	at = min(max(at, 0), len(text))
	return lengthInEditor(shown(text[:at]))
}

func lengthInEditor(text []byte) int {
	length := 0
	for len(text) > 0 {
		r, size := utf8.DecodeRune(text)
		text = text[size:]
		length++
		if r > 0xFFFF {
			length++
		}
	}
	return length
}

// shown is a text as the editor has it.
func shown(text []byte) []byte {
	text = bytes.TrimPrefix(text, source.ByteOrderMark)
	text = bytes.ReplaceAll(text, []byte("\r\n"), []byte("\n"))
	return bytes.ReplaceAll(text, []byte("\r"), []byte("\n"))
}

// inFile is the byte of a file at a place of the editor.
func inFile(text []byte, place int) int {
	at := len(text) - len(bytes.TrimPrefix(text, source.ByteOrderMark))
	for place > 0 && at < len(text) {
		r, size := utf8.DecodeRune(text[at:])
		if r == '\r' && at+1 < len(text) && text[at+1] == '\n' {
			size = 2
		}
		at += size
		place--
		if r > 0xFFFF {
			place--
		}
	}
	return at
}

// fieldAt names the innermost field of kit.yaml that a place lies in.
func fieldAt(at source.Span) string {
	root := treeOf(at.File)
	if root == nil {
		return ""
	}
	var path []string
	for part := root; ; {
		next := entryAt(part, at)
		if next < 0 {
			break
		}
		path = append(path, keyOf(part, next))
		part = part.Entries[next].Value
	}
	if len(path) == 0 {
		return ""
	}
	return fieldID(path)
}

// lastTree is kept, as a page asks for many places of one text.
var lastTree struct {
	sync.Mutex
	file *source.File
	root *load.Part
}

func treeOf(file *source.File) *load.Part {
	lastTree.Lock()
	defer lastTree.Unlock()
	if lastTree.file != file {
		lastTree.file = file
		lastTree.root, _ = load.Tree(file)
	}
	return lastTree.root
}

// entryAt is the number of the entry that a place begins in, -1 for none.
func entryAt(part *load.Part, at source.Span) int {
	for i, entry := range part.Entries {
		start := entry.Value.Span.Start
		if part.Kind == load.KeysPart {
			start = entry.KeySpan.Start
		}
		if start <= at.Start && at.Start <= max(entry.Value.Span.End, entry.KeySpan.End) {
			return i
		}
	}
	return -1
}

// fieldID is the name of a field in the page: its path, with what an address can bear.
func fieldID(path []string) string {
	id := strings.Join(path, ".")
	return "f-" + strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '.', r == '-':
			return r
		}
		return '_'
	}, id)
}

// addressOfField leads to a field of the box.
func addressOfField(kit string, path ...string) string {
	return kitPath(kit) + "/box#" + fieldID(path)
}

// kitPath is where the pages of a kit are.
func kitPath(name string) string { return "/kit/" + url.PathEscape(name) }
