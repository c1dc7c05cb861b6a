package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"sync"
	"time"

	"tallyfold/instructions/keep"
	"tallyfold/kit/diag"
)

// An outcome is one kit of a catalogue: its proof, or why there is none.
type outcome struct {
	folder string  // as the person wrote it
	proof  *proved // nil where err is told
	err    error
}

// kitFolders gives the kits that are meant by names, each once, in their order.
func kitFolders(names []string) []string {
	var folders []string
	for _, name := range names {
		for _, folder := range keep.KitsIn(name) {
			if folder = filepath.Clean(folder); !slices.Contains(folders, folder) {
				folders = append(folders, folder)
			}
		}
	}
	return folders
}

// proveAll judges kits side by side. The outcomes come in the order of the
// folders. Where the work is stopped before its end there are none.
func proveAll(ctx context.Context, folders []string, today time.Time, p *progress) ([]outcome, error) {
	outcomes := make([]outcome, len(folders))
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(folders)) {
		workers.Go(func() {
			for i := range next {
				proof, err := prove(folders[i], today)
				if err == nil {
					proof.Try()
				}
				outcomes[i] = outcome{folder: filepath.ToSlash(folders[i]), proof: proof, err: err}
				p.done(folders[i])
			}
		})
	}
	for i := 0; i < len(folders) && ctx.Err() == nil; i++ {
		next <- i
	}
	close(next)
	workers.Wait()
	p.clear()
	if ctx.Err() != nil {
		return nil, errors.New("stopped before all kits were checked")
	}
	return outcomes, nil
}

// A progress tells a person who is looking how far the work is, on one line that
// is gone when the work is done. The nil progress tells nothing.
type progress struct {
	w        io.Writer
	of, told int
	lock     sync.Mutex
}

// lineStart goes back to the head of the line and empties it (ECMA-48: CR, EL).
const lineStart = "\r\x1b[K"

// newProgress is nil where nobody is looking or there is one kit only.
func newProgress(s streams, of int) *progress {
	if !s.watched || of < 2 {
		return nil
	}
	return &progress{w: s.err, of: of}
}

func (p *progress) done(folder string) {
	if p == nil {
		return
	}
	p.lock.Lock()
	defer p.lock.Unlock()
	p.told++
	fmt.Fprintf(p.w, "%schecked %d of %d: %s", lineStart, p.told, p.of, lastOf(diag.Printable(folder)))
}

// mostTold is how much of a folder's name is told, so that it stays on one line.
const mostTold = 50

// lastOf gives the end of a long name, which tells most.
func lastOf(name string) string {
	if runes := []rune(name); len(runes) > mostTold {
		return "…" + string(runes[len(runes)-mostTold:])
	}
	return name
}

func (p *progress) clear() {
	if p != nil {
		fmt.Fprint(p.w, lineStart)
	}
}

// withoutFiles passes over files among several kits, with a word: "check kits/*"
// also names the price list that lies beside the kits. A file alone is a slip.
func (io streams) withoutFiles(names []string) []string {
	var folders, files []string
	for _, name := range names {
		if info, err := os.Stat(name); err == nil && !info.IsDir() {
			files = append(files, name)
			continue
		}
		folders = append(folders, name)
	}
	if len(folders) == 0 {
		return names
	}
	for _, name := range files {
		fmt.Fprintln(io.err, "passed over, as it is a file and no kit folder: "+name)
	}
	return folders
}
