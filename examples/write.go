package examples

import (
	"os"
	"path/filepath"
)

// Write copies an example into a new folder, as a start for a kit of the maker's own.
func Write(name, folder string) error {
	kit, err := Folder(name)
	if err != nil {
		return err
	}
	if err := os.CopyFS(folder, kit); err != nil {
		return err
	}
	return leaveTranslationsOut(folder)
}

// leaveTranslationsOut takes the texts in other languages away: a new kit changes
// every day, and whoever makes it translates it when it is done.
func leaveTranslationsOut(folder string) error {
	for _, pattern := range []string{"method.*.md", "trouble.*.md", "words.*.md", "kit.*.txt"} {
		translations, err := filepath.Glob(filepath.Join(folder, pattern))
		if err != nil {
			return err
		}
		for _, name := range translations {
			if err := os.Remove(name); err != nil {
				return err
			}
		}
	}
	return nil
}
