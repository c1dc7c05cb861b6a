// Package examples carries the example kits of Brindle Quay Workroom, an invented
// maker. Each is a whole kit folder that checks clean; `tallyfold new` copies one.
package examples

import (
	"embed"
	"io/fs"
)

// Hidden files, such as the drafts of somebody who has an example open, stay out.
//
//go:embed */[a-z]*
var files embed.FS

// Starter is the example that a new kit is made like unless another is named.
const Starter = "drawer-sachets"

// Names lists the examples.
func Names() []string {
	entries, err := files.ReadDir(".")
	if err != nil {
		panic("the embedded examples cannot be listed: " + err.Error()) // cannot happen: they are part of the program
	}
	names := make([]string, len(entries))
	for i, entry := range entries {
		names[i] = entry.Name()
	}
	return names
}

// Folder gives the files of one example, or an error that no example has that name.
func Folder(name string) (fs.FS, error) {
	folder, err := fs.Sub(files, name)
	if err != nil {
		return nil, err
	}
	if _, err := fs.Stat(folder, "kit.yaml"); err != nil {
		return nil, err
	}
	return folder, nil
}
