package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestExitCodes(t *testing.T) {
	for _, c := range []struct {
		why  string
		args []string
		want int
	}{
		{"a clean kit", []string{"check", "../../examples/pocket-notebooks"}, exitDone},
		{"a kit with faults", []string{"check", "../../testdata/broken/pocket-notebooks"}, exitMustFix},
		{"a clean and a faulty kit", []string{"check", "../../examples/pocket-notebooks", "../../testdata/broken/pocket-notebooks"}, exitMustFix},
		{"no such folder", []string{"check", "nowhere"}, exitFailed},
		{"an unknown option", []string{"check", "--loud", "../../examples/pocket-notebooks"}, exitFailed},
		{"an unknown command", []string{"frobnicate"}, exitFailed},
		{"help is no failure", []string{"help", "check"}, exitDone},
	} {
		var out, err bytes.Buffer
		if got := run(c.args, streams{out: &out, err: &err}); got != c.want {
			t.Errorf("%s: exit %d, want %d\n%s%s", c.why, got, c.want, out.String(), err.String())
		}
	}
}

// A result that cannot be written is a failure, not a clean kit.
func TestAFullDiskIsSaid(t *testing.T) {
	var err bytes.Buffer
	got := run([]string{"check", "../../examples/pocket-notebooks"}, streams{out: fullDisk{}, err: &err})
	if got != exitFailed || !strings.Contains(err.String(), "cannot write") {
		t.Errorf("exit %d, said %q", got, err.String())
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("no space left on device") }

func TestWriteWholeLeavesTheOldFileOrTheNew(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "booklet.html")
	for _, text := range []string{"first", "second"} {
		if err := writeWhole(path, []byte(text)); err != nil {
			t.Fatal(err)
		}
		if got, err := os.ReadFile(path); err != nil || string(got) != text {
			t.Fatalf("read %q, %v", got, err)
		}
	}
	if err := writeWhole(filepath.Join(folder, "no", "such", "folder"), []byte("x")); err == nil {
		t.Error("writing into a missing folder was no error")
	}
	// A folder stands where the file should go: the write fails and nothing is left.
	if err := os.Mkdir(filepath.Join(folder, "taken"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := writeWhole(filepath.Join(folder, "taken"), []byte("x")); err == nil {
		t.Error("a folder was overwritten")
	}
	entries, err := os.ReadDir(folder)
	if err != nil || len(entries) != 2 {
		t.Errorf("left behind: %v, %v", entries, err)
	}
}
