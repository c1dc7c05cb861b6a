package instructions

import (
	"bytes"
	"errors"
	"io/fs"
	"path"
	"strconv"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/picture"
	"tallyfold/kit/source"
)

// picturesFolder holds the photographs and drawings that the texts name.
const picturesFolder = "pictures"

// pictures reads all pictures of the folder, in the order of their names.
func (r *folderReader) pictures() []*kit.Picture {
	if !r.isFolder(picturesFolder) {
		return nil
	}
	entries, err := fs.ReadDir(r.folder, picturesFolder)
	if err != nil {
		r.refuse(picturesFolder, "it can't be read: "+reason(err), "a folder that can be read", "look at its permissions")
		return nil
	}
	var all []*kit.Picture
	var size int64
	for _, entry := range entries {
		if isSystemFile(entry.Name()) {
			continue
		}
		if len(all) == maxPictures || size > maxAllPictures {
			r.refuse(picturesFolder, "more than "+strconv.Itoa(maxPictures)+" pictures, or more than "+kilobytes(maxAllPictures)+" of them",
				"fewer or smaller pictures; the rest is not read", "make them smaller, or take out those that are not needed")
			break
		}
		if picture := r.picture(entry); picture != nil {
			all = append(all, picture)
			size += picture.Size
		}
	}
	return all
}

// isFolder says whether there is a folder of this name; a link or file in its
// place is a finding.
func (r *folderReader) isFolder(name string) bool {
	info, err := fs.Lstat(r.folder, name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return false
	case err != nil:
		r.refuse(name, "it can't be looked at: "+reason(err), "a folder that can be read", "look at its permissions")
		return false
	case info.Mode()&fs.ModeSymlink != 0:
		r.refuse(name, "a link to another place", "the folder itself, so that the kit is complete wherever it is copied", "put the folder itself here")
		return false
	case !info.IsDir():
		r.refuse(name, "a file of this name", "a folder with pictures", "give the file another name")
		return false
	}
	return true
}

// isSystemFile: what systems leave in folders without being asked.
func isSystemFile(name string) bool {
	return strings.HasPrefix(name, ".") || name == "Thumbs.db" || name == "desktop.ini"
}

func (r *folderReader) picture(entry fs.DirEntry) *kit.Picture {
	name := path.Join(picturesFolder, entry.Name())
	if entry.IsDir() {
		r.notAPicture(name, "a folder inside the folder pictures")
		return nil
	}
	content, ok := r.content(name, maxPicture)
	if !ok {
		return nil
	}
	if !isPicture(content) {
		r.notAPicture(name, "a file that is no picture a booklet can show")
		return nil
	}
	return &kit.Picture{Name: entry.Name(), Size: int64(len(content)), Data: content}
}

func (r *folderReader) notAPicture(name, found string) {
	nowhere := source.NewFile(name, nil).Whole()
	r.found = append(r.found, finding(notAPicture, nowhere, name, found, "JPEG, PNG, GIF, WebP or SVG pictures",
		"save it as one of these", "put it elsewhere"))
}

// isPicture looks at the first bytes, as a name can say anything.
func isPicture(content []byte) bool {
	for _, head := range []string{"\xff\xd8\xff", "\x89PNG\r\n\x1a\n", "GIF87a", "GIF89a"} {
		if bytes.HasPrefix(content, []byte(head)) {
			return true
		}
	}
	if len(content) > 12 && string(content[:4]) == "RIFF" && string(content[8:12]) == "WEBP" {
		return true
	}
	return picture.IsDrawing(content)
}
