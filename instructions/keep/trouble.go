package keep

import (
	"errors"
	"io/fs"
	"os"
	"strings"
	"syscall"
)

// Kind is what stands in the way of reading or writing.
type Kind int

// The kinds of trouble.
const (
	ReadOnly Kind = iota + 1
	Full
	Vanished
	NoFile   // a folder, a device, or a link that leads out of the kit folder
	TooLarge // more than MaxBytes
	BadName
	Busy // another program holds the folder
	Gone // a state of the history that is no longer kept
	Other
)

// A Trouble is why a file could not be read or written.
type Trouble struct {
	Kind Kind
	// Name is the file, "" for the folder.
	Name string
	// Kept: the text that could not be written is held in memory, and is given by
	// Drafts until it is written.
	Kept bool
	// Saved: the file itself was written; only its history was not.
	Saved bool

	found, do string
	err       error
}

// Error tells the maker what is the matter, what has become of the text, and what to do.
func (t *Trouble) Error() string {
	parts := []string{t.found}
	switch {
	case t.Saved:
		parts = append(parts, t.Name+" itself is saved; only its history is not")
	case t.Kept:
		parts = append(parts, "What you typed is kept as long as the workbench runs")
	}
	return strings.Join(append(parts, t.do), ". ") + "."
}

// Unwrap gives what the system said.
func (t *Trouble) Unwrap() error { return t.err }

// said are the words for each kind; NAME and FOLDER are put in.
var said = map[Kind]struct{ found, do string }{
	ReadOnly: {"NAME cannot be written: FOLDER, or the file, allows reading only", "Allow writing to it and save again, or save a copy elsewhere"},
	Full:     {"NAME cannot be written: the disk is full", "Make room on the disk and save again, or save a copy on another disk"},
	Vanished: {"The folder FOLDER is not there any more: it was moved, renamed or deleted, or its disk was taken out", "Put it back in its place and save again, or save a copy elsewhere"},
	NoFile:   {"NAME is no plain file of this folder: it is a folder, or a link that leads elsewhere", "Put the file itself into the folder, or choose another name"},
	TooLarge: {"NAME is larger than 4 MB", "Look whether this is the right file; a text of a kit takes some ten thousand bytes"},
	BadName:  {"“NAME” cannot be the name of a file in a kit folder", "Choose a name of letters, digits, hyphens and points that does not begin with a point"},
	Busy:     {"Another program is writing to FOLDER and does not come to an end", "Close other windows of the workbench and try again"},
	Gone:     {"This state of NAME is no longer kept", "Choose another from the history"},
	Other:    {"NAME cannot be read or written", "Look at the folder FOLDER and its disk, then try again"},
}

func trouble(kind Kind, dir, name string, err error) *Trouble {
	shown := name
	if shown == "" {
		shown = "the folder"
	}
	fill := strings.NewReplacer("NAME", shown, "FOLDER", dir)
	t := &Trouble{Kind: kind, Name: name, found: fill.Replace(said[kind].found), do: fill.Replace(said[kind].do), err: err}
	if kind == Other && err != nil {
		t.found += " (" + reason(err) + ")"
	}
	if !strings.HasPrefix(t.found, name) || name == "" { // the name of a file is written as it is
		t.found = strings.ToUpper(t.found[:1]) + t.found[1:]
	}
	return t
}

// troubleWith tells an error of the system.
func troubleWith(dir, name string, err error) error {
	var known *Trouble
	switch {
	case errors.As(err, &known):
		return known
	case errors.Is(err, errLeadsOut), strings.Contains(err.Error(), "path escapes"), errors.Is(err, syscall.ENOTDIR), errors.Is(err, syscall.EISDIR):
		return trouble(NoFile, dir, name, err)
	case errors.Is(err, fs.ErrPermission), errors.Is(err, syscall.EROFS):
		return trouble(ReadOnly, dir, name, err)
	case isFull(err):
		return trouble(Full, dir, name, err)
	case errors.Is(err, fs.ErrNotExist):
		return trouble(Vanished, dir, name, err)
	}
	return trouble(Other, dir, name, err)
}

// reason is what the system says without the path, which is told already.
func reason(err error) string {
	var at *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &at):
		return at.Err.Error()
	case errors.As(err, &link):
		return link.Err.Error()
	}
	return err.Error()
}
