package print

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"
)

// chapters is a document of a contents page and parts that begin on pages of their own, some of them longer than one.
func chapters(pages map[string]int) []byte {
	var html strings.Builder
	html.WriteString(`<!doctype html><html lang="en"><title>Parts</title><style>@page{margin:10mm}
		h2{break-before:page} .long{height:500mm}</style><body><ul>`)
	for part := 1; part <= 12; part++ {
		number := "  "
		if page, known := pages[fmt.Sprintf("part-%d", part)]; known {
			number = fmt.Sprint(page)
		}
		fmt.Fprintf(&html, `<li><a href="#part-%d">Part %d</a> %s</li>`, part, part, number)
	}
	html.WriteString("</ul>")
	for part := 1; part <= 12; part++ {
		fmt.Fprintf(&html, `<h2 id="part-%d">Part %d</h2>`, part, part)
		if part == 3 || part == 7 {
			html.WriteString(`<div class="long"></div>`)
		}
	}
	return []byte(html.String())
}

// TestContents holds the numbers that were filled in against the pages on which the headings really are, read from
// each page's own text.
func TestContents(t *testing.T) {
	var calls []map[string]int
	file, count, err := browser(t).PDFWithContents(context.Background(), func(pages map[string]int) []byte {
		calls = append(calls, pages)
		return chapters(pages)
	}, Options{Paper: A5})
	if err != nil {
		t.Fatal(err)
	}
	if len(calls) != 2 || calls[0] != nil {
		t.Errorf("the page was asked for %d times, first with %v", len(calls), calls[0])
	}
	filledIn := calls[len(calls)-1]
	reader := read(t, file)
	if count != reader.NumPage() || count <= 13 {
		t.Errorf("%d pages said, %d in the PDF", count, reader.NumPage())
	}
	for part := 1; part <= 12; part++ {
		page := filledIn[fmt.Sprintf("part-%d", part)]
		text, err := reader.Page(page).GetPlainText(nil)
		if err != nil || strings.TrimSpace(text) != fmt.Sprintf("Part %d", part) {
			t.Errorf("part %d should be on page %d, which has %q (error %v)", part, page, text, err)
		}
	}
	first, err := reader.Page(1).GetPlainText(nil)
	if first = strings.Join(strings.Fields(first), " "); err != nil || !strings.Contains(first, fmt.Sprintf("Part 12 %d", filledIn["part-12"])) {
		t.Errorf("the contents page has %q (error %v)", first, err)
	}
}

// TestContentsMove fills in numbers that take more room than was kept, so that a third print is needed.
func TestContentsMove(t *testing.T) {
	prints := 0
	file, _, err := browser(t).PDFWithContents(context.Background(), func(pages map[string]int) []byte {
		prints++
		more := ""
		if pages != nil {
			more = `<div style="height:250mm"></div>` // a page more
		}
		return fmt.Appendf(nil, `<!doctype html><a href="#end">End</a> %d%s<h2 id="end" style="break-before:page">End</h2>`,
			pages["end"], more)
	}, Options{Paper: A5})
	if err != nil {
		t.Fatal(err)
	}
	pages, count, err := PageNumbers(file)
	if err != nil || prints != 3 || pages["end"] != 3 || count != 3 {
		t.Errorf("after %d prints the end is on page %d of %d (error %v)", prints, pages["end"], count, err)
	}
	if text := strings.Join(strings.Fields(words(t, file)), " "); text != "End 3 End" {
		t.Errorf("the number told is wrong: %q", text)
	}
}

// TestContentsUnsettled has a page that moves its end away from wherever it was found.
func TestContentsUnsettled(t *testing.T) {
	_, _, err := browser(t).PDFWithContents(context.Background(), func(pages map[string]int) []byte {
		return fmt.Appendf(nil, `<!doctype html><a href="#end">End</a><div style="height:%dmm"></div><h2 id="end">End</h2>`,
			300*(pages["end"]%2))
	}, Options{Paper: A5})
	if !errors.Is(err, ErrUnsettled) {
		t.Errorf("the error is %v", err)
	}
}

// TestPageNumbersOfOddIDs holds that ids come back as they were written.
func TestPageNumbersOfOddIDs(t *testing.T) {
	for _, id := range []string{"étape-1", "a.b:c", "x(1)", "1"} {
		file := printed(t, fmt.Sprintf(`<!doctype html><meta charset=utf-8><a href="#%s">there</a><p id="%s" style="break-before:page">here`, id, id),
			Options{Paper: A5})
		pages, _, err := PageNumbers(file)
		if err != nil || pages[id] != 2 {
			t.Errorf("%s: %v (error %v)", id, pages, err)
		}
	}
}

func TestPageNumbersOfNonsense(t *testing.T) {
	file := printed(t, string(chapters(nil)), Options{Paper: A5})
	broken := strings.NewReplacer("/Kids", "/Kidz", "/Dests", "/Dests").Replace(string(file))
	for _, nonsense := range []string{"", "%PDF-1.4", "no PDF at all", string(file[:len(file)/2]), broken} {
		if pages, count, err := PageNumbers([]byte(nonsense)); err == nil {
			t.Errorf("%d bytes of nonsense gave %v, %d", len(nonsense), pages, count)
		}
	}
}
