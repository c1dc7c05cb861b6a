package workbench

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/go-rod/rod/lib/input"
)

// A maker's day: a new kit is begun, its box described, its method written, an amount
// changed, the finding seen, a remedy taken, and booklet and labels are looked at.
func TestADayOfAMaker(t *testing.T) {
	b := newBench(t)
	w := b.open("/")
	w.size(1400, 1000)

	// A new kit.
	w.fill("new-kit", "Quay sachets")
	w.press(".begin button[type=submit]")
	w.sees("h1", "The box")
	w.ready()
	w.sees("#verdict", "Nothing must be fixed")

	// The box is described: a component more, with what is packed and a density from the table.
	w.fill("new-components", "Soy wax pearls")
	w.press("#add-components button[type=submit]")
	w.wait("the new card", `() => !!document.getElementById("f-components.soy-wax-pearls.packed-in")`)
	w.fill("f-components.soy-wax-pearls.packed-in", "40 g")
	w.press("[data-for='f-components.soy-wax-pearls.density-in']")
	w.wait("the density taken over", `() => document.getElementById("f-components.soy-wax-pearls.density-in").value === "0.90 g/mL set"`)
	w.sees("#tally .bars", "Soy wax pearls")
	b.until("the pearls in kit.yaml", func() bool {
		text := b.file("quay-sachets/kit.yaml")
		return strings.Contains(text, "packed: 40 g") && strings.Contains(text, "0.90 g/mL set")
	})

	// The method is written: plain words, which the page proposes to link.
	w.goTo("http://" + b.host + "/kit/quay-sachets/method")
	w.typeAtEnd("\n\n## Scent the pearls\n\nTip 30 g of soy wax pearls into the bowl and stir for 2 minutes.\n")
	w.sees("#could", "30 g of soy wax pearls")
	w.press("#could [data-link='take:soy-wax-pearls']")
	w.wait("the link in the text", `() => [...document.querySelectorAll("#editor .linked.is-take")].map(one => one.textContent).join("").includes("30 g of soy wax pearls")`)
	w.sees("#tally .bars", "30 g of 40 g")
	w.press("#could [data-link^='step:']")
	w.sees(".steps", "Scent the pearls")
	b.until("the link in method.md", func() bool {
		return strings.Contains(b.file("quay-sachets/method.md"), "[30 g of soy wax pearls](take:soy-wax-pearls)")
	})

	// An amount is changed, and the finding is seen where it is and at the side.
	w.goTo("http://" + b.host + "/kit/quay-sachets/box")
	w.fill("f-components.soy-wax-pearls.packed-in", "20 g")
	w.sees("#tally .short", "10 g too little")
	w.sees("#verdict", "must be fixed")
	w.look("must-fix")

	// A remedy shows its change before it is made, and makes it.
	w.press("#tally .all a")
	w.sees("h1", "Does it add up")
	w.ready()
	w.sees("#findings .remedy", "Tried:")
	w.press("#findings [data-act=mend]")
	w.seesNot("#tally", "10 g too little")
	w.look("mended")
	w.saved()

	// What was done can be taken back, and made again.
	w.press("#top [data-act=undo]")
	w.sees("#tally", "10 g too little")
	w.press("#top [data-act=redo]")
	w.seesNot("#tally", "10 g too little")

	// Booklet and labels.
	w.goTo("http://" + b.host + "/kit/quay-sachets/booklet")
	w.wait("the pages", `() => Number(document.getElementById("preview").dataset.seenPages) > 5`)
	w.sees("#page-now", "Page 1 of")
	w.press("#page-on")
	w.sees("#page-now", "Page 2 of")
	w.goTo("http://" + b.host + "/kit/quay-sachets/cautions")
	w.sees("#labels", "PDF")
	for file, begins := range map[string]string{
		"booklet.pdf": "%PDF-", "booklet.html": "<!DOCTYPE html>", "booklet.md": "# ", "labels-bags.pdf": "%PDF-", "labels-bags.html": "<!DOCTYPE html>", "fr.xlf": "<?xml",
	} {
		if got := w.fetch("made/" + file); !strings.HasPrefix(got, begins) {
			t.Errorf("%s begins with %.40q", file, got)
		}
	}
	w.fine()
}

// file is what stands on the disk.
func (b *bench) file(name string) string {
	b.Helper()
	text, err := os.ReadFile(filepath.Join(b.folder, name))
	if err != nil {
		b.Fatal(err)
	}
	return string(text)
}

// typeAtEnd puts the cursor at the end of the editor and types.
func (w *window) typeAtEnd(words string) {
	w.bench.Helper()
	w.cursor(input.End)
	w.must(w.page.InsertText(words))
}

// cursor puts the cursor at the beginning (Home) or the end (End) of the editor, which shows
// only what is near it.
func (w *window) cursor(key input.Key) {
	w.bench.Helper()
	element, err := w.page.Timeout(patience).Element("#editor .cm-content")
	w.must(err)
	w.must(element.Focus())
	w.chord(key, input.ControlLeft)
}

// reads waits until words stand in the editor near its beginning (Home) or end (End).
func (w *window) reads(words string, near input.Key) {
	w.bench.Helper()
	for end := time.Now().Add(patience); ; time.Sleep(50 * time.Millisecond) {
		w.cursor(near)
		if strings.Contains(w.text("#editor .cm-content"), words) {
			return
		}
		if time.Now().After(end) {
			w.look("waited")
			w.fine()
			w.bench.Fatalf("waited in vain for “%s” in the editor", words)
		}
	}
}

// fetch asks for something as the page does, and gives its beginning.
func (w *window) fetch(path string) string {
	w.bench.Helper()
	return w.eval(`async path => { const got = await fetch(path); const bytes = new Uint8Array(await got.arrayBuffer()); return got.status + " " + String.fromCharCode(...bytes.slice(0, 60)) }`, path)[len("200 "):]
}
