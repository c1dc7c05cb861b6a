package workbench

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/go-rod/rod/lib/input"
)

// kit.yaml is spoilt as text: the pages say why nothing can be shown, and where; put right, all
// is there again.
func TestAKitThatCannotBeRead(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	w := b.open("/kit/drawer-sachets/method?file=kit.yaml")
	w.size(1400, 1000)
	w.cursor(input.Home)
	w.must(w.page.InsertText("name: [a, b\n"))
	w.sees("#verdict", "Cannot be read")
	for _, page := range []string{"sums", "cautions", "booklet", "words"} {
		w.goTo("http://" + b.host + "/kit/drawer-sachets/" + page)
		w.sees("#verdict", "Cannot be read")
	}
	w.goTo("http://" + b.host + "/kit/drawer-sachets/box")
	w.sees("main", "cannot be shown as a form")
	w.sees("main", "kit.yaml, line 1")
	w.goTo("http://" + b.host + "/kit/drawer-sachets/method?file=kit.yaml")
	w.press("#top [data-act=undo]")
	w.sees("#verdict", "Nothing must be fixed")
	w.fine()
}

// A picture is chosen: it lies in the folder, and its name stands in the text.
func TestAPictureIsPutIntoTheText(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	w := b.open("/kit/drawer-sachets/method")
	w.size(1400, 1000)
	path := filepath.Join(t.TempDir(), "Bow tied.png")
	if err := os.WriteFile(path, onePicture(t), 0o644); err != nil {
		t.Fatal(err)
	}
	w.cursor(input.End)
	element, err := w.page.Timeout(patience).Element("#picture-in")
	w.must(err)
	w.must(element.SetFiles([]string{path}))
	b.until("the name in the text", func() bool {
		return strings.Contains(b.typed("drawer-sachets", "method.md"), "[see the picture](picture:bow-tied.png)")
	})
	w.sees(".pictures", "bow-tied.png")
	if got := b.file("drawer-sachets/pictures/bow-tied.png"); got != string(onePicture(t)) {
		t.Error("the picture is another")
	}
	w.fine()
}

// A booklet whose reader could not read a caution is marked as a draft.
func TestABookletWithoutItsCautionIsADraft(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	if said := b.order("drawer-sachets", order{Act: "language", Key: "fr"}); said.Wrong != "" {
		t.Fatal(said.Wrong)
	}
	w := b.open("/kit/drawer-sachets/booklet?language=fr")
	w.size(1400, 1000)
	w.sees(".notice", "marked as a draft")
	w.wait("the pages", `() => Number(document.getElementById("preview").dataset.seenPages) > 3`)
	w.wait("the mark", `() => [...document.getElementById("pages").contentDocument.querySelectorAll(".a-sheet .draft")].length > 3`)
	w.fine()
}

// Places are counted as a browser counts them, whatever the line ends and letters.
func TestPlacesOfTheEditor(t *testing.T) {
	for _, text := range []string{"", "abc", "a\r\nb\r\nc", "\xef\xbb\xbfa\nb", "é😀x", "a\rb", "\xef\xbb\xbf\r\n😀"} {
		whole := shown([]byte(text))
		for at := range len(text) + 1 {
			if at < len(text) && (!utf8.RuneStart(text[at]) || at > 0 && text[at-1:at+1] == "\r\n") || at < len(text)-len(strings.TrimPrefix(text, "\xef\xbb\xbf")) {
				continue // no place of the editor lies inside a letter, a line end or the mark
			}
			place := inEditor([]byte(text), at)
			back := inFile([]byte(text), place)
			if inEditor([]byte(text), back) != place {
				t.Errorf("%q: byte %d is place %d, and that is byte %d", text, at, place, back)
			}
		}
		if got, want := inEditor([]byte(text), len(text)), lengthInEditor(whole); got != want {
			t.Errorf("%q ends at place %d, not %d", text, want, got)
		}
	}
	if at := inEditor([]byte("a\r\n😀b"), 7); at != 4 {
		t.Errorf("b is at place %d", at)
	}
}
