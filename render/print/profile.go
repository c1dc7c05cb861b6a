package print

import (
	"io"
	"os"
	"path/filepath"
	"time"
)

const (
	// profilePrefix begins the name of each temporary folder, so that a later run can tell ours from others'.
	profilePrefix = "tallyfold-print-"
	// lockName is held locked as long as the folder is in use; the lock goes with the process, however it ends.
	lockName = "lock"
	// homeName is the browser's home: its profile, its temporary files and all that it may write to. It is short, as
	// the path of a socket inside must stay below 104 characters.
	homeName = "h"
	// unlockedAge is how old a folder without a lock must be before it counts as left over: between making a folder
	// and locking it there is a moment.
	unlockedAge = time.Hour
)

// profile is a temporary folder of one browser.
type profile struct {
	folder string
	lock   io.Closer
}

// newProfile makes a folder that only the given account can write to; nil means ours.
func newProfile(parent string, owner *account) (*profile, error) {
	folder, err := os.MkdirTemp(parent, profilePrefix)
	if err != nil {
		return nil, err
	}
	p := &profile{folder: folder}
	if p.lock, err = createLock(filepath.Join(folder, lockName)); err == nil {
		err = p.makeHome(owner)
	}
	if err != nil {
		p.remove()
		return nil, err
	}
	return p, nil
}

func (p *profile) makeHome(owner *account) error {
	if err := os.Mkdir(p.home(), 0o700); err != nil || owner == nil {
		return err
	}
	// The way to its home must be open to the other account, but not the list of what else is there.
	if err := os.Chmod(p.folder, 0o711); err != nil {
		return err
	}
	return os.Chown(p.home(), int(owner.user), int(owner.group))
}

func (p *profile) home() string { return filepath.Join(p.folder, homeName) }

// remove deletes the folder. A process of the browser that is just ending may still write a file, so a few tries
// are made; what stays all the same is swept by a later run.
func (p *profile) remove() {
	for range 20 {
		if os.RemoveAll(p.home()) == nil {
			break
		}
		time.Sleep(10 * time.Millisecond)
	}
	if p.lock != nil {
		p.lock.Close()
	}
	os.RemoveAll(p.folder)
}

// sweep deletes the folders of earlier runs that ended without doing so themselves: killed, or by a power cut.
func sweep(parent string) {
	folders, err := filepath.Glob(filepath.Join(parent, profilePrefix+"*"))
	if err != nil {
		return
	}
	for _, folder := range folders {
		info, err := os.Lstat(folder)
		if err != nil || !info.IsDir() || !ownedByUs(info) {
			continue
		}
		lock, err := takeLock(filepath.Join(folder, lockName))
		switch {
		case err == nil:
			(&profile{folder: folder, lock: lock}).remove()
		case os.IsNotExist(err) && time.Since(info.ModTime()) > unlockedAge:
			os.RemoveAll(folder)
		}
	}
}
