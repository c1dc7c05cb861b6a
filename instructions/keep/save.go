package keep

import (
	"errors"
	"fmt"
	"io/fs"
)

// A Conflict is a text that cannot be saved because somebody else has changed the file,
// or typed into it, since the text was begun. Nothing of either is lost: the text is in
// the history as Unmerged.
type Conflict struct {
	Name string
	// Mine is the text that was to be saved, Theirs what stands there, and TheirsPrint
	// its fingerprint. Theirs is empty with Gone.
	Mine, Theirs []byte
	TheirsPrint  Fingerprint
	// Base is what both began from, where it is still known.
	Base []byte
	// Merged has both, where no line was changed by both; saved with TheirsPrint, it
	// loses nothing.
	Merged []byte
	Clean  bool
	// Gone: the file has been deleted.
	Gone bool
	// InWindow: Theirs was typed in another window, and is not on the disk.
	InWindow bool
}

// Error tells who has changed what, and what can be done.
func (c *Conflict) Error() string {
	who, what := "another program", "has been changed by"
	if c.InWindow {
		who = "another window of the workbench"
	}
	if c.Gone {
		what = "has been deleted by"
	}
	if c.Clean {
		return fmt.Sprintf("%s %s %s since you opened it. Both changes go together; take them over, or look at both first. Your text is kept in the history.", c.Name, what, who)
	}
	return fmt.Sprintf("%s %s %s since you opened it. Look at both texts and choose; your text is kept in the history.", c.Name, what, who)
}

// Save writes a file whole. was is the fingerprint of the text that the editor began
// from, as Read, Draft or Save gave it last, "" for a file that was not there; that of
// the new file is given back.
//
// If the file on the disk is another by now, or another window has typed into it,
// nothing is written and the error is a *Conflict; a text that answers it is saved with
// its TheirsPrint. If it cannot be written, the text is held and the error a *Trouble.
// The rights of the file stay; of a link inside the folder the file it leads to is
// written.
func (f *Folder) Save(name string, text []byte, was Fingerprint) (Fingerprint, error) {
	if err := checkText(name, text); err != nil {
		return "", err
	}
	f.lock.Lock()
	defer f.lock.Unlock()
	err := f.write(name, text, func(j *journal, disk found) error {
		return f.typeAndSave(j, disk, text, was)
	})
	return Print(text), err
}

// A Saving is one file of several that are saved together.
type Saving struct {
	Name string
	Text []byte
	// Was is as in Save.
	Was Fingerprint
}

// SaveAll saves several files that belong together, such as all that name a thing which
// gets another key. If something stands against one of them, or there is no room to write
// all down, none is saved; the error is that of the first. All are written down as drafts before the first is saved, so that after
// a kill between two of them Drafts has what is not saved yet.
func (f *Folder) SaveAll(files ...Saving) error {
	for _, s := range files {
		if err := checkText(s.Name, s.Text); err != nil {
			return err
		}
	}
	f.lock.Lock()
	defer f.lock.Unlock()
	for _, do := range []func(*journal, found, Saving) error{
		func(j *journal, disk found, s Saving) error { return f.against(j, disk, s.Text, s.Was) },
		func(j *journal, disk found, s Saving) error { return f.typed(j, disk, s.Text, s.Was) },
		func(j *journal, disk found, s Saving) error { return f.typeAndSave(j, disk, s.Text, s.Was) },
	} {
		for _, s := range files {
			if err := f.write(s.Name, s.Text, func(j *journal, disk found) error { return do(j, disk, s) }); err != nil {
				return err
			}
		}
	}
	return nil
}

// typeAndSave saves a text unless something stands against it.
func (f *Folder) typeAndSave(j *journal, disk found, text []byte, was Fingerprint) error {
	if err := f.against(j, disk, text, was); err != nil {
		return err
	}
	return f.save(j, disk, text, f.typed(j, disk, text, was))
}

// against tells what stands against saving a text: another file on the disk than the
// one that was typed into, or what another window has typed.
func (f *Folder) against(j *journal, disk found, text []byte, was Fingerprint) error {
	switch {
	case disk.print != was && disk.print != j.base:
		return f.conflict(j, disk, text, j.base)
	case !f.follows(j, disk, text, was):
		return f.conflict(j, disk, text, was)
	}
	return nil
}

// save writes a text that is in the journal, or could not be put there for the trouble
// told. It goes on then: what is on the disk under its own name is safe.
func (f *Folder) save(j *journal, disk found, text []byte, typed error) error {
	var t *Trouble
	if typed != nil && !errors.As(typed, &t) {
		return typed
	}
	mode, target := fs.FileMode(usual), j.name
	if disk.exists {
		mode, target = disk.mode, disk.target
	}
	if mode&0o200 == 0 {
		return trouble(ReadOnly, f.dir, j.name, nil)
	}
	var history error
	if disk.exists {
		history = f.remember(j.name, disk.text, FoundThere)
	}
	print := Print(text)
	if !disk.exists || disk.print != print {
		if err := f.writeWhole(target, text, mode); err != nil {
			return troubleWith(f.dir, j.name, err)
		}
	}
	f.ours[j.name] = print
	rests := record{baseRecord, f.now(), edit{in: []byte(print)}}
	for _, err := range []error{typed, history, f.remember(j.name, text, SavedHere), j.add(rests)} {
		if errors.As(err, &t) {
			t.Saved = true
			return t
		}
	}
	return nil
}

// An answer is a conflict that was told: what stood there, and what had been typed. A
// text saved over both in the knowledge of both answers it.
type answer struct{ theirs, typed Fingerprint }

// conflict keeps a text that cannot be saved, and tells what stands against it: what is
// on the disk, or what another window has typed.
func (f *Folder) conflict(j *journal, disk found, text []byte, was Fingerprint) error {
	c := &Conflict{Name: j.name, Mine: text, Theirs: disk.text, TheirsPrint: disk.print, Gone: !disk.exists && was != Print(nil)}
	if disk.print == j.base && j.unsaved(disk) {
		c.Theirs, c.TheirsPrint, c.InWindow, c.Gone = j.text, Print(j.text), true, false
	}
	j.answered = answer{c.TheirsPrint, Print(j.text)}
	if err := f.remember(j.name, text, Unmerged); err != nil {
		f.held[j.name] = held{text, f.now()}
	}
	base, known := f.text(j, was)
	if known && !c.Gone {
		c.Base = base
		c.Merged, c.Clean = Merge(base, c.Mine, c.Theirs)
	}
	return c
}
