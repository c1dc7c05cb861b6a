package workbench

import (
	"fmt"
	"net/http"
	"sync"
	"time"
)

// News tells open pages that something has changed, whoever changed it. A page that hears
// of it asks for itself anew; nothing else is sent.
// Changes are numbered, so that a page knows those that it has seen already.
type news struct {
	lock    sync.Mutex
	last    int
	hearers map[chan struct{}]bool
}

// tell says that something has changed.
func (n *news) tell() {
	n.lock.Lock()
	defer n.lock.Unlock()
	n.last++
	for hearer := range n.hearers {
		select {
		case hearer <- struct{}{}:
		default: // it has not come to the last one yet, and will look at both at once
		}
	}
}

// number is that of the last change.
func (n *news) number() int {
	n.lock.Lock()
	defer n.lock.Unlock()
	return n.last
}

func (n *news) hear() (heard chan struct{}, stop func()) {
	n.lock.Lock()
	defer n.lock.Unlock()
	if n.hearers == nil {
		n.hearers = map[chan struct{}]bool{}
	}
	heard = make(chan struct{}, 1)
	n.hearers[heard] = true
	return heard, func() {
		n.lock.Lock()
		defer n.lock.Unlock()
		delete(n.hearers, heard)
	}
}

// stillHere is how often a quiet connection is used, so that both ends know of each other.
const stillHere = 15 * time.Second

// tellNews keeps a connection open and writes the number of each change (server-sent events,
// HTML Living Standard, 9.2).
func (w *Workbench) tellNews(out http.ResponseWriter, in *http.Request, d *desk) {
	heard, stop := d.news.hear()
	defer stop()
	out.Header().Set("Content-Type", "text/event-stream")
	sender := http.NewResponseController(out)
	send := func(line string) bool {
		_, err := fmt.Fprint(out, line)
		return err == nil && sender.Flush() == nil
	}
	// What changed between the filling in of the page and now is told at once.
	if !send(fmt.Sprintf("data: %d\n\n", d.news.number())) {
		return
	}
	quiet := time.NewTicker(stillHere)
	defer quiet.Stop()
	for {
		line := ": still here\n\n"
		select {
		case <-in.Context().Done():
			return
		case <-w.running.Done():
			return
		case <-heard:
			line = fmt.Sprintf("data: %d\n\n", d.news.number())
		case <-quiet.C:
		}
		if !send(line) {
			return
		}
	}
}
