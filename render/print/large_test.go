package print

import (
	"context"
	"encoding/json"
	"os"
	"testing"

	"tallyfold/render"
)

// smallest finds in a page laid out for print the words that are set smallest, drawings left out: what those say in
// small letters stands under them in words.
const smallest = `(() => {
	let found = { size: 1e9, text: "" }
	const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
	for (let node = walker.nextNode(); node; node = walker.nextNode()) {
		const element = node.parentElement, text = node.textContent.trim()
		if (!text || element.closest("svg, .hush, .lines, header")) continue
		const box = element.getBoundingClientRect()
		const size = parseFloat(getComputedStyle(element).fontSize) * 0.75
		if (box.width > 1 && size < found.size) found = { size, text: text.slice(0, 40) }
	}
	return JSON.stringify(found)
})()`

// TestLargePrintIsLarge: large print has nothing under 16 points (where large print begins: common practice, from
// memory); the usual A5 has, so the measuring does measure.
func TestLargePrintIsLarge(t *testing.T) {
	for _, name := range []string{"harbour-candles", "drawer-sachets"} {
		for form, large := range map[string]bool{"a4-large": true, "letter-large": true, "a5": false} {
			chosen, _ := render.FormNamed(form)
			page := pageOf(t, open(t, os.DirFS("../../examples/"+name), name), render.Options{Form: chosen}, "en")
			width, height := chosen.Area()
			var told string
			err := browser(t).do(context.Background(), func(ctx context.Context, shown *tab) error {
				err := shown.asPage(ctx, Area{width, height})
				if err == nil {
					err = shown.load(ctx, page.html)
				}
				if err == nil {
					told, err = shown.evaluate(ctx, smallest)
				}
				return err
			})
			if err != nil {
				t.Fatal(err)
			}
			var found struct {
				Size float64
				Text string
			}
			if err := json.Unmarshal([]byte(told), &found); err != nil {
				t.Fatal(err)
			}
			if large && found.Size < 16 || !large && found.Size >= 16 {
				t.Errorf("%s as %s: %q is set in %.2f points", name, form, found.Text, found.Size)
			}
		}
	}
}
