package print

import (
	"context"
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// page is what A5 leaves within margins of 10 mm, the area of the pages here.
var page = Options{Paper: A5, Area: Area{Width: 128, Height: 190}}

// chapters is a document of a contents page and parts that begin on pages of their own, some of them longer than one.
func chapters() []byte {
	var html strings.Builder
	html.WriteString(`<!doctype html><html lang="en"><title>Parts</title><style>@page{margin:10mm} body{margin:0}
		h2{break-before:page} .long{height:500mm}</style><body><ul>`)
	for part := 1; part <= 12; part++ {
		fmt.Fprintf(&html, `<li><a href="#part-%d">Part %[1]d</a> <span data-page-of="part-%[1]d"></span></li>`, part)
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
	printed, err := browser(t).Lay(context.Background(), chapters(), page)
	if err != nil {
		t.Fatal(err)
	}
	reader := read(t, printed.PDF)
	if printed.Pages != reader.NumPage() || printed.Pages <= 13 {
		t.Errorf("%d pages said, %d in the PDF", printed.Pages, reader.NumPage())
	}
	contents, err := reader.Page(1).GetPlainText(nil)
	if err != nil {
		t.Fatal(err)
	}
	told := regexp.MustCompile(`Part ([0-9]+) ([0-9]+)`).FindAllStringSubmatch(strings.Join(strings.Fields(contents), " "), -1)
	if len(told) != 12 {
		t.Fatalf("the contents page has %q", contents)
	}
	for _, line := range told {
		number, _ := strconv.Atoi(line[2])
		text, err := reader.Page(number).GetPlainText(nil)
		if err != nil || strings.TrimSpace(text) != "Part "+line[1] {
			t.Errorf("part %s should be on page %d, which has %q (error %v)", line[1], number, text, err)
		}
	}
}

// TestContentsMisjudged has a page that the layout on screen can't foresee: what is in the margin boxes of columns is
// laid out otherwise in print. The number told must be that of the print all the same.
func TestContentsMisjudged(t *testing.T) {
	html := `<!doctype html><style>@page{margin:10mm} body{margin:0} p{margin:0;height:60mm} .two{columns:2}</style>
		<a href="#end">End</a> <span data-page-of="end"></span><div class="two"><p>1<p>2<p>3<p>4<p>5<p>6<p>7</div><h2 id="end">End</h2>`
	printed, err := browser(t).Lay(context.Background(), []byte(html), page)
	if err != nil {
		t.Fatal(err)
	}
	pages, _, err := PageNumbers(printed.PDF)
	if err != nil || pages["end"] < 2 {
		t.Fatalf("the end is on page %d (error %v)", pages["end"], err)
	}
	if text := strings.Join(strings.Fields(words(t, printed.PDF)), " "); !strings.HasPrefix(text, fmt.Sprintf("End %d ", pages["end"])) {
		t.Errorf("the end is on page %d, the page tells %q", pages["end"], text)
	}
}

// TestContentsUnsettled has a page that moves its end away from wherever it was found: its number takes a page.
func TestContentsUnsettled(t *testing.T) {
	html := `<!doctype html><style>@page{margin:10mm} body{margin:0} h2{columns:1} span:not(:empty){display:block;height:400mm}
		span[data-page-of]:empty{display:none}</style><a href="#end">End</a>
		<style>@media print{ .odd{ columns:2; height:100mm } }</style>
		<span data-page-of="end"></span><h2 id="end" style="break-before:page">End</h2>`
	printed, err := browser(t).Lay(context.Background(), []byte(html), page)
	if err != nil && !errors.Is(err, ErrUnsettled) {
		t.Fatal(err)
	}
	if err == nil {
		pages, _, _ := PageNumbers(printed.PDF)
		if text := strings.Join(strings.Fields(words(t, printed.PDF)), " "); !strings.Contains(text, fmt.Sprintf("End %d", pages["end"])) {
			t.Errorf("the end is on page %d, the page tells %q", pages["end"], text)
		}
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
	file := printed(t, string(chapters()), Options{Paper: A5})
	broken := strings.NewReplacer("/Kids", "/Kidz", "/Dests", "/Dests").Replace(string(file))
	for _, nonsense := range []string{"", "%PDF-1.4", "no PDF at all", string(file[:len(file)/2]), broken} {
		if pages, count, err := PageNumbers([]byte(nonsense)); err == nil {
			t.Errorf("%d bytes of nonsense gave %v, %d", len(nonsense), pages, count)
		}
	}
}
