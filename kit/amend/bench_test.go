package amend_test

import (
	"os"
	"testing"

	"tallyfold/kit/amend"
)

// BenchmarkSet changes a field of the largest example, which a page does at each key.
func BenchmarkSet(b *testing.B) {
	text, err := os.ReadFile("../../examples/harbour-yarns/kit.yaml")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if text, err = amend.Set(text, amend.At("name"), "Yarns: "+string(rune('a'+b.N%20))); err != nil {
			b.Fatal(err)
		}
		if text, err = amend.Set(text, amend.At("name"), "Yarns"); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkRename gives a component of it another key and back.
func BenchmarkRename(b *testing.B) {
	folder := os.DirFS("../../examples/harbour-candles")
	for b.Loop() {
		if _, err := amend.Rename(folder, "wax", "soy"); err != nil {
			b.Fatal(err)
		}
	}
}
