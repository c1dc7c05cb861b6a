package keep

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

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
