package keep

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strconv"
	"strings"
	"time"
)

// A State is a text that a file had once.
type State struct {
	// ID names it for Restore.
	ID    string
	Print Fingerprint // its first sixteen digits
	When  time.Time
	Bytes int64
	How   How
}

// How says how a state came into the history.
type How string

// The ways a state comes into the history.
const (
	SavedHere  How = "saved"    // by Save
	FoundThere How = "found"    // on the disk, as another program left it
	Unmerged   How = "unmerged" // typed in a window while another had changed the same words
)

// Bounds of the history of one file; the oldest states go first.
const (
	mostStates   = 300
	largestStore = 16 << 20
)

// stateTime is how the time stands in the name of a state, in UTC.
const stateTime = "20060102T150405.000"

// shortPrint is how many digits of a fingerprint stand in the name of a state.
const shortPrint = 16

// History lists the states of a file that are kept, the newest first.
func (f *Folder) History(name string) ([]State, error) {
	if err := checkName(name); err != nil {
		return nil, err
	}
	f.lock.Lock()
	defer f.lock.Unlock()
	if err := f.present(); err != nil {
		return nil, err
	}
	states, err := f.states(name)
	slices.Reverse(states)
	return states, err
}

// State gives the text of one state of a file.
func (f *Folder) State(name, id string) ([]byte, error) {
	if err := checkName(name); err != nil {
		return nil, err
	}
	f.lock.Lock()
	defer f.lock.Unlock()
	if err := f.present(); err != nil {
		return nil, err
	}
	return f.state(name, id)
}

func (f *Folder) state(name, id string) ([]byte, error) {
	s, ok := readState(id)
	if !ok {
		return nil, trouble(Gone, f.dir, name, nil)
	}
	text, err := f.root.ReadFile(path.Join(file("saved", name), id))
	if err != nil || !strings.HasPrefix(string(Print(text)), string(s.Print)) {
		return nil, trouble(Gone, f.dir, name, err)
	}
	return text, nil
}

// Restore saves a state of the history over a file; was is the fingerprint of what
// stands on the disk. What was typed and not saved can be had back by Undo.
func (f *Folder) Restore(name, id string, was Fingerprint) (Fingerprint, error) {
	text, err := f.State(name, id)
	if err != nil {
		return "", err
	}
	f.lock.Lock()
	defer f.lock.Unlock()
	err = f.write(name, nil, func(j *journal, disk found) error {
		if disk.print != was {
			return f.conflict(j, disk, text, was)
		}
		return f.save(j, disk, text, f.typed(j, disk, text, Print(j.text)))
	})
	return Print(text), err
}

// states are those of a file, oldest first.
func (f *Folder) states(name string) ([]State, error) {
	entries, err := fs.ReadDir(f.root.FS(), file("saved", name))
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, troubleWith(f.dir, name, err)
	}
	var states []State
	for _, entry := range entries {
		s, ok := readState(entry.Name())
		info, err := entry.Info()
		if !ok || err != nil {
			continue
		}
		s.Bytes = info.Size()
		states = append(states, s)
	}
	return states, nil
}

// readState reads the name of a state: number, time, how, fingerprint.
func readState(id string) (State, bool) {
	parts := strings.Split(id, "-")
	if len(parts) != 4 || strings.Contains(id, "/") || len(parts[3]) != shortPrint {
		return State{}, false
	}
	when, err := time.Parse(stateTime, parts[1])
	return State{ID: id, When: when, How: How(parts[2]), Print: Fingerprint(parts[3])}, err == nil
}

// remember puts a text into the history of a file, unless it is the newest state there
// already, and takes the oldest out where there are too many.
func (f *Folder) remember(name string, text []byte, how How) error {
	states, err := f.states(name)
	if err != nil {
		return err
	}
	print, number := Print(text)[:shortPrint], 1
	if n := len(states); n > 0 {
		if states[n-1].Print == print {
			return nil
		}
		last, _, _ := strings.Cut(states[n-1].ID, "-")
		before, err := strconv.Atoi(last)
		if err != nil {
			return trouble(Other, f.dir, name, err)
		}
		number = before + 1
	}
	id := fmt.Sprintf("%08d-%s-%s-%s", number, f.now().UTC().Format(stateTime), how, print)
	folder := file("saved", name)
	if err := f.writeWhole(path.Join(folder, id), text, usual); err != nil {
		return troubleWith(f.dir, name, err)
	}
	f.forget(folder, states, int64(len(text)))
	return nil
}

// forget takes the oldest states out until the rest fits with one of size more.
func (f *Folder) forget(folder string, states []State, size int64) {
	for _, s := range states {
		size += s.Bytes
	}
	for len(states) >= mostStates || len(states) > 0 && size > largestStore {
		_ = f.root.Remove(path.Join(folder, states[0].ID)) // else the next saving does it
		size -= states[0].Bytes
		states = states[1:]
	}
}

// text finds a text by its fingerprint: among those that were given out, that the
// journal went through, or that are in the history.
func (f *Folder) text(j *journal, print Fingerprint) ([]byte, bool) {
	if print == "" {
		return nil, true
	}
	for _, g := range f.given {
		if g.print == print {
			return g.text, true
		}
	}
	text := j.text
	for i := len(j.done); ; i-- {
		if Print(text) == print {
			return text, true
		}
		if i == 0 {
			break
		}
		text = j.done[i-1].back().made(text)
	}
	states, err := f.states(j.name)
	if err != nil {
		return nil, false
	}
	for _, s := range slices.Backward(states) {
		if strings.HasPrefix(string(print), string(s.Print)) {
			text, err := f.state(j.name, s.ID)
			return text, err == nil
		}
	}
	return nil, false
}
