package print

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"
)

func lay(t *testing.T, html string, options Options) Printed {
	t.Helper()
	printed, err := browser(t).Lay(context.Background(), []byte(html), options)
	if err != nil {
		t.Fatal(err)
	}
	return printed
}

const plainPage = `<!doctype html><html lang="en"><title>Fit</title><style>@page{margin:10mm} body,p,div{margin:0}
	.kept{break-inside:avoid} .kept.divided{break-inside:auto}</style>`

// TestOverflows has one of each thing that has no room, and the same with room enough.
func TestOverflows(t *testing.T) {
	for _, test := range []struct {
		why, html, way string
		by             float64
	}{
		{"a word that can't be broken", `<p id="wide"><span style="display:inline-block;width:140mm">long</span></p>`, TooWide, 12},
		{"a drawing higher than a page", `<svg id="tall" style="height:200mm;width:20mm;display:block"></svg>`, TooTall, 10},
		{"a text that is cut off", `<div id="cut" style="height:20mm;overflow:hidden"><div style="height:25mm">all</div></div>`, Clipped, 5},
		{"all has room", `<p>short</p>`, "", 0},
		{"lines to write on may be cut off", `<div data-clips style="height:20mm;overflow:hidden"><div style="height:25mm"></div></div>`, "", 0},
	} {
		overflows := lay(t, plainPage+test.html, page).Fit.Overflows
		if test.way == "" {
			if len(overflows) > 0 {
				t.Errorf("%s: %+v", test.why, overflows)
			}
			continue
		}
		found := false
		for _, overflow := range overflows {
			found = found || overflow.Way == test.way && math.Abs(overflow.By-test.by) < 0.3
		}
		if !found {
			t.Errorf("%s: %+v, not %s by %g mm", test.why, overflows, test.way, test.by)
		}
	}
}

// TestKept: what is kept whole goes over the page where little is lost, and is divided where much would be empty.
func TestKept(t *testing.T) {
	kept := `<div class="kept" data-keep="0.3">` + strings.Repeat(`<p style="height:20mm;break-inside:avoid">line</p>`, 4) + `</div>`
	for before, want := range map[int][]float64{
		// Of 190 mm, 120 are used and 70 would be empty, more than 0.3 of the page: three of four lines stay.
		120: {180.0 / 190, 20.0 / 190},
		// 150 are used, 40 would be empty, less than 0.3: all four go over.
		150: {150.0 / 190, 80.0 / 190},
	} {
		printed := lay(t, fmt.Sprintf(`%s<div style="height:%dmm"></div>%s`, plainPage, before, kept), page)
		if printed.Pages != 2 || len(printed.Fit.Fills) != 2 {
			t.Fatalf("%d mm before it: %d pages, %v", before, printed.Pages, printed.Fit.Fills)
		}
		for i, fill := range printed.Fit.Fills {
			if math.Abs(fill-want[i]) > 0.02 {
				t.Errorf("%d mm before it, page %d: %.2f full, not %.2f", before, i+1, fill, want[i])
			}
		}
		second, err := read(t, printed.PDF).Page(2).GetPlainText(nil)
		if lines := strings.Count(second, "line"); err != nil || lines != int(want[1]*190/20+0.5) {
			t.Errorf("%d mm before it: %d lines are printed on the second page (error %v)", before, lines, err)
		}
	}
}

// TestType: the largest type is found with which a text takes no more pages than there are, and one that cannot be is
// told.
func TestType(t *testing.T) {
	text := `<style>html{font-size:var(--type)} p{font:1rem/1.4 serif}</style>` + strings.Repeat("<p>"+strings.Repeat("A word after the other. ", 30)+"</p>", 12)
	sized := func(pages int, largest, smallest float64) Printed {
		options := page
		options.Type = &TypeRange{Largest: largest, Smallest: smallest, Pages: pages}
		return lay(t, plainPage+text, options)
	}
	found := sized(2, 20, 6)
	if found.Pages != 2 || found.Fit.Type <= 6 || found.Fit.Type >= 20 || len(found.Fit.Overflows) > 0 {
		t.Errorf("%d pages in %g points, %+v", found.Pages, found.Fit.Type, found.Fit.Overflows)
	}
	// Half a point more is too much: the size is the largest.
	if more := sized(2, found.Fit.Type+0.5, found.Fit.Type+0.5); len(more.Fit.Overflows) == 0 {
		t.Errorf("%g points fit as well as %g", found.Fit.Type+0.5, found.Fit.Type)
	}
	none := sized(1, 20, 16)
	if len(none.Fit.Overflows) == 0 || none.Fit.Overflows[len(none.Fit.Overflows)-1].Way != TooManyPages {
		t.Errorf("in 16 points on one page: %+v", none.Fit.Overflows)
	}
}

// TestHeadStays: what is kept whole is not divided where its head would not fit: a heading with its list stays with the
// text, and no rule or padding is left behind on the page before.
func TestHeadStays(t *testing.T) {
	kept := `<div class="kept" data-keep="0.3"><h3 style="margin:0;height:40mm;break-after:avoid">head</h3>
		<p style="height:60mm;break-inside:avoid">text</p><p style="height:20mm;break-inside:avoid">more</p></div>`
	printed := lay(t, plainPage+`<div style="height:110mm"></div>`+kept, page)
	first, err := read(t, printed.PDF).Page(1).GetPlainText(nil)
	if err != nil || printed.Pages != 2 || strings.Contains(first, "head") {
		t.Errorf("%d pages, the first has %q (error %v)", printed.Pages, first, err)
	}
}
