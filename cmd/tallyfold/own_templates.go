package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"tallyfold/kit/diag"
	"tallyfold/templates"
)

// ownFolder is where a kit has templates of its own.
func ownFolder(p *proved) string { return filepath.Join(p.folder, templates.OwnFolder) }

// templatesOf are those of the program, the maker's own over them.
func templatesOf(p *proved) templates.Set {
	set := templates.Shipped()
	if isFolder(ownFolder(p)) {
		set = set.Over(os.DirFS(ownFolder(p)))
	}
	return set
}

func isFolder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

// ownMisfits tells all that doesn't fit of a maker's own templates: what their folder
// shows, and what came of filling them in. The error is the one handed over, where it
// is another.
func ownMisfits(p *proved, failed error) (diag.List, error) {
	var found diag.List
	if isFolder(ownFolder(p)) {
		found = templates.Check(os.DirFS(ownFolder(p)))
	}
	all := templates.Join(&templates.Misfit{Findings: found}, failed)
	if misfit := new(templates.Misfit); errors.As(all, &misfit) {
		return misfit.Findings, nil
	}
	return found, failed
}

// ownTemplatesFit says what doesn't, and refuses the booklet where something must be
// mended: before anything is written.
func (o *bookletOptions) ownTemplatesFit(p *proved, failed error) error {
	found, failed := ownMisfits(p, failed)
	if err := diag.WriteText(o.err, found, diag.Style{Folder: p.folder}); err != nil {
		return err
	}
	if n := found.Count(diag.MustFix); n > 0 {
		fmt.Fprintf(o.err, "\n%s must be fixed in %s before the booklet is made; nothing was written\n", count(n, "thing"), filepath.ToSlash(ownFolder(p)))
		return errMustFix
	}
	return failed
}
