package render

import (
	"strings"
	"testing"
)

// withPage is an example with the address of a page.
func withPage(t *testing.T, address string) *Booklet {
	t.Helper()
	folder := copyOf(t, "../examples/harbour-candles")
	folder["kit.yaml"].Data = append([]byte("page: "+address+"\n"), folder["kit.yaml"].Data...)
	return bookletIn(t, folder, "harbour-candles")
}

// The address of the kit's page stands at the end as a code and in words, letter for
// letter; without one there is neither.
func TestPageOfTheKit(t *testing.T) {
	const address = "https://brindle-quay.example/kits/harbour_candles?a=1&b=2-3*4"
	page, err := withPage(t, address).HTML()
	if err != nil {
		t.Fatal(err)
	}
	checkPage(t, string(page))
	_, colophon, _ := strings.Cut(string(page), `<section id="colophon"`)
	for _, want := range []string{`<figure role="group"><svg class="figure code" role="img"`, "QR code", "The page of this kit: " + strings.ReplaceAll(address, "&", "&amp;")} {
		if !strings.Contains(colophon, want) {
			t.Errorf("%q is not in the colophon", want)
		}
	}
	if got := dataOf(t, string(page))[0]["url"]; got != address {
		t.Errorf("programs are told the address %v", got)
	}
	without := bookletIn(t, copyOf(t, "../examples/harbour-candles"), "harbour-candles")
	if strings.Contains(string(without.Markdown), "QR code") || without.Figures["page"].Text != "" {
		t.Error("a kit without a page has a code")
	}
}
