// Package workbench is the page on which a kit is designed, seen and proved at once. It
// serves this machine alone: a folder of kits, to whoever holds the key of this start.
//
// It is a front door like the command line and knows nothing of kits that the packages
// below it do not know: it reads with kit/proof, changes files with kit/amend, saves them
// with instructions/keep and draws with render.
//
// The way through the files here: door.go lets a request in; shelf.go finds the kits and
// desk.go has one of them open; pages.go lists the pages, each with a file of its own and a
// template of the same name; changes.go lists what can be done to a kit, and its files do
// it; events.go tells open pages what has changed. What runs in the browser lies in page/.
package workbench

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"runtime/debug"
	"sync"
	"time"

	"tallyfold/render/print"
)

// Settings say what is served and to whom.
type Settings struct {
	// Folder is a kit folder, or a folder that kit folders lie in.
	Folder string
	// Version of the program, for the foot of the page.
	Version string
	// Browser is the Chromium program that makes PDFs; looked for when it is "".
	Browser string
	// Now tells the time; nil is the clock.
	Now func() time.Time
	// Note is given sentences for the person who started the program.
	Note func(string)
}

// A Workbench serves the pages of one folder. Close must be called at the end.
type Workbench struct {
	settings Settings
	root     string // the folder, absolute
	key      string // of this start
	pages    *paper
	stop     context.CancelFunc
	running  context.Context

	lock  sync.Mutex
	desks map[string]*desk // open kits, by their place under root

	printing sync.Mutex
	browser  *print.Browser
}

// New opens a folder. The error says in plain words what stands against it.
func New(settings Settings) (*Workbench, error) {
	root, err := filepath.Abs(settings.Folder)
	if err != nil {
		return nil, fmt.Errorf("cannot tell where %q lies: %w", settings.Folder, err)
	}
	info, err := os.Stat(root)
	switch {
	case err != nil:
		return nil, fmt.Errorf("there is no folder %q; name one that kits lie in, or make a kit with: tallyfold new %s", settings.Folder, settings.Folder)
	case !info.IsDir():
		return nil, fmt.Errorf("%q is a file; name a folder that kits lie in", settings.Folder)
	}
	if settings.Now == nil {
		settings.Now = time.Now
	}
	if settings.Note == nil {
		settings.Note = func(string) {}
	}
	pages, err := readPages()
	if err != nil {
		return nil, err
	}
	running, stop := context.WithCancel(context.Background())
	return &Workbench{
		settings: settings, root: root, key: rand.Text(), pages: pages,
		running: running, stop: stop, desks: map[string]*desk{},
	}, nil
}

// Close saves what is typed, as far as that can be done, and lets go of all kits.
func (w *Workbench) Close() {
	w.stop()
	w.lock.Lock()
	defer w.lock.Unlock()
	for _, d := range w.desks {
		d.close()
	}
	w.desks = map[string]*desk{}
	w.printing.Lock()
	defer w.printing.Unlock()
	if w.browser != nil {
		w.browser.Close()
		w.browser = nil
	}
}

// Serve answers requests on a listener until the context ends. The listener must be one of
// this machine alone.
func (w *Workbench) Serve(ctx context.Context, listener net.Listener) error {
	server := &http.Server{
		Handler: w.Handler(listener.Addr().String()), ReadHeaderTimeout: 10 * time.Second, IdleTimeout: 2 * time.Minute, MaxHeaderBytes: 64 << 10,
		BaseContext: func(net.Listener) context.Context { return ctx },
	}
	// Somebody types and waits for each answer: memory is spent for time. A fifth of an answer
	// went into clearing up at the usual setting.
	defer debug.SetGCPercent(debug.SetGCPercent(memoryForTime))
	done := make(chan error, 1)
	go func() { done <- server.Serve(listener) }()
	select {
	case err := <-done:
		return err
	case <-ctx.Done():
	}
	// Pages keep a connection open for news, which ends with the context.
	w.stop()
	ending, cancel := context.WithTimeout(context.Background(), 3*time.Second)
	defer cancel()
	if err := server.Shutdown(ending); err != nil {
		_ = server.Close()
	}
	if err := <-done; !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

// memoryForTime is by how many hundredths memory may grow before it is cleared up.
const memoryForTime = 400

// Address is what the maker opens: it holds the key of this start.
func (w *Workbench) Address(host string) string { return "http://" + host + "/open?key=" + w.key }

// Handler answers requests that come to a host, "127.0.0.1:40000".
func (w *Workbench) Handler(host string) http.Handler {
	return &door{hosts: hostsOf(host), key: w.key, inside: w.routes()}
}

// routes are all addresses. What changes something is asked for by POST alone.
func (w *Workbench) routes() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /{$}", w.showShelf)
	mux.HandleFunc("POST /new", w.newKit)
	mux.HandleFunc("GET /start", w.showStart)
	mux.HandleFunc("POST /start", w.changeStart)
	mux.HandleFunc("GET /page/", w.servePage)
	mux.HandleFunc("GET /fonts/{name}", w.serveFont)
	mux.HandleFunc("GET /kit/{kit}/{page}", w.onDesk(w.showPage))
	mux.HandleFunc("GET /kit/{kit}/news", w.onDesk(w.tellNews))
	mux.HandleFunc("POST /kit/{kit}/change", w.onDesk(w.change))
	mux.HandleFunc("GET /kit/{kit}/text/{file}", w.onDesk(w.sendText))
	mux.HandleFunc("GET /kit/{kit}/booklet.html", w.onDesk(w.sendBooklet))
	mux.HandleFunc("GET /kit/{kit}/labels.html", w.onDesk(w.sendLabels))
	mux.HandleFunc("GET /kit/{kit}/empty.html", w.onDesk(w.sendEmpty))
	mux.HandleFunc("GET /kit/{kit}/made/{file}", w.onDesk(w.sendMade))
	mux.HandleFunc("GET /kit/{kit}/pictures/{file}", w.onDesk(w.sendPicture))
	mux.HandleFunc("POST /kit/{kit}/pictures/{file}", w.onDesk(w.takePicture))
	mux.HandleFunc("GET /", func(out http.ResponseWriter, _ *http.Request) {
		w.sorry(out, http.StatusNotFound, "There is no such page.")
	})
	return mux
}
