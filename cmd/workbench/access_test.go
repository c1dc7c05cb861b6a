package workbench

import (
	"compress/gzip"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"testing"

	"github.com/go-rod/rod/lib/input"
	"github.com/go-rod/rod/lib/proto"
)

// everyPage are the addresses of all pages, with one kit that has something to fix.
func everyPage(kit string) []string {
	all := []string{"/", "/start"}
	for _, p := range pages {
		all = append(all, "/kit/"+kit+"/"+p.name)
	}
	return append(all, "/kit/"+kit+"/words?language=fr", "/kit/"+kit+"/method?file=kit.yaml", "/nowhere")
}

// axe-core (render/print/testdata/axe) holds WCAG 2.2 A and AA and its best practices against
// every page of a kit with findings, narrow and light, wide and dark: nothing is violated.
func TestPagesAreAccessible(t *testing.T) {
	engine := axe(t)
	b := newBench(t, "harbour-candles")
	b.spoil("harbour-candles")
	w := b.open("/")
	for _, path := range everyPage("harbour-candles") {
		w.goTo("http://" + b.host + path)
		for _, as := range []struct {
			wide   int
			scheme string
		}{{320, "light"}, {1400, "dark"}} {
			w.size(as.wide, 900)
			w.scheme(as.scheme)
			w.openAll()
			var result struct {
				Violations []struct {
					ID, Help string
					Nodes    []struct{ HTML, FailureSummary string }
				}
				Passed int
			}
			told := w.run(engine + `;axe.run(document, {resultTypes: ["violations", "passes"], iframes: false}).then(r => JSON.stringify({violations: r.violations, passed: r.passes.length}))`)
			if err := json.Unmarshal([]byte(told), &result); err != nil {
				t.Fatal(err)
			}
			for _, v := range result.Violations {
				t.Errorf("%s, %d px, %s: %s (%s), %d times, first %.300s\n%s", path, as.wide, as.scheme, v.Help, v.ID, len(v.Nodes), v.Nodes[0].HTML, v.Nodes[0].FailureSummary)
			}
			if result.Passed < 12 {
				t.Errorf("%s: the engine held only %d rules against it", path, result.Passed)
			}
			if wider := w.eval(`() => document.documentElement.scrollWidth - document.documentElement.clientWidth`); wider != "0" {
				t.Errorf("%s, %d px: the page is %s px wider than the window: %s", path, as.wide, wider, w.eval(widest))
			}
		}
	}
	w.size(3840, 2160)
	w.goTo("http://" + b.host + "/kit/harbour-candles/box")
	w.look("4k")
	w.fine()
}

// widest names what stands beyond the edge of the window.
const widest = `() => [...document.querySelectorAll("body *")].filter(one => one.getBoundingClientRect().right > document.documentElement.clientWidth + 1 && !one.closest(".wide, .drawn, svg, .cm-scroller"))
	.slice(0, 5).map(one => one.outerHTML.slice(0, 160)).join("\n")`

// spoil makes a kit that has something to fix.
func (b *bench) spoil(kit string) {
	b.Helper()
	path := b.folder + "/" + kit + "/kit.yaml"
	text, err := os.ReadFile(path)
	if err == nil {
		err = os.WriteFile(path, []byte(string(text)+"\n# spoilt\n"), 0o644)
	}
	if err != nil {
		b.Fatal(err)
	}
	w := b.order(kit, order{Act: "set", Path: []string{"components", "pine", "packed"}, Value: "3 g", Was: b.value(kit, "components", "pine", "packed")})
	if w.Wrong != "" {
		b.Fatal(w.Wrong)
	}
}

// Everything on the box can be reached and done by the keyboard: a component is added, its
// card opened and its field filled without a pointer.
func TestKeyboardAlone(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	w := b.open("/kit/drawer-sachets/box")
	w.size(1400, 900)
	key := func(keys ...input.Key) { w.must(w.page.Keyboard.Type(keys...)) }
	key(input.Tab)
	if at := w.eval(`() => document.activeElement.textContent`); at != "Go to the page itself" {
		t.Errorf("the first stop is “%s”", at)
	}
	key(input.Enter)
	reached := map[string]bool{}
	for range 400 {
		key(input.Tab)
		id := w.eval(`() => document.activeElement.id || document.activeElement.dataset.act || document.activeElement.nodeName`)
		reached[id] = true
		if id == "new-components" {
			break
		}
		if visible := w.eval(`() => { const box = document.activeElement.getBoundingClientRect(); return box.width > 0 && box.height > 0 }`); visible != "true" {
			t.Errorf("the focus is on %s, which cannot be seen", id)
		}
	}
	if !reached["new-components"] {
		t.Fatal("the field for a new component is not reached by Tab")
	}
	w.must(w.page.InsertText("Ribbon of silk"))
	key(input.Enter)
	w.wait("the focus in the new card", `() => document.activeElement.id === "f-components.ribbon-of-silk.name-in"`)
	key(input.Tab)
	w.must(w.page.InsertText("2 m"))
	w.sees("#tally .bars", "Ribbon of silk")
	w.saved()
	w.fine()
}

// Whoever asks for less motion gets none, and the page still turns.
func TestLessMotion(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	w := b.open("/kit/drawer-sachets/booklet")
	w.size(1400, 1000)
	w.must(proto.EmulationSetEmulatedMedia{Features: []*proto.EmulationMediaFeature{{Name: "prefers-reduced-motion", Value: "reduce"}}}.Call(w.page))
	w.wait("the pages", `() => Number(document.getElementById("preview").dataset.seenPages) > 5`)
	if moving := w.eval(`() => [...document.querySelectorAll("*")].filter(one => { const style = getComputedStyle(one); return parseFloat(style.transitionDuration) > 0 || parseFloat(style.animationDuration) > 0 }).length`); moving != "0" {
		t.Errorf("%s things would move", moving)
	}
	w.press("#page-on")
	w.sees("#page-now", "Page 2 of")
}

func (w *window) scheme(name string) {
	w.must(proto.EmulationSetEmulatedMedia{Features: []*proto.EmulationMediaFeature{{Name: "prefers-color-scheme", Value: name}, {Name: "prefers-reduced-motion", Value: "reduce"}}}.Call(w.page))
}

// openAll opens what can be opened, so that everything is looked at.
func (w *window) openAll() {
	w.eval(`() => { for (const one of document.querySelectorAll("details")) one.open = true }`)
}

// run evaluates a script of the test's, which the page's policy would not let in.
func (w *window) run(script string) string {
	w.bench.Helper()
	result, err := proto.RuntimeEvaluate{Expression: script, AwaitPromise: true, ReturnByValue: true}.Call(w.page.Timeout(2 * patience))
	w.must(err)
	if result.ExceptionDetails != nil {
		w.bench.Fatal(fmt.Sprint(result.ExceptionDetails.Text, result.ExceptionDetails.Exception.Description))
	}
	return result.Result.Value.Str()
}

func axe(t *testing.T) string {
	t.Helper()
	file, err := os.Open("../../render/print/testdata/axe/axe.min.js.gz")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	unpacked, err := gzip.NewReader(file)
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(unpacked)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
