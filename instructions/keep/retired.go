package keep

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strconv"
	"strings"
	"time"
)

// A Retired thing was taken out of kit.yaml and can be put back.
type Retired struct {
	ID   string
	When time.Time
	// Number is the place that it had in its section, from 0.
	Number int
	// Text is the section with this one entry, as it stood.
	Text []byte
}

// retiredThings is the folder in which they stand, each in a file of its own.
const retiredThings = home + "/retired"

// mostRetired is how many are kept; the oldest go first.
const mostRetired = 100

// Retire keeps what was taken out of kit.yaml: the text of its entry, and the place it had.
func (f *Folder) Retire(text []byte, number int) error {
	f.lock.Lock()
	defer f.lock.Unlock()
	return f.alone("kit.yaml", func() error {
		all, err := f.retired()
		if err != nil {
			return err
		}
		next := 1
		if len(all) > 0 {
			newest, _, _ := strings.Cut(all[0].ID, "-")
			if before, err := strconv.Atoi(newest); err == nil {
				next = before + 1
			}
		}
		id := fmt.Sprintf("%08d-%s-%d", next, f.now().UTC().Format(stateTime), number)
		if err := f.writeWhole(retiredThings+"/"+id, text, usual); err != nil {
			return troubleWith(f.dir, "kit.yaml", err)
		}
		for _, old := range all[min(mostRetired-1, len(all)):] {
			_ = f.root.Remove(retiredThings + "/" + old.ID) // else the next one does it
		}
		return nil
	})
}

// Retired lists what was taken out, the newest first.
func (f *Folder) Retired() ([]Retired, error) {
	f.lock.Lock()
	defer f.lock.Unlock()
	return f.retired()
}

func (f *Folder) retired() ([]Retired, error) {
	entries, err := fs.ReadDir(f.root.FS(), retiredThings)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, troubleWith(f.dir, "kit.yaml", err)
	}
	var all []Retired
	for _, entry := range entries {
		parts := strings.Split(entry.Name(), "-")
		if len(parts) != 3 {
			continue // still being written, or nobody knows what
		}
		when, badTime := time.Parse(stateTime, parts[1])
		number, badNumber := strconv.Atoi(parts[2])
		text, unread := fs.ReadFile(f.root.FS(), retiredThings+"/"+entry.Name())
		if badTime == nil && badNumber == nil && unread == nil {
			all = append(all, Retired{ID: entry.Name(), When: when, Number: number, Text: text})
		}
	}
	slices.Reverse(all)
	return all, nil
}

// PutBack says that a retired thing is in kit.yaml again. One that is not kept any more is no
// error.
func (f *Folder) PutBack(id string) error {
	f.lock.Lock()
	defer f.lock.Unlock()
	if strings.ContainsAny(id, `/\`) || strings.HasPrefix(id, ".") {
		return trouble(BadName, f.dir, id, nil)
	}
	if err := f.root.Remove(retiredThings + "/" + id); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return troubleWith(f.dir, "kit.yaml", err)
	}
	return nil
}
