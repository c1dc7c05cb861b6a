package workbench

import (
	"slices"
	"strconv"
	"strings"
	"testing"
)

// How long the page takes on the largest example, in milliseconds. What is aimed at is 100
// for findings and 200 for the pages of the booklet; the test allows for a machine that is
// busy with other tests, and prints what it measured.
const (
	aimedFindings, aimedPages = 100, 200
	busy                      = 5
)

func TestAnEditIsAnsweredAtOnce(t *testing.T) {
	b := newBench(t, "harbour-candles")
	w := b.open("/kit/harbour-candles/box")
	w.size(1400, 900)
	inBox := w.times(`async () => {
		const field = document.getElementById("f-components.pine.packed-in")
		const wait = until => new Promise(done => { const look = () => { if (until()) { watcher.disconnect(); done() } }
			const watcher = new MutationObserver(look); watcher.observe(document.documentElement, { subtree: true, childList: true, attributes: true, characterData: true }); look() })
		const took = [], good = field.value
		for (let n = 0; n < 15; n++) {
			const must = n % 2 === 0
			const begun = performance.now()
			field.value = must ? "3 g" : good
			field.dispatchEvent(new Event("input", { bubbles: true }))
			await wait(() => (document.getElementById("verdict").textContent.includes("must be fixed") && !document.getElementById("verdict").textContent.includes("Nothing")) === must)
			took.push(performance.now() - begun)
		}
		return took.join(" ")
	}`)

	t.Log("box", inBox)
	w.goTo("http://" + b.host + "/kit/harbour-candles/method")
	w.typeAtEnd("\n")
	w.wait("it is still", `() => !document.documentElement.dataset.busy`)
	inMethod := w.times(`async () => {
		const wait = until => new Promise(done => { const look = () => { if (until()) { watcher.disconnect(); done() } }
			const watcher = new MutationObserver(look); watcher.observe(document.documentElement, { subtree: true, childList: true, attributes: true, characterData: true }); look() })
		const took = []
		document.querySelector("#editor .cm-content").focus()
		for (let n = 0; n < 15; n++) {
			const begun = performance.now()
			document.execCommand("insertText", false, n === 0 ? "Put in a good splash" : "!")
			await wait(() => document.documentElement.dataset.busy)
			await wait(() => !document.documentElement.dataset.busy)
			took.push(performance.now() - begun)
		}
		return took.join(" ")
	}`)

	t.Log("method", inMethod)
	w.goTo("http://" + b.host + "/kit/harbour-candles/booklet")
	w.wait("the pages", `() => Number(document.getElementById("preview").dataset.seenPages) > 0`)
	var pages []float64
	for n := range 9 {
		w.eval(`() => { delete document.getElementById("preview").dataset.seenTook }`)
		about := "Six candles, tried for the " + strconv.Itoa(n) + "th time."
		b.order("harbour-candles", order{Act: "set", Path: []string{"about"}, Value: about, Was: b.value("harbour-candles", "about")})
		w.wait("the new pages", `words => !!document.getElementById("preview").dataset.seenTook && document.getElementById("pages").contentDocument.body.textContent.includes(words)`, about)
		took, err := strconv.ParseFloat(w.eval(`() => document.getElementById("preview").dataset.seenTook`), 64)
		if err != nil {
			t.Fatal(err)
		}
		pages = append(pages, took)
	}
	for _, row := range []struct {
		what  string
		took  []float64
		aimed float64
	}{{"findings after an edit of the box", inBox, aimedFindings}, {"findings after a keystroke in the method", inMethod, aimedFindings}, {"the pages of the booklet", pages, aimedPages}} {
		slices.Sort(row.took)
		middle := row.took[len(row.took)/2]
		t.Logf("%s: %.0f ms in the middle, %.0f to %.0f; aimed at %.0f", row.what, middle, row.took[0], row.took[len(row.took)-1], row.aimed)
		if middle > busy*row.aimed {
			t.Errorf("%s take %.0f ms", row.what, middle)
		}
	}
	w.fine()
}

// times runs a script that gives milliseconds.
func (w *window) times(script string) []float64 {
	w.bench.Helper()
	var all []float64
	for _, word := range strings.Fields(w.eval(script)) {
		took, err := strconv.ParseFloat(word, 64)
		if err != nil {
			w.bench.Fatal(err)
		}
		all = append(all, took)
	}
	return all
}
