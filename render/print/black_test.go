package print

import (
	"bytes"
	"context"
	"os"
	"regexp"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"tallyfold/render"
)

// inColour matches the operators that set a colour in red, green and blue (ISO 32000-1, table 74).
var inColour = regexp.MustCompile(`(?:^|\s)([0-9.]+)\s+([0-9.]+)\s+([0-9.]+)\s+(?:rg|RG)(?:\s|$)`)

// TestBlackAlone reads every colour that is set in a booklet printed in black: all are greys. In the coloured booklet
// there are others, so the reading does see them.
func TestBlackAlone(t *testing.T) {
	for _, name := range []string{"harbour-candles", "harbour-yarns"} {
		for _, black := range []bool{true, false} {
			page := pageOf(t, open(t, os.DirFS("../../examples/"+name), name), render.Options{Black: black}, "en")
			printed, err := browser(t).Lay(context.Background(), page.html, Options{Paper: A5, Area: Area{120, 181}})
			if err != nil {
				t.Fatal(err)
			}
			all, coloured := coloursOf(t, printed.PDF)
			if all == 0 || black && coloured > 0 || !black && coloured == 0 {
				t.Errorf("%s, black alone %v: %d of %d colours are no grey", name, black, coloured, all)
			}
		}
	}
}

func coloursOf(t *testing.T, pdf []byte) (all, coloured int) {
	t.Helper()
	file, err := api.ReadContext(bytes.NewReader(pdf), model.NewDefaultConfiguration())
	if err == nil {
		err = file.EnsurePageCount()
	}
	if err != nil {
		t.Fatal(err)
	}
	for number := 1; number <= file.PageCount; number++ {
		page, _, _, err := file.PageDict(number, false)
		if err != nil {
			t.Fatal(err)
		}
		content, err := file.PageContent(page, number)
		if err != nil {
			t.Fatal(err)
		}
		for _, set := range inColour.FindAllSubmatch(content, -1) {
			all++
			if !bytes.Equal(set[1], set[2]) || !bytes.Equal(set[2], set[3]) {
				coloured++
			}
		}
	}
	return all, coloured
}
