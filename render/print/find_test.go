package print

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"testing"
)

// program makes a file that could be run.
func program(t *testing.T, folder, name string) string {
	t.Helper()
	if runtime.GOOS == "windows" {
		name += ".exe"
	}
	path := filepath.Join(folder, name)
	if err := os.WriteFile(path, []byte("#!/bin/sh\n"), 0o755); err != nil {
		t.Fatal(err)
	}
	return path
}

// TestFind holds the order: what is asked for, what the variable says, what is there.
func TestFind(t *testing.T) {
	asked, other := t.TempDir(), t.TempDir()
	mine, named := program(t, asked, "mine"), program(t, other, "named")
	t.Setenv(ProgramVariable, named)
	if got, err := Find(mine); err != nil || got != mine {
		t.Errorf("asked for: %q, %v", got, err)
	}
	if got, err := Find(""); err != nil || got != named {
		t.Errorf("by the variable: %q, %v", got, err)
	}
	// A bare name is looked for on the path, and what comes back is whole, as the browser is started elsewhere.
	t.Setenv("PATH", other)
	if got, err := Find("named"); err != nil || got != named {
		t.Errorf("by its bare name: %q, %v", got, err)
	}
	t.Chdir(asked)
	if got, err := Find("." + string(filepath.Separator) + filepath.Base(mine)); err != nil || got != mine {
		t.Errorf("from here: %q, %v", got, err)
	}
	// What was asked for and isn't there is an error, though there is another.
	if got, err := Find("none"); !errors.Is(err, ErrNoBrowser) {
		t.Errorf("asked for what isn't there: %q, %v", got, err)
	}
}

// TestFindOnPath takes the usual places away and leaves the path.
func TestFindOnPath(t *testing.T) {
	all := usualPlaces
	usualPlaces = nil
	defer func() { usualPlaces = all }()
	folder := t.TempDir()
	t.Setenv(ProgramVariable, "")
	t.Setenv("PATH", folder)
	if runtime.GOOS == "linux" {
		if got, err := Find(""); !errors.Is(err, ErrNoBrowser) {
			t.Errorf("where there is none: %q, %v", got, err)
		}
	}
	whole := program(t, folder, "chromium")
	if got, err := Find(""); err != nil || (runtime.GOOS == "linux" && got != whole) {
		t.Errorf("a whole browser: %q, %v", got, err)
	}
	shell := program(t, folder, "chromium-headless-shell")
	if got, err := Find(""); err != nil || (runtime.GOOS == "linux" && got != shell) {
		t.Errorf("the headless shell comes first: %q, %v", got, err)
	}
}

// TestCandidates holds that a real program comes before the script of the same name.
func TestCandidates(t *testing.T) {
	list := candidates()
	if runtime.GOOS != "linux" {
		return
	}
	shell, script := slices.Index(list, "/usr/lib/chromium/chromium-headless-shell"), slices.Index(list, "chromium-headless-shell")
	if shell != 0 || script < 0 {
		t.Errorf("the order is %q", list)
	}
}
