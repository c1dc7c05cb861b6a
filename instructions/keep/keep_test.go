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
		for _, err := range []error{read, save, draft, history, undo} {
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
