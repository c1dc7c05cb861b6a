package templates

import (
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	bcp47 "golang.org/x/text/language"

	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// Check judges a maker's folder of templates as far as that can be done without a kit:
// names, words, styles, and copies whose original has changed. What the templates ask
// for is judged by Misfits.
func Check(folder fs.FS) diag.List {
	var found diag.List
	err := fs.WalkDir(folder, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || name == "." {
			return err
		}
		if strings.HasPrefix(entry.Name(), ".") || strings.HasSuffix(entry.Name(), "~") {
			if entry.IsDir() {
				return fs.SkipDir
			}
			return nil
		}
		if entry.IsDir() {
			return nil
		}
		text, err := fs.ReadFile(folder, name)
		if err != nil {
			return err
		}
		found = append(found, checkFile(source.NewFile(OwnFolder+"/"+name, text), name)...)
		return nil
	})
	if err != nil {
		found = append(found, misfit(source.NewFile(OwnFolder, nil).Whole(), OwnFolder, "the folder cannot be read", "files that this program may read",
			"look at the rights of the files in it"))
	}
	return found
}

func checkFile(file *source.File, name string) diag.List {
	switch {
	case path.Dir(name) == "words" && isLanguage(name):
		return checkWords(file, strings.TrimSuffix(path.Base(name), ".txt"))
	case name != OwnStyle && !slices.Contains(Replaceable(), name):
		return unknownName(file, name)
	case path.Ext(name) == ".css":
		return append(checkStyle(file), changedSince(file, name)...)
	case path.Ext(name) == ".html":
		return append(reachesOut(file, addressInPage), changedSince(file, name)...)
	case path.Ext(name) == ".woff2":
		return checkFace(file, name)
	}
	return changedSince(file, name)
}

func isLanguage(name string) bool {
	tag, isText := strings.CutSuffix(path.Base(name), ".txt")
	_, err := bcp47.Parse(tag)
	return isText && err == nil
}

// unknownName: a slip of the name would leave the maker's text unused without a word.
func unknownName(file *source.File, name string) diag.List {
	known := append(Replaceable(), OwnStyle)
	f := misfit(file.Whole(), name, fmt.Sprintf("nothing uses a file of the name %s", name),
		"the name of a template, style or word list; tallyfold templates KIT lists them", "take it out of the folder templates")
	if near := diag.Nearest(name, known); near != "" {
		f.Remedies = diag.Fix("name it " + near)
	} else {
		f.Severity = diag.WorthKnowing
	}
	f.Rule = "template-not-known"
	return diag.List{f}
}

func checkFace(file *source.File, name string) diag.List {
	if strings.HasPrefix(string(file.Text), "wOF2") {
		return nil
	}
	return diag.List{misfit(file.Whole(), name, "this is no web font of the kind WOFF2", "a file that begins with wOF2",
		"save the font as WOFF2", "take it out of the folder templates")}
}

// misfit is the common form of what must be mended in a template.
func misfit(where source.Span, about, found, expected string, todo ...string) diag.Finding {
	return diag.Finding{Rule: "template-does-not-fit", Severity: diag.MustFix, Where: where, About: about,
		Found: found, Expected: expected, Remedies: diag.Fix(todo...)}
}
