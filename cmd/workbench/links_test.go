package workbench

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A link may run over the end of a line, as files with short lines have it; where line ends are
// CRLF they stay so. Over the end of a paragraph it may not.
func TestLinksOverTheEndOfALine(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	crlf := strings.ReplaceAll(b.file("drawer-sachets/method.md"), "\n", "\r\n")
	if err := os.WriteFile(filepath.Join(b.folder, "drawer-sachets/method.md"), []byte(crlf), 0o644); err != nil {
		t.Fatal(err)
	}
	text := string(shown([]byte(b.typed("drawer-sachets", "method.md"))))
	linked := "[6 level tablespoons of orange\npeel](take:peel)"
	start := lengthInEditor([]byte(text[:strings.Index(text, linked)]))
	if start < 100 {
		t.Fatal("the example has other words by now")
	}
	off := b.order("drawer-sachets", order{Act: "link", File: "method.md", Start: start, End: start + len(linked), Was: linked, Value: "6 level tablespoons of orange\npeel"})
	if off.Wrong != "" || !strings.Contains(b.typed("drawer-sachets", "method.md"), "add 6 level tablespoons of orange\r\npeel. ") {
		t.Fatalf("taken off: %q\n%s", off.Wrong, b.typed("drawer-sachets", "method.md")[:1200])
	}
	words := "6 level tablespoons of orange\npeel"
	on := b.order("drawer-sachets", order{Act: "link", File: "method.md", Start: start, End: start + len(words), Was: words, Value: words, Destination: "take:peel"})
	if on.Wrong != "" || !strings.Contains(b.typed("drawer-sachets", "method.md"), "[6 level tablespoons of orange\r\npeel](take:peel)") {
		t.Errorf("put on: %q", on.Wrong)
	}
	paragraphs := b.order("drawer-sachets", order{Act: "link", File: "method.md", Start: 0, End: 4, Was: "", Value: "one\n\nother", Destination: "take:peel"})
	if !strings.Contains(paragraphs.Wrong, "one paragraph") {
		t.Errorf("over a paragraph: %q", paragraphs.Wrong)
	}
}
