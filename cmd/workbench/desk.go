package workbench

import (
	"errors"
	"fmt"
	"io/fs"
	"net/http"
	"os"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"

	"tallyfold/instructions/keep"
	"tallyfold/kit/picture"
	"tallyfold/kit/proof"
	"tallyfold/templates"
)

// A desk is one open kit: its folder, what was last found of it, and the pages that look
// at it. Changes are made one at a time, under lock.
type desk struct {
	bench  *Workbench
	name   string // its place under the bench's folder, with forward slashes
	path   string // on the disk
	folder *keep.Folder
	news   news

	lock sync.Mutex
	// proof is of the state of the folder that proven tells.
	proof  *proof.Proof
	proven string
	tried  bool // remedies of proof have been tried
	marked markedText
	// savers wait for a pause in the typing, a file each.
	savers map[string]*time.Timer
	// troubles say of each file why it is not saved; clashes have what another program has
	// made of the same lines.
	troubles map[string]string
	clashes  map[string]*keep.Conflict
	// last are the texts as they were last read or typed, for when the folder is gone.
	last map[string]keep.Text
	// notes are told at the head of the page for a while.
	notes []note
	// changed are the files in the order in which they were last changed here.
	changed  []string
	pictures picture.Kept
}

func (w *Workbench) openDesk(name, path string) (*desk, error) {
	folder, err := keep.Open(path)
	if err != nil {
		return nil, err
	}
	d := &desk{
		bench: w, name: name, path: path, folder: folder,
		savers: map[string]*time.Timer{}, troubles: map[string]string{}, clashes: map[string]*keep.Conflict{},
		last: map[string]keep.Text{},
	}
	go d.watch()
	// What a program that was killed had written down is saved now.
	if drafts, err := folder.Drafts(); err == nil {
		for _, draft := range drafts {
			d.saveSoon(draft.Name)
		}
	}
	return d, nil
}

// lookEvery is how often the folder is looked at for changes by other programs.
const lookEvery = 400 * time.Millisecond

// watch takes note of what other programs do to the folder.
func (d *desk) watch() {
	for changes := range d.folder.Watch(d.bench.running, lookEvery) {
		d.lock.Lock()
		for _, change := range changes {
			if change.Gone {
				d.note(change.Name + " was taken away by another program. What was saved of it is under “Earlier states”.")
			}
		}
		d.lock.Unlock()
		d.news.tell()
	}
}

func (d *desk) close() {
	d.lock.Lock()
	defer d.lock.Unlock()
	for name, timer := range d.savers {
		if timer.Stop() {
			d.save(name)
		}
	}
	if err := d.folder.Close(); err != nil {
		d.bench.settings.Note(err.Error())
	}
}

// onDesk opens the kit that an address names and hands it on.
func (w *Workbench) onDesk(do func(http.ResponseWriter, *http.Request, *desk)) http.HandlerFunc {
	return func(out http.ResponseWriter, in *http.Request) {
		d, err := w.desk(in.PathValue("kit"))
		if err != nil {
			w.sorry(out, http.StatusNotFound, err.Error())
			return
		}
		do(out, in, d)
	}
}

// desk gives a kit by its place. Only kits that were found under the folder have one, so
// that no address leads out of it.
func (w *Workbench) desk(name string) (*desk, error) {
	w.lock.Lock()
	defer w.lock.Unlock()
	if d := w.desks[name]; d != nil {
		return d, nil
	}
	for _, k := range w.kits() {
		if k.name != name {
			continue
		}
		d, err := w.openDesk(name, k.path)
		if err == nil {
			w.desks[name] = d
		}
		return d, err
	}
	return nil, fmt.Errorf("there is no kit “%s” in %s any more", name, w.root)
}

// proved judges the kit as it is typed now. The lock is held.
func (d *desk) proved() *proof.Proof {
	drafts, err := d.folder.Drafts()
	if err != nil {
		d.trouble("", err)
		if d.proof != nil {
			return d.proof // of what was there last
		}
	} else {
		delete(d.troubles, "")
	}
	today := d.bench.settings.Now()
	texts := map[string][]byte{}
	for _, draft := range drafts {
		texts[draft.Name] = draft.Text
	}
	if proven := today.Format(time.DateOnly) + d.stamp(texts); d.proof == nil || d.proven != proven {
		d.proof, d.proven, d.tried = proof.OfChanged(os.DirFS(d.path), d.base(), today, texts), proven, false
	}
	return d.proof
}

// stamp tells one state of the folder from any other: its texts by what they say, as saving
// what is typed changes nothing, all else by size and time. What proof does not read counts
// too; it seldom changes.
func (d *desk) stamp(typed map[string][]byte) string {
	var all []string
	root := os.DirFS(d.path)
	_ = fs.WalkDir(root, ".", func(name string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil || name == ".":
		case strings.HasPrefix(entry.Name(), ".") && entry.IsDir():
			return fs.SkipDir
		case isText(name):
			text, isTyped := typed[name]
			if !isTyped {
				text, _ = fs.ReadFile(root, name)
			}
			all = append(all, name, string(keep.Print(text)))
		default:
			if info, err := entry.Info(); err == nil && !entry.IsDir() {
				all = append(all, name, strconv.FormatInt(info.Size(), 10), info.ModTime().String())
			}
		}
		return nil
	})
	for name := range typed {
		if _, err := fs.Stat(root, name); err != nil { // typed and not there yet
			all = append(all, name, string(keep.Print(typed[name])))
		}
	}
	return strings.Join(all, " ")
}

// triedOut is proved with the remedies tried.
func (d *desk) triedOut() *proof.Proof {
	p := d.proved()
	if !d.tried {
		p.Try()
		d.tried = true
	}
	return p
}

// base is the name of the kit's own folder.
func (d *desk) base() string {
	return d.name[strings.LastIndexByte(d.name, '/')+1:]
}

// templates are those of the program, the maker's own over them.
func (d *desk) templates() templates.Set {
	own := d.path + "/" + templates.OwnFolder
	if info, err := os.Stat(own); err == nil && info.IsDir() {
		return templates.Shipped().Over(os.DirFS(own))
	}
	return templates.Shipped()
}

// read gives a file as it is typed now. While the folder is gone that is what was known of
// it last, so that nothing typed meanwhile is lost.
func (d *desk) read(name string) (keep.Text, error) {
	text, err := d.folder.Read(name)
	if err == nil {
		d.last[name] = text
		return text, nil
	}
	if last, known := d.last[name]; known {
		return last, nil
	}
	return text, err
}

// put takes over what a file is to be: written down at once, saved at the next pause. was
// is what the change was made from. Where another program has changed other lines in the
// meantime, both are kept.
func (d *desk) put(name string, text []byte, was keep.Fingerprint) (keep.Fingerprint, error) {
	print, err := d.folder.Draft(name, text, was)
	var conflict *keep.Conflict
	if errors.As(err, &conflict) && conflict.Clean {
		text = conflict.Merged
		print, err = d.folder.Draft(name, text, conflict.TheirsPrint)
		d.note(name + " was changed in another place as well. Both changes are kept.")
	}
	var trouble *keep.Trouble
	switch {
	case errors.As(err, &trouble):
		d.trouble(name, err)
		if !trouble.Kept {
			return "", err
		}
		err = nil
	case err != nil:
		return "", err
	default:
		delete(d.troubles, name)
	}
	d.last[name] = keep.Text{Name: name, Typed: text, TypedPrint: print, Unsaved: true}
	d.changed = append(slices.DeleteFunc(d.changed, func(other string) bool { return other == name }), name)
	d.saveSoon(name)
	return print, nil
}

// pause is how long nothing is typed before a file is saved. What is typed is written down
// before that, at once.
const pause = 500 * time.Millisecond

// retry is how long after a trouble saving is tried again.
const retry = 3 * time.Second

func (d *desk) saveSoon(name string) { d.saveAfter(name, pause) }

func (d *desk) saveAfter(name string, wait time.Duration) {
	if timer := d.savers[name]; timer != nil {
		timer.Stop()
	}
	d.savers[name] = time.AfterFunc(wait, func() {
		d.lock.Lock()
		d.save(name)
		d.lock.Unlock()
		d.news.tell()
	})
}

// save writes what is typed under its name. The lock is held.
func (d *desk) save(name string) {
	text, err := d.folder.Read(name)
	if err == nil && !text.Unsaved {
		delete(d.troubles, name)
		delete(d.clashes, name)
		return
	}
	if err == nil {
		_, err = d.folder.Save(name, text.Typed, text.TypedPrint)
	}
	var conflict *keep.Conflict
	if errors.As(err, &conflict) && conflict.Clean {
		_, err = d.folder.Save(name, conflict.Merged, conflict.TheirsPrint)
		if err == nil {
			d.note(name + " was changed by another program while you worked on it. Both changes are kept.")
		}
	}
	switch {
	case err == nil:
		delete(d.troubles, name)
		delete(d.clashes, name)
	case errors.As(err, &conflict):
		d.clashes[name] = conflict
	default:
		d.trouble(name, err)
		if d.bench.running.Err() == nil {
			d.saveAfter(name, retry)
			d.troubles[name] += " It is tried again every few seconds."
		}
	}
}

// A note tells what has happened, for noteStays.
type note struct {
	words string
	when  time.Time
}

const noteStays = time.Minute

func (d *desk) note(words string) {
	d.notes = append(d.notes, note{words, d.bench.settings.Now()})
}

// trouble notes why a file is not saved, or not read.
func (d *desk) trouble(name string, err error) {
	d.troubles[name] = err.Error()
}
