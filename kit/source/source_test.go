package source

import (
	"strings"
	"testing"
)

func TestPositionsAsAnEditorCounts(t *testing.T) {
	file := NewFile("method.md", []byte("a\r\nbü1\rc\n\nlast"))
	for _, c := range []struct {
		why          string
		text         string
		line, column int
	}{
		{"first byte", "a", 1, 1},
		{"CR LF ends one line, not two", "b", 2, 1},
		{"columns count characters, not bytes", "1", 3 - 1, 3},
		{"a lone CR ends a line", "c", 3, 1},
		{"an empty line counts", "last", 5, 1},
	} {
		at := strings.Index(string(file.Text), c.text)
		got := file.Span(at, at+len(c.text)).Position()
		if got != (Position{c.line, c.column}) {
			t.Errorf("%s: %q at %v, want %d:%d", c.why, c.text, got, c.line, c.column)
		}
	}
	if file.Lines() != 5 || file.Line(2) != "bü1" || file.Line(5) != "last" {
		t.Errorf("lines: %d, %q, %q", file.Lines(), file.Line(2), file.Line(5))
	}
}

func TestSpansAreDrawnIntoTheFile(t *testing.T) {
	file := NewFile("kit.yaml", []byte("name: x"))
	span := file.Span(-3, 99)
	if span.Text() != "name: x" || span.Part(6, 50).Text() != "x" {
		t.Errorf("got %q and %q", span.Text(), span.Part(6, 50).Text())
	}
	if (Span{}).Known() || (Span{}).Text() != "" || (Span{}).Position() != (Position{}) {
		t.Error("the zero span is no place")
	}
}

func TestOddText(t *testing.T) {
	for _, c := range []struct {
		text, what string
		at         int
	}{
		{"plain\ttext\r\n", "", 0},
		{"\xef\xbb\xbfname: x", "", 0},
		{"na\xffme", "not UTF-8", 2},
		{"a\x00b", "NUL", 1},
		{"a\u0085b", "line end", 1},
		{"a\u2028b", "line end", 1},
		{"a\ufeffb", "byte order mark", 1},
		{"a\x1bb", "control character", 1},
	} {
		at, what, ok := NewFile("x", []byte(c.text)).OddText()
		if ok != (c.what == "") || !strings.Contains(what, c.what) || at.Start != c.at {
			t.Errorf("%q: %q at %d (ok %v)", c.text, what, at.Start, ok)
		}
	}
}

func FuzzPositions(f *testing.F) {
	f.Add([]byte("a\r\nb\rc\n"), 3)
	f.Add([]byte("\xffü\n"), 1)
	f.Fuzz(func(t *testing.T, text []byte, at int) {
		file := NewFile("x", text)
		position := file.Position(at)
		if position.Line < 1 || position.Line > file.Lines() || position.Column < 1 {
			t.Fatalf("byte %d of %q is %v", at, text, position)
		}
		if start := file.LineStart(position.Line); at >= 0 && at <= len(text) && start > at {
			t.Fatalf("line %d begins at %d, after byte %d", position.Line, start, at)
		}
	})
}
