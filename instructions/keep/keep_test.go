package keep

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"tallyfold/instructions"
)

const kitText = "name: Gels # ours\r\nmakes: 6\r\n\r\ncomponents:\r\n  wax: {packed: 300 g}\r\n  jar: {packed: 6}\r\n"

// opened gives a folder with a kit.yaml, and its path.
func opened(t *testing.T) (*Folder, string) {
	t.Helper()
	dir := t.TempDir()
	put(t, dir, "kit.yaml", kitText)
	return open(t, dir), dir
}

func open(t *testing.T, dir string) *Folder {
	t.Helper()
	f, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

func put(t *testing.T, dir, name, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(filepath.Join(dir, name)), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func on(t *testing.T, dir, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(dir, name))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// must gives a value that came without an error.
func must[T any](value T, err error) func(testing.TB) T {
	return func(t testing.TB) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return value
	}
}

func kindOf(err error) Kind {
	var t *Trouble
	if errors.As(err, &t) {
		return t.Kind
	}
	return 0
}

func TestSaveAndRead(t *testing.T) {
	f, dir := opened(t)
	if err := os.Chmod(filepath.Join(dir, "kit.yaml"), 0o640); err != nil {
		t.Fatal(err)
	}
	first := must(f.Read("kit.yaml"))(t)
	if string(first.Saved) != kitText || first.Unsaved || first.SavedPrint != Print([]byte(kitText)) {
		t.Errorf("read %+v", first)
	}
	if _, err := os.Stat(filepath.Join(dir, home)); err == nil {
		t.Error("reading alone has written something")
	}
	changed := strings.Replace(kitText, "300 g", "310 g", 1)
	print := must(f.Save("kit.yaml", []byte(changed), first.TypedPrint))(t)
	if on(t, dir, "kit.yaml") != changed || print != Print([]byte(changed)) {
		t.Error("another text was saved")
	}
	info := must(os.Stat(filepath.Join(dir, "kit.yaml")))(t)
	if info.Mode().Perm() != 0o640 {
		t.Errorf("the file has the rights %v now", info.Mode().Perm())
	}
	// A name in another script, with signs that stand for others in it.
	must(f.Save("pictures/صورة 100%25 %2F.svg", []byte("<svg/>"), ""))(t)
	print = must(f.Draft("pictures/صورة 100%25 %2F.svg", []byte("<svg></svg>"), Print([]byte("<svg/>"))))(t)
	if drafts := must(f.Drafts())(t); len(drafts) != 1 || drafts[0].Name != "pictures/صورة 100%25 %2F.svg" || Print(drafts[0].Text) != print {
		t.Errorf("drafts %+v", drafts)
	}
	// A new file, in a folder that is not there yet, with bytes that are no text.
	raw := []byte("a\x00\xff\xfe\r")
	must(f.Save("pictures/jar.jpg", raw, ""))(t)
	if on(t, dir, "pictures/jar.jpg") != string(raw) {
		t.Error("bytes were changed")
	}
	if _, err := f.Save("pictures/jar.jpg", []byte("other"), ""); !errors.As(err, new(*Conflict)) {
		t.Errorf("a file that is there was taken for a new one: %v", err)
	}
	for _, entry := range must(os.ReadDir(dir))(t) {
		if strings.HasPrefix(entry.Name(), temporary) {
			t.Errorf("%s was left behind", entry.Name())
		}
	}
}

// TestNobodyElseReadsHome: a kit folder with drafts and history reads as without.
func TestNobodyElseReadsHome(t *testing.T) {
	source := os.DirFS("../../examples/drawer-sachets")
	dir := filepath.Join(t.TempDir(), "kit")
	if err := os.CopyFS(dir, source); err != nil {
		t.Fatal(err)
	}
	f := open(t, dir)
	for _, name := range []string{"kit.yaml", "method.md", "method.fr.md"} {
		text := must(f.Read(name))(t)
		print := must(f.Draft(name, append(text.Typed, "# typed\n"...), text.TypedPrint))(t)
		must(f.Save(name, append(text.Typed, "\n"...), print))(t)
		must(f.Draft(name, text.Typed, Print(append(text.Typed, "\n"...))))(t)
		must(f.Save(name, text.Typed, text.TypedPrint))(t)
	}
	before, foundBefore := instructions.Open(source, "kit")
	after, foundAfter := instructions.Open(os.DirFS(dir), "kit")
	if len(foundBefore) != len(foundAfter) || len(before.Method.Steps()) != len(after.Method.Steps()) || len(before.Translations) != len(after.Translations) {
		t.Error("the kit reads otherwise with drafts and history in it")
	}
	if on(t, dir, home+"/.gitignore") != "*\n" {
		t.Error("version control is not told to leave drafts alone")
	}
}

// tricks are names that lead out of the folder, or mean something else on some machine.
var tricks = []string{"", ".", "..", "../kit.yaml", "a/../../kit.yaml", "/etc/passwd", "a//b", "a/./b", "./a", "a/", `a\b`, `..\kit.yaml`, `C:\kit.yaml`, "C:kit.yaml",
	"kit.yaml:stream", "con", "CON", "con.md", "Aux.yaml", "pictures/nul.jpg", "com1", "lpt9.txt", "COM¹", "conin$", "nul .txt", ".hidden", ".git/config", home + "/typed/kit.yaml",
	"kit.yaml.", "kit.yaml ", " kit.yaml", "a\nb", "a\x00b", "a\x7fb", "a*b", "a?b", "a<b", "a|b", `a"b`, "\xff", strings.Repeat("a", 300)}

func TestNamesThatLeadOut(t *testing.T) {
	f, dir := opened(t)
	put(t, filepath.Dir(dir), "outside.md", "not yours")
	for _, name := range tricks {
		_, read := f.Read(name)
		_, save := f.Save(name, []byte("x"), "")
		_, draft := f.Draft(name, []byte("x"), "")
		_, history := f.History(name)
		_, _, undo := f.Undo(name)
		for _, err := range []error{read, save, draft, history, undo, f.Discard(name)} {
			if kindOf(err) != BadName {
				t.Errorf("%q: %v", name, err)
			}
		}
	}
	for _, id := range []string{"", "..", "../../../outside.md", "00000001-20260101T000000.000-saved-0123456789abcdef", "a-b-c-d"} {
		if _, err := f.State("kit.yaml", id); kindOf(err) != Gone {
			t.Errorf("state %q: %v", id, err)
		}
	}
	for link, to := range map[string]string{"out.md": "../outside.md", "absolute.md": filepath.Join(filepath.Dir(dir), "outside.md"), "round.md": "round.md", "dir.md": "pictures", "tmp": "..", "home.md": home} {
		if err := os.Symlink(to, filepath.Join(dir, link)); err != nil {
			t.Fatal(err)
		}
	}
	must(f.Save("pictures/a.svg", []byte("<svg/>"), ""))(t)
	for _, name := range []string{"out.md", "absolute.md", "round.md", "dir.md", "tmp/outside.md", "pictures", "home.md", "kit.yaml/a.md"} {
		if _, err := f.Read(name); kindOf(err) != NoFile {
			t.Errorf("read %s: %v", name, err)
		}
		if _, err := f.Save(name, []byte("mine"), ""); kindOf(err) != NoFile {
			t.Errorf("save %s: %v", name, err)
		}
	}
	if on(t, filepath.Dir(dir), "outside.md") != "not yours" {
		t.Error("a file outside was written")
	}
}

// TestLinksInside: of a link to a file of the folder the file is written, and the link
// stays one.
func TestLinksInside(t *testing.T) {
	f, dir := opened(t)
	if err := errors.Join(os.Mkdir(filepath.Join(dir, "texts"), 0o755), os.Symlink("texts/first.md", filepath.Join(dir, "method.md")),
		os.Symlink("second.md", filepath.Join(dir, "texts/first.md"))); err != nil {
		t.Fatal(err)
	}
	put(t, dir, "texts/second.md", "old")
	must(f.Save("method.md", []byte("new"), Print([]byte("old"))))(t)
	if link, err := os.Readlink(filepath.Join(dir, "method.md")); err != nil || link != "texts/first.md" {
		t.Errorf("the link is %q now, %v", link, err)
	}
	if on(t, dir, "texts/second.md") != "new" {
		t.Error("the file that the link leads to was not written")
	}
}

func TestConflictWithAnotherProgram(t *testing.T) {
	f, dir := opened(t)
	was := must(f.Read("kit.yaml"))(t).TypedPrint
	theirs := strings.Replace(kitText, "makes: 6", "makes: 8", 1)
	put(t, dir, "kit.yaml", theirs)
	mine := strings.Replace(kitText, "jar: {packed: 6}", "jar: {packed: 8}", 1)
	_, err := f.Save("kit.yaml", []byte(mine), was)
	var c *Conflict
	if !errors.As(err, &c) {
		t.Fatal(err)
	}
	both := strings.Replace(theirs, "jar: {packed: 6}", "jar: {packed: 8}", 1)
	if !c.Clean || string(c.Merged) != both || string(c.Mine) != mine || string(c.Theirs) != theirs || c.InWindow || c.Gone {
		t.Errorf("conflict %+v", c)
	}
	if on(t, dir, "kit.yaml") != theirs {
		t.Error("the other program's text is gone")
	}
	must(f.Save("kit.yaml", c.Merged, c.TheirsPrint))(t)
	if on(t, dir, "kit.yaml") != both {
		t.Error("the merged text was not saved")
	}
	kept := false
	for _, s := range must(f.History("kit.yaml"))(t) {
		kept = kept || s.How == Unmerged && string(must(f.State("kit.yaml", s.ID))(t)) == mine
	}
	if !kept {
		t.Error("the text that could not be saved is not in the history")
	}

	// The same lines: nothing is merged, and both are shown.
	was = Print([]byte(both))
	put(t, dir, "kit.yaml", strings.Replace(both, "300 g", "320 g", 1))
	_, err = f.Save("kit.yaml", []byte(strings.Replace(both, "300 g", "330 g", 1)), was)
	if !errors.As(err, &c) || c.Clean || c.Merged != nil || string(c.Base) != both {
		t.Errorf("conflict %+v, %v", c, err)
	}
	// Deleted meanwhile.
	if err := os.Remove(filepath.Join(dir, "kit.yaml")); err != nil {
		t.Fatal(err)
	}
	_, err = f.Save("kit.yaml", []byte(both), was)
	if !errors.As(err, &c) || !c.Gone || !strings.Contains(err.Error(), "deleted") {
		t.Errorf("conflict %+v, %v", c, err)
	}
	must(f.Save("kit.yaml", []byte(both), ""))(t)
	if on(t, dir, "kit.yaml") != both {
		t.Error("a deleted file does not come back")
	}
}

// TestTypedWhileChangedOutside: a draft survives a change by another program, is told
// of it when it is to be saved, and is saved with the answer.
func TestTypedWhileChangedOutside(t *testing.T) {
	f, dir := opened(t)
	was := must(f.Read("kit.yaml"))(t).TypedPrint
	mine := strings.Replace(kitText, "jar: {packed: 6}", "jar: {packed: 8}", 1)
	print := must(f.Draft("kit.yaml", []byte(mine), was))(t)
	put(t, dir, "kit.yaml", strings.Replace(kitText, "makes: 6", "makes: 8", 1))
	text := must(f.Read("kit.yaml"))(t)
	if !text.Unsaved || string(text.Typed) != mine || text.Base != was {
		t.Errorf("read %+v", text)
	}
	_, err := f.Save("kit.yaml", []byte(mine), print)
	var c *Conflict
	if !errors.As(err, &c) || !c.Clean {
		t.Fatal(err)
	}
	must(f.Save("kit.yaml", c.Merged, c.TheirsPrint))(t)
	if got := on(t, dir, "kit.yaml"); !strings.Contains(got, "makes: 8") || !strings.Contains(got, "jar: {packed: 8}") {
		t.Errorf("saved %q", got)
	}
	if drafts := must(f.Drafts())(t); len(drafts) > 0 {
		t.Errorf("still unsaved: %+v", drafts)
	}
}

// TestTwoWindows: what one window types is not overwritten by the other, neither typed
// nor saved, and nothing of both is lost.
func TestTwoWindows(t *testing.T) {
	f, dir := opened(t)
	was := must(f.Read("kit.yaml"))(t).TypedPrint
	one := strings.Replace(kitText, "makes: 6", "makes: 8", 1)
	other := strings.Replace(kitText, "jar: {packed: 6}", "jar: {packed: 8}", 1)
	must(f.Draft("kit.yaml", []byte(one), was))(t)
	var c *Conflict
	if _, err := f.Draft("kit.yaml", []byte(other), was); !errors.As(err, &c) || !c.InWindow || !c.Clean || string(c.Theirs) != one {
		t.Fatalf("%v %+v", err, c)
	}
	if _, err := f.Save("kit.yaml", []byte(other), was); !errors.As(err, &c) || !c.InWindow || on(t, dir, "kit.yaml") != kitText {
		t.Fatalf("%v %+v", err, c)
	}
	print := must(f.Draft("kit.yaml", c.Merged, c.TheirsPrint))(t)
	must(f.Save("kit.yaml", c.Merged, print))(t)
	if got := on(t, dir, "kit.yaml"); !strings.Contains(got, "makes: 8") || !strings.Contains(got, "jar: {packed: 8}") {
		t.Errorf("saved %q", got)
	}
	// The first window does not know yet.
	if _, err := f.Save("kit.yaml", []byte("# more\r\n"+one), Print([]byte(one))); !errors.As(err, &c) || c.InWindow || !c.Clean {
		t.Errorf("%v %+v", err, c)
	}
}

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
	if err := f.Discard("kit.yaml"); err != nil {
		t.Fatal(err)
	}
	if text := must(f.Read("kit.yaml"))(t); text.Unsaved || string(text.Typed) != on(t, dir, "kit.yaml") {
		t.Errorf("after giving up: %+v", text)
	}
	step(f.Undo, "new")
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

func TestHistoryAndRestore(t *testing.T) {
	f, dir := opened(t)
	day := time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	f.now = func() time.Time { day = day.Add(time.Minute); return day }
	print := must(f.Read("kit.yaml"))(t).TypedPrint
	for i := range mostStates + 20 {
		print = must(f.Save("kit.yaml", []byte(kitText+strings.Repeat("#", i+1)), print))(t)
	}
	states := must(f.History("kit.yaml"))(t)
	if len(states) != mostStates || states[0].Print != print[:shortPrint] || !states[0].When.After(states[1].When) || states[0].How != SavedHere {
		t.Fatalf("%d states, the newest %+v", len(states), states[0])
	}
	must(f.Draft("kit.yaml", []byte("typed and not saved"), print))(t)
	id := states[9].ID
	want := must(f.State("kit.yaml", id))(t)
	if _, err := f.Restore("kit.yaml", id, "another"); !errors.As(err, new(*Conflict)) {
		t.Errorf("restored over a file that is another: %v", err)
	}
	must(f.Restore("kit.yaml", id, print))(t)
	if on(t, dir, "kit.yaml") != string(want) {
		t.Error("another text was restored")
	}
	if text, moved, err := f.Undo("kit.yaml"); string(text) != "typed and not saved" || !moved || err != nil {
		t.Errorf("what was typed before is gone: %q %v", text, err)
	}
	// A state that something has damaged is not given out as good.
	if err := os.WriteFile(filepath.Join(dir, file("saved", "kit.yaml"), id), []byte("damaged"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := f.State("kit.yaml", id); kindOf(err) != Gone {
		t.Errorf("a damaged state: %v", err)
	}
	// Large states go by their size.
	big := bytes.Repeat([]byte("x"), 3<<20)
	print = must(f.Save("big.md", big, ""))(t)
	for i := range 8 {
		big[0] = byte('a' + i)
		print = must(f.Save("big.md", big, print))(t)
	}
	if n := len(must(f.History("big.md"))(t)); n != 5 {
		t.Errorf("%d states of 3 MB are kept in %d MB", n, largestStore>>20)
	}
}

// whole puts a file in its place at once, as a good editor does.
func whole(t *testing.T, dir, name, text string) {
	t.Helper()
	put(t, dir, name+".new", text)
	if err := os.Rename(filepath.Join(dir, name+".new"), filepath.Join(dir, name)); err != nil {
		t.Fatal(err)
	}
}

func TestWatch(t *testing.T) {
	f, dir := opened(t)
	put(t, dir, "method.md", "old")
	news := f.Watch(t.Context(), 10*time.Millisecond)
	next := func(want ...string) {
		t.Helper()
		var got []string
		for len(got) < len(want) {
			select {
			case changes := <-news:
				for _, c := range changes {
					got = append(got, c.Name+" "+map[bool]string{true: "gone", false: "is " + string(c.Print[:min(4, len(c.Print))])}[c.Gone])
				}
			case <-time.After(5 * time.Second):
				t.Fatalf("seen %q, want %q", got, want)
			}
		}
		slices.Sort(got)
		if !slices.Equal(got, want) {
			t.Fatalf("seen %q, want %q", got, want)
		}
	}
	is := func(text string) string { return " is " + string(Print([]byte(text)))[:4] }
	whole(t, dir, "method.md", "new")
	next("method.md" + is("new"))
	// The same size and the same time.
	info := must(os.Stat(filepath.Join(dir, "method.md")))(t)
	whole(t, dir, "method.md", "odd")
	if err := os.Chtimes(filepath.Join(dir, "method.md"), info.ModTime(), info.ModTime()); err != nil {
		t.Fatal(err)
	}
	next("method.md" + is("odd"))
	whole(t, dir, "pictures/jar.svg", "<svg/>")
	next("pictures/jar.svg" + is("<svg/>"))
	if err := os.Remove(filepath.Join(dir, "method.md")); err != nil {
		t.Fatal(err)
	}
	next("method.md gone")
	// What is saved here is no news, nor are drafts; what comes after it is.
	must(f.Save("kit.yaml", []byte("name: A\n"), Print([]byte(kitText))))(t)
	must(f.Draft("kit.yaml", []byte("name: B\n"), Print([]byte("name: A\n"))))(t)
	put(t, dir, ".hidden", "x")
	time.Sleep(60 * time.Millisecond)
	whole(t, dir, "kit.yaml", "name: C\n")
	next("kit.yaml" + is("name: C\n"))
	// Our own text again, by another program, is news.
	whole(t, dir, "kit.yaml", "name: A\n")
	next("kit.yaml" + is("name: A\n"))
	// The folder goes and comes back.
	if err := os.Rename(dir, dir+"-away"); err != nil {
		t.Fatal(err)
	}
	time.Sleep(20 * time.Millisecond)
	if err := os.CopyFS(dir, fstest.MapFS{"kit.yaml": {Data: []byte("name: D\n")}}); err != nil {
		t.Fatal(err)
	}
	next("kit.yaml"+is("name: D\n"), "pictures/jar.svg gone")
}

// TestSaveAll: files that belong together are saved together or not at all.
func TestSaveAll(t *testing.T) {
	f, dir := opened(t)
	put(t, dir, "method.md", "[wax](take:wax)\n")
	kit, method := must(f.Read("kit.yaml"))(t), must(f.Read("method.md"))(t)
	renamed := []Saving{{"kit.yaml", []byte(strings.Replace(kitText, "wax", "soy", 1)), kit.TypedPrint}, {"method.md", []byte("[wax](take:soy)\n"), method.TypedPrint},
		{"method.fr.md", []byte("[cire](take:soy)\n"), ""}}
	put(t, dir, "method.md", "[more wax](take:wax)\n")
	var c *Conflict
	if err := f.SaveAll(renamed...); !errors.As(err, &c) || c.Name != "method.md" {
		t.Fatal(err)
	}
	if on(t, dir, "kit.yaml") != kitText {
		t.Error("the first was saved, though the second cannot be")
	}
	if drafts := must(f.Drafts())(t); len(drafts) > 0 {
		t.Errorf("typed although nothing was saved: %+v", drafts)
	}
	renamed[1] = Saving{"method.md", []byte("[more wax](take:soy)\n"), c.TheirsPrint}
	if err := f.SaveAll(renamed...); err != nil {
		t.Fatal(err)
	}
	for _, s := range renamed {
		if on(t, dir, s.Name) != string(s.Text) {
			t.Errorf("%s was not saved", s.Name)
		}
	}
	if err := f.SaveAll(Saving{"kit.yaml", []byte("x"), Print(renamed[0].Text)}, Saving{"../out", []byte("x"), ""}); kindOf(err) != BadName || on(t, dir, "kit.yaml") == "x" {
		t.Error(err)
	}
}
