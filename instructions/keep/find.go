package keep

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
)

// deepestKit is how many folders deep kits are looked for in a folder of kits.
const deepestKit = 3

// KitsIn gives the kit folders that are meant by a folder: itself, or the kits
// that lie in it, in the order of their names. Where there are none it is given
// back as it is, so that it is told what a kit folder needs.
func KitsIn(folder string) []string {
	if IsKit(folder) {
		return []string{folder}
	}
	if kits := kitsBelow(folder, deepestKit); len(kits) > 0 {
		return kits
	}
	return []string{folder}
}

func kitsBelow(folder string, deep int) []string {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return nil
	}
	var kits []string
	for _, entry := range entries {
		below := filepath.Join(folder, entry.Name())
		switch {
		case strings.HasPrefix(entry.Name(), ".") || !isFolder(below):
		case IsKit(below) || isClosed(below):
			kits = append(kits, below)
		case deep > 1:
			kits = append(kits, kitsBelow(below, deep-1)...)
		}
	}
	return kits
}

// IsKit says whether one of the two files that a kit needs lies in a folder: a kit
// that has lost the other must not be passed over.
func IsKit(folder string) bool {
	for _, name := range []string{"kit.yaml", "method.md"} {
		if _, err := os.Lstat(filepath.Join(folder, name)); err == nil {
			return true
		}
	}
	return false
}

// isClosed says whether a folder cannot be looked into; it is told as a kit that
// cannot be read.
func isClosed(folder string) bool {
	file, err := os.Open(folder)
	if err != nil {
		return true
	}
	defer file.Close()
	_, err = file.ReadDir(1)
	return err != nil && !errors.Is(err, io.EOF)
}

func isFolder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}
