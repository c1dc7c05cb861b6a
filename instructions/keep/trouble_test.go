//go:build unix

package keep

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// report runs a child that ends by itself.
func report(t *testing.T, program *exec.Cmd) {
	t.Helper()
	if out, err := program.Output(); err != nil || !strings.Contains(string(out), "done") {
		t.Errorf("%v: %s", err, out)
	}
}

// wants checks a trouble that must be told with the text kept.
func wants(f *Folder, err error, kind Kind, text, word string) error {
	var told *Trouble
	if !errors.As(err, &told) || told.Kind != kind || !told.Kept || !strings.Contains(err.Error(), word) || !strings.Contains(err.Error(), "is kept") {
		return fmt.Errorf("told: %w", err)
	}
	drafts, _ := f.Drafts()
	if len(drafts) != 1 || !drafts[0].Held || string(drafts[0].Text) != text {
		return fmt.Errorf("kept: %+v", drafts)
	}
	return nil
}

// nobody is a user without rights (Debian and others).
const nobody = 65534

// withoutRights looks at a folder that it may only read.
func withoutRights(dir string) error {
	if os.Getuid() == 0 {
		if err := errors.Join(syscall.Setgroups(nil), syscall.Setgid(nobody), syscall.Setuid(nobody)); err != nil {
			return err
		}
	}
	f, err := Open(dir)
	if err != nil {
		return err
	}
	text, err := f.Read("kit.yaml")
	if err != nil || string(text.Saved) != kitText {
		return fmt.Errorf("read %q: %w", text.Saved, err)
	}
	print, err := f.Draft("kit.yaml", []byte("typed"), text.TypedPrint)
	if err := wants(f, err, ReadOnly, "typed", "reading only"); err != nil {
		return err
	}
	_, err = f.Save("kit.yaml", []byte("typed more"), print)
	if err := wants(f, err, ReadOnly, "typed more", "Allow writing"); err != nil {
		return err
	}
	if text, err = f.Read("kit.yaml"); err != nil || string(text.Typed) != "typed more" || !text.Unsaved {
		return fmt.Errorf("read again %+v: %w", text, err)
	}
	fmt.Println("done")
	return nil
}

func TestReadOnlyFolder(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "kit")
	put(t, dir, "kit.yaml", kitText)
	// The way there is open to everybody, the folder to nobody for writing.
	for parent := filepath.Dir(dir); parent != filepath.Dir(os.TempDir()) && parent != os.TempDir(); parent = filepath.Dir(parent) {
		if err := os.Chmod(parent, 0o755); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Chmod(dir, 0o555); err != nil {
		t.Fatal(err)
	}
	defer os.Chmod(dir, 0o755)
	report(t, child(t, "without rights", dir))
	if on(t, dir, "kit.yaml") != kitText {
		t.Error("it was written all the same")
	}
}

// TestReadOnlyFile: a file that its maker has closed to writing stays as it is, though
// the folder would let it be replaced.
func TestReadOnlyFile(t *testing.T) {
	f, dir := opened(t)
	if err := os.Chmod(filepath.Join(dir, "kit.yaml"), 0o444); err != nil {
		t.Fatal(err)
	}
	was := must(f.Read("kit.yaml"))(t).TypedPrint
	_, err := f.Save("kit.yaml", []byte("mine"), was)
	if err := wants(f, err, ReadOnly, "mine", "reading only"); err != nil || on(t, dir, "kit.yaml") != kitText {
		t.Error(err)
	}
	if err := os.Chmod(filepath.Join(dir, "kit.yaml"), 0o644); err != nil {
		t.Fatal(err)
	}
	must(f.Save("kit.yaml", []byte("mine"), Print([]byte("mine"))))(t)
	if on(t, dir, "kit.yaml") != "mine" {
		t.Error("it is not saved once it may be")
	}
}

// fillUp types and saves in a folder until there is no room, then again when room has
// been made.
func fillUp(dir string, makeRoom func() error) error {
	if err := os.WriteFile(filepath.Join(dir, "method.md"), page(0), 0o644); err != nil {
		return err
	}
	f, err := Open(dir)
	if err != nil {
		return err
	}
	print := Print(page(0))
	number, saved := 0, 0
	for err == nil && number < 1000 {
		number++
		if print, err = f.Draft("method.md", page(number), print); err != nil {
			break
		}
		if print, err = f.Save("method.md", page(number), print); err == nil {
			saved = number
		}
	}
	var t *Trouble
	if errors.As(err, &t) && t.Saved { // the file had room still, its history had not
		saved = number
		if t.Kind != Full || !strings.Contains(err.Error(), "itself is saved") {
			return err
		}
		number++
		_, err = f.Save("method.md", page(number), Print(page(saved)))
	}
	if err := wants(f, err, Full, string(page(number)), "disk is full"); err != nil {
		return err
	}
	text, err := os.ReadFile(filepath.Join(dir, "method.md"))
	if n, whole := numberOf(text); err != nil || whole != nil || n != saved {
		return fmt.Errorf("on the disk %d, saved %d: %w", n, saved, errors.Join(err, whole))
	}
	// Typing goes on in memory, and all of it is saved once there is room.
	number++
	print, err = f.Draft("method.md", page(number), Print(page(number-1)))
	if err := wants(f, err, Full, string(page(number)), "Make room"); err != nil {
		return err
	}
	if err := makeRoom(); err != nil {
		return err
	}
	if _, err = f.Save("method.md", page(number), print); err != nil {
		return err
	}
	drafts, err := f.Drafts()
	text, wrong := os.ReadFile(filepath.Join(dir, "method.md"))
	if n, whole := numberOf(text); n != number || len(drafts) > 0 || err != nil || wrong != nil || whole != nil {
		return fmt.Errorf("with room %d, not %d, is saved; drafts %+v: %w", n, number, drafts, errors.Join(err, wrong, whole))
	}
	fmt.Println("done")
	return nil
}

// withSmallFiles writes where no file may be larger than 30 KB: what the system then
// says and does is what it does on a full disk, half-written files included.
func withSmallFiles(dir string) error {
	signal.Ignore(syscall.SIGXFSZ)
	var before syscall.Rlimit
	if err := syscall.Getrlimit(syscall.RLIMIT_FSIZE, &before); err != nil {
		return err
	}
	small := before
	small.Cur = 30_000
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &small); err != nil {
		return err
	}
	return fillUp(dir, func() error { return syscall.Setrlimit(syscall.RLIMIT_FSIZE, &before) })
}

func TestFilesWithoutRoom(t *testing.T) { report(t, child(t, "with small files", t.TempDir())) }

// TestVanishedFolder: the folder goes, comes back, and comes back as another.
func TestVanishedFolder(t *testing.T) {
	f, dir := opened(t)
	was := must(f.Read("kit.yaml"))(t).TypedPrint
	if err := os.Rename(dir, dir+"-away"); err != nil {
		t.Fatal(err)
	}
	print, err := f.Draft("kit.yaml", []byte("typed"), was)
	if err := wants(f, err, Vanished, "typed", "not there any more"); err != nil {
		t.Error(err)
	}
	_, err = f.Save("kit.yaml", []byte("typed more"), print)
	if err := wants(f, err, Vanished, "typed more", "Put it back"); err != nil {
		t.Error(err)
	}
	if _, err := f.Read("kit.yaml"); kindOf(err) != Vanished {
		t.Error(err)
	}
	if on(t, dir+"-away", "kit.yaml") != kitText {
		t.Error("a folder was written that the maker has put elsewhere")
	}
	if err := os.Rename(dir+"-away", dir); err != nil {
		t.Fatal(err)
	}
	must(f.Save("kit.yaml", []byte("typed more"), Print([]byte("typed more"))))(t)
	if on(t, dir, "kit.yaml") != "typed more" {
		t.Error("it is not saved once the folder is back")
	}
	// Another folder in its place: what is in it is not overwritten.
	if err := os.RemoveAll(dir); err != nil {
		t.Fatal(err)
	}
	put(t, dir, "kit.yaml", "another kit")
	if _, err := f.Save("kit.yaml", []byte("mine"), Print([]byte("typed more"))); !errors.As(err, new(*Conflict)) || on(t, dir, "kit.yaml") != "another kit" {
		t.Error(err)
	}
	if _, err := Open(filepath.Join(dir, "nothing")); kindOf(err) != Vanished {
		t.Error(err)
	}
}
