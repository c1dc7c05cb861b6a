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
// sends what other programs have changed since; not what Save has written. Hidden
// files are left out. The channel is closed at the end. While the folder is not there
// nothing is sent; Read tells that.
func (f *Folder) Watch(ctx context.Context, every time.Duration) <-chan []Change {
	changes := make(chan []Change)
	seen := f.look(nil)
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
			now := f.look(seen)
			if now == nil {
				continue
			}
			news := f.news(seen, now)
			seen = now
			if len(news) == 0 {
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

// news is what has changed between two looks, without our own doing.
func (f *Folder) news(before, now map[string]sight) []Change {
	f.lock.Lock()
	defer f.lock.Unlock()
	var news []Change
	for name, s := range now {
		old, known := before[name]
		if known && old.print == s.print && (s.print != "" || old.time.Equal(s.time) && old.size == s.size) {
			continue
		}
		if own, isOurs := f.ours[name]; isOurs && own == s.print {
			continue
		}
		delete(f.ours, name)
		news = append(news, Change{Name: name, Print: s.print})
	}
	for name := range before {
		if _, there := now[name]; !there {
			news = append(news, Change{Name: name, Gone: true})
			delete(f.ours, name)
		}
	}
	return news
}
