package instructions

import (
	"io/fs"
	"slices"

	"tallyfold/kit"
)

// documents are the files that claims name and that are there with something in
// them. They are not read: what a test report says is for people.
func (r *folderReader) documents(claims []*kit.Claim) []string {
	var there []string
	for _, claim := range claims {
		name := claim.ShownBy.Value
		if !fs.ValidPath(name) || slices.Contains(there, name) {
			continue // a path that leads out of the folder is none of its files
		}
		if info, err := fs.Lstat(r.folder, name); err == nil && info.Mode().IsRegular() && info.Size() > 0 {
			there = append(there, name)
		}
	}
	return there
}
