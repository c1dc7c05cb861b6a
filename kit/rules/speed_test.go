package rules_test

import (
	"path/filepath"
	"testing"

	"tallyfold/kit/rules"
)

// All rules over one of the examples; the whole check of a kit may take 20 ms.
func BenchmarkCheck(b *testing.B) {
	for _, example := range []string{"harbour-candles", "drawer-sachets", "pocket-notebooks"} {
		b.Run(example, func(b *testing.B) {
			s, _ := subject(b, filepath.Join("..", "..", "examples", example))
			for b.Loop() {
				rules.Check(s)
			}
		})
	}
}
