package quantity

import (
	"strings"
	"testing"
)

func BenchmarkAmount(b *testing.B) {
	texts := []string{"62 g ± 1 g", "1 1/2 cups", "2 lb 3 oz", "80–85 °C", "at most 2 % of mixture", "6 jars"}
	r := Reader{Convention: Metric}
	for i := 0; b.Loop(); i++ {
		if _, err := r.Amount(texts[i%len(texts)]); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFind(b *testing.B) {
	line := "In step 3, melt 62 g of wax at 80–85 °C for about 20 min, then stir in 1 1/2 tsp of oil and fill 6 jars.\n"
	text := strings.Repeat(line, 100)
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		if all := (Reader{}).Find(text); len(all) != 500 {
			b.Fatalf("%d amounts", len(all))
		}
	}
}

// BenchmarkFindHostile is a text in which an amount may begin at every word.
func BenchmarkFindHostile(b *testing.B) {
	text := strings.Repeat("by between at most 1 and 1/2 of a half to ", 250)
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		Reader{}.Find(text)
	}
}

func BenchmarkShow(b *testing.B) {
	n := Ratio(28349523125, 1e8)
	for b.Loop() {
		if Show(n, Mass) != "283 g" {
			b.Fatal(Show(n, Mass))
		}
	}
}
