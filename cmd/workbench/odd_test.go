package workbench

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"math/rand/v2"
	"strings"
	"testing"

	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

func onePicture(t *testing.T) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := png.Encode(&out, image.NewGray(image.Rect(0, 0, 40, 30))); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// oddStrings are what nobody should type and somebody will: marks of YAML, Markdown, HTML,
// templates and file names, other scripts, and mixtures of them.
func oddStrings(number int) []string {
	odd := []string{
		"<script>alert(1)</script>", "\"><img src=x onerror=alert(1)>", "{{.}}", "${7*7}", "'; DROP TABLE kits; --", "../../etc/passwd", "`id`", "$(id)", "%s%n", "\\", "\\\\", "'", "\"",
		"''", "#", "# note", ": ", "- ", "- a", "[", "]", "{", "}", "{a: b}", "[a, b]", "&a", "*a", "!!str x", "|", ">", "%", "@", "`", "~", "null", "yes", "no", "true", "0x10", "1_000", "1:30", "1e3",
		".inf", "-", "--", "---", "...", "a: b", "a #b", "a:b", "trailing ", " leading", "tab\there", "two\nlines", "\n", "\r\n", "a\r\nb", "é", "ﬁ", "中文", "العربية", "שלום", "👩‍🔬", "😀", "a\u0300", "\u00a0", "\u200b",
		"\u202e", "\ufeff", "\u2028", "\u0085", "\x00", "\x07", "\x7f", "½", "1 ½ cups", "−5 g", "5 g ± 5 g", "∞", "NaN", strings.Repeat("x", 3999), strings.Repeat("é", 5000), strings.Repeat("[", 300),
		strings.Repeat("a: ", 200), "](take:wax)", "[x](take:y)", "&lt;", "&#0;", "<!--", "-->", "]]>", "<![CDATA[", "javascript:alert(1)", "data:text/html,x", "//evil.example", "\xff\xfe", "\xc3\x28", "con", "nul.txt", ".", "..",
	}
	random := rand.New(rand.NewPCG(1, 2))
	for len(odd) < number {
		a, b := odd[random.IntN(100)], odd[random.IntN(100)]
		odd = append(odd, a+b, a+" "+b+fmt.Sprint(random.IntN(1000)))
	}
	return odd[:number]
}

// Every field of a kit is given odd strings, a thousand in all and each field some: the
// field then holds what was typed or says why not, the file can be read, and nothing else in
// it has changed.
func TestOddStringsInEveryField(t *testing.T) {
	b := newBench(t, "harbour-candles")
	odd := oddStrings(1000)
	original := b.file("harbour-candles/kit.yaml")
	paths := fieldPaths(t, original)
	if len(paths) < 100 {
		t.Fatalf("only %d fields", len(paths))
	}
	refused := 0
	for i, words := range odd {
		path := paths[i%len(paths)]
		was := b.value("harbour-candles", path...)
		words = asSent(words)
		page := ""
		if i%10 == 0 { // a page is drawn with what was typed
			page = "box"
		}
		said := b.order("harbour-candles", order{Act: "set", Page: page, Path: path, Value: words, Was: was})
		if said.Page == "" && page != "" {
			t.Fatalf("%v = %.60q: no page comes back", path, words)
		}
		if strings.Contains(said.Page, "<script>alert") || strings.Contains(said.Page, "<img src=x") {
			t.Errorf("%v = %.60q stands in the page as it is", path, words)
		}
		now := b.value("harbour-candles", path...)
		switch wanted := strings.TrimSpace(words); {
		case said.Wrong != "":
			refused++
			if now != was {
				t.Errorf("%v = %.60q was refused and is %.60q", path, words, now)
			}
		case now != wanted && wanted != "":
			t.Errorf("%v = %.60q became %.60q", path, words, now)
		}
		// Back to what it was: every other byte must be the old one.
		if now != was {
			if back := b.order("harbour-candles", order{Act: "undo", File: "kit.yaml"}); back.Wrong != "" {
				t.Fatalf("%v = %.60q cannot be taken back: %s", path, words, back.Wrong)
			}
		}
		if text := b.typed("harbour-candles", "kit.yaml"); text != original {
			t.Fatalf("%v = %.60q: taken back, kit.yaml is another", path, words)
		}
	}
	t.Logf("%d fields, %d strings, %d refused with a reason", len(paths), len(odd), refused)
	if refused < 20 || refused > 300 {
		t.Errorf("%d strings were refused", refused)
	}
}

// The editor holds whatever text is typed, and hands it back as it was.
func TestOddStringsInTheEditor(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	print := ""
	for i, words := range oddStrings(1000) {
		page := ""
		if i%10 == 0 {
			page = "method"
		}
		if said := b.order("drawer-sachets", order{Act: "type", Page: page, File: "trouble.md", Text: "## A\n\n" + words + "\n", Print: print}); said.Wrong == "" {
			print = said.Print
			if got := b.typed("drawer-sachets", "trouble.md"); string(shown([]byte(got))) != string(shown([]byte("## A\n\n"+asSent(words)+"\n"))) {
				t.Fatalf("%.60q became %.80q", words, got)
			}
		}
	}
}

// asSent is a text as a browser sends it: what is no text becomes U+FFFD.
func asSent(words string) string {
	var sent strings.Builder
	for _, r := range words {
		sent.WriteRune(r)
	}
	return sent.String()
}

// typed is a file as it is typed now.
func (b *bench) typed(kit, name string) string {
	b.Helper()
	d, err := b.desk(kit)
	if err != nil {
		b.Fatal(err)
	}
	d.lock.Lock()
	defer d.lock.Unlock()
	text, err := d.read(name)
	if err != nil {
		b.Fatal(err)
	}
	return string(text.Typed)
}

// fieldPaths are the paths of all texts in a kit.yaml.
func fieldPaths(t *testing.T, text string) [][]string {
	t.Helper()
	root, _ := load.Tree(source.NewFile("kit.yaml", []byte(text)))
	if root == nil {
		t.Fatal("kit.yaml cannot be read")
	}
	var all [][]string
	var walk func(part *load.Part, path []string)
	walk = func(part *load.Part, path []string) {
		if part.Kind == load.TextPart {
			all = append(all, path)
			return
		}
		for i := range part.Entries {
			walk(part.Entries[i].Value, append(append([]string{}, path...), keyOf(part, i)))
		}
	}
	walk(root, nil)
	return all
}
