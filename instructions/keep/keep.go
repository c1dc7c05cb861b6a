// Package keep holds a kit folder open for editing and loses nothing of it: not when
// the program is killed in the middle of a write, not when another program or a second
// page has changed the file meanwhile, not when the disk is full or the folder gone.
//
//	write.go    a file is there as it was or as it is to be, never half
//	save.go     a text is saved, unless the file has become another since
//	merge.go    two texts that came of one are brought together line by line
//	journal.go  every batch of keystrokes, on the disk before it is answered for
//	draft.go    what was typed and not saved; undo and redo across sessions
//	history.go  the texts that were saved
//	retired.go  what was taken out of kit.yaml and can be put back
//	watch.go    files that another program has changed
//
// What is kept stands in the kit folder itself, under .tallyfold, so that it goes
// where the folder goes. No reader of kits looks there, and version control is told
// to leave it alone.
package keep

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"io/fs"
	"os"
	"path"
	"slices"
	"sync"
	"time"
)

// MaxBytes is the largest file that is opened for editing. A kit.yaml may have a
// sixteenth of it.
const MaxBytes = 4 << 20

// home is the folder inside the kit folder in which drafts and history stand.
const home = ".tallyfold"

// A Fingerprint tells one text from any other; "" is that of no file at all.
type Fingerprint string

// Print gives the fingerprint of a text (SHA-256).
func Print(text []byte) Fingerprint {
	sum := sha256.Sum256(text)
	return Fingerprint(hex.EncodeToString(sum[:]))
}

// A Folder is a kit folder open for editing. Its methods may be called from several
// goroutines, and several programs may have the same folder open.
type Folder struct {
	dir string
	// lock guards what is below, and is held while anything is written.
	lock     sync.Mutex
	root     *os.Root
	journals map[string]*journal
	// held are texts that could not be written, by the name of their file.
	held map[string]held
	// ours are the fingerprints of files as this folder wrote them last.
	ours map[string]Fingerprint
	// given are the texts that editors were given last: what they save may rest on one.
	given []given
	now   func() time.Time
}

// A given text is one that Read gave.
type given struct {
	print Fingerprint
	text  []byte
}

// mostGiven is how many given texts are remembered.
const mostGiven = 64

// A held text is in memory only.
type held struct {
	text []byte
	when time.Time
}

// Open opens a kit folder for editing. Nothing is written to it yet.
func Open(dir string) (*Folder, error) {
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, troubleWith(dir, "", err)
	}
	return &Folder{dir: dir, root: root, journals: map[string]*journal{}, held: map[string]held{}, ours: map[string]Fingerprint{}, now: time.Now}, nil
}

// Close lets go of the folder. What is only in memory is lost then: see Drafts.
func (f *Folder) Close() error {
	f.lock.Lock()
	defer f.lock.Unlock()
	return f.root.Close()
}

// A Text is one file of the folder as it stands on the disk and as it was last typed.
type Text struct {
	Name string
	// Saved is what stands on the disk, and SavedPrint its fingerprint, "" for no file.
	Saved      []byte
	SavedPrint Fingerprint
	// Typed is what was typed last; the same as Saved where nothing is unsaved.
	Typed      []byte
	TypedPrint Fingerprint
	// Unsaved: Typed is not on the disk. It rests on the file with the fingerprint Base,
	// which another program may have changed since.
	Unsaved bool
	Base    Fingerprint
	// Undos and Redos are how many steps can be taken back, and taken again.
	Undos, Redos int
}

// Read gives a file with what was typed into it and not saved. A file that is not
// there is an empty text.
func (f *Folder) Read(name string) (Text, error) {
	if err := checkName(name); err != nil {
		return Text{}, err
	}
	f.lock.Lock()
	defer f.lock.Unlock()
	if err := f.present(); err != nil {
		return Text{}, err
	}
	alone := f.alone
	if _, err := f.root.Stat(home); err != nil { // nobody has written anything yet
		alone = func(_ string, do func() error) error { return do() }
	}
	var text Text
	err := alone(name, func() (err error) {
		text, err = f.read(name)
		return err
	})
	return text, err
}

func (f *Folder) read(name string) (Text, error) {
	disk, err := f.content(name)
	if err != nil {
		return Text{}, err
	}
	j, err := f.journal(name, disk)
	if err != nil {
		return Text{}, err
	}
	if err := j.catchUp(disk); err != nil && !j.unsaved(disk) {
		// It cannot be written down that the file is another by now; it is all the same.
		j = &journal{text: disk.text, base: disk.print}
	}
	text := Text{Name: name, Saved: disk.text, SavedPrint: disk.print, Typed: j.text, Base: j.base,
		Unsaved: j.unsaved(disk), Undos: len(j.done), Redos: len(j.undone)}
	if h, ok := f.held[name]; ok {
		text.Typed, text.Unsaved = h.text, true
	}
	text.TypedPrint = Print(text.Typed)
	f.give(text.TypedPrint, text.Typed)
	return text, nil
}

func (f *Folder) give(print Fingerprint, text []byte) {
	if slices.ContainsFunc(f.given, func(g given) bool { return g.print == print }) {
		return
	}
	if len(f.given) == mostGiven {
		f.given = slices.Delete(f.given, 0, 1)
	}
	f.given = append(f.given, given{print, text})
}

// A found file is what stands on the disk under a name.
type found struct {
	text   []byte
	print  Fingerprint
	mode   fs.FileMode
	exists bool
	// target is the file itself, where the name is a link to it inside the folder.
	target string
}

// content reads a file; one that is not there exists = false.
func (f *Folder) content(name string) (found, error) {
	target, info, err := f.resolve(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return found{target: target}, nil
	case err != nil:
		return found{}, troubleWith(f.dir, name, err)
	case !info.Mode().IsRegular():
		return found{}, trouble(NoFile, f.dir, name, nil)
	case info.Size() > MaxBytes:
		return found{}, trouble(TooLarge, f.dir, name, nil)
	}
	file, err := f.root.Open(target)
	if err != nil {
		return found{}, troubleWith(f.dir, name, err)
	}
	defer file.Close()
	text, err := io.ReadAll(io.LimitReader(file, MaxBytes+1))
	if err != nil {
		return found{}, troubleWith(f.dir, name, err)
	}
	return found{text: text, print: Print(text), mode: info.Mode().Perm(), exists: true, target: target}, nil
}

// mostLinks is how many links one after the other are followed.
const mostLinks = 8

// resolve follows links that stay inside the folder, and gives the file itself.
func (f *Folder) resolve(name string) (target string, info fs.FileInfo, err error) {
	target = name
	for range mostLinks {
		info, err = f.root.Lstat(target)
		if err != nil || info.Mode()&fs.ModeSymlink == 0 {
			return target, info, err
		}
		link, err := f.root.Readlink(target)
		if err != nil {
			return target, nil, err
		}
		if next := path.Join(path.Dir(target), link); !path.IsAbs(link) && fs.ValidPath(next) {
			target = next
			continue
		}
		return target, nil, errLeadsOut
	}
	return target, nil, errLeadsOut
}

var errLeadsOut = errors.New("a link that leads out of the folder")

// present says whether the folder is still where it was, and opens it anew where it
// has gone and come back.
func (f *Folder) present() error {
	there, err := os.Stat(f.dir)
	if err != nil {
		return trouble(Vanished, f.dir, "", err)
	}
	if open, err := f.root.Stat("."); err == nil && os.SameFile(there, open) {
		return nil
	}
	root, err := os.OpenRoot(f.dir)
	if err != nil {
		return trouble(Vanished, f.dir, "", err)
	}
	f.root.Close()
	f.root, f.journals = root, map[string]*journal{}
	return nil
}
