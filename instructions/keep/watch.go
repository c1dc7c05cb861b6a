package keep

import (
	"context"
	"io/fs"
	"path"
	"strings"
	"time"
)

// A Change is a file of the folder that another program has changed, made or deleted.
type Change struct {
	Name  string
	Print Fingerprint // "" where the file is gone, or too large to be read
	Gone  bool
}

// Bounds of what is watched: a kit folder has a few dozen files.
const (
	mostWatched    = 4000
	deepestWatched = 4
)

// unsure is how long after it was changed a file may change again and bear the same
// time: some disks count in steps of two seconds.
const unsure = 3 * time.Second

// Watch looks at the folder each time every has passed, until the context ends, and
// sends what other programs have changed since; not what Save has written. A file is
// told when it has stood still from one look to the next, as many programs write in
// several goes. Hidden files are left out. The channel is closed at the end. While the folder is not there
// nothing is sent; Read tells that.
func (f *Folder) Watch(ctx context.Context, every time.Duration) <-chan []Change {
	changes := make(chan []Change)
	told := f.look(nil)
	last := told
	go func() {
		defer close(changes)
		ticks := time.NewTicker(every)
		defer ticks.Stop()
		for {
			select {
			case <-ctx.Done():
				return
			case <-ticks.C:
			}
			now := f.look(last)
			if now == nil {
				continue
			}
			var news []Change
			news, told = f.news(told, last, now)
			if last = now; len(news) == 0 {
				continue
			}
			select {
			case changes <- news:
			case <-ctx.Done():
				return
			}
		}
	}()
	return changes
}

// A sight is a file as it was seen.
type sight struct {
	time  time.Time
	size  int64
	print Fingerprint
	// at is when it was seen.
	at time.Time
}

// look sees all files; one whose time and size are those of before is not read again,
// unless it was changed so shortly before it was seen that it may have changed since.
// nil while the folder is not there.
func (f *Folder) look(before map[string]sight) map[string]sight {
	f.lock.Lock()
	defer f.lock.Unlock()
	if f.present() != nil {
		return nil
	}
	now := map[string]sight{}
	_ = fs.WalkDir(f.root.FS(), ".", func(name string, entry fs.DirEntry, err error) error {
		switch {
		case name == ".":
			return nil
		case err != nil || strings.HasPrefix(path.Base(name), ".") || strings.Count(name, "/") >= deepestWatched:
			if entry != nil && entry.IsDir() {
				return fs.SkipDir
			}
			return nil
		case len(now) >= mostWatched:
			return fs.SkipAll
		case !entry.Type().IsRegular():
			return nil
		}
		info, err := entry.Info()
		if err != nil {
			return nil // gone in this moment: seen so next time
		}
		s := sight{time: info.ModTime(), size: info.Size(), at: time.Now()}
		old, known := before[name]
		if known && old.time.Equal(s.time) && old.size == s.size && old.at.Sub(old.time) > unsure {
			now[name] = old
			return nil
		}
		disk, err := f.content(name)
		if err == nil {
			s.print = disk.print
		}
		now[name] = s
		return nil
	})
	return now
}

// same says whether a file is as it was seen before; one too large to be read is known
// by its time and size.
func (s sight) same(other sight) bool {
	return s.print == other.print && (s.print != "" || s.time.Equal(other.time) && s.size == other.size)
}

// news is what stood still for two looks and is not as it was told last, without our
// own doing; and what is told by now.
func (f *Folder) news(told, last, now map[string]sight) (news []Change, known map[string]sight) {
	f.lock.Lock()
	defer f.lock.Unlock()
	known = map[string]sight{}
	for name, s := range now {
		old, isTold := told[name]
		before, stood := last[name]
		switch own, isOurs := f.ours[name]; {
		case isTold && s.same(old):
			known[name] = old
		case !stood || !s.same(before):
			if isTold {
				known[name] = old
			}
		case isOurs && own == s.print:
			known[name] = s
		default:
			delete(f.ours, name)
			known[name] = s
			news = append(news, Change{Name: name, Print: s.print})
		}
	}
	for name, old := range told {
		_, there := now[name]
		_, was := last[name]
		switch {
		case !there && was:
			known[name] = old
		case !there:
			delete(f.ours, name)
			news = append(news, Change{Name: name, Gone: true})
		}
	}
	return news, known
}
