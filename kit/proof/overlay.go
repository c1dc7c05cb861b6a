package proof

import (
	"bytes"
	"io/fs"
	"path"
	"slices"
	"strings"
	"time"
)

// An overlay is a folder of which a few files are read from memory instead.
type overlay struct {
	under fs.FS
	over  map[string][]byte
}

// Open opens a changed text, else the file of the folder.
func (o overlay) Open(name string) (fs.File, error) {
	if text, ok := o.over[name]; ok {
		return &textFile{Reader: bytes.NewReader(text), name: name}, nil
	}
	return o.under.Open(name)
}

// Lstat tells of a changed text that it is a plain file; links in the folder stay links.
func (o overlay) Lstat(name string) (fs.FileInfo, error) {
	if text, ok := o.over[name]; ok {
		return textInfo{name, int64(len(text))}, nil
	}
	return fs.Lstat(o.under, name)
}

// ReadLink reads a link of the folder.
func (o overlay) ReadLink(name string) (string, error) { return fs.ReadLink(o.under, name) }

// ReadDir lists a folder with the texts that are only in memory so far.
func (o overlay) ReadDir(name string) ([]fs.DirEntry, error) {
	entries, err := fs.ReadDir(o.under, name)
	if err != nil {
		return entries, err
	}
	for over, text := range o.over {
		base := path.Base(over)
		listed := slices.ContainsFunc(entries, func(e fs.DirEntry) bool { return e.Name() == base })
		if path.Dir(over) == name && !listed {
			entries = append(entries, fs.FileInfoToDirEntry(textInfo{base, int64(len(text))}))
		}
	}
	slices.SortFunc(entries, func(a, b fs.DirEntry) int { return strings.Compare(a.Name(), b.Name()) })
	return entries, nil
}

// A textFile is a text in memory, opened as a file.
type textFile struct {
	*bytes.Reader
	name string
}

func (f *textFile) Close() error               { return nil }
func (f *textFile) Stat() (fs.FileInfo, error) { return textInfo{f.name, f.Size()}, nil }

type textInfo struct {
	name string
	size int64
}

func (i textInfo) Name() string     { return path.Base(i.name) }
func (i textInfo) Size() int64      { return i.size }
func (textInfo) Mode() fs.FileMode  { return 0o444 }
func (textInfo) ModTime() time.Time { return time.Time{} }
func (textInfo) IsDir() bool        { return false }
func (textInfo) Sys() any           { return nil }
