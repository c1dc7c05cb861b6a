package keep

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// Free says whether a folder may be made: nothing there, or an empty folder.
func Free(folder string) error {
	entries, err := os.ReadDir(folder)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("%q is no folder that could be filled; choose another name", folder)
	case len(entries) > 0:
		return fmt.Errorf("%q already holds files, and none of them is touched; choose another name", folder)
	}
	return nil
}

// Begin has the files of a new folder laid down in one beside it, which fill makes, and
// renames that at the end, so that a folder either is there whole or not at all. Files
// copied out of the program come read-only: they are given the rights of files that a
// person made.
func Begin(folder string, fill func(temporary string) error) error {
	parent := filepath.Dir(filepath.Clean(folder))
	if err := os.MkdirAll(parent, 0o755); err != nil {
		return fmt.Errorf("cannot make %s: %w", parent, err)
	}
	temporary, err := os.MkdirTemp(parent, ".tallyfold-*")
	if err != nil {
		return fmt.Errorf("cannot write into %s: %w", parent, err)
	}
	defer os.RemoveAll(temporary)
	if err := errors.Join(fill(filepath.Join(temporary, "kit")), makeWritable(filepath.Join(temporary, "kit"))); err != nil {
		return fmt.Errorf("cannot write the files of %s: %w", folder, err)
	}
	// An empty folder in the place gives way.
	_ = os.Remove(folder)
	if err := os.Rename(filepath.Join(temporary, "kit"), folder); err != nil {
		return fmt.Errorf("cannot put %s in place: %w", folder, err)
	}
	return nil
}

func makeWritable(folder string) error {
	return filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		return os.Chmod(path, usual)
	})
}

// Files lays texts down by their names, for Begin.
func Files(texts map[string][]byte) func(folder string) error {
	return func(folder string) error {
		if err := os.Mkdir(folder, 0o755); err != nil {
			return err
		}
		for name, text := range texts {
			if err := os.WriteFile(filepath.Join(folder, name), text, usual); err != nil {
				return err
			}
		}
		return nil
	}
}
