package print

import (
	"context"
	"errors"
	"sync"
	"time"
)

// Settings says how to start a browser; the zero value is right for most.
type Settings struct {
	// Program is the path of the browser; empty means the one named by TALLYFOLD_BROWSER, else it is looked for.
	Program string
	// StartTimeout is how long the browser may take to answer for the first time; zero means 30 seconds.
	StartTimeout time.Duration
	// PageTimeout is how long one PDF or picture may take; zero means one minute.
	PageTimeout time.Duration
	// Warn is told, in a sentence for the user, when the browser had to be started with less protection than usual.
	Warn func(message string)
}

const (
	defaultStartTimeout = 30 * time.Second
	defaultPageTimeout  = time.Minute
)

// Browser prints pages. It starts its program once and keeps it, as a start takes longer than ten pages; after a
// crash the next call starts another. It is safe for use by several goroutines; two pages are printed at once.
type Browser struct {
	program  string
	settings Settings

	mu      sync.Mutex
	current *session // nil before the first start and after Close
	closed  bool
}

// Open finds and starts a browser, and removes what earlier runs that were killed have left behind. The error is
// ErrNoBrowser, ErrBrowserCrashed or ErrBrowserHung in a wrapping that says more. Close must be called at the end.
func Open(ctx context.Context, settings Settings) (*Browser, error) {
	program, err := Find(settings.Program)
	if err != nil {
		return nil, err
	}
	if settings.StartTimeout <= 0 {
		settings.StartTimeout = defaultStartTimeout
	}
	if settings.PageTimeout <= 0 {
		settings.PageTimeout = defaultPageTimeout
	}
	if settings.Warn == nil {
		settings.Warn = func(string) {}
	}
	sweep(temporaryFolder(unprivileged()))
	b := &Browser{program: program, settings: settings}
	if _, err := b.session(ctx); err != nil {
		return nil, err
	}
	return b, nil
}

// Close ends the browser with all its processes and removes its temporary folder. Work under way fails.
func (b *Browser) Close() {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.closed = true
	if b.current != nil {
		b.current.giveUp()
		b.current = nil
	}
}

// session gives the running browser, starting one if there is none.
func (b *Browser) session(ctx context.Context) (*session, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.closed {
		return nil, ErrClosed
	}
	if b.current != nil {
		if !b.current.over() {
			return b.current, nil
		}
		b.current.end()
		b.current = nil
	}
	s, err := start(ctx, b.program, b.settings)
	b.current = s
	return s, err
}

// do works on a page. If the browser was ended meanwhile because of somebody else's page, the work is done once
// more in a new one.
func (b *Browser) do(ctx context.Context, work func(context.Context, *tab) error) error {
	var err error
	for range 2 {
		var s *session
		if s, err = b.session(ctx); err != nil {
			return err
		}
		if err = s.do(ctx, b.settings.PageTimeout, work); !errors.Is(err, errInterrupted) {
			return err
		}
	}
	return err
}
