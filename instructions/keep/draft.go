package keep

import (
	"cmp"
	"errors"
	"io/fs"
	"slices"
	"time"
)

// A Draft is a text that was typed and is not on the disk under its name.
type Draft struct {
	Name string
	Text []byte
	When time.Time
	// Base is the fingerprint of the file that it was typed into.
	Base Fingerprint
	// Held: it could not be written down anywhere and is lost when the program ends.
	Held bool
}

// Draft writes down what was typed into a file, without saving the file. was is the
// fingerprint of the text that the typing began from, as Read or the last Draft gave
// it; the new one is given back. Once Draft has returned without an error, the text is
// on the disk.
//
// Where somebody else has typed into the file meanwhile, in another window, the text
// is put into the history and nothing else is changed: the error is a *Conflict. Where
// it cannot be written down, it is held in memory: the error is a *Trouble that says so.
func (f *Folder) Draft(name string, text []byte, was Fingerprint) (Fingerprint, error) {
	if err := checkText(name, text); err != nil {
		return "", err
	}
	f.lock.Lock()
	defer f.lock.Unlock()
	err := f.write(name, text, func(j *journal, disk found) error { return f.typed(j, disk, text, was) })
	return Print(text), err
}

// checkText refuses names and texts that no file of a kit can have.
func checkText(name string, text []byte) error {
	if err := checkName(name); err != nil {
		return err
	}
	if len(text) > MaxBytes {
		return trouble(TooLarge, "", name, nil)
	}
	return nil
}

// write does something with a journal, alone and with the folder present. A text that
// cannot be written is held.
func (f *Folder) write(name string, text []byte, do func(*journal, found) error) error {
	err := f.present()
	if err == nil {
		err = f.alone(name, func() error {
			disk, err := f.content(name)
			if err != nil {
				return err
			}
			j, err := f.journal(name, disk)
			if err != nil {
				return err
			}
			if err := j.catchUp(disk); err != nil {
				return err
			}
			return do(j, disk)
		})
	}
	var t *Trouble
	switch {
	case err == nil:
		delete(f.held, name)
	case errors.As(err, &t) && !t.Saved && text != nil:
		t.Kept = true
		f.held[name] = held{text, f.now()}
	}
	return err
}

// typed adds what was typed to the journal.
func (f *Folder) typed(j *journal, disk found, text []byte, was Fingerprint) error {
	switch {
	case Print(text) == Print(j.text) && j.size > 0:
		return nil
	case f.follows(j, disk, text, was):
		return j.add(record{editRecord, f.now(), between(j.text, text)})
	}
	return f.conflict(j, disk, text, was)
}

// follows says whether a text was made from what was typed last; or is the same; or
// answers the conflict that was told.
func (f *Folder) follows(j *journal, disk found, text []byte, was Fingerprint) bool {
	if was == "" {
		was = Print(nil)
	}
	current := Print(j.text)
	answers := j.answered.typed == current && (j.answered.theirs == was || j.answered.theirs == "" && was == Print(nil))
	return was == current || Print(text) == current || f.isHeldFrom(j.name, was) || answers && disk.print == j.answered.theirs
}

// isHeldFrom: the typing began from a text that is in memory only, so nothing else can
// have been written since.
func (f *Folder) isHeldFrom(name string, was Fingerprint) bool {
	h, ok := f.held[name]
	return ok && Print(h.text) == was
}

// catchUp takes over what another program has made of the file, where nothing typed
// stands against it.
func (j *journal) catchUp(disk found) error {
	if disk.print == j.base {
		return nil
	}
	if j.size == 0 { // nothing was ever typed
		j.text, j.base = disk.text, disk.print
		return nil
	}
	now := j.folder.now()
	rests := record{baseRecord, now, edit{in: []byte(disk.print)}}
	switch Print(j.text) {
	case disk.print: // it was saved, and the program killed before it could note that
		return j.add(rests)
	case j.base:
		return j.add(record{editRecord, now, between(j.text, disk.text)}, rests)
	}
	return nil
}

// Drafts lists what was typed and is not saved, in all files of the folder, the last
// typed first. It is asked at the start, and shows what a killed program had written
// down; while the program runs it also has what could not be written down.
func (f *Folder) Drafts() ([]Draft, error) {
	f.lock.Lock()
	defer f.lock.Unlock()
	var drafts []Draft
	for name, h := range f.held {
		drafts = append(drafts, Draft{Name: name, Text: h.text, When: h.when, Held: true})
	}
	err := f.present()
	if err == nil {
		err = f.alone("", func() error { return f.unsaved(&drafts) })
	}
	slices.SortFunc(drafts, func(a, b Draft) int { return cmp.Or(b.When.Compare(a.When), cmp.Compare(a.Name, b.Name)) })
	return drafts, err
}

func (f *Folder) unsaved(drafts *[]Draft) error {
	f.sweep(".")
	f.sweep(home + "/typed")
	entries, err := fs.ReadDir(f.root.FS(), home+"/typed")
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return troubleWith(f.dir, "", err)
	}
	for _, entry := range entries {
		name := unflat.Replace(entry.Name())
		if _, held := f.held[name]; held || checkName(name) != nil {
			continue
		}
		disk, err := f.content(name)
		if err != nil {
			return err
		}
		j, err := f.journal(name, disk)
		if err != nil {
			return err
		}
		if j.unsaved(disk) {
			*drafts = append(*drafts, Draft{Name: name, Text: j.text, When: j.when, Base: j.base})
		}
	}
	return nil
}

// unsaved says whether something was typed that is not on the disk.
func (j *journal) unsaved(disk found) bool {
	print := Print(j.text)
	return print != disk.print && print != j.base && (disk.exists || len(j.text) > 0)
}

// Undo takes the last batch of typing back, also one of an earlier session, or one that
// another program made. It gives the text after it, and moved = false where there is
// nothing to take back. Nothing is saved: the text is a draft.
func (f *Folder) Undo(name string) (text []byte, moved bool, err error) {
	return f.step(name, undoRecord)
}

// Redo makes again what Undo has taken back last.
func (f *Folder) Redo(name string) (text []byte, moved bool, err error) {
	return f.step(name, redoRecord)
}

func (f *Folder) step(name string, kind byte) (text []byte, moved bool, err error) {
	if err := checkName(name); err != nil {
		return nil, false, err
	}
	f.lock.Lock()
	defer f.lock.Unlock()
	err = f.write(name, nil, func(j *journal, _ found) error {
		moved = kind == undoRecord && len(j.done) > 0 || kind == redoRecord && len(j.undone) > 0
		if !moved {
			text = j.text
			return nil
		}
		err := j.add(record{kind: kind, when: f.now()})
		text = j.text
		return err
	})
	return text, moved && err == nil, err
}
