package workbench

import (
	"net/http/httptest"
	"testing"
)

// BenchmarkPage fills each page of the largest example in, without its proof.
func BenchmarkPage(b *testing.B) {
	for _, p := range pages {
		b.Run(p.name, func(b *testing.B) {
			bench, err := New(Settings{Folder: "../../examples/harbour-candles"})
			if err != nil {
				b.Fatal(err)
			}
			defer bench.Close()
			d, err := bench.desk("harbour-candles")
			if err != nil {
				b.Fatal(err)
			}
			in := httptest.NewRequest("GET", "/", nil)
			for b.Loop() {
				if _, err := d.page(p, in); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
