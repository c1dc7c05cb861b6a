package keep

import (
	"strings"
	"testing"
)

// BenchmarkDraft writes down a key pressed in a text of 20 KB.
func BenchmarkDraft(b *testing.B) { benchmark(b, (*Folder).Draft) }

// BenchmarkSave saves such a text, with its history.
func BenchmarkSave(b *testing.B) { benchmark(b, (*Folder).Save) }

func benchmark(b *testing.B, do func(*Folder, string, []byte, Fingerprint) (Fingerprint, error)) {
	f := must(Open(b.TempDir()))(b)
	defer f.Close()
	text := strings.Repeat("A line of the method, with words in it.\n", 500)
	print := must(f.Save("method.md", []byte(text), ""))(b)
	for b.Loop() {
		text += "x"
		print = must(do(f, "method.md", []byte(text), print))(b)
	}
}
