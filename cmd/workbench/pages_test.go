package workbench

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"testing"
	"time"

	"tallyfold/examples"
	"tallyfold/kit/proof"
	"tallyfold/render"
	"tallyfold/render/press"
	"tallyfold/render/print"
	"tallyfold/templates"
)

// The pages that are shown are held against those that are printed: the number of pages, and
// the page on which everything begins that a link leads to. The judge is the PDF.
func TestPagesAreThosePrinted(t *testing.T) {
	b := newBench(t, examples.Names()...)
	w := b.open("/")
	w.size(1400, 1000)
	browser, err := print.Open(t.Context(), print.Settings{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(browser.Close)
	all, same := 0, 0
	for _, name := range examples.Names() {
		for _, form := range []string{"a5", "a4-large", "a4-in-four"} {
			printed, count := printedPages(t, browser, b, name, form)
			w.goTo("http://" + b.host + "/kit/" + name + "/booklet?form=" + form)
			w.wait("the pages of "+name, `() => Number(document.getElementById("preview").dataset.seenPages) > 0`)
			shown := shownPages(t, w)
			if pages := w.eval(`() => document.getElementById("preview").dataset.seenPages`); pages != fmt.Sprint(count) {
				t.Errorf("%s as %s: %s pages are shown, %d are printed", name, form, pages, count)
			}
			for id, page := range printed {
				all++
				if shown[id] == page {
					same++
				} else {
					t.Logf("%s as %s: %s is shown on page %d, printed on page %d", name, form, id, shown[id], page)
				}
			}
		}
	}
	w.fine()
	t.Logf("%d of %d places stand on the page that is printed", same, all)
	if all < 120 || 100*same < 98*all {
		t.Errorf("%d of %d places stand on the page that is printed; 98 of 100 must", same, all)
	}
}

func printedPages(t *testing.T, browser *print.Browser, b *bench, name, formName string) (map[string]int, int) {
	t.Helper()
	p := proof.Of(os.DirFS(b.folder+"/"+name), name, time.Now())
	form, ok := render.FormNamed(formName)
	if !ok {
		t.Fatalf("no form %s", formName)
	}
	booklet, err := render.InLanguages(p.Kit, p.Ledger, templates.Shipped(), render.Options{Form: form}, nil)
	if err != nil {
		t.Fatal(err)
	}
	printed, err := press.Booklet(context.Background(), browser, booklet)
	if err != nil {
		t.Fatal(err)
	}
	pages, count, err := print.PageNumbers(printed.PDF)
	if err != nil {
		t.Fatal(err)
	}
	return pages, count
}

func shownPages(t *testing.T, w *window) map[string]int {
	t.Helper()
	var pages map[string]int
	if err := json.Unmarshal([]byte(w.eval(`() => document.getElementById("preview").dataset.seenNumbers`)), &pages); err != nil {
		t.Fatal(err)
	}
	return pages
}
