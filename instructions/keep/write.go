package keep

import (
	"crypto/rand"
	"errors"
	"io/fs"
	"os"
	"path"
	"strings"
	"time"
)

// temporary begins the name of a file that is being written.
const temporary = ".tallyfold-writing-"

// usual are the rights of a new file, as a text editor would give it.
const usual = 0o644

// writeWhole writes a file whole or not at all: into a temporary file beside it, onto
// the disk, then under its name, and the folder onto the disk. Whenever the program
// is killed, the file is the old or the new one.
func (f *Folder) writeWhole(name string, text []byte, mode fs.FileMode) (err error) {
	if err := f.makeFolder(path.Dir(name)); err != nil {
		return err
	}
	beside := path.Join(path.Dir(name), temporary+rand.Text())
	file, err := f.root.OpenFile(beside, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			file.Close()
			_ = f.root.Remove(beside) // else swept at the next writing
		}
	}()
	if _, err = file.Write(text); err != nil {
		return err
	}
	if err = file.Chmod(mode); err != nil {
		return err
	}
	if err = file.Sync(); err != nil {
		return err
	}
	if err = file.Close(); err != nil {
		return err
	}
	if err = f.root.Rename(beside, name); err != nil {
		return err
	}
	f.syncFolder(path.Dir(name))
	return nil
}

// makeFolder makes a folder inside the kit folder, and those it stands in.
func (f *Folder) makeFolder(name string) error {
	if name == "." {
		return nil
	}
	return f.root.MkdirAll(name, 0o755)
}

// syncFolder brings new names onto the disk. Some systems cannot do that for a folder;
// the file itself is safe by then.
func (f *Folder) syncFolder(name string) {
	if folder, err := f.root.Open(name); err == nil {
		_ = folder.Sync()
		folder.Close()
	}
}

// sweep takes away what programs that were killed have left half written. No other
// program is writing while the lock is held.
func (f *Folder) sweep(folder string) {
	entries, err := fs.ReadDir(f.root.FS(), folder)
	if err != nil {
		return
	}
	for _, entry := range entries {
		if strings.HasPrefix(entry.Name(), temporary) {
			_ = f.root.Remove(path.Join(folder, entry.Name()))
		}
	}
}

// longestWait is how long another program may hold the folder. It writes a few files,
// which takes milliseconds.
const longestWait = 5 * time.Second

// alone does something while no other program writes to the folder. A folder that
// nothing can be written to needs no such care, and can still be read.
func (f *Folder) alone(name string, do func() error) error {
	if err := f.makeHome(); err != nil {
		return do()
	}
	file, err := f.root.OpenFile(home+"/lock", os.O_RDWR|os.O_CREATE, usual)
	if err != nil {
		return do()
	}
	defer file.Close() // which lets the lock go
	for began := time.Now(); ; time.Sleep(2 * time.Millisecond) {
		ok, err := tryLock(file)
		if ok || err != nil { // a disk without locks is one program's own
			return do()
		}
		if time.Since(began) > longestWait {
			return trouble(Busy, f.dir, name, nil)
		}
	}
}

// makeHome makes the folder for drafts and history, hidden from version control.
func (f *Folder) makeHome() error {
	if _, err := f.root.Stat(home + "/.gitignore"); err == nil {
		return nil
	}
	if err := f.makeFolder(home); err != nil {
		return err
	}
	if err := f.root.WriteFile(home+"/.gitignore", []byte("*\n"), usual); err != nil && !errors.Is(err, fs.ErrExist) {
		return err
	}
	return nil
}
