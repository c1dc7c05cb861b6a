package main

import (
	"fmt"
	"os"
	"path/filepath"
)

// writeWhole writes a file whole or not at all: into a temporary file beside it,
// onto the disk, then under its name. A reader sees the old file or the new one.
func writeWhole(path string, data []byte) (err error) {
	temporary, err := os.CreateTemp(filepath.Dir(path), ".tallyfold-*")
	if err != nil {
		return fmt.Errorf("cannot write into %s: %w", filepath.Dir(path), err)
	}
	defer func() {
		if err != nil {
			temporary.Close()
			os.Remove(temporary.Name())
		}
	}()
	if _, err = temporary.Write(data); err != nil {
		return fmt.Errorf("cannot write %s: %w", path, err)
	}
	if err = temporary.Chmod(0o644); err != nil {
		return fmt.Errorf("cannot write %s: %w", path, err)
	}
	if err = temporary.Sync(); err != nil {
		return fmt.Errorf("cannot bring %s onto the disk: %w", path, err)
	}
	if err = temporary.Close(); err != nil {
		return fmt.Errorf("cannot write %s: %w", path, err)
	}
	if err = os.Rename(temporary.Name(), path); err != nil {
		return fmt.Errorf("cannot put %s in place: %w", path, err)
	}
	syncFolder(filepath.Dir(path))
	return nil
}

// syncFolder brings the new name onto the disk. Some systems cannot do that for a
// folder; the file itself is safe by then, so nothing is said.
func syncFolder(folder string) {
	if f, err := os.Open(folder); err == nil {
		_ = f.Sync()
		f.Close()
	}
}
