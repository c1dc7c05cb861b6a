package keep

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

func TestDraftsUndoAndRedoAcrossSessions(t *testing.T) {
	f, dir := opened(t)
	print := must(f.Read("kit.yaml"))(t).TypedPrint
	texts := []string{kitText}
	for _, end := range []string{"a", "ab", "abc", "", "x\n", "x\ny"} {
		text := kitText + end
		print = must(f.Draft("kit.yaml", []byte(text), print))(t)
		texts = append(texts, text)
	}
	f.Close()
	f = open(t, dir)
	drafts := must(f.Drafts())(t)
	if len(drafts) != 1 || drafts[0].Name != "kit.yaml" || string(drafts[0].Text) != texts[6] || drafts[0].Held || drafts[0].Base != Print([]byte(kitText)) {
		t.Fatalf("drafts %+v", drafts)
	}
	step := func(do func(string) ([]byte, bool, error), want string) {
		t.Helper()
		if text, moved, err := do("kit.yaml"); err != nil || !moved || string(text) != want {
			t.Fatalf("%q, %v, %v; want %q", text, moved, err, want)
		}
	}
	for i := 5; i >= 2; i-- {
		step(f.Undo, texts[i])
	}
	f.Close()
	f = open(t, dir)
	step(f.Redo, texts[3])
	step(f.Redo, texts[4])
	must(f.Save("kit.yaml", []byte(texts[4]), Print([]byte(texts[4]))))(t)
	step(f.Redo, texts[5])
	step(f.Undo, texts[4])
	step(f.Undo, texts[3])
	must(f.Draft("kit.yaml", []byte("new"), Print([]byte(texts[3]))))(t)
	if _, moved, err := f.Redo("kit.yaml"); moved || err != nil {
		t.Error("what was taken back comes again after something else was typed")
	}
	for range 20 {
		if _, moved, _ := f.Undo("kit.yaml"); !moved {
			break
		}
	}
	if text := must(f.Read("kit.yaml"))(t); string(text.Typed) != kitText || text.Undos != 0 {
		t.Errorf("all taken back: %+v", text)
	}
}

// TestHalfWrittenJournal: wherever the program was killed in writing a record, all
// records before it are there, and typing goes on.
func TestHalfWrittenJournal(t *testing.T) {
	f, dir := opened(t)
	print := must(f.Read("kit.yaml"))(t).TypedPrint
	path := filepath.Join(dir, file("typed", "kit.yaml"))
	texts, sizes := []string{}, []int{}
	for _, end := range []string{"one\n", "one\ntwo 😀\n", "three"} {
		print = must(f.Draft("kit.yaml", []byte(kitText+end), print))(t)
		texts, sizes = append(texts, kitText+end), append(sizes, len(on(t, dir, file("typed", "kit.yaml"))))
	}
	whole := on(t, dir, file("typed", "kit.yaml"))
	f.Close()
	for size := sizes[0]; size <= sizes[2]; size++ {
		for _, tail := range []string{"", "\x00\x00\x00", "e 1 2 3 4 deadbeef\nxx"} {
			if err := os.WriteFile(path, []byte(whole[:size]+tail), 0o644); err != nil {
				t.Fatal(err)
			}
			last := 0
			for i, s := range sizes {
				if s <= size {
					last = i
				}
			}
			f := must(Open(dir))(t)
			drafts := must(f.Drafts())(t)
			if len(drafts) != 1 || string(drafts[0].Text) != texts[last] {
				t.Fatalf("%d of %d bytes: %+v", size, sizes[2], drafts)
			}
			must(f.Draft("kit.yaml", []byte("more"), Print([]byte(texts[last]))))(t)
			f.Close()
			f = must(Open(dir))(t)
			if text := must(f.Read("kit.yaml"))(t); string(text.Typed) != "more" {
				t.Fatalf("%d bytes: typing does not go on: %q", size, text.Typed)
			}
			f.Close()
		}
	}
}

func FuzzReadRecord(f *testing.F) {
	f.Add(record{editRecord, time.UnixMilli(5), edit{3, []byte("out"), []byte("in")}}.bytes())
	f.Add(record{kind: undoRecord, when: time.UnixMilli(5)}.bytes())
	f.Add([]byte("e 1 -2 99999999999 4 deadbeef\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		r, length, ok := readRecord(text)
		if ok && (length > len(text) || !bytes.Equal(r.bytes(), text[:length])) {
			t.Errorf("%q reads as %+v", text, r)
		}
	})
}

func TestJournalIsBounded(t *testing.T) {
	f, dir := opened(t)
	print := must(f.Read("kit.yaml"))(t).TypedPrint
	text := kitText
	for i := range 60 {
		text = kitText + strings.Repeat(string(rune('a'+i%26)), 50_000)
		print = must(f.Draft("kit.yaml", []byte(text), print))(t)
	}
	if size := len(on(t, dir, file("typed", "kit.yaml"))); size > longestJournal+200_000 {
		t.Errorf("the journal has %d bytes", size)
	}
	f.Close()
	f = open(t, dir)
	read := must(f.Read("kit.yaml"))(t)
	if string(read.Typed) != text || read.Undos < 5 || !read.Unsaved {
		t.Errorf("%d undos, unsaved %v", read.Undos, read.Unsaved)
	}
}
