// Package templates holds what the booklet looks like and the fixed words in
// it: the Markdown of each section, the HTML shell, the style sheets, the faces
// and the words of each language. Everything is embedded; a maker can put a
// file of the same name into a folder of their own and so replace one piece.
package templates

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"strings"
	"text/template"

	"tallyfold/kit/diag"
)

//go:embed report.md balance.md labels.html labels.css book.html fold.html book.css narrow.css print.css booklet/*.md pictograms/*.svg words/*.txt fonts/*.woff2
var shipped embed.FS

// A Set is where templates are read from: the maker's files first, then those
// shipped with the program. The zero Set is empty; begin with Shipped.
type Set struct{ layers []fs.FS }

// Shipped gives the templates that come with the program.
func Shipped() Set { return Set{layers: []fs.FS{shipped}} }

// Over gives a set in which the files of folder come before those of s.
func (s Set) Over(folder fs.FS) Set {
	return Set{layers: append([]fs.FS{folder}, s.layers...)}
}

// File gives the content of one file, from the first layer that has it. The
// name is relative, with forward slashes ("booklet/cover.md").
func (s Set) File(name string) ([]byte, error) {
	for _, layer := range s.layers {
		text, err := fs.ReadFile(layer, name)
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		return text, err
	}
	return nil, fmt.Errorf("there is no template %s", name)
}

// Parse reads a file as a Go text template with the functions given. A name
// that the values don't have is an error when it is executed, never an empty
// place in the booklet.
func (s Set) Parse(name string, functions template.FuncMap) (*template.Template, error) {
	text, err := s.File(name)
	if err != nil {
		return nil, err
	}
	parsed, err := template.New(path.Base(name)).Option("missingkey=error").Funcs(functions).Parse(string(text))
	if err != nil {
		if file := s.Own(name); file != nil {
			return nil, &Misfit{diag.List{cannotRead(file, name, functions, err)}}
		}
		return nil, fmt.Errorf("the template %s can't be read: %w", name, err)
	}
	return parsed, nil
}

// Execute reads a file as a template and fills it in.
func (s Set) Execute(name string, functions template.FuncMap, values any) (string, error) {
	parsed, err := s.Parse(name, functions)
	if err != nil {
		return "", err
	}
	var out strings.Builder
	if err := parsed.Execute(&out, values); err != nil {
		return "", s.misfitting(name, err)
	}
	return out.String(), nil
}
