package instructions

import (
	"io/fs"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// The files of a kit folder that are read here.
const (
	definitionFile = "kit.yaml"
	methodFile     = "method.md"
	troubleFile    = "trouble.md"
	wordsFile      = "words.md"
)

// Open reads a kit folder whole: definition, method, troubles, words, pictures.
// name is the base name of the folder; it names what is made of the kit. The list
// holds all problems of all files.
//
// Without a readable kit.yaml there is no kit: it is nil, and the other files,
// which speak in its names, are not read. Without a readable method the kit has
// no steps.
func Open(folder fs.FS, name string) (*kit.Kit, diag.List) {
	r := &folderReader{folder: folder}
	definition := r.required(definitionFile, maxDefinition)
	method := r.required(methodFile, maxText)
	r.misnamed()
	if definition == nil {
		return nil, r.found
	}
	k, found := load.Kit(definition)
	r.found = append(r.found, found...)
	if k == nil {
		return nil, r.found
	}
	k.Folder = name
	k.Pictures = r.pictures()
	k.Documents = r.documents(k.Claims)
	r.texts(k, method)
	return k, r.found
}

// texts reads the Markdown files into the kit. The method comes first, as the
// others may name its steps and waits.
func (r *folderReader) texts(k *kit.Kit, method *source.File) {
	amounts := load.Amounts(k)
	if method != nil {
		var found diag.List
		k.Method, found = ReadMethod(method, k, amounts)
		r.found = append(r.found, found...)
	}
	r.translations(k)
	if file := r.text(troubleFile, maxText); file != nil {
		var found diag.List
		k.Troubles, found = ReadTrouble(file, k, amounts)
		r.found = append(r.found, found...)
	}
	if file := r.text(wordsFile, maxText); file != nil {
		var found diag.List
		k.Words, found = ReadWords(file, k, amounts)
		r.found = append(r.found, found...)
	}
}

// required reads a file that a kit can't do without. One that is not there is a
// finding that names what may have been meant for it.
func (r *folderReader) required(name string, limit int64) *source.File {
	before := len(r.found)
	file := r.text(name, limit)
	if file != nil || len(r.found) > before {
		return file
	}
	remedies := []string{"write it: a kit needs a kit.yaml, which says what is in the box, and a method.md with the steps"}
	if near := r.lookalike(name); near != "" {
		remedies = append([]string{"rename " + near + " to " + name}, remedies...)
	}
	nowhere := source.NewFile(name, nil).Whole()
	r.found = append(r.found, finding(missingFile, nowhere, name, "no "+name+" in the folder", "a file "+name, remedies...))
	return nil
}

// lookalikes are names that people give to a file in place of ours.
var lookalikes = map[string][]string{
	definitionFile: {"kit.yml", "kit.yaml.txt", "kit.json", "kit.toml"},
	methodFile:     {"method.markdown", "method.txt", "method.md.txt", "methods.md", "steps.md", "instructions.md"},
	troubleFile:    {"troubles.md", "trouble.txt", "trouble.markdown", "troubleshooting.md"},
	wordsFile:      {"word.md", "words.txt", "words.markdown"},
}

// lookalike gives the file of the folder that is most likely meant for name.
func (r *folderReader) lookalike(name string) string {
	for _, entry := range r.entries() {
		for _, other := range append(lookalikes[name], name) {
			if entry != name && strings.EqualFold(entry, other) {
				return entry
			}
		}
	}
	return ""
}

func (r *folderReader) entries() []string {
	entries, err := fs.ReadDir(r.folder, ".")
	if err != nil {
		return nil
	}
	var names []string
	for _, entry := range entries {
		names = append(names, entry.Name())
	}
	return names
}

// misnamed notices files that were meant to be read and are called otherwise.
func (r *folderReader) misnamed() {
	for _, name := range []string{troubleFile, wordsFile} {
		near := r.lookalike(name)
		if _, err := fs.Lstat(r.folder, name); near == "" || err == nil {
			continue
		}
		nowhere := source.NewFile(near, nil).Whole()
		r.found = append(r.found, finding(misnamedFile, nowhere, near, "a file "+near+", which is not read", "a file "+name, "rename it to "+name))
	}
}
