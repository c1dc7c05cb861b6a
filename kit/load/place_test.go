package load

import (
	"strings"
	"testing"

	"tallyfold/kit/source"
)

// places are the ways a text can stand in YAML. In each, the words “sage oil” of
// the note are looked for in the file, and the whole value is as told.
var places = []struct {
	why, file, value string
	// part is what stands where “sage oil” is read, as it is written.
	part string
}{
	{"a plain text", "note: some sage oil\n", "some sage oil", "sage oil"},
	{"a plain text with a comment behind it", "note: some sage oil # fresh\n", "some sage oil", "sage oil"},
	{"a plain text over two lines", "note: some\n  sage oil\nx: 1\n", "some\n  sage oil", "sage oil"},
	{"the words themselves over two lines", "note: some sage\n\n\n  oil\nx: 1\n", "some sage\n\n\n  oil", ""},
	{"wide characters before it, in bytes", "a: [“é”, 好, 🌿]\nnote: für “sage oil”\n", "für “sage oil”", "sage oil"},
	{"wide characters on its own line", "{“é” 好 🌿: x, note: sage oil, y: z}\n", "sage oil", "sage oil"},
	{"double quotation marks", "note: \"some sage oil\" # x\n", "\"some sage oil\"", "sage oil"},
	{"escapes before the words", "note: \"\\u00e9\\x41 \\\"a\\\" \\U0001F33F sage oil\"\n", "\"\\u00e9\\x41 \\\"a\\\" \\U0001F33F sage oil\"", "sage oil"},
	{"escapes in the words", "note: \"\\x73age\\u0020oil\"\n", "\"\\x73age\\u0020oil\"", "\\x73age\\u0020oil"},
	{"a line end hidden by a backslash", "note: \"some \\\n   sage oil\"\nx: 1\n", "\"some \\\n   sage oil\"", "sage oil"},
	{"double quotation marks over lines", "note: \"some\n\n  sage oil\"\nx: 1\n", "\"some\n\n  sage oil\"", "sage oil"},
	{"single quotation marks with one doubled", "note: 'it''s some ''sage oil'''\n", "'it''s some ''sage oil'''", "sage oil"},
	{"a block", "note: |\n  some\n  sage oil\nx: 1\n", "|\n  some\n  sage oil", "sage oil"},
	{"a block with a comment on its head", "note: | # sage oil\n  some\n\n    sage oil\n\nx: 1\n", "| # sage oil\n  some\n\n    sage oil", "sage oil"},
	{"a folded block", "note: >-\n  some\n  sage oil\n  more\nx: 1\n", ">-\n  some\n  sage oil\n  more", "sage oil"},
	{"braces", "{note: sage oil, x: 1}\n", "sage oil", "sage oil"},
	{"lines that end as on Windows", "a: 1\r\nnote: some\r\n  sage oil\r\nx: 1\r\n", "some\r\n  sage oil", "sage oil"},
	{"lines that end as on very old machines", "a: 1\rnote: sage oil\rx: 1\r", "sage oil", "sage oil"},
	{"a byte order mark", "\ufeffnote: sage oil\n", "sage oil", "sage oil"},
	{"a byte order mark and lines below", "\ufeffa: é\r\nnote: \"sage oil\"\r\n", "\"sage oil\"", "sage oil"},
	{"an explicit key", "? note\n: sage oil\n", "sage oil", "sage oil"},
	{"a document line above it", "--- # kit\nnote: sage oil\n...\n", "sage oil", "sage oil"},
}

func TestPlacesOfTexts(t *testing.T) {
	for _, c := range places {
		t.Run(c.why, func(t *testing.T) {
			doc, refused := open(source.NewFile("kit.yaml", []byte(c.file)))
			if doc == nil {
				t.Fatal(tell(refused))
			}
			r := &reader{doc: doc}
			note, ok := r.entries(doc.value(doc.root)).take("note")
			if !ok {
				t.Fatal("the note was not read")
			}
			if got := note.key.span.Text(); got != "note" {
				t.Errorf("the key is at %q", got)
			}
			if got := note.value.span.Text(); got != c.value {
				t.Errorf("value at %q, want %q", got, c.value)
			}
			at := strings.LastIndex(note.value.text(), "sage oil")
			if c.part == "" {
				return
			}
			if got := note.value.part(at, at+len("sage oil")).Text(); at < 0 || got != c.part {
				t.Errorf("part at %q, want %q", got, c.part)
			}
		})
	}
}

// groups are the ways a list or lines of keys can stand in YAML, with their whole place.
var groups = []struct{ why, file, value string }{
	{"braces", "x: {a: 1, b: 2} # }\n", "{a: 1, b: 2}"},
	{"empty braces", "x: {  }\n", "{  }"},
	{"braces over lines, with a comment that has one", "x: {a: 1, # }\n  b: [2, 3] ,\n}\ny: 1\n", "{a: 1, # }\n  b: [2, 3] ,\n}"},
	{"a brace in quotation marks", "x: {a: \"}\", b: '}'}\n", "{a: \"}\", b: '}'}"},
	{"a value that is nothing", "x: {a, b: }\n", "{a, b: }"},
	{"lines of keys", "x:\n  a: 1\n  b: 2 # c\n\ny: 1\n", "a: 1\n  b: 2"},
	{"lines of keys, the last with nothing", "x:\n  a: 1\n  b:\ny: 1\n", "a: 1\n  b:"},
	{"a list", "x:\n- 1\n- {a: 2}\ny: 1\n", "- 1\n- {a: 2}"},
	{"a list in brackets", "x: [1, [2], ]\n", "[1, [2], ]"},
	{"one key in a list in brackets", "x: [a: 1, 2]\n", "[a: 1, 2]"},
	{"a block of text that says its own sign", "x:\n  a: |\n    |\n  b: > # c\n    >\ny: 1\n", "a: |\n    |\n  b: > # c\n    >"},
	{"a block of text with nothing in it", "x:\n  a: | # c\ny: 1\n", "a: | # c"},
	{"a block of text at the end", "x:\n  a: |\n    one\n    two\ny: 1\n", "a: |\n    one\n    two"},
}

func TestPlacesOfGroups(t *testing.T) {
	for _, c := range groups {
		t.Run(c.why, func(t *testing.T) {
			doc, refused := open(source.NewFile("kit.yaml", []byte(c.file)))
			if doc == nil {
				t.Fatal(tell(refused))
			}
			r := &reader{doc: doc}
			x, _ := r.entries(doc.value(doc.root)).take("x")
			if got := x.value.span.Text(); got != c.value {
				t.Errorf("at %q, want %q", got, c.value)
			}
		})
	}
}

// refusals are files refused for bytes that an editor may not show, and so are
// written here and not as files.
var refusals = []struct{ why, file, found, at string }{
	{"NUL", "name: a\x00b\n", "a NUL character", "\x00"},
	{"not UTF-8", "name: caf\xe9\n", "a byte that is not UTF-8 text", "\xe9"},
	{"a control character", "name: a\x07b\n", "a control character", "\x07"},
	{"a line end only YAML knows, U+0085", "name: a\u0085b: c\n", "an unusual line end (U+0085, U+2028 or U+2029)", "\u0085"},
	{"a line end only YAML knows, U+2028", "name: a\u2028b: c\n", "an unusual line end (U+0085, U+2028 or U+2029)", "\u2028"},
	{"a line end only YAML knows, U+2029", "name: a\u2029b: c\n", "an unusual line end (U+0085, U+2028 or U+2029)", "\u2029"},
	{"a byte order mark inside", "name: a\ufeffb\n", "a byte order mark in the middle of the text", "\ufeff"},
	{"no character", "name: a\ufffeb\n", "a code that is no character (U+FFFE or U+FFFF)", "\ufffe"},
	{"UTF-16", "\xff\xfen\x00a\x00", "a byte that is not UTF-8 text", "\xff"},
	{"too large", "# " + strings.Repeat("x", MaxBytes), "a file of 262146 bytes", ""},
}

func TestRefusals(t *testing.T) {
	for _, c := range refusals {
		t.Run(c.why, func(t *testing.T) {
			k, found := Kit(source.NewFile("kit.yaml", []byte(c.file)))
			if k != nil || len(found) == 0 {
				t.Fatalf("kit %v, %d findings", k, len(found))
			}
			f := found[0]
			if f.Rule != RefusedFile || f.Found != c.found || f.Where.Text() != c.at {
				t.Errorf("%s: %q at %q", f.Rule, f.Found, f.Where.Text())
			}
		})
	}
}

// TestAllOddPlaces: every odd character is told, not only the first.
func TestAllOddPlaces(t *testing.T) {
	_, found := Kit(source.NewFile("kit.yaml", []byte("a: \x00\nb: \x01\nc: caf\xe9\n")))
	if got := len(found); got != 3 {
		t.Errorf("%d findings, want 3:\n%s", got, tell(found))
	}
	_, found = Kit(source.NewFile("kit.yaml", []byte(strings.Repeat("\x00", 1000))))
	if got := len(found); got != maxPlaces {
		t.Errorf("%d findings for a thousand places, want %d", got, maxPlaces)
	}
}
