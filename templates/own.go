package templates

import (
	"io/fs"

	"tallyfold/kit/source"
)

// OwnFolder is the folder of a kit that a maker's own templates lie in.
const OwnFolder = "templates"

// OwnStyle is a style sheet of the maker's that stands behind all others; none is
// shipped.
const OwnStyle = "own.css"

// Own gives a maker's file that stands in the place of a shipped one, under the name
// by which the maker knows it; nil where there is none.
func (s Set) Own(name string) *source.File {
	for _, layer := range s.layers[:max(len(s.layers)-1, 0)] {
		if text, err := fs.ReadFile(layer, name); err == nil {
			return source.NewFile(OwnFolder+"/"+name, text)
		}
	}
	return nil
}

// OwnStyles gives the maker's further style sheet, "" for none.
func (s Set) OwnStyles() string {
	if file := s.Own(OwnStyle); file != nil {
		return string(file.Text)
	}
	return ""
}

// Replaceable lists the shipped files that a maker may have their own of, sorted. The
// report of a check has a fixed form.
func Replaceable() []string {
	var names []string
	_ = fs.WalkDir(shipped, ".", func(name string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() && name != "report.md" {
			names = append(names, name)
		}
		return err
	})
	return names
}
