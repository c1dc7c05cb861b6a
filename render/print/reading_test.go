package print

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/go-rod/rod"
	"github.com/go-rod/rod/lib/input"
	"github.com/go-rod/rod/lib/proto"
	"github.com/google/go-cmp/cmp"
)

// sideways tells how wide the page is, and what in it reaches out of a window.
const sideways = `(() => {
	const wide = document.documentElement.clientWidth, out = []
	for (const e of document.querySelectorAll("body *")) {
		const box = e.getBoundingClientRect()
		if (box.width && (box.right > wide + 0.5 || box.left < -0.5)) out.push(e.outerHTML.slice(0, 120))
	}
	return {Width: document.documentElement.scrollWidth, Out: out}
})()`

// TestNoScrollingSideways: at 320 px, a window of 1280 px at 400 % (WCAG 2.2, SC 1.4.10),
// one reads down alone.
func TestNoScrollingSideways(t *testing.T) {
	b := fresh(t, Settings{})
	for _, page := range examplePages(t) {
		var seen struct {
			Width int
			Out   []string
		}
		inView(t, b, page.html, view{320, false, "screen"}, sideways, &seen)
		if seen.Width > 320 || len(seen.Out) > 0 {
			t.Errorf("%s is %d px wide; %s", page.name, seen.Width, strings.Join(seen.Out, "\n  "))
		}
	}
	var seen struct{ Width int }
	inView(t, b, []byte(`<!doctype html><div style="width:330px">wide</div>`), view{320, false, "screen"}, sideways, &seen)
	if seen.Width <= 320 {
		t.Error("a page that is too wide was not noticed")
	}
}

// shownWords gives the words that can be seen, in their order, and the boxes to tick.
// Left out is what is declared to differ: a draft is marked in the margin of each page,
// and only paper has numbers of pages.
const shownWords = `(() => {
	const words = [], walk = document.createTreeWalker(document.body, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT)
	for (let n = walk.nextNode(); n; n = walk.nextNode()) {
		const e = n.nodeType === 3 ? n.parentElement : n
		if (e.closest("script, style, .draft-mark, [data-page-of]") || !e.checkVisibility({visibilityProperty: true, opacityProperty: true})) continue
		if (n.nodeType === 3) words.push(...n.data.split(/\s+/).filter(w => w))
		else if (e.matches("input")) words.push("☐")
	}
	return words
})()`

// TestPrintedFromTheBrowser: who prints the page has on paper what the screen shows, word
// for word, in a narrow window as in a wide one.
func TestPrintedFromTheBrowser(t *testing.T) {
	b := fresh(t, Settings{})
	for _, page := range examplePages(t) {
		var screen, narrow, paper []string
		inView(t, b, page.html, view{1280, false, "screen"}, shownWords, &screen)
		inView(t, b, page.html, view{320, true, "screen"}, shownWords, &narrow)
		inView(t, b, page.html, view{800, false, "print"}, shownWords, &paper)
		if len(screen) < 300 {
			t.Errorf("%s shows only %d words", page.name, len(screen))
		}
		if diff := cmp.Diff(screen, paper); diff != "" {
			t.Errorf("%s on paper differs:\n%s", page.name, diff)
		}
		if diff := cmp.Diff(screen, narrow); diff != "" {
			t.Errorf("%s on a narrow screen differs:\n%s", page.name, diff)
		}
	}
}

// focused tells what has the focus, and whether one sees that.
const focused = `(() => {
	const e = document.activeElement, s = getComputedStyle(e), all = [...document.querySelectorAll("a[href], input")]
	return {At: all.indexOf(e), All: all.length, Box: e.matches("input"), Outline: s.outlineStyle !== "none" && parseFloat(s.outlineWidth) >= 2,
		Checked: e.checked === true, Moving: document.getAnimations().length}
})()`

// TestKeyboard goes through a page with the Tab key alone: every link and every box comes
// in the order of the page, shows that it is there, and a box is ticked with the space
// bar. Nothing moves.
func TestKeyboard(t *testing.T) {
	type state struct {
		At, All, Moving       int
		Outline, Box, Checked bool
	}
	b := fresh(t, Settings{})
	page := examplePages(t)[0]
	var start state
	inView(t, b, page.html, view{800, false, "screen"}, focused, &start)
	err := b.do(context.Background(), func(ctx context.Context, shown *tab) error {
		keys := shown.page.Context(ctx)
		if err := (proto.EmulationSetScriptExecutionDisabled{Value: false}).Call(keys); err != nil {
			return err
		}
		ticked := 0
		for at := range start.All {
			if err := keys.Keyboard.Type(input.Tab); err != nil {
				return err
			}
			now, err := stateOf[state](keys)
			if err != nil {
				return err
			}
			if now.At != at || !now.Outline || now.Moving > 0 {
				return fmt.Errorf("after %d times Tab: %+v", at+1, now)
			}
			if !now.Box || ticked > 0 {
				continue
			}
			if err := keys.Keyboard.Type(input.Space); err != nil {
				return err
			}
			if now, err = stateOf[state](keys); err != nil || !now.Checked {
				return fmt.Errorf("the space bar ticks nothing: %+v, %v", now, err)
			}
			ticked++
		}
		if ticked == 0 {
			return errors.New("there is nothing to tick")
		}
		return nil
	})
	if err != nil || start.All < 30 {
		t.Errorf("%d places to go to; %v", start.All, err)
	}
}

// stateOf evaluates focused in a page that is shown.
func stateOf[T any](page *rod.Page) (T, error) {
	var state T
	evaluated, err := proto.RuntimeEvaluate{Expression: focused, ReturnByValue: true}.Call(page)
	if err != nil {
		return state, err
	}
	return state, json.Unmarshal([]byte(evaluated.Result.Value.JSON("", "")), &state)
}

// watch notes whatever a page is refused by its own rules (Content Security Policy Level 3,
// the event securitypolicyviolation).
const watch = `window.refused = []
	document.addEventListener("securitypolicyviolation", e => window.refused.push(e.violatedDirective + " " + e.blockedURI))`

// TestPolicyIsKept: a page's own rules on what it may load are broken by nothing in it,
// the data for programs among it.
func TestPolicyIsKept(t *testing.T) {
	b := fresh(t, Settings{})
	err := b.do(context.Background(), func(ctx context.Context, shown *tab) error {
		if err := (proto.PageEnable{}).Call(shown.page.Context(ctx)); err != nil {
			return err
		}
		_, err := proto.PageAddScriptToEvaluateOnNewDocument{Source: watch}.Call(shown.page.Context(ctx))
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, page := range examplePages(t) {
		var refused []string
		inView(t, b, page.html, view{800, false, "screen"}, "window.refused", &refused)
		if len(refused) > 0 {
			t.Errorf("%s: %q is refused", page.name, refused)
		}
		refused = nil
		broken := strings.Replace(string(page.html), "</main>", "<script>1</script></main>", 1)
		inView(t, b, []byte(broken), view{800, false, "screen"}, "window.refused", &refused)
		if len(refused) == 0 {
			t.Errorf("%s: a script was not refused", page.name)
		}
	}
}
