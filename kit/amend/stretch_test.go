package amend_test

import (
	"bytes"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tallyfold/kit/amend"
)

func TestStretch(t *testing.T) {
	text := []byte("\xef\xbb\xbfOne\r\ntwo é\nthree")
	at := func(word string) (start, end int) {
		start = bytes.Index(text, []byte(word))
		return start, start + len(word)
	}
	for _, c := range []struct{ was, words, after string }{
		{"One", "1\n1", "\xef\xbb\xbf1\r\n1\r\ntwo é\nthree"},
		{"two é", "2\n2", "\xef\xbb\xbfOne\r\n2\r\n2\nthree"},
		{"three", "3\r\n3", "\xef\xbb\xbfOne\r\ntwo é\n3\n3"},
		{"One\r\ntwo", "", "\xef\xbb\xbf é\nthree"},
	} {
		start, end := at(c.was)
		after, err := amend.Stretch(text, start, end, strings.ReplaceAll(c.was, "\r\n", "\n"), c.words)
		if err != nil || string(after) != c.after {
			t.Errorf("%q to %q: %q, %v", c.was, c.words, after, err)
		}
	}
	e, _ := at("é")
	for _, c := range []struct {
		start, end int
		was, words string
	}{{3, 6, "Two", "x"}, {3, 99, "", ""}, {6, 3, "", ""}, {-1, 0, "", ""}, {e + 1, e + 2, "\xa9", "x"}, {6, 7, "\r", "x"}, {3, 6, "One", "\xff"}} {
		if after, err := amend.Stretch(text, c.start, c.end, c.was, c.words); err == nil {
			t.Errorf("%+v gives %q", c, after)
		}
	}
}

// TestWholeOverRandomEdits: what an editor leaves as it was keeps its bytes, in every
// Markdown file of the examples with line ends of every kind.
func TestWholeOverRandomEdits(t *testing.T) {
	files, err := filepath.Glob("../../examples/*/*.md")
	if err != nil || len(files) < 8 {
		t.Fatal(files, err)
	}
	random := rand.New(rand.NewPCG(2, 2))
	for _, path := range files {
		plain, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for range 20 {
			content := mixedEnds(random, plain)
			shown := string(plain)
			start := random.IntN(len(shown))
			end := min(start+random.IntN(80), len(shown))
			start, end = start+strings.IndexByte(shown[start:]+"\n", '\n'), end+strings.IndexByte(shown[end:]+"\n", '\n')
			edited := shown[:start] + oddString(random) + shown[end:]
			after, err := amend.Whole(content, edited)
			if err != nil {
				t.Fatalf("%s: %v", path, err)
			}
			unify := strings.NewReplacer("\r\n", "\n", "\r", "\n", "\ufeff", "")
			if unify.Replace(string(after)) != unify.Replace(edited) {
				t.Fatalf("%s: the text is another", path)
			}
			from, to := onlyStretch(content, after)
			if stretch := unify.Replace(string(content[from:to])); len(stretch) > end-start+2 {
				t.Errorf("%s: %d bytes were changed, and %d are rewritten", path, end-start, len(stretch))
			}
		}
		if same, err := amend.Whole(plain, string(plain)); err != nil || !bytes.Equal(same, plain) {
			t.Errorf("%s: another text without an edit, %v", path, err)
		}
	}
}

// mixedEnds gives a text a byte order mark and a line end of another kind to some lines.
func mixedEnds(random *rand.Rand, text []byte) []byte {
	var b bytes.Buffer
	b.WriteString("\ufeff")
	for line := range bytes.Lines(text) {
		if body, ended := bytes.CutSuffix(line, []byte("\n")); ended && random.IntN(3) > 0 {
			b.Write(body)
			b.WriteString("\r\n")
			continue
		}
		b.Write(line)
	}
	return b.Bytes()
}
