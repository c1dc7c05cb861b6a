//go:build unix

package print

import (
	"os"
	"path/filepath"
	"slices"
	"syscall"
	"testing"
	"time"
)

// TestSweep holds which temporary folders a start removes: those of runs that are no more, and no others.
func TestSweep(t *testing.T) {
	parent := t.TempDir()
	running, err := newProfile(parent, nil)
	if err != nil {
		t.Fatal(err)
	}
	killed, err := newProfile(parent, nil)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(killed.home(), "Preferences"), []byte("{}"), 0o600); err != nil {
		t.Fatal(err)
	}
	killed.lock.Close() // as the system does when a process ends

	// Folders without a lock: one may just be on the way to being locked, the other was left long ago.
	young, old := filepath.Join(parent, profilePrefix+"young"), filepath.Join(parent, profilePrefix+"old")
	// Others' things: of another name, no folder, and a lock on which a reader would wait for ever.
	foreign, file, trap := filepath.Join(parent, "other-1"), filepath.Join(parent, profilePrefix+"file"), filepath.Join(parent, profilePrefix+"trap")
	for _, folder := range []string{young, old, foreign, trap} {
		if err := os.Mkdir(folder, 0o700); err != nil {
			t.Fatal(err)
		}
	}
	longAgo := time.Now().Add(-2 * unlockedAge)
	if err := os.Chtimes(old, longAgo, longAgo); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := syscall.Mkfifo(filepath.Join(trap, lockName), 0o600); err != nil {
		t.Fatal(err)
	}
	// A link in place of the lock leads to a file that mustn't be touched.
	elsewhere := filepath.Join(t.TempDir(), "elsewhere")
	if err := os.WriteFile(elsewhere, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	linked := filepath.Join(parent, profilePrefix+"linked")
	if err := os.Mkdir(linked, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(elsewhere, filepath.Join(linked, lockName)); err != nil {
		t.Fatal(err)
	}

	done := make(chan struct{})
	go func() { sweep(parent); close(done) }()
	select {
	case <-done:
	case <-time.After(time.Minute):
		t.Fatal("the sweep waits for something")
	}
	for path, stays := range map[string]bool{
		running.folder: true, killed.folder: false, young: true, old: false, foreign: true, file: true, linked: true,
	} {
		if _, err := os.Lstat(path); (err == nil) != stays {
			t.Errorf("%s: should stay: %v, but looking for it gives %v", filepath.Base(path), stays, err)
		}
	}
	running.remove()
	if _, err := os.Lstat(running.folder); !os.IsNotExist(err) {
		t.Errorf("the folder is still there after its end (%v)", err)
	}
}

// TestSweepAtStart holds that opening a browser sweeps the folder that it works in.
func TestSweepAtStart(t *testing.T) {
	temporary := openFolder(t)
	if err := os.Chmod(temporary, 0o777); err != nil {
		t.Fatal(err)
	}
	t.Setenv("TMPDIR", temporary)
	left, err := newProfile(temporary, nil)
	if err != nil {
		t.Fatal(err)
	}
	left.lock.Close()
	b := fresh(t, Settings{})
	found, err := filepath.Glob(filepath.Join(temporary, profilePrefix+"*"))
	if err != nil {
		t.Fatal(err)
	}
	s := b.current
	if slices.Contains(found, left.folder) || !slices.Contains(found, s.profile.folder) || len(found) != 1 {
		t.Errorf("after a start there are %v", found)
	}
}

// TestUnreachableTemporary holds that another account's browser is not put where that account can't go.
func TestUnreachableTemporary(t *testing.T) {
	closed := filepath.Join(openFolder(t), "closed")
	if err := os.MkdirAll(filepath.Join(closed, "tmp"), 0o700); err != nil {
		t.Fatal(err)
	}
	t.Setenv("TMPDIR", filepath.Join(closed, "tmp"))
	if got := temporaryFolder(nil); got != filepath.Join(closed, "tmp") {
		t.Errorf("for ourselves it is %s", got)
	}
	if got := temporaryFolder(&account{}); got != "/tmp" {
		t.Errorf("for another account it is %s", got)
	}
}
