package print

import (
	"context"
	"encoding/json"
	"fmt"
	"html"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tallyfold/kit"
	"tallyfold/kit/label"
	"tallyfold/kit/ledger"
	"tallyfold/render"
	"tallyfold/render/labels"
	"tallyfold/templates"
)

// asked loads a page and gives what an expression over it comes to.
func asked(t *testing.T, page []byte, expression string, answer any) {
	t.Helper()
	err := browser(t).do(context.Background(), func(ctx context.Context, tab *tab) error {
		if err := tab.load(ctx, page); err != nil {
			return err
		}
		text, err := tab.evaluate(ctx, "document.fonts.ready.then(() => JSON.stringify("+expression+"))")
		if err != nil {
			return err
		}
		return json.Unmarshal([]byte(text), answer)
	})
	if err != nil {
		t.Fatal(err)
	}
}

// overflowing lists the lines whose words are wider or higher than their place, or that
// stand beyond their label.
const overflowing = `[...document.querySelectorAll('.line')].filter(line => {
	const words = document.createRange(); words.selectNodeContents(line)
	const at = words.getBoundingClientRect(), place = line.getBoundingClientRect()
	const label = (line.closest('.label') || document.body).getBoundingClientRect()
	return line.scrollWidth > line.clientWidth + 1 || at.width > place.width + 0.5 || place.right > label.right + 0.5
		|| place.bottom > label.bottom + 0.5 || place.left < label.left - 0.5 || place.top < label.top - 0.5 || at.width === 0
}).map(line => line.textContent)`

// A browser finds room for every line that was measured without one: all kinds of label of
// all examples, in all their languages, on every sheet where they are said to fit.
func TestLabelsFitInTheBrowser(t *testing.T) {
	folders, err := filepath.Glob("../../examples/*/kit.yaml")
	if err != nil || len(folders) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	tried := 0
	for _, file := range folders {
		k := open(t, os.DirFS(filepath.Dir(file)), filepath.Base(filepath.Dir(file)))
		for _, language := range render.Languages(k) {
			for _, grid := range append(label.Grids(), label.Grid{}) {
				tried += labelsFit(t, k, language, grid)
			}
		}
	}
	if tried < 50 {
		t.Errorf("only %d documents fit on any sheet", tried)
	}
}

// labelsFit gives how many documents were looked at.
func labelsFit(t *testing.T, k *kit.Kit, language string, grid label.Grid) int {
	t.Helper()
	tried := 0
	for _, kind := range labels.Kinds() {
		made, err := labels.Make(k, ledger.Follow(k), templates.Shipped(), labels.Options{Kinds: []string{kind}, Grid: grid, Language: language})
		if err != nil {
			t.Fatal(err)
		}
		if len(made.Misfits) > 0 {
			continue // told, and not printed
		}
		for _, d := range made.Documents {
			page, err := d.HTML()
			if err != nil {
				t.Fatal(err)
			}
			var over []string
			asked(t, page, overflowing, &over)
			if len(over) > 0 {
				t.Errorf("%s, %s on %q in %s: no room for %q", k.Folder, kind, grid.Name, language, over)
			}
			tried++
		}
	}
	return tried
}

// Widths measured without a browser are those of the browser.
func TestWidthsAreThoseOfTheBrowser(t *testing.T) {
	rules, err := templates.Shipped().FaceRules("Šálek žluť")
	if err != nil {
		t.Fatal(err)
	}
	texts := []string{"Soy wax flakes", "AVATAR To fi ffl", "Veilchenwurzelpulver", "185 g · 6.52 oz", "Écorce d’orange “x” – ½", "Šálek žluť"}
	const size = 200 // CSS pixels
	for _, face := range [][2]string{{"Booklet Label", "400"}, {"Booklet Label", "700"}, {"Booklet Text", "600"}} {
		typeface, err := templates.Shipped().Typeface(face[0], face[1])
		if err != nil {
			t.Fatal(err)
		}
		var page strings.Builder
		fmt.Fprintf(&page, "<!DOCTYPE html><html lang=en><title>x</title><style>%s html { font-kerning: none; font-variant-ligatures: none } span { white-space: pre; font-weight: %s; font-size: %dpx; font-family: \"%s\" }</style>",
			rules, face[1], size, face[0])
		for _, text := range texts {
			fmt.Fprintf(&page, "<p><span>%s</span>", html.EscapeString(text))
		}
		var widths []float64
		asked(t, []byte(page.String()), "[...document.querySelectorAll('span')].map(s => s.getBoundingClientRect().width)", &widths)
		for i, text := range texts {
			ems, lacking := typeface.Width(text)
			if len(lacking) > 0 || math.Abs(ems*size-widths[i]) > 0.5 {
				t.Errorf("%v: “%s” is %.2f, in the browser %.2f; lacking %q", face, text, ems*size, widths[i], lacking)
			}
		}
	}
}
