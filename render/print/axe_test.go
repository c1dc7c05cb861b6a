package print

import (
	"compress/gzip"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"
)

// axe reads the accessibility engine axe-core (testdata/axe/NOTICE.md).
func axe(t *testing.T) string {
	t.Helper()
	file, err := os.Open("testdata/axe/axe.min.js.gz")
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

// violation is what the engine says of a page.
type violation struct {
	ID, Help, Impact string
	Nodes            []struct {
		HTML, FailureSummary string
		Target               any
	}
}

// runAxe asks for the rules of WCAG 2.2 A and AA and the engine's best practices, and for
// what it could not decide as well.
const runAxe = `;axe.run(document, {resultTypes: ["violations", "incomplete", "passes"]}).then(r => ({
	violations: r.violations, incomplete: r.incomplete, passed: r.passes.length}))`

type axeResult struct {
	Violations, Incomplete []violation
	Passed                 int
}

// TestAccessible runs axe-core over every example's page, on a narrow and a wide screen,
// one light and the other dark, the next page the other way: nothing is violated.
func TestAccessible(t *testing.T) {
	engine := axe(t)
	b := fresh(t, Settings{})
	for i, page := range examplePages(t) {
		dark := i%2 == 1
		for _, as := range []view{{320, dark, "screen"}, {1280, !dark, "screen"}} {
			var result axeResult
			inView(t, b, page.html, as, engine+runAxe, &result)
			for _, v := range result.Violations {
				t.Errorf("%s, %+v: %s", page.name, as, v.tell())
			}
			for _, v := range result.Incomplete {
				if left := v.withoutKnown(); len(left.Nodes) > 0 {
					t.Errorf("%s, %+v: undecided: %s", page.name, as, left.tell())
				}
			}
			if result.Passed < 15 {
				t.Errorf("%s, %+v: the engine held only %d rules against it", page.name, as, result.Passed)
			}
		}
	}
}

// The engine finds what is wrong on a page that is: else finding nothing shows nothing.
func TestAxeFinds(t *testing.T) {
	var result axeResult
	inView(t, fresh(t, Settings{}), []byte(`<!doctype html><html><title>x</title><body style="color:#aaa"><main><h1>A</h1><h4>B</h4><p>pale<img src="data:,">`),
		view{320, false, "screen"}, axe(t)+runAxe, &result)
	var found []string
	for _, v := range result.Violations {
		found = append(found, v.ID)
	}
	for _, want := range []string{"color-contrast", "image-alt", "html-has-lang", "heading-order"} {
		if !strings.Contains(strings.Join(found, " "), want) {
			t.Errorf("%s is not found; only %v", want, found)
		}
	}
}

// withoutKnown takes out what the engine leaves to people and templates/colour_test.go
// holds: the contrast of words in drawings, of a bag's single letter, and of the
// title and the sentence under it, into which the empty part of a large numeral's box reaches.
func (v violation) withoutKnown() violation {
	left := v
	left.Nodes = nil
	for _, node := range v.Nodes {
		known := strings.HasPrefix(node.HTML, "<text ") || strings.HasPrefix(node.HTML, `<b class="bag">`) || strings.HasPrefix(node.HTML, "<h1>") ||
			strings.Contains(fmt.Sprint(node.Target), ".lead")
		if v.ID != "color-contrast" || !known {
			left.Nodes = append(left.Nodes, node)
		}
	}
	return left
}

func (v violation) tell() string {
	text := fmt.Sprintf("%s (%s): %s", v.ID, v.Impact, v.Help)
	for i, node := range v.Nodes {
		if i == 3 {
			return fmt.Sprintf("%s\n  and %d more", text, len(v.Nodes)-i)
		}
		text += "\n  " + node.HTML[:min(len(node.HTML), 200)] + "\n    " + strings.ReplaceAll(node.FailureSummary, "\n", "\n    ")
	}
	return text
}
