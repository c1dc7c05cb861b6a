package print

import (
	"context"
	"os"
	"strings"
	"testing"

	"tallyfold/render"
)

// TestDraftBeginsWithItsCover: the mark of a draft, which only a screen shows above the page, must not take a page of
// its own in print, and every page must have it at its head.
func TestDraftBeginsWithItsCover(t *testing.T) {
	page := pageOf(t, open(t, os.DirFS("../../examples/harbour-candles"), "harbour-candles"), render.Options{Draft: true}, "en")
	printed, err := browser(t).Lay(context.Background(), page.html, Options{Paper: A5, Area: Area{120, 181}})
	if err != nil {
		t.Fatal(err)
	}
	reader := read(t, printed.PDF)
	for number := 1; number <= reader.NumPage(); number++ {
		text, err := reader.Page(number).GetPlainText(nil)
		if err != nil || !strings.Contains(text, "DRAFT") || number == 1 && !strings.Contains(text, "Six soy wax candles") {
			t.Errorf("page %d has %q (error %v)", number, text, err)
		}
	}
}
